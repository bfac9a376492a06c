using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Drift;

public sealed class ForecastRowsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_lobe_of_the_engine_has_a_row_with_figures_or_with_a_reason()
    {
        var visit = await app.ReadOverYears(
            TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m), (0.25m, 0.26m), (0.23m, 0.24m), (0.21m, 0.22m));

        var rows = await Rows(visit);

        Assert.Equal(6, rows.Count);
        var drifting = Assert.Single(rows, r => r.Reason is null);
        Assert.Equal((TestEngines.Exhaust(1), 1, 5), (drifting.Valve, drifting.Lobe, drifting.Readings));
        // By hand: x 2, 4, 6, 8, 10; middles 0.285, 0.265, 0.255, 0.235, 0.215; Sxx 40, Sxy -0.34.
        Assert.Equal(-0.0085m, drifting.DriftMmPer10000Km);
        Assert.Equal(0.217m, drifting.PresentMm);
        // 0.217 - 0.20 = 0.017 mm at 0.0085 mm per 10,000 km is 20,000 km further.
        Assert.Equal(Distance.FromKilometres(120_000), drifting.LeavesLimitsAt);
        Assert.True(drifting.LeavesLimitsEarliestAt < drifting.LeavesLimitsAt);
        Assert.All(rows.Where(r => r != drifting), r => Assert.Equal("It was not measured yet.", r.Reason));
    }

    [Fact]
    public async Task A_new_reading_changes_the_row_that_stands()
    {
        var visit = await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m));
        Assert.Contains("2 readings tell a slope", Assert.Single(await Rows(visit), r => r.Readings > 0).Reason, StringComparison.Ordinal);

        var next = await app.CheckedInAgain(visit, 60_000);
        await app.Read(next, TestEngines.Exhaust(1), Stage.AsFound, 0.22m, 0.23m);
        await app.RewriteForecasts(next);

        Assert.Equal(3, Assert.Single(await Rows(visit), r => r.Readings > 0).Readings);
    }

    [Fact]
    public async Task A_known_shim_swap_does_not_look_like_wear()
    {
        var visit = await app.ReadOverYears(
            TestEngines.Exhaust(2), (0.28m, 0.29m), (0.26m, 0.27m), (0.24m, 0.25m), (0.22m, 0.23m));
        await app.Shim(visit, TestEngines.Exhaust(2), Stage.AsFound, 2.50m);
        await app.Shim(visit, TestEngines.Exhaust(2), Stage.AsLeft, 2.45m);
        await app.Read(visit, TestEngines.Exhaust(2), Stage.AsLeft, 0.25m, 0.26m);
        await app.RewriteForecasts(visit);

        var row = Assert.Single(await Rows(visit), r => r.Readings > 0);

        Assert.Equal((5, -0.01m, 0.255m), (row.Readings, row.DriftMmPer10000Km, row.PresentMm));
    }

    [Fact]
    public async Task A_corrected_odometer_reading_moves_what_was_read_at_it()
    {
        var visit = await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m));
        await app.Look(async db =>
        {
            var wrong = await db.OdometerReadings.SingleAsync(r => r.Id == visit.OdometerReadingId, Ct);
            db.OdometerReadings.Add(new OdometerReading
            {
                Id = Domain.NewId.At(app.Clock.Now), OdometerId = wrong.OdometerId, MotorcycleId = wrong.MotorcycleId, ReadOn = wrong.ReadOn,
                Count = 30_000, Unit = wrong.Unit, Distance = Distance.FromKilometres(30_000), SupersedesId = wrong.Id,
                MeasuredBy = TestWorkshop.Advisor, EnteredBy = TestWorkshop.Advisor, EnteredAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });

        await app.RewriteForecasts(visit);

        Assert.Equal(-0.02m, Assert.Single(await Rows(visit), r => r.Readings > 0).DriftMmPer10000Km);
    }

    [Fact]
    public async Task Two_rewrites_at_once_wait_for_each_other()
    {
        var visit = await app.CheckedIn();

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => app.RewriteForecasts(visit)));

        Assert.Equal(6, (await Rows(visit)).Count);
    }

    private Task<List<ClearanceForecast>> Rows(TestVisit visit) => app.Look(db =>
        db.ClearanceForecasts.AsNoTracking().Where(f => f.EngineId == visit.EngineId).ToListAsync(Ct));
}
