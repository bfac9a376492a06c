using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Drift;

/// <summary>Fleets whose truth is known are seen through blades, set by rule, and fitted: the truth comes back.</summary>
public class DriftRecoveryTests
{
    /// <summary>
    /// Buckets, blades of 0.01 mm, four checks, one change of shim in three to or from an unmeasured one. Bounds: 4 standard errors
    /// of the fit's own; of 10 figures on 3 seeds one beyond 4 is expected once in 500 runs.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Buckets_set_by_rule_give_back_what_they_were_made_of(int seed)
    {
        var fleet = new MadeUpFleet { Engines = 40, Seed = (ulong)seed, Unmeasured = 0.33 };
        var engines = fleet.Rows();

        var fit = KnownFit.Together(engines).Value;

        Assert.True(engines.SelectMany(e => e.Lobes).Count(l => l.Changes.Any(c => c.Cut is null)) > 50, "shims were changed");
        Assert.True(engines.SelectMany(e => e.Lobes).Count(l => l.Changes.Any(c => c.Cut == LegCut.ShimUnmeasured)) > 20);
        AssertNear(fleet.Truth, fit, 4);
    }

    /// <summary>Screws: every turn begins a level near set-to, whose spread is found too.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    public void Screws_give_back_how_well_a_hand_sets_them(int seed)
    {
        var fleet = new MadeUpFleet
        {
            Specification = SeedFile.Single.Specification, Engines = 90, Seed = (ulong)seed,
            VisitsKm = [12_000, 24_000, 36_000, 48_000, 60_000],
        };

        var fit = KnownFit.Together(fleet.Rows()).Value;

        AssertNear(fleet.Truth, fit, 4);
        foreach (var level in fit.Levels.Where(l => l.Start == LegStart.Adjusted))
        {
            Assert.True(level.Legs > 40);
            AssertNear(0, level.OffsetMm, 4);
            AssertNear(fleet.Truth.Adjusted, level.DeviationMm, 4);
        }
    }

    /// <summary>Blades of 0.05 mm tell little each; the fleet's figures come back all the same.</summary>
    [Fact]
    public void Coarse_blades_give_back_the_fleet()
    {
        var fleet = new MadeUpFleet { Engines = 60, StepMm = 0.05m, Seed = 6, VisitsKm = [12_000, 24_000, 48_000, 72_000] };

        AssertNear(fleet.Truth, KnownFit.Together(fleet.Rows()).Value, 4);
    }

    /// <summary>
    /// The standard errors are of the right size: over several fleets the errors in their own units have a mean square near 1.
    /// Bounds by chi squared of 40 values: 0.46 to 1.9 at 1 in 1000 either side (R: qchisq(c(.001, .999), 40) / 40, from memory
    /// of the table: 0.448, 1.836); widened, since figures of one fit are not independent.
    /// </summary>
    [Fact]
    public void Errors_are_as_large_as_the_fit_says()
    {
        var squares = Enumerable.Range(20, 10).SelectMany(seed =>
        {
            var fleet = new MadeUpFleet { Specification = MadeUpFleet.OneCylinder, Engines = 60, Seed = (ulong)seed };
            var fit = KnownFit.Together(fleet.Rows()).Value;
            return fit.Slopes.Select(s => (s.MeanMm.Value - fleet.Truth.SlopeOf(s.Side)) / s.MeanMm.StandardError!.Value)
                .Concat(fit.Levels.Where(l => l.Start == LegStart.New).Select(l => l.OffsetMm.Value / l.OffsetMm.StandardError!.Value));
        }).Select(z => z * z).ToList();

        Assert.Equal(40, squares.Count);
        Assert.InRange(squares.Average(), 0.4, 2);
    }

    private static void AssertNear(DriftParameters truth, DriftFit fit, double errors)
    {
        KnownFit.AssertFinite(fit);
        Assert.Equal(2, fit.Slopes.Count);
        foreach (var slope in fit.Slopes)
        {
            AssertNear(truth.SlopeOf(slope.Side), slope.MeanMm, errors);
            AssertNear(truth.BetweenValves, slope.DeviationMm, errors);
        }

        foreach (var level in fit.Levels.Where(l => l.Start == LegStart.New))
        {
            AssertNear(0, level.OffsetMm, errors);
            AssertNear(truth.New, level.DeviationMm, errors);
        }

        AssertNear(truth.Reading, fit.SigmaMm, errors);
        AssertNear(truth.BetweenEngines, fit.BetweenEnginesMm, errors);
    }

    private static void AssertNear(double truth, FittedFigure figure, double errors) =>
        Assert.Equal(truth, figure.Value, errors * figure.StandardError!.Value);
}
