using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Finishing;

/// <summary>One thing that is looked at once more.</summary>
/// <param name="Name">"Oil level after the run", "Drain plug".</param>
/// <param name="CoolHours">Of the cooled engine: how long it stands first.</param>
/// <param name="Fastener">Of a torque.</param>
/// <param name="Last">What counts of it.</param>
/// <param name="TightenedSince">The fastener was tightened anew after that.</param>
public sealed record RecheckState(
    RecheckPoint Point, string Name, decimal? CoolHours, Fastener? Fastener, VisitRecheck? Last, bool TightenedSince)
{
    /// <summary>For programs and for the keys of forms: "cooled", "oilAfterRun", or the fastener's code.</summary>
    public string Key => Fastener?.Code ?? (Point == RecheckPoint.Cooled ? "cooled" : "oilAfterRun");

    /// <summary>Looked at since, and in order.</summary>
    public bool IsGood => Last is { InOrder: true } && !TightenedSince;
}

/// <summary>
/// What a visit looks at once more: the cooled engine, oil after the run, fasteners that settle. What concerns a camshaft's drive
/// is asked for by the drive that was opened, and no second time here.
/// </summary>
public static class Rechecks
{
    /// <summary>What is asked for, and what somebody looked at unasked; in the order in which it is done.</summary>
    public static IReadOnlyList<RecheckState> Of(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var asked = AskedChecks.Find(facts, VisitCheckKind.Recheck);
        var points = new List<RecheckState>();
        if (Last(facts, RecheckPoint.OilAfterRun) is var oil && (oil is not null || asked?.Stated?.OilAfterRun == true))
        {
            points.Add(new(RecheckPoint.OilAfterRun, "Oil level after the run", null, null, oil, false));
        }

        foreach (var line in facts.ToBeTight)
        {
            var last = Attempts.Last(facts.Finished.Rechecks.Where(r => r.Point == RecheckPoint.Torque && r.FastenerCode == line.Fastener.Code));
            var again = asked?.Stated?.FastenersAgain.Contains(line.Fastener.Code) == true;
            if (again || last is not null)
            {
                points.Add(new(RecheckPoint.Torque, line.Fastener.Name, null, line.Fastener, last, again && line.Tick.Last?.TickedAt > last?.RecheckedAt));
            }
        }

        if (Last(facts, RecheckPoint.Cooled) is var cooled && (cooled is not null || asked?.Cooled is not null))
        {
            points.Add(new(RecheckPoint.Cooled, "The cooled engine", asked?.Cooled?.CoolHours, null, cooled, false));
        }

        return points;
    }

    /// <summary>When the engine may be looked at as cooled, counted from its last stop.</summary>
    public static Instant CooledFrom(Instant engineStoppedAt, decimal coolHours) =>
        engineStoppedAt + Duration.FromSeconds((long)(coolHours * NodaConstants.SecondsPerHour));

    private static VisitRecheck? Last(SignOffFacts facts, RecheckPoint point) =>
        Attempts.Last(facts.Finished.Rechecks.Where(r => r.Point == point));
}
