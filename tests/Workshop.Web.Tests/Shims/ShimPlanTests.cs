using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.JobCards;
using Xunit;
using static Workshop.Web.Tests.Clearances.ReadingBodies;

namespace Workshop.Web.Tests.Shims;

public sealed class ShimPlanTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>
    /// Exhaust of the test engine: 0.20 to 0.30 mm, set to 0.25, ratio 0.6. Found 0.155: ideal 2.100 + (0.155 - 0.25)/0.6 = 1.9417;
    /// the box has 1.800 to 2.400 in steps of 0.025: 1.950 gives 0.155 + 0.6 x 0.150 = 0.245 mm.
    /// </summary>
    [Fact]
    public async Task A_tight_valve_gets_the_nearest_shim_of_the_box_and_the_clearance_that_it_will_give()
    {
        var visit = await app.CheckedIn();
        await Measure(visit, Found("1-exhaust-1", 0.15, 0.16), Out("1-exhaust-1", 2.1m));

        var valve = (await Plan(visit)).Valve("1-exhaust-1", "key");

        Assert.Equal("fitShim", valve.GetProperty("advice").GetString());
        Assert.Equal(2.1m, valve.GetProperty("oldMm").GetDecimal());
        Assert.Equal(1.9417m, valve.GetProperty("idealMm").GetDecimal());
        Assert.Equal(1.95m, valve.GetProperty("newMm").GetDecimal());
        Assert.Equal(0.245m, valve.GetProperty("lobes")[0].GetProperty("predictedMm").GetDecimal());
    }

    [Fact]
    public async Task A_shim_fitted_at_an_earlier_visit_is_known_without_taking_it_out()
    {
        var first = await app.CheckedIn(odometerKm: 20_000);
        await Measure(first, Found("1-exhaust-1", 0.33, 0.34), Out("1-exhaust-1", 2.0m));
        await Fit(first, new { valve = "1-exhaust-1", thicknessMm = 2.125m, fromBox = true });
        Later(Duration.FromDays(200));
        var second = await app.CheckedInAgain(first, odometerKm: 44_000);
        await Measure(second, Found("1-exhaust-1", 0.15, 0.16), null);

        var valve = (await Plan(second)).Valve("1-exhaust-1", "key");

        Assert.Equal(2.125m, valve.GetProperty("oldMm").GetDecimal());
        Assert.Equal("fitShim", valve.GetProperty("advice").GetString());
    }

    [Fact]
    public async Task An_unknown_shim_must_be_measured_and_a_valve_without_a_reading_too()
    {
        var visit = await app.CheckedIn();
        await Measure(visit, Found("1-exhaust-1", 0.15, 0.16), null);

        var plan = await Plan(visit);

        Assert.Equal("measureShim", plan.Valve("1-exhaust-1", "key").GetProperty("advice").GetString());
        Assert.Equal("measureClearance", plan.Valve("2-exhaust-1", "key").GetProperty("advice").GetString());
    }

    [Fact]
    public async Task A_fitted_shim_leaves_the_box_the_old_one_goes_in_and_the_adjustment_begins()
    {
        var visit = await app.CheckedIn();
        await Measure(visit, Found("1-exhaust-1", 0.15, 0.16), Out("1-exhaust-1", 2.113m));
        var before = await OnHand(1.95m, StockCondition.New);

        var answer = await Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 1.95m, fromBox = true, oldIntoBox = true });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(before - 1, await OnHand(1.95m, StockCondition.New));
        Assert.Equal(1, await OnHand(2.113m, StockCondition.Used));
        Assert.Equal(app.Clock.Now, await app.Look(db => db.JobCardItems
            .Where(i => i.JobCardNumber == visit.Number && i.ServiceItemCode == TestEngines.Adjustment).Select(i => i.StartedAt).SingleAsync(Ct)));
        Assert.Equal("measureAsLeft", (await Plan(visit)).Valve("1-exhaust-1", "key").GetProperty("advice").GetString());
    }

    [Fact]
    public async Task Measured_again_as_left_the_valve_is_planned_from_there()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        await Measure(visit, Found("1-exhaust-1", 0.15, 0.16), Out("1-exhaust-1", 2.1m));
        await Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.0m, fromBox = true });
        Later(Duration.FromMinutes(20));
        await FinishedVisits.OpenAsLeft(technician, visit);
        await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Left("1-exhaust-1", 0.18, 0.19)), Ct);

        var valve = (await Plan(visit)).Valve("1-exhaust-1", "key");

        // Left 0.185 with 2.000 in: ideal 2.000 + (0.185 - 0.25)/0.6 = 1.8917; 1.900 gives 0.245.
        Assert.Equal(2.0m, valve.GetProperty("oldMm").GetDecimal());
        Assert.Equal(1.9m, valve.GetProperty("newMm").GetDecimal());
    }

    [Fact]
    public async Task A_shim_that_the_box_does_not_hold_is_a_conflict_that_names_its_neighbours_and_nothing_is_written()
    {
        var visit = await app.CheckedIn();
        await Measure(visit, Found("1-exhaust-1", 0.15, 0.16), Out("1-exhaust-1", 2.1m));

        var answer = await Fit(
            visit,
            new { valve = "2-exhaust-1", thicknessMm = 1.9m, fromBox = true },
            new { valve = "1-exhaust-1", thicknessMm = 1.94m, fromBox = true });

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains(
            "shims[1].thicknessMm is 1.94 mm: the box holds none (shim-test-9). Nearest in it: 1.925 mm and 1.95 mm.",
            (await answer.Json()).Fault("shims[1].thicknessMm"), StringComparison.Ordinal);
        Assert.Equal(0, await app.Look(db => db.StockMovements.CountAsync(m => m.JobCardNumber == visit.Number, Ct)));
        Assert.Equal(1, await app.Look(db => db.ShimObservations.CountAsync(s => s.JobCardNumber == visit.Number, Ct)));
    }

    [Fact]
    public async Task Of_two_shims_left_three_cards_at_once_get_two()
    {
        var visits = new List<TestVisit>();
        for (var i = 0; i < 3; i++)
        {
            visits.Add(await app.CheckedIn());
        }

        var answers = await Task.WhenAll(visits.Select(v => Fit(v, new { valve = "2-exhaust-1", thicknessMm = 1.825m, fromBox = true })));

        Assert.Equal(
            [HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Conflict], answers.Select(a => a.StatusCode).Order());
        Assert.Equal(0, await OnHand(1.825m, StockCondition.New));
    }

    [Fact]
    public async Task Another_shim_in_the_same_valve_replaces_the_first_which_goes_back_as_what_it_was()
    {
        var visit = await app.CheckedIn();
        var (first, second) = (await OnHand(2.2m, StockCondition.New), await OnHand(2.225m, StockCondition.New));
        await Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.2m, fromBox = true });
        var other = new { valve = "1-exhaust-1", thicknessMm = 2.225m, fromBox = true, oldIntoBox = true };

        var without = await Fit(visit, other);
        var with = await Post(visit, new { shims = new[] { other }, reason = "First was too thin" });

        Assert.Contains("the shim as left of cylinder 1, exhaust 1", (await without.Json()).Fault("reason"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, with.StatusCode);
        Assert.Equal(first, await OnHand(2.2m, StockCondition.New));
        Assert.Equal(second - 1, await OnHand(2.225m, StockCondition.New));
        Assert.Equal(0, await OnHand(2.2m, StockCondition.Used));
    }

    [Fact]
    public async Task A_thickness_beyond_what_is_permitted_is_refused_and_so_is_an_unmeasured_one_into_the_box()
    {
        var visit = await app.CheckedIn();

        var answer = await Fit(
            visit,
            new { valve = "1-exhaust-1", thicknessMm = 3.3m },
            new { valve = "2-exhaust-1", thicknessMm = 2.0m, oldIntoBox = true },
            new { valve = "9-exhaust-1", thicknessMm = 2.0m });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var problem = await answer.Json();
        Assert.Contains("3.3 mm: 1.20 to 3.20 mm is permitted", problem.Fault("shims[0].thicknessMm"), StringComparison.Ordinal);
        Assert.Contains("Do not grind or stack", problem.Fault("shims[0].thicknessMm"), StringComparison.Ordinal);
        Assert.Contains("is not measured", problem.Fault("shims[1].oldIntoBox"), StringComparison.Ordinal);
        Assert.Contains("no such valve", problem.Fault("shims[2].valve"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_card_without_an_adjustment_says_so()
    {
        var visit = await app.CheckedIn(items: new Dictionary<string, Domain.JobCards.Likelihood>
        {
            [TestEngines.ValveCheck] = Domain.JobCards.Likelihood.Certain,
        });

        var answer = await (await Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.0m })).Json();

        Assert.Contains("No clearance adjustment stands", answer.GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Screws_and_locknuts_are_set_and_take_no_shims()
    {
        var screws = TestEngines.Twin() with { ValveTrain = Domain.EngineModels.ValveTrainKind.ScrewAndLocknut, Shims = null };
        var visit = await app.CheckedIn(specification: screws);
        await Measure(visit, Found("1-exhaust-1", 0.15, 0.16), null);

        var plan = await Plan(visit);
        var refused = await Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.0m });
        var technician = await app.As(Roles.Technician);
        await technician.PostAsJsonAsync($"{visit.Api}/readings", new { events = new[] { new { valve = "1-exhaust-1", kind = "screwTurned" } } }, Ct);

        Assert.Equal(JsonValueKind.Null, plan.GetProperty("shims").ValueKind);
        Assert.Contains("set the screw to 0.25 mm", plan.Valve("1-exhaust-1", "key").GetProperty("why").GetString(), StringComparison.Ordinal);
        Assert.Contains("screws and locknuts, no shims", (await refused.Json()).Fault("shims[0].valve"), StringComparison.Ordinal);
        Assert.Equal("measureAsLeft", (await Plan(visit)).Valve("1-exhaust-1", "key").GetProperty("advice").GetString());
    }

    private static object Out(string valve, decimal thickness) => new { valve, stage = "asFound", thicknessMm = thickness };

    private async Task Measure(TestVisit visit, object reading, object? shim)
    {
        var body = Send(reading);
        if (shim is not null)
        {
            body.With("shims", new[] { shim }).With("micrometerId", TestWorkshop.Micrometer);
        }

        var answer = await (await app.As(Roles.Technician)).PostAsJsonAsync($"{visit.Api}/readings", body, Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    private Task<HttpResponseMessage> Fit(TestVisit visit, params object[] shims) => Post(visit, new { shims });

    private async Task<HttpResponseMessage> Post(TestVisit visit, object body) =>
        await (await app.As(Roles.Technician)).PostAsJsonAsync($"{visit.Api}/shims", body, Ct);

    private async Task<JsonElement> Plan(TestVisit visit) =>
        await (await (await app.As(Roles.Technician)).GetAsync($"{visit.Api}/shim-plan", Ct)).Json();

    private Task<int> OnHand(decimal thickness, StockCondition condition) => app.Look(async db =>
    {
        var mm = ShimThickness.FromMillimetres(thickness);
        return (int)await (from balance in db.StockBalances
                           join part in db.Parts on balance.PartId equals part.Id
                           where part.Code == TestEngines.ShimPart && balance.Thickness == mm && balance.Condition == condition
                           select balance.OnHand).SumAsync(Ct);
    });

    private void Later(Duration span) => app.Clock.Now += span;
}
