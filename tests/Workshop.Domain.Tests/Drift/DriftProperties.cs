using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Drift;

/// <summary>What must hold for every fleet: changes of the rows that say nothing about drift change nothing in the fit.</summary>
public class DriftProperties
{
    private static readonly MadeUpFleet Fleet = new()
    {
        Specification = MadeUpFleet.OneCylinder, Engines = 14, VisitsKm = [12_000, 24_000, 48_000, 72_000], Unmeasured = 0.3,
    };

    /// <summary>
    /// Every valve of every second engine gets a shim thinner by 0.1 mm after its second check; from then on it reads that
    /// much more. Only the micrometer's uncertainty remains of it, 8 % of a reading's own variance.
    /// </summary>
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void Drift_is_unchanged_by_a_shim_swap(int seed)
    {
        var kept = Fleet with { Seed = (ulong)seed, Adjusts = false };
        var swapped = kept with
        {
            AfterVisit = (engine, visit) =>
            {
                if (visit == 1 && engine.Number % 2 == 0)
                {
                    foreach (var valve in kept.Specification.Valves)
                    {
                        engine.Rows.Shim(valve.Key, Stage.AsFound, 2.5m).Shim(valve.Key, Stage.AsLeft, 2.4m);
                    }

                    engine.Rows.ShiftMm = 0.1m;
                }
            },
        };
        var (one, other) = (Fit(kept), Fit(swapped));

        Near(one, other, 0.2);
        foreach (var lobe in ReadingRules.LobesOf(kept.Specification))
        {
            var before = EngineForecast.Of(kept.Rows()[1], one).Find(lobe)!;
            var after = EngineForecast.Of(swapped.Rows()[1] with { Specification = Moved(kept.Specification, 0.1m) }, one).Find(lobe)!;
            Assert.Equal(before.PresentMm + 0.1, after.PresentMm, 0.002);
            Assert.Equal(before.DriftMm, after.DriftMm, 0.1 * before.DriftDeviationMm);
            Assert.Equal(before.DriftDeviationMm, after.DriftDeviationMm, 0.06 * before.DriftDeviationMm);
            Assert.Equal((double)before.Even!.Value.Kilometres, (double)after.Even!.Value.Kilometres, 4_000.0);
        }
    }

    [Fact]
    public void Shifting_all_clearances_with_their_limits_shifts_only_levels()
    {
        var shifted = Fleet with { RowsOf = number => new EngineRows(number) { ShiftMm = 0.123m } };
        var (one, other) = (Fit(Fleet), FitOf(shifted.Make().Select(e => e.Rows.Engine(Moved(Fleet.Specification, 0.123m, 0.123m)))));

        Near(one, other, 1e-3);
        Assert.Equal(one.LogLikelihood!.Value, other.LogLikelihood!.Value, 1e-5);
        var (here, there) = (
            EngineForecast.Of(Fleet.Rows()[0], one),
            EngineForecast.Of(shifted.Make()[0].Rows.Engine(Moved(Fleet.Specification, 0.123m, 0.123m)), one));
        foreach (var lobe in ReadingRules.LobesOf(Fleet.Specification))
        {
            Assert.Equal(here.Find(lobe)!.PresentMm + 0.123, there.Find(lobe)!.PresentMm, 1e-6);
            Same(here.Find(lobe)!.Even, there.Find(lobe)!.Even, 5);
        }
    }

    [Fact]
    public void Shifting_the_odometer_of_set_legs_changes_nothing()
    {
        var here = Fleet with { RowsOf = number => new EngineRows(number) { FirstCheckDue = null } };
        var there = here with { RowsOf = number => new EngineRows(number) { FirstCheckDue = null, KmShift = 37_501.5m } };
        var (one, other) = (Fit(here), Fit(there));

        Assert.DoesNotContain(one.Levels, l => l.Start == LegStart.New);
        Near(one, other, 1e-9);
        var (before, after) = (EngineForecast.Of(here.Rows()[2], one), EngineForecast.Of(there.Rows()[2], other));
        foreach (var lobe in ReadingRules.LobesOf(Fleet.Specification))
        {
            Assert.Equal(before.Find(lobe)!.PresentMm, after.Find(lobe)!.PresentMm, 1e-9);
            Same(before.Find(lobe)!.Even, after.Find(lobe)!.Even, 1, 37_501.5);
        }
    }

