using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;
using static Workshop.Web.Tests.Finishing.FinishingBench;

namespace Workshop.Web.Tests.Finishing;

/// <summary>The page of what follows the work, and the same forms in the steps of the bay screen, without scripts.</summary>
public sealed class AfterWorkPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Everything_that_is_asked_for_is_done_on_one_page()
    {
        await app.Gauge();
        var visit = await app.CheckedIn(items: OilOnly, specification: AsksForAll);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        await app.Finish(visit, await app.As(Roles.Technician));
        var address = $"{visit.Pages}/after-work";
        var opened = await pages.Open(address);
        Assert.Equal(10, opened.Html.QuerySelectorAll("section[aria-labelledby=after-left] li").Length);
        Assert.Contains("within 2 kPa (15 mmHg) of each other", opened.MainText, StringComparison.Ordinal);
        Assert.Contains("Insured, allowed, licensed", opened.MainText, StringComparison.Ordinal);

        app.Clock.Now += Duration.FromMinutes(10);
        await Sent(pages, address, "counts", new() { ["Tap.Change"] = "2" }, "tr[data-counted=rags] form[data-count=wentIn]");
        await Sent(pages, address, "counts", new() { ["Tap.Change"] = "2" }, "tr[data-counted=rags] form[data-count=cameBack]");
        await Sent(pages, address, "balance", new()
        {
            ["Balance.HotAtC"] = "85,5", ["Balance.Cylinders[0].VacuumKpa"] = "28,4", ["Balance.Cylinders[1].VacuumKpa"] = "29.1",
        });
        await Sent(pages, address, "leak-check", new() { ["Leak.RunMinutes"] = "10" });
        await Sent(pages, address, "test-ride", new() { ["Ride.DistanceKm"] = "4,5" });
        await Sent(pages, address, "rechecks", new() { ["Recheck.InOrder"] = "true" }, "#recheck-oilAfterRun form");
        await Sent(pages, address, "rechecks", new() { ["Recheck.InOrder"] = "true", ["Recheck.WrenchId"] = TestWorkshop.SmallWrench.ToString() }, $"#recheck-{TestEngines.DrainPlug} form");
        await Sent(pages, address, "rechecks", new() { ["Recheck.InOrder"] = "true", ["Recheck.EarlyBecause"] = "The owner cannot wait." }, "#recheck-cooled form");
        await Sent(pages, address, "reminder", new() { ["Reminder.Outcome"] = "HasNone" });

        var done = await pages.Open(address);
        Assert.Contains("Nothing.", done.Html.QuerySelector("section[aria-labelledby=after-left]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("within: 0.7 kPa (5 mmHg) apart", done.MainText, StringComparison.Ordinal);
        Assert.Contains("before it had cooled: The owner cannot wait.", done.MainText, StringComparison.Ordinal);
        Assert.Contains("Ridden by Tek Nician: 4.5 km", done.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bad_input_comes_back_filled_with_its_faults()
    {
        await app.Gauge();
        var visit = await app.CheckedIn(items: OilOnly, specification: AsksForAll);
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var sent = await pages.Send($"{visit.Pages}/after-work", new()
        {
            ["Balance.SpeedRpm"] = "1500", ["Balance.HotAtC"] = "35", ["Balance.Cylinders[0].VacuumKpa"] = "28,4", ["Balance.Cylinders[1].VacuumKpa"] = "29",
        }, FormOf("balance"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, sent.Status);
        Assert.Contains(sent.Faults, f => f.Contains("1250 to 1350 is stated", StringComparison.Ordinal));
        Assert.Contains(sent.Faults, f => f.Contains("Run it warm first", StringComparison.Ordinal));
        Assert.Equal(("1500", "28.4"), (sent.ValueOf("Balance.SpeedRpm"), sent.ValueOf("Balance.Cylinders[0].VacuumKpa")));
    }

    [Fact]
    public async Task A_place_is_said_to_leak_with_what_is_seen_and_a_gauge_is_read_in_its_own_unit()
    {
        await app.Gauge();
        var visit = await app.CheckedIn(items: OilOnly, specification: AsksForAll);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/after-work";

        await Sent(pages, address, "leak-check", new()
        {
            ["Leak.RunMinutes"] = "15", ["Leak.Places[0].State"] = "Leaking", ["Leak.Places[0].Words"] = "Drips.", ["Leak.Places[3].Name"] = "Radiator", ["Leak.Places[3].State"] = "Dry",
        }, $"details {FormOf("leak-check")}");
        await Sent(pages, $"{address}?unit=mmHg", "balance", new()
        {
            ["Balance.HotAtC"] = "90", ["Balance.Cylinders[0].VacuumMmHg"] = "210", ["Balance.Cylinders[1].VacuumMmHg"] = "212",
        });

        var page = await pages.Open(address);
        Assert.Contains("leaking: Drips.", page.MainText, StringComparison.Ordinal);
        Assert.Contains("Radiator", page.MainText, StringComparison.Ordinal);
        Assert.Contains("28.00 (210)", page.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_bay_screen_counts_at_its_first_step_closes_at_its_last_and_says_what_is_left()
    {
        var visit = await app.CheckedIn(items: OilOnly, specification: AsksForAll);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var bay = $"/bays/{TestWorkshop.Bay1}?card={visit.Number}";
        await StandsIn(visit);

        var open = await pages.Open($"{bay}&step=Open");
        Assert.NotNull(open.Html.QuerySelector("tr[data-counted=rags]"));
        var tapped = await pages.Send(open, $"{visit.Pages}/after-work?handler=Count", new() { ["Tap.Change"] = "1" }, "tr[data-counted=rags] form[data-count=wentIn]");
        Assert.Equal($"{bay}&step=Open#counting", tapped.Location);

        var close = await pages.Open($"{bay}&step=Close");
        Assert.Contains("balance, leak check, test ride, re-checks, service reminder, count back to do", close.MainText, StringComparison.Ordinal);
        Assert.All(
            new[] { "balance", "leak-check", "test-ride", "rechecks", "reminder", "counts" },
            part => Assert.NotNull(close.Html.QuerySelector($"form[data-post='{visit.Api}/after-work/{part}'][data-body]")));
        var nothing = await app.CheckedIn(items: OilOnly);
        await StandsIn(nothing);
        Assert.Null((await pages.Open($"/bays/{TestWorkshop.Bay1}?card={nothing.Number}&step=Close")).Html.QuerySelector(".after-work section"));
    }

    [Fact]
    public async Task The_manager_asks_for_a_second_person_for_the_readings_as_left_and_that_person_confirms()
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        var visit = await app.CheckedIn();
        await app.MeasureAll(visit);
        await app.MeasureAll(visit, Stage.AsLeft);
        var model = $"/engine-models/{TestWorkshop.EngineModel}";

        var marked = await manager.Send(model, new() { ["asked"] = "true" }, "form[action*='AsLeft']:not([action*='OfAll'])");
        Assert.Equal($"{model}#as-left-second-person", marked.Location);
        Assert.Contains("asks for one at this engine model", (await manager.Open(model)).MainText, StringComparison.Ordinal);
        var technician = await TestPages.SignedIn(app, Roles.Technician);
        Assert.Contains("somebody else confirms them", (await technician.Open($"{visit.Pages}/after-work")).MainText, StringComparison.Ordinal);

        await manager.Send($"{visit.Pages}/after-work", [], "form[data-post$='as-left-witnesses']");
        Assert.Contains("confirmed as they stand by Mana Ger", (await technician.Open($"{visit.Pages}/after-work")).MainText, StringComparison.Ordinal);
        await manager.Send(model, new() { ["asked"] = "false" }, "form[action*='AsLeft']:not([action*='OfAll'])");
        Assert.Equal(0, await app.Look(db => db.AsLeftMarks.CountAsync(Ct)));
    }

    [Fact]
    public async Task Whoever_only_reads_sees_no_form()
    {
        var visit = await app.CheckedIn(items: OilOnly, specification: AsksForAll);
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open($"{visit.Pages}/after-work");

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Null(page.Html.QuerySelector(".after-work form"));
    }

    private static string FormOf(string part) => $"form[data-post$='after-work/{part}']";

    private static async Task Sent(TestPages pages, string address, string part, Dictionary<string, string?> typed, string? form = null)
    {
        var sent = await pages.Send(address, typed, form ?? FormOf(part));
        Assert.Equal("", string.Join(" ", sent.Faults));
        Assert.Equal(HttpStatusCode.Redirect, sent.Status);
    }

    private Task<int> StandsIn(TestVisit visit) => app.Look(db =>
    {
        db.MotorcycleMoves.Add(new Domain.JobCards.MotorcycleMove
        {
            Id = Domain.NewId.At(app.Clock), JobCardNumber = visit.Number, ResourceId = TestWorkshop.Bay1, MovedAt = app.Clock.Now, MovedBy = TestWorkshop.Technician,
        });
        return db.SaveChangesAsync(Ct);
    });
}
