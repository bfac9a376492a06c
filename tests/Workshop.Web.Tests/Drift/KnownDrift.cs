using NodaTime;
using Microsoft.Extensions.DependencyInjection;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics.Paths;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Tests.Drift;

/// <summary>Engine models whose drift is known because a test says so, and refits when a test wants them.</summary>
internal static class KnownDrift
{
    /// <summary>Every valve closes up by 0.01 mm per 10,000 km, more or less by 0.002; new levels lie within 0.02 of set-to; blades err by 0.005.</summary>
    public static DriftFit Fit { get; } = new()
    {
        Source = FitSource.OwnReadings,
        Levels =
        [
            .. from side in Enum.GetValues<Side>()
               from start in Enum.GetValues<LegStart>()
               select new LevelFigures(side, start, 50, new FittedFigure(0, 0.002), new FittedFigure(0.02, 0.002)),
        ],
        Slopes = [.. Enum.GetValues<Side>().Select(side =>
            new SlopeFigures(side, 50, new FittedFigure(-0.01, 0.0005), new FittedFigure(0.002, 0.0005)))],
        SigmaMm = new FittedFigure(0.005, 0.0005),
        BetweenEnginesMm = new FittedFigure(0.001, 0.0005),
        LogLikelihood = -100,
        Readings = 300,
        Valves = 100,
        Engines = 25,
        Plausible =
        [
            new PlausibleParameters(1, new PathParameters
            {
                LevelMean = new double[DriftClasses.Levels],
                LevelDeviation = [.. Enumerable.Repeat(0.02, DriftClasses.Levels)],
                SlopeMean = [-0.01, -0.01],
                SlopeDeviation = [0.002, 0.002],
                Sigma = 0.005,
                ClusterDeviation = 0.001,
            }),
        ],
    };

    /// <summary>The fit counts for an engine model from now on.</summary>
    public static Task Knows(this WorkshopApp app, Guid engineModel) => app.Look(async db =>
    {
        db.DriftFits.Add(new DriftFitVersion
        {
            EngineModelId = engineModel,
            Version = 1 + db.DriftFits.Where(f => f.EngineModelId == engineModel).Select(f => f.Version).DefaultIfEmpty().Max(),
            ComputedAt = app.Clock.Now, Readings = Fit.Readings, LogLikelihood = Fit.LogLikelihood, Fit = Fit,
        });
        return await db.SaveChangesAsync();
    });

    /// <summary>Lets so much time pass that whatever is asked for is due, and sees to it.</summary>
    /// <returns>How many engine models were refitted.</returns>
    public static async Task<int> Refit(this WorkshopApp app)
    {
        app.Clock.Now += Duration.FromSeconds(new DriftWorkerOptions().QuietSeconds);
        return await app.Services.GetRequiredService<DriftWorker>().SeeToAll(CancellationToken.None);
    }
}
