using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Drift;

/// <summary>What lies at the edge has a result or a named reason: never a number that is none, never an exception.</summary>
public class DriftBoundaryTests
{
    private static readonly EngineSpecification OneCylinder = MadeUpFleet.OneCylinder;
    private static readonly LobeKey Intake = new(new ValveKey(1, Side.Intake, 1));
    private static readonly LobeKey Exhaust = new(new ValveKey(1, Side.Exhaust, 1));
    private static readonly DriftFit Known = KnownFit.Of(MadeUpFleet.Usual);
    private static readonly DriftPool Pool = DriftPool.Of(ValveTrainKind.ShimUnderBucket, Known, [Known]);

    [Fact]
    public void No_engine_and_none_read_say_so()
    {
        Assert.Equal(NotComputableReason.TooFewPoints, KnownFit.Model([], null).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.TooFewPoints, KnownFit.Together([]).WhyNot?.Reason);
        Assert.Contains("No valve was measured", KnownFit.Model([new EngineRows().Engine(OneCylinder)], null).WhyNot?.Explanation);
    }

    [Fact]
    public void One_reading_of_one_valve_is_too_few_but_tells_of_that_valve_with_a_known_model()
    {
        var engine = new EngineRows().At(12_000).Found(Exhaust, 0.22m, 0.23m).Engine(OneCylinder);

        Assert.Equal(NotComputableReason.TooFewPoints, Check([engine]).WhyNot?.Reason);
        var read = KnownFit.AssertFinite(EngineForecast.Of(engine, Known), engine).Find(Exhaust)!;
        Assert.Equal(1, read.Readings);
        Assert.Equal(0.224, read.PresentMm, 0.004);
        Assert.True(read.PresentDeviationMm < 0.008);
    }

    [Theory]
    [InlineData("0.01")]
    [InlineData("0.05")]
    public void Readings_all_alike_say_that_the_blades_are_too_coarse(string step)
    {
        var width = decimal.Parse(step, System.Globalization.CultureInfo.InvariantCulture);
        var engines = Enumerable.Range(1, 10).Select(number => Every(
            new EngineRows(number), [12_000, 24_000, 36_000], _ => (0.20m, 0.20m + width)).Engine(OneCylinder)).ToList();

        Assert.Equal(NotComputableReason.BracketsTooCoarse, Check(engines).WhyNot?.Reason);
        Check(engines, Pool);
    }

    [Fact]
    public void Readings_open_at_one_end_have_a_result_or_a_reason()
    {
        foreach (var (go, noGo) in new (decimal?, decimal?)[] { (null, 0.10m), (0.30m, null) })
        {
            var engines = Enumerable.Range(1, 5).Select(number =>
                Every(new EngineRows(number), [12_000, 24_000, 36_000], _ => (go, noGo)).Engine(OneCylinder)).ToList();
            Assert.NotNull(Check(engines).WhyNot);
            Assert.True(Check(engines, Pool).HasValue);
            var forecast = KnownFit.AssertFinite(EngineForecast.Of(engines[0], Known), engines[0]);
            Assert.True(go is null ? forecast.Find(Exhaust)!.PresentMm < 0.1 : forecast.Find(Exhaust)!.PresentMm > 0.28);
        }
    }

    [Fact]
    public void Two_blades_stacked_tell_less_than_one()
    {
        DriftEngine Engine(bool stacked) => new EngineRows().At(12_000).Found(Exhaust, 0.22m, 0.23m, stacked).Engine(OneCylinder);

        Assert.True(
            EngineForecast.Of(Engine(true), Known).Find(Exhaust)!.PresentDeviationMm
            > 1.1 * EngineForecast.Of(Engine(false), Known).Find(Exhaust)!.PresentDeviationMm);
    }

    [Fact]
    public void With_one_side_read_the_other_is_not_known()
    {
        var engines = new MadeUpFleet { Specification = OneCylinder, Engines = 20 }.Rows()
            .Select(e => e with { Lobes = [.. e.Lobes.Select(l => l.Lobe.Valve.Side == Side.Exhaust ? l : l with { Legs = [] })] }).ToList();

        var fit = Check(engines).Value;

        Assert.Equal([Side.Exhaust], fit.Slopes.Select(s => s.Side));
        Assert.Equal(NoForecastReason.SideNotKnown, EngineForecast.Of(engines[0], fit).WhyNot[Intake]);
        Assert.NotNull(EngineForecast.Of(engines[0], fit).Find(Exhaust));
    }

