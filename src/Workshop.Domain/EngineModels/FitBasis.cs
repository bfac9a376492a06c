namespace Workshop.Domain.EngineModels;

/// <summary>What of a specification a fit of the drift rests on.</summary>
public static class FitBasis
{
    /// <summary>
    /// Whether readings would be judged otherwise: other limits, clearance aimed at, lever ratio, lobes or valve train, or a first
    /// check at another distance, from which a valve counts as never opened since new.
    /// </summary>
    public static bool Differs(EngineSpecification before, EngineSpecification after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return before.ValveTrain != after.ValveTrain
            || !before.Valves.OrderBy(v => v.Key).SequenceEqual(after.Valves.OrderBy(v => v.Key))
            || !Limits(before).SequenceEqual(Limits(after))
            || FirstCheck(before) != FirstCheck(after);
    }

    /// <summary>Whether forecasts would be others: by another fit, or because the next check comes round otherwise.</summary>
    public static bool ForecastsDiffer(EngineSpecification before, EngineSpecification after) =>
        Differs(before, after)
        || CheckOf(before)?.Interval != CheckOf(after)?.Interval
        || CheckOf(before)?.OnlyFor != CheckOf(after)?.OnlyFor;

    /// <summary>Who checked a limit changes nothing about it.</summary>
    private static IEnumerable<object> Limits(EngineSpecification specification) => specification.Limits
        .OrderBy(l => l.Side).ThenBy(l => l.Lobe)
        .Select(object (l) => (l.Side, l.Lobe, l.Lower, l.Upper, l.SetTo, l.LeverRatio));

    private static (Measures.Distance?, Measures.Distance?)? FirstCheck(EngineSpecification specification) =>
        CheckOf(specification)?.Interval is { } interval ? (interval.First, interval.Every) : null;

    private static ServiceItem? CheckOf(EngineSpecification specification) =>
        specification.ServiceItems.FirstOrDefault(i => i.Kind == ServiceItemKind.ValveClearanceCheck);
}
