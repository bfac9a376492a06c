using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;
using Workshop.Domain.Tests.EngineModels;

namespace Workshop.Domain.Tests.Drift;

/// <summary>A model with few readings leans on all models of its valve-train kind, as far as models lie apart, and says so.</summary>
public class BorrowingTests
{
    private static readonly DriftFit Kind = KnownFit.Of(MadeUpFleet.Usual);

    [Fact]
    public void Three_engines_borrow_and_say_from_how_many()
    {
        var few = Few(5).Rows();

        var fit = KnownFit.Model(few, Pool(Kind)).Value;

        KnownFit.AssertFinite(fit);
        Assert.Equal(FitSource.Borrowed, fit.Source);
        Assert.Equal((3, 12), (fit.Engines, fit.Valves));
        var said = Assert.Single(fit.Warnings, w => w.Kind == DriftWarningKind.Borrows);
        Assert.Equal(
            $"{fit.Readings} readings of its own are few: the figures lean on 1000 readings of 50 engines of the same valve-train kind.",
            said.Sentence);
        KnownFit.AssertFinite(EngineForecast.Of(few[0], fit), few[0]);
    }

    /// <summary>What is borrowed lies between what its own readings say and what the kind says.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public void What_is_borrowed_lies_between_its_own_and_the_kind(int seed)
    {
        var fast = Few((ulong)seed) with { Truth = MadeUpFleet.Usual with { ExhaustSlope = -0.03 } };
        var (own, borrowed) = (KnownFit.Model(fast.Rows()).Value, KnownFit.Model(fast.Rows(), Pool(Kind)).Value);

        Assert.Equal((FitSource.OwnReadings, FitSource.Borrowed), (own.Source, borrowed.Source));
        Assert.InRange(Exhaust(borrowed).MeanMm.Value, Exhaust(own).MeanMm.Value - 0.001, -0.014);
        Assert.InRange(borrowed.SigmaMm.Value, 0.004, 0.008);
    }

    [Fact]
    public void What_engines_share_is_borrowed_where_one_engine_cannot_tell_it()
    {
        var one = (Few(8) with { Engines = 1 }).Rows();

        var fit = KnownFit.Model(one, Pool(Kind)).Value;

        Assert.Equal(FitSource.Borrowed, fit.Source);
        Assert.Equal(0.004, fit.BetweenEnginesMm.Value, 0.002);
    }

    [Fact]
    public void With_nothing_of_its_own_the_kind_alone_speaks()
    {
        var unread = new EngineRows().Engine(MadeUpFleet.OneCylinder, doneNowKm: 4_000);

        var fit = KnownFit.Model([unread], Pool(Kind)).Value;

        Assert.Equal(FitSource.Pooled, fit.Source);
        Assert.Equal((0, 0, 0), (fit.Readings, fit.Valves, fit.Engines));
        Assert.Contains("No valve was measured yet", Assert.Single(fit.Warnings).Sentence);
        Assert.Equal(Kind.Plausible, fit.Plausible);
        Assert.Empty(EngineForecast.Of(unread, fit).WhyNot);
        Assert.Equal(FitSource.Pooled, KnownFit.Model([], Pool(Kind)).Value.Source);
    }

    [Fact]
    public void Without_a_kind_to_borrow_from_the_reason_says_what_is_missing()
    {
        var unread = new EngineRows().Engine(MadeUpFleet.OneCylinder);
        var once = new EngineRows().At(12_000)
            .Found(new LobeKey(MadeUpFleet.OneCylinder.Valves[0].Key), 0.18m, 0.19m).Engine(MadeUpFleet.OneCylinder);

        Assert.Equal("No valve was measured yet.", KnownFit.Model([unread], null).WhyNot!.Explanation);
        Assert.Contains("there is 1", KnownFit.Model([once], null).WhyNot!.Explanation);
        Assert.Equal(NotComputableReason.TooFewPoints, KnownFit.Model([once], null).WhyNot!.Reason);
    }

    [Fact]
    public void A_model_with_enough_valves_does_not_borrow()
    {
        var fit = KnownFit.Model(new MadeUpFleet { Specification = MadeUpFleet.OneCylinder, Engines = 20 }.Rows(), Pool(Kind)).Value;

        Assert.Equal(FitSource.OwnReadings, fit.Source);
        Assert.DoesNotContain(fit.Warnings, w => w.Kind == DriftWarningKind.Borrows);
    }