    [Fact]
    public void An_engine_never_measured_is_foretold_while_it_is_as_new()
    {
        var young = new EngineRows().Engine(OneCylinder, doneNowKm: 29_000);
        var old = new EngineRows().Engine(OneCylinder, doneNowKm: 31_000);
        var untold = new EngineRows { FirstCheckDue = null }.Engine(OneCylinder, doneNowKm: 1_000);

        var forecast = KnownFit.AssertFinite(EngineForecast.Of(young, Known), young).Find(Exhaust)!;
        Assert.Equal((0, Distance.Zero, 0.24), (forecast.Readings, forecast.From, Math.Round(forecast.PresentMm, 6)));
        Assert.Equal(-0.014, forecast.DriftMm, 1e-4);
        Assert.All(
            new[] { old, untold, new EngineRows().Engine(OneCylinder) },
            engine => Assert.All(engine.Lobes, l => Assert.Equal(
                NoForecastReason.NotMeasured, KnownFit.AssertFinite(EngineForecast.Of(engine, Known), engine).WhyNot[l.Lobe])));
    }

    [Fact]
    public void A_change_since_the_last_reading_has_a_forecast_from_there_or_the_reason()
    {
        var unmeasured = Read().Shim(Exhaust.Valve, Stage.AsFound, null).Shim(Exhaust.Valve, Stage.AsLeft, 2.5m).Engine(OneCylinder);
        var screw = Read().Happened(Exhaust.Valve, ValveEventKind.ScrewTurned).Engine(OneCylinder);
        var part = Read().Replaced(ValvePart.Valve, Exhaust.Valve).Engine(OneCylinder);
        var unknown = Read().Happened(Exhaust.Valve, ValveEventKind.ChangeUnknown).Engine(OneCylinder);

        foreach (var engine in new[] { unmeasured, screw })
        {
            var set = KnownFit.AssertFinite(EngineForecast.Of(engine, Known), engine).Find(Exhaust)!;
            Assert.Equal((Distance.FromKilometres(48_000), 3), (set.From, set.Readings));
            Assert.Equal(0.24, set.PresentMm, 1e-6);
            Assert.Equal(0.008, set.PresentDeviationMm, 1e-4);
            Assert.True(set.DriftMm > -0.01);
        }

        var renewed = KnownFit.AssertFinite(EngineForecast.Of(part, Known), part).Find(Exhaust)!;
        Assert.Equal(0, renewed.Readings);
        Assert.True(renewed.PresentDeviationMm > 0.02, "nobody set it");
        Assert.Equal(NoForecastReason.ChangeUnknown, KnownFit.AssertFinite(EngineForecast.Of(unknown, Known), unknown).WhyNot[Exhaust]);

        // It hardly moved over 36,000 km, against -0.014 of its kind.
        static EngineRows Read() => new EngineRows().At(12_000).Found(Exhaust, 0.24m, 0.25m).At(24_000).Found(Exhaust, 0.24m, 0.25m)
            .At(48_000).Found(Exhaust, 0.24m, 0.25m);
    }

    [Fact]
    public void A_known_swap_after_a_reading_that_was_left_out_counts()
    {
        var engine = new EngineRows().At(12_000).Found(Exhaust, 0.14m, 0.15m)
            .Shim(Exhaust.Valve, Stage.AsFound, 2.5m).Shim(Exhaust.Valve, Stage.AsLeft, 2.4m).Engine(OneCylinder, leftOut: [1001]);

        Assert.Equal(0.34, EngineForecast.Of(engine, Known).Find(Exhaust)!.PresentMm, 1e-6);
    }

    /// <summary>A shim 0.3 mm too thick went in and nobody measured again: outside for certain, though no reading says so.</summary>
    [Fact]
    public void A_valve_that_is_outside_for_certain_passes_every_threshold_at_once()
    {
        var engine = new EngineRows().At(12_000).Found(Exhaust, 0.23m, 0.24m)
            .Shim(Exhaust.Valve, Stage.AsFound, 2.5m).Shim(Exhaust.Valve, Stage.AsLeft, 2.8m).Engine(OneCylinder);
        var forecast = KnownFit.AssertFinite(EngineForecast.Of(engine, Known), engine);

        Assert.Equal(1, forecast.AnyOutsideBy(Distance.FromKilometres(12_000))!.Value, 1e-9);
        Assert.All(new[] { 0.01, 0.5, 0.99 }, threshold => Assert.Equal(Distance.FromKilometres(12_000), forecast.AnyPasses(threshold)));
    }

