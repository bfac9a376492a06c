using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.JobCards;
using Xunit;
using static Workshop.Web.Tests.Finishing.FinishingBench;

namespace Workshop.Web.Tests.Finishing;

/// <summary>What follows the work, part by part, and the gate that each is before the sign-off.</summary>
public sealed class AfterWorkTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_engine_model_that_asks_for_everything_holds_the_sign_off_until_everything_is_said()
    {
        var technician = await app.As(Roles.Technician);
        var gauge = await app.Gauge();
        var visit = await app.CheckedIn(items: OilOnly, specification: AsksForAll);
        await app.Finish(visit, technician);
        Assert.Equal(
            [
                "afterWork.balance", "afterWork.counts", "afterWork.leaks.engine", "afterWork.leaks.fuel line", "afterWork.leaks.sump-drain", "afterWork.rechecks.cooled",
                "afterWork.rechecks.drain-plug", "afterWork.rechecks.oilAfterRun", "afterWork.reminder", "afterWork.testRide",
            ],
            (await Left(technician, visit)).Order());

        await Posted(technician, visit, "counts", new { taps = new[] { new { thing = "rags", way = "wentIn", change = 2 }, new { thing = "rags", way = "cameBack", change = 2 } } });
        app.Clock.Now += Duration.FromMinutes(10);
        await Posted(technician, visit, "balance", Vacuums(gauge, 28, 29));
        await Posted(technician, visit, "leak-check", new
        {
            runMinutes = 10,
            places = new[] { new { code = "engine", state = "dry" }, new { code = "fuel line", state = "dry" }, new { code = "sump-drain", state = "dry" } },
        });
        await Posted(technician, visit, "test-ride", new { odometerOut = 24_000, odometerIn = 24_006, words = "Pulls cleanly." });
        await Posted(technician, visit, "rechecks", new { point = "oilAfterRun", inOrder = true });
        await Posted(technician, visit, "rechecks", new { point = "torque", fastener = TestEngines.DrainPlug, wrenchId = TestWorkshop.SmallWrench, inOrder = true });
        await Posted(technician, visit, "reminder", new { outcome = "hasNone" });
        Assert.Equal(["afterWork.rechecks.cooled"], await Left(technician, visit));

        app.Clock.Now += Duration.FromHours(3);
        await Posted(technician, visit, "rechecks", new { point = "cooled", inOrder = true, words = "Dry, quiet." });
        Assert.Empty(await Left(technician, visit));
        var signed = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_006 }, Ct);
        Assert.True(signed.IsSuccessStatusCode, await signed.Content.ReadAsStringAsync(Ct));

        var answer = await Read(technician, visit);
        Assert.Empty(answer.GetProperty("left").EnumerateArray());
        Assert.Equal((6m, 24_006, "Tek Nician"), (
            answer.GetProperty("ride").GetProperty("distanceKm").GetDecimal(), answer.GetProperty("ride").GetProperty("odometerIn").GetInt32(),
            answer.GetProperty("ride").GetProperty("rider").GetString()));
        Assert.Equal(HttpStatusCode.Conflict, (await Post(technician, visit, "reminder", new { outcome = "reset", reason = "Later." })).StatusCode);
    }

    [Fact]
    public async Task An_engine_model_that_asks_for_nothing_holds_nothing()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly);

        Assert.Empty(await Left(technician, visit));
        Assert.Empty((await Read(technician, visit)).GetProperty("asked").EnumerateArray());
    }

    [Fact]
    public async Task Cylinders_that_differ_by_more_than_the_maker_states_are_set_and_read_again()
    {
        var technician = await app.As(Roles.Technician);
        var gauge = await app.Gauge();
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(new CheckOnVisit(VisitCheckKind.Balance, WhenAsked.Always) { Balance = Figures }));

        var found = await Posted(technician, visit, "balance", Vacuums(gauge, 27, 30, "asFound"));
        Assert.Equal(("outside", "outside: 3 kPa (23 mmHg) apart, 2 kPa (15 mmHg) allowed"), (found.GetProperty("verdict").GetString(), found.GetProperty("sentence").GetString()));
        Assert.Equal(["afterWork.balance"], await Left(technician, visit));

        // 210 and 218 mmHg are 28.00 and 29.06 kPa.
        var left = await Posted(technician, visit, "balance", new
        {
            stage = "asLeft", speedRpm = 1260, hotAtC = 90, hotOf = "oil", gaugeId = gauge,
            cylinders = new[] { new { cylinder = 1, vacuumMmHg = 210 }, new { cylinder = 2, vacuumMmHg = 218 } },
        });
        Assert.Equal("within: 1.06 kPa (8 mmHg) apart, 2 kPa (15 mmHg) allowed", left.GetProperty("sentence").GetString());
        Assert.Empty(await Left(technician, visit));

        var again = Vacuums(gauge, 25, 30);
        Assert.Contains("say why the balance as left is entered again", (await (await Post(technician, visit, "balance", again)).Json()).Fault("reason"), StringComparison.Ordinal);
        Assert.Equal(2, (await Posted(technician, visit, "balance", Vacuums(gauge, 25, 30, reason: "Hose of cylinder 1 had come off."))).GetProperty("attempt").GetInt32());
        Assert.Equal(["afterWork.balance"], await Left(technician, visit));
        var runs = (await Read(technician, visit)).GetProperty("balance").GetProperty("runs").EnumerateArray().ToArray();
        Assert.Equal([true, false, true], runs.Select(r => r.GetProperty("counts").GetBoolean()));
        Assert.Equal("Hose of cylinder 1 had come off.", runs[2].GetProperty("reason").GetString());
    }

    [Fact]
    public async Task A_balance_is_refused_cold_at_another_speed_without_a_gauge_or_a_cylinder()
    {
        var technician = await app.As(Roles.Technician);
        var gauge = await app.Gauge();
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(new CheckOnVisit(VisitCheckKind.Balance, WhenAsked.Always) { Balance = Figures }));

        var wrong = await (await Post(technician, visit, "balance", new
        {
            stage = "asLeft", speedRpm = 1500, hotAtC = 40, hotOf = "coolant", gaugeId = TestWorkshop.DialGauge, cylinders = new[] { new { cylinder = 1, vacuumKpa = 28 } },
        })).Json();

        Assert.Contains("1250 to 1350 is stated", wrong.Fault("speedRpm"), StringComparison.Ordinal);
        Assert.Contains("Run it warm first", wrong.Fault("hotAtC"), StringComparison.Ordinal);
        Assert.Contains("it is no vacuum gauge", wrong.Fault("gaugeId"), StringComparison.Ordinal);
        Assert.Contains("each of 1, 2 once", wrong.Fault("cylinders"), StringComparison.Ordinal);
        var shape = await (await Post(technician, visit, "balance", new
        {
            stage = "asLeft", speedRpm = 1300, hotAtC = 85, hotOf = "coolant", gaugeId = gauge,
            cylinders = new[] { new { cylinder = 1, vacuumKpa = 28m, vacuumMmHg = 210m }, new { cylinder = 2, vacuumKpa = 140m, vacuumMmHg = 0m } },
        })).Json();
        Assert.Contains("give one of them", shape.Fault("cylinders[0].vacuumKpa"), StringComparison.Ordinal);
        Assert.Equal(0, await app.Look(db => db.BalanceRuns.CountAsync(r => r.JobCardNumber == visit.Number, Ct)));
    }

    [Fact]
    public async Task A_leak_holds_the_sign_off_until_somebody_looked_again_and_so_does_a_plug_tightened_since()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(new CheckOnVisit(VisitCheckKind.LeakCheck, WhenAsked.Always)));
        await app.Finish(visit, technician);

        app.Clock.Now += Duration.FromMinutes(20);
        object Looked(string drain, string? words, string? reason = null) => new
        {
            runMinutes = 8, reason,
            places = new[] { new { code = "sump-drain", state = drain, words }, new { code = "engine", state = "dry", words = (string?)null } },
        };
        Assert.Contains("give what is seen there", (await (await Post(technician, visit, "leak-check", Looked("leaking", null))).Json()).Fault("places[0].words"), StringComparison.Ordinal);
        var seen = await Posted(technician, visit, "leak-check", Looked("leaking", "Drips at the plug."));
        Assert.Equal("Oil drain", Assert.Single(seen.GetProperty("leaking").EnumerateArray()).GetString());
        Assert.Equal(["afterWork.leaks.sump-drain"], await Left(technician, visit));

        // Tightened again and looked at again it is dry; tightened once more, somebody has to look once more.
        app.Clock.Now += Duration.FromMinutes(5);
        await FinishedVisits.TickAll(technician, visit);
        app.Clock.Now += Duration.FromMinutes(5);
        await Posted(technician, visit, "leak-check", Looked("dry", null, "New ring fitted, looked again."));
        Assert.Empty(await Left(technician, visit));
        var earlier = Assert.Single((await Read(technician, visit)).GetProperty("earlier").EnumerateArray(), e => e.GetProperty("what").GetString() == "Leak check, Oil drain");
        Assert.Equal(("leaking: Drips at the plug.", "New ring fitted, looked again."), (earlier.GetProperty("words").GetString(), earlier.GetProperty("whyAgain").GetString()));

        app.Clock.Now += Duration.FromMinutes(5);
        await FinishedVisits.TickAll(technician, visit);
        Assert.Equal(["afterWork.leaks.sump-drain"], await Left(technician, visit));
    }

    [Fact]
    public async Task A_place_that_is_not_listed_is_named_and_a_leak_there_holds_though_nobody_asks()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly);

        await Posted(technician, visit, "leak-check", new { runMinutes = 5, places = new[] { new { name = "Radiator hose", state = "leaking", words = "Wet at the clip." } } });

        Assert.Equal(["afterWork.leaks.radiator-hose"], await Left(technician, visit));
        Assert.Contains("there is sump-drain, engine, radiator-hose", (await (await Post(technician, visit, "leak-check",
            new { runMinutes = 5, places = new[] { new { code = "tank", state = "dry" } } })).Json()).Fault("places[0].code"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_rides_what_is_not_tight_and_what_the_odometer_showed_is_its_reading()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(new CheckOnVisit(VisitCheckKind.TestRide, WhenAsked.Always)));

        var loose = await (await Post(technician, visit, "test-ride", new { distanceKm = 5 })).Json();
        Assert.Equal("not-tight", loose.GetProperty("code").GetString());
        Assert.Contains("Oil drain plug", loose.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(["afterWork.testRide"], await Left(technician, visit));

        await FinishedVisits.TickAll(technician, visit);
        Assert.Contains("at least that is allowed", (await (await Post(technician, visit, "test-ride", new { odometerOut = 24_010, odometerIn = 24_008 })).Json()).Fault("odometerIn"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Post(technician, visit, "test-ride", new { odometerOut = 24_010, odometerIn = 25_008 })).StatusCode);
        await Posted(technician, visit, "test-ride", new { odometerOut = 24_001, odometerIn = 24_009 });
        Assert.Empty(await Left(technician, visit));
        var (readings, ride, stops) = await app.Look(async db => (
            await db.OdometerReadings.Where(r => r.JobCardNumber == visit.Number).OrderBy(r => r.Count).Select(r => r.Count).ToListAsync(Ct),
            await db.TestRides.SingleAsync(r => r.JobCardNumber == visit.Number, Ct),
            await db.EngineStops.CountAsync(s => s.JobCardNumber == visit.Number, Ct)));
        Assert.Equal([24_000, 24_001, 24_009], readings);
        Assert.Equal((8_000m, TestWorkshop.Technician, 1), (ride.Distance!.Value.Metres, ride.RiderId!.Value, stops));
    }

    [Fact]
    public async Task Without_a_ride_a_reason_will_do_and_a_ride_takes_its_place()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(new CheckOnVisit(VisitCheckKind.TestRide, WhenAsked.Always)));

        Assert.Contains("the reason in words", (await (await Post(technician, visit, "test-ride", new { whyNot = "other" })).Json()).Fault("words"), StringComparison.Ordinal);
        Assert.Contains("why nobody rode too", (await (await Post(technician, visit, "test-ride", new { whyNot = "weather", distanceKm = 3 })).Json()).Fault("distanceKm"), StringComparison.Ordinal);
        await Posted(technician, visit, "test-ride", new { whyNot = "noPlate" });
        Assert.Empty(await Left(technician, visit));

        await FinishedVisits.TickAll(technician, visit);
        await Posted(technician, visit, "test-ride", new { distanceKm = 4.5, reason = "The owner brought the plate." });
        var answer = await Read(technician, visit);
        Assert.True(answer.GetProperty("ride").GetProperty("ridden").GetBoolean());
        Assert.Equal("not ridden: no plate", Assert.Single(answer.GetProperty("earlier").EnumerateArray()).GetProperty("words").GetString());
    }

    [Fact]
    public async Task The_cooled_engine_is_looked_at_when_it_has_cooled_or_for_a_reason_and_that_is_the_phases_re_check_too()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: TestEngines.Twin() with { AfterWork = new AfterWork(Recheck: new Recheck([TestEngines.OilService], 3, 15)) });
        await app.Finish(visit, technician);
        await Begin(technician, visit, "work");
        await Posted(technician, visit, "leak-check", new { runMinutes = 5, places = new[] { new { code = "engine", state = "dry" } } });
        Assert.Equal(["afterWork.rechecks.cooled"], await Left(technician, visit));

        app.Clock.Now += Duration.FromHours(1);
        Assert.Contains("cools for 3 hours first", (await (await Post(technician, visit, "rechecks", new { point = "cooled", inOrder = true })).Json()).Fault("earlyBecause"), StringComparison.Ordinal);
        Assert.Equal("recheck-missing", (await (await Phase(technician, visit, "handOver")).Json()).GetProperty("code").GetString());

        app.Clock.Now += Duration.FromHours(2);
        await Posted(technician, visit, "rechecks", new { point = "cooled", inOrder = false, words = "A drop at the cover." });
        Assert.Equal(["afterWork.rechecks.cooled"], await Left(technician, visit));
        await Posted(technician, visit, "rechecks", new { point = "cooled", inOrder = true, reason = "Cover bolt drawn up, wiped, looked again." });
        Assert.Empty(await Left(technician, visit));
        await Begin(technician, visit, "handOver");
    }

    [Fact]
    public async Task Handed_over_for_a_reason_the_cooled_engine_is_not_asked_for_twice()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: TestEngines.Twin() with { AfterWork = new AfterWork(Recheck: new Recheck([TestEngines.OilService], 3, 15)) });
        await Begin(technician, visit, "work");
        Assert.Equal(["afterWork.rechecks.cooled"], await Left(technician, visit));

        app.Clock.Now += Duration.FromMinutes(5);
        await Begin(technician, visit, "handOver", "The owner cannot wait; comes by tomorrow.");

        Assert.Empty(await Left(technician, visit));
    }

    [Fact]
    public async Task A_fastener_that_settles_is_checked_once_more_after_its_tick()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(
            new CheckOnVisit(VisitCheckKind.Recheck, WhenAsked.Always) { FastenersAgain = [TestEngines.DrainPlug] }));
        object Plug(string? reason = null) => new { point = "torque", fastener = TestEngines.DrainPlug, wrenchId = TestWorkshop.SmallWrench, inOrder = true, reason };

        Assert.Equal("no-tick", (await (await Post(technician, visit, "rechecks", Plug())).Json()).GetProperty("code").GetString());
        await FinishedVisits.TickAll(technician, visit);
        app.Clock.Now += Duration.FromMinutes(5);
        await Posted(technician, visit, "rechecks", Plug());
        Assert.Empty(await Left(technician, visit));

        app.Clock.Now += Duration.FromMinutes(5);
        await FinishedVisits.TickAll(technician, visit);
        Assert.Equal(["afterWork.rechecks.drain-plug"], await Left(technician, visit));
        Assert.Contains("the visit opens drain-plug", (await (await Post(technician, visit, "rechecks",
            new { point = "torque", fastener = "axle", wrenchId = TestWorkshop.SmallWrench, inOrder = true })).Json()).Fault("fastener"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_reminder_is_reset_or_not_for_a_reason()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(new CheckOnVisit(VisitCheckKind.ReminderReset, WhenAsked.Always)));

        Assert.Contains("why it is not reset", (await (await Post(technician, visit, "reminder", new { outcome = "notReset" })).Json()).Fault("words"), StringComparison.Ordinal);
        await Posted(technician, visit, "reminder", new { outcome = "notReset", words = "Needs the maker's tester." });
        Assert.Empty(await Left(technician, visit));
        Assert.Equal("Needs the maker's tester.", (await Read(technician, visit)).GetProperty("reminder").GetProperty("words").GetString());
    }

    [Fact]
    public async Task What_went_in_comes_back_or_is_explained_and_every_further_tap_asks_anew()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly, specification: Asks(new CheckOnVisit(VisitCheckKind.PartsCounted, WhenAsked.Always)));
        Task<JsonElement> Tap(string thing, string way, int change) => Posted(technician, visit, "counts", new { taps = new[] { new { thing, way, change } } });

        Assert.Equal(["afterWork.counts"], await Left(technician, visit));
        await Tap("rags", "wentIn", 1);
        await Tap("rags", "wentIn", 1);
        await Tap("rags", "wentIn", 1);
        await Posted(technician, visit, "counts", new { taps = new[] { new { name = "Torch, small", way = "wentIn", change = 1 } } });
        Assert.Equal("2 not back", Assert.Single((await Tap("rags", "cameBack", 1)).GetProperty("things").EnumerateArray()).GetProperty("words").GetString());
        await Tap("torch-small", "cameBack", 1);
        Assert.Equal(["afterWork.counts.rags"], await Left(technician, visit));

        Assert.Equal(HttpStatusCode.Conflict, (await Post(technician, visit, "counts/explanations", new { thing = "torch-small", words = "Here." })).StatusCode);
        await Posted(technician, visit, "counts/explanations", new { thing = "rags", words = "Two went into the bin with the oil." });
        Assert.Empty(await Left(technician, visit));
        await Tap("rags", "cameBack", -1);
        Assert.Equal(["afterWork.counts.rags"], await Left(technician, visit));
        Assert.Equal("count-impossible", (await (await Post(technician, visit, "counts", new { taps = new[] { new { thing = "rags", way = "cameBack", change = -1 } } })).Json()).GetProperty("code").GetString());
        Assert.Contains("give another by its name", (await (await Post(technician, visit, "counts", new { taps = new[] { new { thing = "spanner", way = "wentIn", change = 1 } } })).Json()).Fault("taps[0].thing"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rows_are_only_ever_added()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly);
        await Posted(technician, visit, "reminder", new { outcome = "reset" });

        var refused = await Assert.ThrowsAnyAsync<Exception>(() => app.Look(db => db.ReminderResets
            .Where(r => r.JobCardNumber == visit.Number).ExecuteUpdateAsync(r => r.SetProperty(x => x.Outcome, ReminderOutcome.HasNone), Ct)));

        Assert.Contains("reminder_resets", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Advisors_look_and_do_not_enter()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.CheckedIn(items: OilOnly);

        Assert.Equal(HttpStatusCode.Forbidden, (await Post(advisor, visit, "reminder", new { outcome = "reset" })).StatusCode);
        Assert.Equal(visit.Number, (await Read(advisor, visit)).GetProperty("number").GetInt32());
    }

    private static async Task Begin(HttpClient client, TestVisit visit, string phase, string? reason = null) =>
        Assert.Equal(HttpStatusCode.OK, (await Phase(client, visit, phase, reason)).StatusCode);

    private static Task<HttpResponseMessage> Phase(HttpClient client, TestVisit visit, string phase, string? reason = null) =>
        client.PostAsJsonAsync($"{visit.Api}/phases", new { phase, reason, oilIn = true }, Ct);
}
