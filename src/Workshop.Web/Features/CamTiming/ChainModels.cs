using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.CamTiming;

/// <summary>How the chains of an engine model wear, worked out when it is asked for: a fleet's chains are few beside its valves.</summary>
internal static class ChainModels
{
    /// <summary>The fit of a drive and measure; nothing where too little was read.</summary>
    public static Func<CamDrive, WearMeasure, ChainWearFit?> Of(IReadOnlyList<ChainsOfEngine> engines, CancellationToken ct)
    {
        var known = new Dictionary<(string, WearMeasure), ChainWearFit?>();
        return (drive, measure) =>
        {
            if (!known.TryGetValue((drive.Code, measure), out var fit))
            {
                var lives = engines.SelectMany(e => e.Lives(drive, measure)).ToArray();
                var found = ChainWear.Fit(lives, measure, ct);
                known[(drive.Code, measure)] = fit = found.HasValue ? found.Value : null;
            }

            return fit;
        };
    }
}