    [Fact]
    public void A_valve_is_left_outside_when_it_was_last_read_so_and_nothing_was_done_to_it_since()
    {
        var (tight, fine) = (new EngineRows().At(12_000).Found(Exhaust, 0.10m, 0.11m), new EngineRows().At(12_000).Found(Exhaust, 0.23m, 0.24m));

        Assert.Equal(Exhaust.Valve, LeftOutside.LatestOf(tight.Engine(OneCylinder))!.Valve);
        Assert.Null(LeftOutside.LatestOf(fine.Engine(OneCylinder)));
        Assert.Null(LeftOutside.LatestOf(tight.Left(Exhaust, 0.23m, 0.24m).Engine(OneCylinder)));
        Assert.Null(LeftOutside.LatestOf(new EngineRows().At(12_000).Found(Exhaust, 0.10m, 0.11m)
            .Shim(Exhaust.Valve, Stage.AsFound, 2.5m).Shim(Exhaust.Valve, Stage.AsLeft, 2.3m).Engine(OneCylinder)));
    }

    [Fact]
    public void Huge_distances_are_numbers_too()
    {
        var fleet = new MadeUpFleet
        {
            Specification = OneCylinder, Engines = 20, VisitsKm = [500_000, 1_000_000, 2_000_000],
            Truth = new(-0.0002, -0.0004, 0.0001, 0.0002, 0.015, 0.008, 0.006),
            RowsOf = number => new EngineRows(number) { FirstCheckDue = Distance.FromKilometres(500_000) },
        };

        var fit = Check(fleet.Rows()).Value;

        Assert.Equal(-0.0004, fit.Slopes.Single(s => s.Side == Side.Exhaust).MeanMm.Value, 0.0003);
    }

    [Fact]
    public void Blades_of_different_steps_make_one_fit()
    {
        var fine = new MadeUpFleet { Specification = OneCylinder, Engines = 15, Seed = 2 };
        var coarse = fine with { StepMm = 0.05m, Seed = 3, RowsOf = number => new EngineRows(100 + number) };
        var inches = fine with { StepMm = 0.0254m, Seed = 4, RowsOf = number => new EngineRows(200 + number) };

        var fit = Check([.. fine.Rows(), .. coarse.Rows(), .. inches.Rows()]).Value;

        Assert.Equal(45, fit.Engines);
        Assert.Equal(-0.014, fit.Slopes.Single(s => s.Side == Side.Exhaust).MeanMm.Value, 0.004);
    }

    [Fact]
    public void Spreads_of_nothing_are_results()
    {
        var fits = Enumerable.Range(1, 2).Select(seed => Check(new MadeUpFleet
        {
            Specification = SeedFile.Single.Specification, Engines = 20, Seed = (ulong)seed,
            Truth = MadeUpFleet.Usual with { BetweenEngines = 0, BetweenValves = 0, Adjusted = 0 },
        }.Rows()).Value).ToList();

        Assert.Contains(fits, f => f.BetweenEnginesMm is { Value: 0, StandardError: null });
        Assert.Contains(fits, f => f.Slopes.Any(s => s.DeviationMm is { Value: 0, StandardError: null })
            && f.Warnings.Any(w => w.Kind == DriftWarningKind.SlopesAlike));
        Assert.All(fits, f => Assert.True(f.BetweenEnginesMm.Value < 0.003 && f.Slopes.All(s => s.DeviationMm.Value < 0.004)));
    }

    /// <summary>Fits, and where there is a fit asks everything of it and of every engine.</summary>
    private static Computed<DriftFit> Check(IReadOnlyList<DriftEngine> engines, DriftPool? pool = null)
    {
        var fit = KnownFit.Model(engines, pool);
        if (fit.HasValue)
        {
            KnownFit.AssertFinite(fit.Value);
            foreach (var engine in engines.Take(3))
            {
                KnownFit.AssertFinite(EngineForecast.Of(engine, fit.Value), engine);
            }
        }
        else
        {
            Assert.NotEmpty(fit.WhyNot.Explanation);
        }

        return fit;
    }

    private static EngineRows Every(EngineRows rows, int[] kms, Func<int, (decimal?, decimal?)> bracket)
    {
        foreach (var km in kms)
        {
            rows.At(km);
            foreach (var lobe in ReadingRules.LobesOf(OneCylinder))
            {
                var (go, noGo) = bracket(km);
                rows.Found(lobe, go, noGo);
            }
        }

        return rows;
    }
}