    [Fact]
    public void Rescaling_distance_rescales_slopes()
    {
        var longer = Fleet with
        {
            RowsOf = number => new EngineRows(number) { KmFactor = 2.5m, FirstCheckDue = Distance.FromKilometres(60_000) },
        };
        var (one, other) = (Fit(Fleet), Fit(longer));

        Assert.Equal(one.LogLikelihood!.Value, other.LogLikelihood!.Value, 1e-5);
        foreach (var (slope, scaled) in one.Slopes.Zip(other.Slopes))
        {
            Assert.Equal(slope.MeanMm.Value, 2.5 * scaled.MeanMm.Value, 0.01 * slope.MeanMm.StandardError!.Value);
            Assert.Equal(slope.DeviationMm.Value, 2.5 * scaled.DeviationMm.Value, 0.01 * slope.DeviationMm.StandardError!.Value);
        }

        Assert.Equal(one.BetweenEnginesMm.Value, 2.5 * other.BetweenEnginesMm.Value, 0.01 * one.BetweenEnginesMm.StandardError!.Value);
        Assert.Equal(one.SigmaMm.Value, other.SigmaMm.Value, 1e-5);
    }

    [Theory]
    [InlineData(1UL)]
    [InlineData(99UL)]
    public void The_order_in_which_rows_were_written_does_not_matter(ulong shuffledBy)
    {
        var fleet = Fleet.Make();
        var (one, other) = (
            FitOf(fleet.Select(e => e.Rows.Engine(Fleet.Specification))),
            FitOf(fleet.Select(e => e.Rows.Engine(Fleet.Specification, shuffledBy: shuffledBy))));

        Assert.Equal(one.LogLikelihood, other.LogLikelihood);
        Assert.Equal(one.Slopes, other.Slopes);
        Assert.Equal(one.Levels, other.Levels);
        Near(one, FitOf(fleet.Reverse().Select(e => e.Rows.Engine(Fleet.Specification))), 1e-3);
    }

    [Fact]
    public void A_valve_carried_as_not_measured_again_is_used_once()
    {
        // All valves are carried at each of the four checks, where none is set.
        var fleet = Fleet with { Adjusts = false };

        var fit = Fit(fleet);

        Assert.Equal(14 * 4 * 4, fit.Readings);
        Assert.All(fleet.Rows().SelectMany(e => e.Lobes), lobe => Assert.Equal(4, lobe.LeftOut.Count));
    }

    [Fact]
    public void Visits_that_were_left_out_do_not_enter()
    {
        var all = (Fleet with { Adjusts = false }).Make();
        var fewer = (Fleet with { Adjusts = false, VisitsKm = [12_000, 24_000, 48_000] }).Make();

        var one = FitOf(all.Select(e => e.Rows.Engine(Fleet.Specification, leftOut: [1004])));
        var other = FitOf(fewer.Select(e => e.Rows.Engine(Fleet.Specification)));

        Assert.Equal(14 * 4 * 3, one.Readings);
        Assert.Equal(other.LogLikelihood, one.LogLikelihood);
        Assert.Equal(other.Slopes, one.Slopes);
    }

    private static DriftFit Fit(MadeUpFleet fleet) => FitOf(fleet.Rows());

    private static DriftFit FitOf(IEnumerable<DriftEngine> engines)
    {
        var fit = KnownFit.Together([.. engines]).Value;
        KnownFit.AssertFinite(fit);
        return fit;
    }

    private static EngineSpecification Moved(EngineSpecification specification, decimal limits, decimal setTo = 0) => specification with
    {
        Limits = [.. specification.Limits.Select(l => l with
        {
            Lower = Clearance.FromMillimetres(l.Lower.Millimetres + limits),
            Upper = Clearance.FromMillimetres(l.Upper.Millimetres + limits),
            SetTo = Clearance.FromMillimetres(l.SetTo.Millimetres + setTo),
        })],
    };

    /// <summary>All figures agree within a share of their standard errors.</summary>
    private static void Near(DriftFit one, DriftFit other, double share)
    {
        Assert.Equal(one.Readings, other.Readings);
        Assert.Equal(one.Levels.Select(l => (l.Side, l.Start, l.Legs)), other.Levels.Select(l => (l.Side, l.Start, l.Legs)));
        foreach (var (figure, same) in Figures(one).Zip(Figures(other)))
        {
            Assert.Equal(figure.Value, same.Value, share * (figure.StandardError ?? 0.005));
        }
    }

    private static IEnumerable<FittedFigure> Figures(DriftFit fit) => fit.Levels.SelectMany(l => new[] { l.OffsetMm, l.DeviationMm })
        .Concat(fit.Slopes.SelectMany(s => new[] { s.MeanMm, s.DeviationMm })).Append(fit.SigmaMm).Append(fit.BetweenEnginesMm);

    private static void Same(Distance? one, Distance? other, double withinKm, double shift = 0)
    {
        Assert.Equal(one is null, other is null);
        Assert.Equal((double)(one?.Kilometres ?? 0) + shift, (double)(other?.Kilometres ?? (decimal)shift), withinKm);
    }
}
