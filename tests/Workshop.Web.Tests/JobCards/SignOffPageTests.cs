using System.Net;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

public sealed class SignOffPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_lists_what_stands_in_the_way_with_links_and_keeps_what_was_typed()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"{visit.Pages}/sign-off");
        var sent = await pages.Send($"{visit.Pages}/sign-off", new()
        {
            ["Input.Odometer"] = "24005", ["Input.NotDone[0].Reason"] = "No time", ["Input.ExtraParts[0].PartCode"] = TestEngines.CoverGasket, ["Input.ExtraParts[0].Quantity"] = "1", ["Input.Remark"] = "Rode well",
        }, "#sign-off");

        Assert.Equal(
            [$"{visit.Pages}/readings", $"{visit.Pages}/torque-sheet", $"{visit.Pages}/seals", $"{visit.Pages}/cautions"],
            page.Html.QuerySelectorAll("main h3 a").Select(a => a.GetAttribute("href")));
        Assert.Contains("Head cover bolt (6): opened, but not ticked on the torque sheet.", page.MainText, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, sent.Status);
        Assert.Contains("Head cover bolt (6): opened, but not ticked on the torque sheet.", sent.Faults);
        Assert.All(sent.Html.QuerySelectorAll(".faults a"), a => Assert.NotNull(sent.Html.GetElementById(a.GetAttribute("href")![1..])));
        Assert.Equal(("24005", "No time", "1", "Rode well"), (
            sent.ValueOf("Input.Odometer"), sent.ValueOf("Input.NotDone[0].Reason"), sent.ValueOf("Input.ExtraParts[0].Quantity"), sent.ValueOf("Input.Remark")?.Trim()));
    }

    [Fact]
    public async Task A_technician_signs_off_and_the_page_says_who_and_when()
    {
        var visit = await app.Finish(await app.CheckedIn(), await app.As(Roles.Technician));
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var sent = await pages.Send($"{visit.Pages}/sign-off", new() { ["Input.Odometer"] = "24010", ["Input.ExtraParts[0].PartCode"] = TestEngines.CoverGasket, ["Input.ExtraParts[0].Quantity"] = "1" }, "#sign-off");

        Assert.Equal($"{visit.Pages}/sign-off", sent.Location);
        var signed = await pages.Open(sent.Location!);
        Assert.Contains("Signed off by Tek Nician, 2026-03-02 09:00, at 24010 km.", Squeezed(signed), StringComparison.Ordinal);
        Assert.Contains("Valve clearance check: done", signed.MainText, StringComparison.Ordinal);
        Assert.Null(signed.Html.QuerySelector("main form"));
        Assert.Equal(JobCardState.SignedOff, await app.Look(db => db.JobCards.Where(c => c.Number == visit.Number).Select(c => c.State).SingleAsync(Ct)));
        var kit = await pages.Open($"{visit.Pages}/kit");
        Assert.Contains("Taken", kit.MainText, StringComparison.Ordinal);
        var sheet = await pages.Open($"{visit.Pages}/torque-sheet");
        Assert.Null(sheet.Html.QuerySelector("main form"));
    }

    [Fact]
    public async Task Cautions_stand_on_the_page_of_their_stage_until_they_are_read()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var kit = await pages.Open($"{visit.Pages}/kit");
        Assert.Equal(["Eye protection on", "Hot oil", "Used oil by local rules"], kit.Html.QuerySelectorAll(".caution strong").Select(c => c.TextContent));

        var sent = await pages.Send(kit, $"{visit.Pages}/kit", [], ".cautions form");

        Assert.Equal($"{visit.Pages}/kit", sent.Location);
        var after = await pages.Open(sent.Location!);
        Assert.Empty(after.Html.QuerySelectorAll(".caution"));
        Assert.Contains("Read by Tek Nician, 2026-03-02 09:00", Squeezed(after), StringComparison.Ordinal);
        Assert.Equal(3, await app.Look(db => db.CautionAcknowledgements.CountAsync(a => a.JobCardNumber == visit.Number, Ct)));
        var all = await pages.Open($"{visit.Pages}/cautions");
        Assert.Equal(["Keep the chain taut", "Two full turns by hand"], all.Html.QuerySelectorAll(".caution strong").Select(c => c.TextContent));
        Assert.Contains("Only when the item held ready is begun", all.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_caution_is_read_once_and_only_those_of_the_card()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var first = await technician.PostAsync(new Uri($"{visit.Api}/cautions/hot-oil/acknowledge", UriKind.Relative), null, Ct);
        var second = await technician.PostAsync(new Uri($"{visit.Api}/cautions/hot-oil/acknowledge", UriKind.Relative), null, Ct);
        var other = await technician.PostAsync(new Uri($"{visit.Api}/cautions/brake-fluid/acknowledge", UriKind.Relative), null, Ct);
        var advisor = await (await app.As(Roles.Advisor)).PostAsync(new Uri($"{visit.Api}/cautions/hot-oil/acknowledge", UriKind.Relative), null, Ct);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (first.StatusCode, second.StatusCode));
        Assert.Equal(1, await app.Look(db => db.CautionAcknowledgements.CountAsync(a => a.JobCardNumber == visit.Number, Ct)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
        Assert.Contains("no item of job card", await other.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, advisor.StatusCode);
    }

    [Fact]
    public async Task An_advisor_reads_the_sign_off_and_may_not_sign()
    {
        var visit = await app.CheckedIn();
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open($"{visit.Pages}/sign-off");

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("What still stands in the way", page.MainText, StringComparison.Ordinal);
        Assert.Null(page.Html.QuerySelector("main form"));
    }

    private static string Squeezed(TestPage page) => string.Join(' ', page.MainText.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