    /// <summary>By hand: means -0.010, -0.014 and -0.024 have a standard deviation of 0.0072111.</summary>
    [Fact]
    public void How_far_models_lie_apart_is_how_loosely_the_kind_holds()
    {
        var models = new[] { -0.010, -0.014, -0.024 }.Select(slope => KnownFit.Of(MadeUpFleet.Usual with { ExhaustSlope = slope })).ToList();
        var pool = DriftPool.Of(ValveTrainKind.ShimUnderBucket, Kind, models);

        Assert.Equal(3, pool.Models);
        Assert.Equal(0.0072111, Prior(pool, PriorOn.SlopeMean, DriftClasses.Slope(Side.Exhaust)).Deviation, 1e-7);
        Assert.Equal(-0.014, Prior(pool, PriorOn.SlopeMean, DriftClasses.Slope(Side.Exhaust)).Centre);

        // Models that are alike still differ by chance: a slope by 0.001 mm, a logarithm by 0.3.
        Assert.Equal(0.001, Prior(pool, PriorOn.SlopeMean, DriftClasses.Slope(Side.Intake)).Deviation);
        Assert.All(
            pool.Priors.Where(p => p.On is not (PriorOn.SlopeMean or PriorOn.LevelMean)), p => Assert.Equal(0.3, p.Deviation));

        // Those that borrowed themselves tell nothing of it.
        var borrowed = DriftPool.Of(
            ValveTrainKind.ShimUnderBucket, Kind, [.. models, models[0] with { Source = FitSource.Borrowed, Slopes = [] }]);
        Assert.Equal((pool.Models, pool.Priors.Count), (borrowed.Models, borrowed.Priors.Count));
    }

    /// <summary>Two models whose sigma differ fourfold: their logarithms lie apart by ln 4 / root 2.</summary>
    [Fact]
    public void Logarithms_are_held_no_closer_than_models_lie_apart()
    {
        var pool = DriftPool.Of(
            ValveTrainKind.ShimUnderBucket, Kind, [Kind, KnownFit.Of(MadeUpFleet.Usual with { Reading = 0.024 })]);

        Assert.Equal(Math.Log(4) / Math.Sqrt(2), Prior(pool, PriorOn.LogSigma, 0).Deviation, 1e-12);
        Assert.Equal(Math.Log(0.006), Prior(pool, PriorOn.LogSigma, 0).Centre, 1e-12);
        var nothing = DriftPool.Of(ValveTrainKind.ShimUnderBucket, KnownFit.Of(MadeUpFleet.Usual with { BetweenEngines = 0 }), []);
        Assert.All(nothing.Priors, p => Assert.True(double.IsFinite(p.Centre) && p.Deviation > 0));
    }

    /// <summary>A loose hold lets its own readings speak; a close one does not.</summary>
    [Fact]
    public void The_closer_models_lie_together_the_closer_a_new_one_is_held()
    {
        var fast = (Few(5) with { Truth = MadeUpFleet.Usual with { ExhaustSlope = -0.03 } }).Rows();
        var close = DriftPool.Of(ValveTrainKind.ShimUnderBucket, Kind, [Kind, Kind, Kind]);
        var loose = DriftPool.Of(ValveTrainKind.ShimUnderBucket, Kind, [
            KnownFit.Of(MadeUpFleet.Usual with { ExhaustSlope = 0.02 }), Kind, KnownFit.Of(MadeUpFleet.Usual with { ExhaustSlope = -0.05 })]);

        var (held, free) = (Exhaust(KnownFit.Model(fast, close).Value), Exhaust(KnownFit.Model(fast, loose).Value));

        Assert.Equal(-0.014, held.MeanMm.Value, 0.002);
        Assert.True(free.MeanMm.Value < held.MeanMm.Value - 0.005, $"{free} {held}");
    }

    private static MadeUpFleet Few(ulong seed) => new()
    {
        Specification = MadeUpFleet.OneCylinder, Engines = 3, Seed = seed, VisitsKm = [12_000, 24_000, 36_000],
    };

    private static DriftPool Pool(DriftFit kind) => DriftPool.Of(ValveTrainKind.ShimUnderBucket, kind, [kind]);

    private static PoolPrior Prior(DriftPool pool, PriorOn on, int place) => pool.Priors.Single(p => (p.On, p.Place) == (on, place));

    private static SlopeFigures Exhaust(DriftFit fit) => fit.Slopes.Single(s => s.Side == Side.Exhaust);
}
