using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

public sealed class JobCardPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Cards_are_listed_by_how_far_they_are()
    {
        var booked = await app.Booked();
        var here = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var list = await pages.Open("/job-cards");

        Assert.Equal(["In work", "Today and coming", "Recently signed off"], list.Html.QuerySelectorAll("main h2").Select(h => h.TextContent));
        var regions = list.Html.QuerySelectorAll("main [role=region]").ToDictionary(r => r.GetAttribute("aria-label")!);
        Assert.NotNull(regions["In work"].QuerySelector($"a[href='{here.Pages}']"));
        Assert.NotNull(regions["Today and coming"].QuerySelector($"a[href='{booked.Pages}']"));
        Assert.Null(regions["In work"].QuerySelector($"a[href='{booked.Pages}']"));
        Assert.Null(list.Html.QuerySelector("main a[href='/book']"));
    }

    [Fact]
    public async Task A_card_shows_whose_specification_it_follows_and_leads_to_every_stage()
    {
        var visit = await app.Booked();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var card = await pages.Open(visit.Pages);

        Assert.Contains("Invented for tests, edition 1, checked by nobody yet", Squeezed(card), StringComparison.Ordinal);
        Assert.Equal(
            ["", "/check-in", "/progress", "/kit", "/pick-list", "/torque-sheet", "/seals", "/readings", "/shims", "/compression", "/plugs", "/after-work", "/findings", "/estimate", "/sign-off", "/papers"],
            card.Html.QuerySelectorAll(".card-head nav a").Select(a => a.GetAttribute("href")![visit.Pages.Length..]));
        Assert.Equal("Card", card.Html.QuerySelector(".card-head [aria-current]")?.TextContent);
        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open("/job-cards/999999")).Status);
    }

    [Fact]
    public async Task A_technician_begins_an_item_from_the_card_and_an_advisor_does_not()
    {
        var visit = await app.CheckedIn();
        var technician = await TestPages.SignedIn(app, Roles.Technician);
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);

        var begun = await technician.Send(visit.Pages, new() { ["Code"] = TestEngines.Adjustment }, "#start");

        Assert.Equal(HttpStatusCode.Redirect, begun.Status);
        Assert.Contains("begun 2026-03-02 09:00", Squeezed(await technician.Open(visit.Pages)), StringComparison.Ordinal);
        Assert.Null((await advisor.Open(visit.Pages)).Html.QuerySelector("#start"));
        Assert.NotNull(await app.Look(db => db.JobCardItems
            .Where(i => i.JobCardNumber == visit.Number && i.ServiceItemCode == TestEngines.Adjustment).Select(i => i.StartedAt).SingleAsync(Ct)));
    }

    [Fact]
    public async Task An_advisor_cancels_from_the_card_and_the_reason_stands_on_it()
    {
        var visit = await app.Booked();
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);
        var technician = await TestPages.SignedIn(app, Roles.Technician);

        var blank = await advisor.Send(visit.Pages, new() { ["Reason"] = "" }, "#cancel");
        var done = await advisor.Send(blank, visit.Pages, new() { ["Reason"] = "Sold." }, "#cancel");

        Assert.Null((await technician.Open(visit.Pages)).Html.QuerySelector("#cancel"));
        Assert.Equal(HttpStatusCode.BadRequest, blank.Status);
        Assert.Equal("#Reason", blank.Html.QuerySelector(".faults a")?.GetAttribute("href"));
        Assert.Equal(HttpStatusCode.Redirect, done.Status);
        Assert.Contains("Cancelled, entered on 2026-03-02 09:00 by Ada Visor: Sold.", Squeezed(await advisor.Open(visit.Pages)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_in_by_the_page_says_until_when_the_engine_must_stand()
    {
        var visit = await app.Booked();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var address = $"{visit.Pages}/check-in";

        var form = await pages.Open(address);
        var wrong = await pages.Send(form, address, new()
        {
            ["Input.OdometerCount"] = "24 310", ["Input.EngineStoppedTime"] = "08:15", ["Input.OwnersWords"] = "Ticks when cold.",
        });
        var done = await pages.Send(wrong, address, new() { ["Input.OdometerCount"] = "24310" });

        Assert.Contains("stopped just now, it is cold from 2026-03-02 17:00", Squeezed(form), StringComparison.Ordinal);
        Assert.Equal("09:00", form.ValueOf("Input.EngineStoppedTime"));
        Assert.Equal(HttpStatusCode.BadRequest, wrong.Status);
        Assert.Equal(("24 310", "08:15", "Ticks when cold."),
            (wrong.ValueOf("Input.OdometerCount"), wrong.ValueOf("Input.EngineStoppedTime"), wrong.ValueOf("Input.OwnersWords")));
        Assert.Equal(HttpStatusCode.Redirect, done.Status);
        var after = Squeezed(await pages.Open(address));
        Assert.Contains("24,310 km", after, StringComparison.Ordinal);
        Assert.Contains("8 h, until 2026-03-02 16:15", after, StringComparison.Ordinal);
        Assert.Contains("Ticks when cold.", after, StringComparison.Ordinal);
    }

    private static string Squeezed(TestPage page) => string.Join(' ', page.MainText.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
