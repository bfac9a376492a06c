using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Kits;

public sealed class SealsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_card_is_not_signed_off_before_its_seals_are_inspected()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn();
        await app.MeasureAll(visit);
        await FinishedVisits.TickAll(technician, visit);
        await FinishedVisits.ReadCautions(technician, visit);

        var refused = await (await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_001 }, Ct)).Body();
        await FinishedVisits.InspectSeals(technician, visit);
        var signed = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_001 }, Ct);

        var (subject, sentences) = Assert.Single(refused.GetProperty("errors").EnumerateObject().Select(e => (e.Name, e.Value)));
        Assert.Equal("seals.head-cover.cover-gasket", subject);
        Assert.Equal("Head cover: Head cover gasket is reused only after an inspection, and nobody has recorded one.", sentences[0].GetString());
        Assert.Equal(HttpStatusCode.OK, signed.StatusCode);
    }

    [Fact]
    public async Task What_was_taken_for_old_seals_goes_out_of_the_stores_at_sign_off_by_itself()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.Finish(await app.CheckedIn(), technician);
        var (gaskets, rings) = (await app.Balance(TestEngines.CoverGasket), await app.Balance(TestEngines.PlugWellRing));

        var corrected = await Inspect(technician, visit,
            new { placeCode = "head-cover", partCode = TestEngines.CoverGasket, verdict = "replaced", remark = "Torn as it was laid in." },
            new { placeCode = "head-cover", partCode = TestEngines.PlugWellRing, verdict = "replaced", taken = 1 });
        (await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_001 }, Ct)).EnsureSuccessStatusCode();

        Assert.Equal(HttpStatusCode.OK, corrected.StatusCode);
        var gasket = (await corrected.Body()).GetProperty("seals")[0];
        Assert.Equal(("replaced", 1m, "fit"), (
            gasket.GetProperty("inspection").GetProperty("verdict").GetString(), gasket.GetProperty("inspection").GetProperty("taken").GetDecimal(),
            gasket.GetProperty("earlier")[0].GetProperty("verdict").GetString()));
        Assert.Equal(gaskets.OnHand - 1, (await app.Balance(TestEngines.CoverGasket)).OnHand);
        Assert.Equal(rings.OnHand - 1, (await app.Balance(TestEngines.PlugWellRing)).OnHand);
    }

    [Fact]
    public async Task A_correction_says_why_and_nothing_impossible_is_taken()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn();
        var first = await Inspect(technician, visit, new { placeCode = "head-cover", partCode = TestEngines.CoverGasket, verdict = "fit" });
        var said = await Inspect(technician, visit, new { placeCode = "head-cover", partCode = TestEngines.CoverGasket, verdict = "fit" });

        var wrong = await (await Inspect(technician, visit,
            new { placeCode = "head-cover", partCode = TestEngines.CoverGasket, verdict = "replaced" },
            new { placeCode = "head-cover", partCode = TestEngines.PlugWellRing, verdict = "replaced", taken = 3 },
            new { placeCode = "head-cover", partCode = TestEngines.PlugWellRing, verdict = "fit", taken = 1 },
            new { placeCode = "sump-drain", partCode = TestEngines.DrainRing, verdict = "fit" })).Body();

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (first.StatusCode, said.StatusCode));
        Assert.Equal(
            ["seals[0].remark", "seals[1].taken", "seals[2].partCode", "seals[3].partCode"],
            wrong.GetProperty("errors").EnumerateObject().Select(e => e.Name));
        Assert.Equal(1, await app.Look(db => db.SealInspections.CountAsync(i => i.JobCardNumber == visit.Number, Ct)));
        var advisor = await Inspect(await app.As(Roles.Advisor), visit, new { placeCode = "head-cover", partCode = TestEngines.CoverGasket, verdict = "fit" });
        Assert.Equal(HttpStatusCode.Forbidden, advisor.StatusCode);
    }

    [Fact]
    public async Task The_page_writes_what_was_seen_and_comes_back_filled_when_it_is_wrong()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var wrong = await pages.Send($"{visit.Pages}/seals", new()
        {
            ["Input.Seals[0].Verdict"] = "Fit", ["Input.Seals[0].Taken"] = "1", ["Input.Seals[0].Remark"] = "Soft all round",
        }, "#seals");
        var sent = await pages.Send($"{visit.Pages}/seals", new() { ["Input.Seals[0].Verdict"] = "Fit" }, "#seals");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        Assert.Equal(("1", "Soft all round"), (wrong.ValueOf("Input.Seals[0].Taken"), wrong.ValueOf("Input.Seals[0].Remark")));
        Assert.All(wrong.Html.QuerySelectorAll(".faults a"), a => Assert.NotNull(wrong.Html.GetElementById(a.GetAttribute("href")![1..])));
        Assert.Equal($"{visit.Pages}/seals", sent.Location);
        Assert.Contains("fit, goes back in", (await pages.Open(sent.Location!)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_inspection_is_never_changed_in_the_database()
    {
        var visit = await app.CheckedIn();
        await FinishedVisits.InspectSeals(await app.As(Roles.Technician), visit);

        var refused = await Assert.ThrowsAnyAsync<Exception>(() => app.Look(db =>
            db.SealInspections.Where(i => i.JobCardNumber == visit.Number).ExecuteUpdateAsync(i => i.SetProperty(x => x.Taken, 9), Ct)));
        Assert.Contains("seal_inspections", refused.Message, StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> Inspect(HttpClient client, TestVisit visit, params object[] seals) =>
        client.PostAsJsonAsync($"{visit.Api}/seals/inspections", new { seals }, Ct);
}
