using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Tests.Drift;

/// <summary>A fit that says what is true, for what comes after a fit; and what every answer must be: a number.</summary>
internal static class KnownFit
{
    /// <summary>As if the parameters of a simulation had been found, without anything left open.</summary>
    public static DriftFit Of(DriftParameters truth, double firstSeen = 0.03)
    {
        double[] spread = [truth.New, truth.Adjusted, firstSeen];
        var parameters = new PathParameters
        {
            LevelMean = new double[DriftClasses.Levels],
            LevelDeviation = [.. spread, .. spread],
            SlopeMean = [truth.IntakeSlope, truth.ExhaustSlope],
            SlopeDeviation = [truth.BetweenValves, truth.BetweenValves],
            Sigma = truth.Reading,
            ClusterDeviation = truth.BetweenEngines,
        };
        Side[] sides = [Side.Intake, Side.Exhaust];
        return new DriftFit
        {
            Source = FitSource.OwnReadings,
            Levels = [.. sides.SelectMany(side => Enum.GetValues<LegStart>()
                .Select(start => new LevelFigures(side, start, 100, new(0, 0.001), new(spread[(int)start], 0.001))))],
            Slopes = [.. sides.Select(side => new SlopeFigures(
                side, 100, new(truth.SlopeOf(side), 0.0001), new(truth.BetweenValves, 0.0001)))],
            SigmaMm = new(truth.Reading, 0.0001),
            BetweenEnginesMm = new(truth.BetweenEngines, 0.0001),
            Readings = 1000,
            Valves = 200,
            Engines = 50,
            Plausible = [new PlausibleParameters(1, parameters)],
        };
    }

    /// <summary>The whole fit of an engine model.</summary>
    public static Computed<DriftFit> Model(IReadOnlyList<DriftEngine> engines, DriftPool? pool = null) =>
        DriftModel.Fit(engines, pool, TestContext.Current.CancellationToken);

    /// <summary>The fit without a look at curvature, lever ratio and visits.</summary>
    public static Computed<DriftFit> Together(IReadOnlyList<DriftEngine> engines) =>
        DriftModel.FitTogether(engines, TestContext.Current.CancellationToken);

    public static void AssertFinite(DriftFit fit)
    {
        var figures = fit.Levels.SelectMany(l => new[] { l.OffsetMm, l.DeviationMm })
            .Concat(fit.Slopes.SelectMany(s => new[] { s.MeanMm, s.DeviationMm }))
            .Append(fit.SigmaMm).Append(fit.BetweenEnginesMm).ToList();
        Assert.All(figures, f => Assert.True(double.IsFinite(f.Value) && f.StandardError is null or > 0 and < double.PositiveInfinity));
        Assert.True(fit.LogLikelihood is null || double.IsFinite(fit.LogLikelihood.Value));
        Assert.All(fit.Plausible, p => Assert.All(
            p.Parameters.LevelMean.Concat(p.Parameters.LevelDeviation).Concat(p.Parameters.SlopeMean)
                .Concat(p.Parameters.SlopeDeviation).Append(p.Parameters.Sigma).Append(p.Parameters.ClusterDeviation),
            value => Assert.True(double.IsFinite(value))));
        Assert.Equal(1, fit.Plausible.Sum(p => p.Weight), 1e-9);
    }

    /// <summary>Every lobe has figures that are numbers, or a reason; never both and never neither.</summary>
    public static EngineForecast AssertFinite(EngineForecast forecast, DriftEngine engine)
    {
        foreach (var lobe in engine.Lobes.Select(l => l.Lobe))
        {
            var found = forecast.Find(lobe);
            Assert.Equal(found is null, forecast.WhyNot.ContainsKey(lobe));
            if (found is null)
            {
                Assert.Null(forecast.OutsideBy(lobe, Distance.FromKilometres(10_000)));
                Assert.Empty(forecast.Fan(lobe, [Distance.Zero]));
                continue;
            }

            Assert.All(
                new[] { found.PresentMm, found.PresentDeviationMm, found.DriftMm, found.DriftDeviationMm },
                value => Assert.True(double.IsFinite(value)));
            foreach (var km in new[] { 0, 10_000, 100_000, 1_000_000 })
            {
                Assert.InRange(forecast.OutsideBy(lobe, found.From + Distance.FromKilometres(km))!.Value, 0, 1);
            }

            Assert.All(forecast.Fan(lobe, [found.From])[0].Mm, value => Assert.True(double.IsFinite(value)));
        }

        var any = forecast.AnyOutsideBy(Distance.FromKilometres(100_000));
        Assert.Equal(forecast.WhyNot.Count == engine.Lobes.Count, any is null);
        Assert.True(any is null or (>= 0 and <= 1));
        Assert.True(any is null ? forecast.AnyPasses(0.05) is null : forecast.AnyPasses(1e-9) is not null);
        return forecast;
    }
}
