using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Drift;

public class ClearanceSimulationTests
{
    private static readonly DriftParameters Usual = new(
        IntakeSlope: -0.005, ExhaustSlope: -0.012, BetweenEngines: 0.004, BetweenValves: 0.006, New: 0.02, Adjusted: 0.008, Reading: 0.006);

    private static readonly IReadOnlyList<Clearance> Hundredths = Blades(0.03m, 0.40m, 0.01m);

    private static readonly LobeKey Intake = new(new ValveKey(1, Side.Intake, 1));
    private static readonly LobeKey Exhaust = new(new ValveKey(1, Side.Exhaust, 1));

    [Fact]
    public void The_same_seed_gives_the_same_engine_and_the_same_readings()
    {
        Assert.Equal(Readings(7), Readings(7));
        Assert.NotEqual(Readings(7), Readings(8));

        static List<Bracket> Readings(ulong seed)
        {
            var engine = Engine(seed);
            return [.. ReadingRules.LobesOf(SeedFile.VTwin.Specification).Select(l => engine.Measure(l, Km(24_000), Hundredths))];
        }
    }

    /// <summary>
    /// Over many engines the slopes have the mean and the variance that were asked for. Bounds: 4.5 standard errors, of the mean
    /// sqrt(v / n), of the variance of normal numbers v sqrt(2 / (n - 1)); engines are independent, so one valve of each.
    /// </summary>
    [Theory]
    [InlineData(Side.Intake, -0.005)]
    [InlineData(Side.Exhaust, -0.012)]
    public void Slopes_have_the_mean_and_the_variance_that_were_asked_for(Side side, double mean)
    {
        const int Engines = 4_000;
        var variance = (0.004 * 0.004) + (0.006 * 0.006);
        var slopes = Enumerable.Range(0, Engines)
            .Select(i => Engine((ulong)i).SlopeOf(new LobeKey(new ValveKey(1, side, 1)))).ToList();

        Assert.Equal(mean, slopes.Average(), 4.5 * Math.Sqrt(variance / Engines));
        Assert.Equal(variance, Variance(slopes), 4.5 * variance * Math.Sqrt(2.0 / (Engines - 1)));
    }

    /// <summary>The valves of one engine share what the engine adds: the covariance of two of them is its variance.</summary>
    [Fact]
    public void Valves_of_one_engine_drift_alike_by_what_engines_differ_in()
    {
        const int Engines = 4_000;
        var pairs = Enumerable.Range(0, Engines).Select(i => Engine((ulong)i))
            .Select(e => (Intake: e.SlopeOf(Intake), Exhaust: e.SlopeOf(Exhaust))).ToList();
        var (meanIntake, meanExhaust) = (pairs.Average(p => p.Intake), pairs.Average(p => p.Exhaust));
        var covariance = pairs.Sum(p => (p.Intake - meanIntake) * (p.Exhaust - meanExhaust)) / (Engines - 1);

        // The standard error of a covariance of normal numbers: sqrt((v v + c c) / (n - 1)).
        var (v, c) = (0.000052, 0.000016);
        Assert.Equal(c, covariance, 4.5 * Math.Sqrt(((v * v) + (c * c)) / (Engines - 1)));
    }

    [Fact]
    public void New_engines_lie_about_set_to_as_widely_as_asked_for()
    {
        const int Engines = 4_000;
        var levels = Enumerable.Range(0, Engines).Select(i => Engine((ulong)i).ClearanceAt(Exhaust, Distance.Zero)).ToList();

        Assert.Equal(0.26, levels.Average(), 4.5 * 0.02 / Math.Sqrt(Engines));
        Assert.Equal(0.0004, Variance(levels), 4.5 * 0.0004 * Math.Sqrt(2.0 / (Engines - 1)));
    }

    [Fact]
    public void A_clearance_changes_by_its_slope_and_by_nothing_else()
    {
        var engine = Engine(1);

        Assert.Equal(
            engine.ClearanceAt(Intake, Distance.Zero) + (2.5 * engine.SlopeOf(Intake)), engine.ClearanceAt(Intake, Km(25_000)), 12);
    }

