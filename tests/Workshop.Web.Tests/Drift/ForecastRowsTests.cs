using MathNet.Numerics.LinearAlgebra;
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
    private static readonly (decimal Go, decimal NoGo)[] ClosingUp =
        [(0.28m, 0.29m), (0.26m, 0.27m), (0.25m, 0.26m), (0.23m, 0.24m), (0.21m, 0.22m)];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>
    /// Beside the linear normal model by dense matrices, which knows of blades only that a reading is spread evenly over its
    /// bracket (variance step² / 12): a close approximation where blades are finer than two sigma.
    /// </summary>
    [Fact]
    public async Task Every_lobe_of_the_engine_has_a_row_with_figures_or_with_a_reason()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var visit = await app.ReadOverYears(TestEngines.Exhaust(1), ClosingUp);

        var rows = await Rows(visit);

        Assert.Equal(6, rows.Count);
        var drifting = Assert.Single(rows, r => r.Reason is null);
        Assert.Equal((TestEngines.Exhaust(1), 1, 5), (drifting.Valve, drifting.Lobe, drifting.Readings));
        var (slope, slopeDeviation, present, presentDeviation) = Normal(ClosingUp.Select((r, i) => (2.0 * (i + 1), (double)(r.Go + r.NoGo) / 2)).ToList());
        Assert.Equal(slope, (double)drifting.DriftMmPer10000Km!.Value, 2e-4);
        Assert.Equal(slopeDeviation, (double)drifting.DriftDeviation!.Value, 1e-4);
        Assert.Equal(present, (double)drifting.PresentMm!.Value, 1e-3);
        Assert.Equal(presentDeviation, (double)drifting.PresentDeviationMm!.Value, 5e-4);
        // The middle reaches the limit of 0.20 mm where the line does.
        var further = (present - 0.20) / -slope * 10_000;
        Assert.Equal(100_000 + further, (double)drifting.LeavesLimitsAt!.Value.Kilometres, 0.1 * further);
        Assert.True(drifting.LeavesLimitsEarliestAt < drifting.LeavesLimitsAt && drifting.LeavesLimitsAt < drifting.LeavesLimitsLatestAt);
        Assert.True(drifting.LeavesLimitsEarliestOn < drifting.LeavesLimitsOn);
        Assert.All(rows.Where(r => r != drifting), r => Assert.StartsWith("No forecast: it was not measured yet", r.Reason, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_new_reading_changes_the_row_that_stands()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var visit = await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m));
        var before = Read(await Rows(visit));

        var next = await app.CheckedInAgain(visit, 60_000);
        await app.Read(next, TestEngines.Exhaust(1), Stage.AsFound, 0.22m, 0.23m);
        await app.RewriteForecasts(next);

        var after = Read(await Rows(visit));
        Assert.Equal((2, 3), (before.Readings, after.Readings));
        Assert.True(after.DriftMmPer10000Km < before.DriftMmPer10000Km && after.DriftDeviation < before.DriftDeviation);
    }

    [Fact]
    public async Task A_known_shim_swap_does_not_look_like_wear()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var visit = await app.ReadOverYears(TestEngines.Exhaust(2), (0.28m, 0.29m), (0.26m, 0.27m), (0.24m, 0.25m), (0.22m, 0.23m));
        var before = Read(await Rows(visit));
        await app.Shim(visit, TestEngines.Exhaust(2), Stage.AsFound, 2.50m);
        await app.Shim(visit, TestEngines.Exhaust(2), Stage.AsLeft, 2.45m);
        await app.Read(visit, TestEngines.Exhaust(2), Stage.AsLeft, 0.25m, 0.26m);
        await app.RewriteForecasts(visit);

        var after = Read(await Rows(visit));

        // 0.05 mm less shim at a ratio of 0.6 opens it by 0.03.
        Assert.Equal(5, after.Readings);
        Assert.Equal((double)before.DriftMmPer10000Km!.Value, (double)after.DriftMmPer10000Km!.Value, 2e-4);
        Assert.Equal((double)before.PresentMm!.Value + 0.03, (double)after.PresentMm!.Value, 2e-3);
    }

    [Fact]
    public async Task A_corrected_odometer_reading_moves_what_was_read_at_it()
    {
        await app.Knows(TestWorkshop.EngineModel);
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

        Assert.Equal(Distance.FromKilometres(30_000), Read(await Rows(visit)).PresentAt);
    }

    [Fact]
    public async Task Two_rewrites_at_once_wait_for_each_other()
    {
        var visit = await app.CheckedIn();

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => app.RewriteForecasts(visit)));

        Assert.Equal(6, (await Rows(visit)).Count);
    }

    /// <summary>Slope and value at the last x of y = a + b x + e, a ~ N(0.25, 0.02²), b ~ N(-0.01, 0.002² + 0.001²), e ~ N(0, 0.005² + 0.01² / 12).</summary>
    private static (double Slope, double SlopeDeviation, double Last, double LastDeviation) Normal(List<(double X, double Y)> points)
    {
        var design = Matrix<double>.Build.Dense(points.Count, 2, (i, j) => j == 0 ? 1 : points[i].X);
        var y = Vector<double>.Build.Dense([.. points.Select(p => p.Y)]);
        var prior = Matrix<double>.Build.DenseOfDiagonalArray([1 / (0.02 * 0.02), 1 / ((0.002 * 0.002) + (0.001 * 0.001))]);
        var precision = 1 / ((0.005 * 0.005) + (0.01 * 0.01 / 12));
        var covariance = ((design.TransposeThisAndMultiply(design) * precision) + prior).Inverse();
        var mean = covariance * ((design.TransposeThisAndMultiply(y) * precision) + (prior * Vector<double>.Build.Dense([0.25, -0.01])));
        var last = Vector<double>.Build.Dense([1, points[^1].X]);
        return (mean[1], Math.Sqrt(covariance[1, 1]), last * mean, Math.Sqrt(last * covariance * last));
    }

    private static ClearanceForecast Read(IEnumerable<ClearanceForecast> rows) => rows.MaxBy(r => r.Readings)!;

    private Task<List<ClearanceForecast>> Rows(TestVisit visit) => app.Look(db =>
        db.ClearanceForecasts.AsNoTracking().Where(f => f.EngineId == visit.EngineId).ToListAsync(Ct));
}
