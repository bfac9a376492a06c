using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Drift;

/// <summary>Valves that were read outside their limits and left so: somebody is to come back for them.</summary>
public static class LeftOutside
{
    /// <summary>
    /// The last reading of a lobe, where that is outside the limits by its own bracket and nothing was done to the lobe since; nothing
    /// where it is inside, or may be.
    /// </summary>
    /// <param name="history">What was read of the lobe.</param>
    /// <param name="limits">The limits that hold now.</param>
    public static ClearanceReading? LastRead(LobeHistory history, ClearanceLimits limits)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(limits);
        return history is { CutSinceLastReading: null, Legs: [.., { Readings: [.., var last] }] }
            && last.ShimPartMm == history.ShimPartNowMm
            && ClearanceVerdict.Of(last.Reading.Bracket, limits).IsOut
                ? last.Reading
                : null;
    }

    /// <summary>The latest of such readings of an engine; nothing where no valve was left outside.</summary>
    public static ClearanceReading? LatestOf(DriftEngine engine)
    {
        ArgumentNullException.ThrowIfNull(engine);
        return engine.Lobes.Select(l => LastRead(l, engine.LimitsOf(l.Lobe))).OfType<ClearanceReading>().MaxBy(r => r.MeasuredAt);
    }
}