    [Fact]
    public void A_thicker_shim_takes_lever_ratio_times_its_thickness_from_both_lobes()
    {
        var engine = Engine(2);
        LobeKey[] lobes = [new(Intake.Valve, 1), new(Intake.Valve, 2)];
        var before = lobes.Select(l => engine.ClearanceAt(l, Km(10_000))).ToList();
        var thicker = ShimThickness.FromMillimetres(engine.ShimIn(Intake.Valve)!.Value.Millimetres + 0.1m);

        engine.Fit(Intake.Valve, thicker);

        // 0.62 and 0.68 are the ratios of the two lobes.
        Assert.Equal(before[0] - 0.062, engine.ClearanceAt(lobes[0], Km(10_000)), 12);
        Assert.Equal(before[1] - 0.068, engine.ClearanceAt(lobes[1], Km(10_000)), 12);
        Assert.Equal(thicker, engine.ShimIn(Intake.Valve));
    }

    [Fact]
    public void A_turned_screw_starts_from_set_to_with_the_same_slope()
    {
        var engine = ClearanceSimulation.OfNewEngine(
            SeedFile.Single.Specification, Usual with { Adjusted = 0 }, new RandomSource(3));
        var slope = engine.SlopeOf(Exhaust);

        engine.SetScrew(Exhaust.Valve, Km(12_000));

        Assert.Null(engine.ShimIn(Exhaust.Valve));
        Assert.Equal(0.18, engine.ClearanceAt(Exhaust, Km(12_000)), 12);
        Assert.Equal(0.18 + slope, engine.ClearanceAt(Exhaust, Km(22_000)), 12);
        Assert.Equal(slope, engine.SlopeOf(Exhaust));
    }

    [Fact]
    public void With_a_steady_hand_the_bracket_holds_the_true_clearance()
    {
        for (var seed = 0UL; seed < 200; seed++)
        {
            var engine = ClearanceSimulation.OfNewEngine(SeedFile.Four.Specification, Usual with { Reading = 0 }, new RandomSource(seed));
            var truth = engine.ClearanceAt(Exhaust, Km(50_000));
            var read = engine.Measure(Exhaust, Km(50_000), Hundredths);

            Assert.Equal(BracketKind.GoAndNoGo, read.Kind);
            Assert.InRange(truth, (double)read.Go!.Value.Millimetres, (double)read.NoGo!.Value.Millimetres);
            Assert.Equal(0.01m, read.NoGo.Value - read.Go.Value);
        }
    }

    /// <summary>Readings of one clearance scatter as asked for; a step of 0.01 mm adds step^2 / 12 (Sheppard's correction).</summary>
    [Fact]
    public void Readings_scatter_as_widely_as_asked_for()
    {
        const int Readings = 4_000;
        var engine = Engine(5);
        var middles = Enumerable.Range(0, Readings)
            .Select(_ => (double)engine.Measure(Exhaust, Km(1_000), Hundredths).MiddleMm!.Value).ToList();
        var expected = (0.006 * 0.006) + (0.01 * 0.01 / 12);

        Assert.Equal(engine.ClearanceAt(Exhaust, Km(1_000)), middles.Average(), 0.001);
        Assert.Equal(expected, Variance(middles), 4.5 * expected * Math.Sqrt(2.0 / (Readings - 1)));
    }

    [Theory]
    [InlineData(0.40, 0.50, BracketKind.NoneEnters)]
    [InlineData(0.01, 0.05, BracketKind.ThickestIsLoose)]
    public void A_set_that_ends_too_soon_leaves_an_end_open(double thinnest, double thickest, BracketKind kind) =>
        Assert.Equal(kind, Engine(6).Measure(Exhaust, Km(1_000), Blades((decimal)thinnest, (decimal)thickest, 0.01m)).Kind);

    [Fact]
    public void Shims_of_a_new_engine_are_such_as_are_permitted() => Assert.All(
        Enumerable.Range(0, 100).SelectMany(i => SeedFile.VTwin.Specification.Valves.Select(v => Engine((ulong)i).ShimIn(v.Key)!.Value)),
        shim => Assert.InRange(shim.Millimetres, 1.60m, 3.20m));

    private static ClearanceSimulation Engine(ulong seed) =>
        ClearanceSimulation.OfNewEngine(SeedFile.VTwin.Specification, Usual, new RandomSource(seed));

    private static double Variance(List<double> values)
    {
        var mean = values.Average();
        return values.Sum(v => (v - mean) * (v - mean)) / (values.Count - 1);
    }

    private static Distance Km(decimal kilometres) => Distance.FromKilometres(kilometres);

    private static List<Clearance> Blades(decimal from, decimal to, decimal step)
    {
        var blades = new List<Clearance>();
        for (var blade = from; blade <= to; blade += step)
        {
            blades.Add(Clearance.FromMillimetres(blade));
        }

        return blades;
    }
}
