using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Records;

/// <summary>One valve's forecast, in the motorcycle's distance.</summary>
/// <param name="Earliest">It has left its limits by then with a probability of 10 %; absent beyond reach.</param>
/// <param name="Latest">The same for 90 %.</param>
/// <param name="WhyNot">Why nothing is foretold; the figures are absent then.</param>
public sealed record ValveOutlookAhead(LobeKey Lobe, Distance? Earliest, Distance? Latest, string? WhyNot)
{
    /// <summary>A row of what is expected, in the motorcycle's distance.</summary>
    /// <param name="row">In the engine's distance.</param>
    /// <param name="toMotorcycle">The way from one to the other, as the engine is fitted.</param>
    public static ValveOutlookAhead Of(ClearanceForecast row, Func<Distance, Distance> toMotorcycle)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(toMotorcycle);
        return new ValveOutlookAhead(
            new LobeKey(row.Valve, row.Lobe), row.LeavesLimitsEarliestAt is { } e ? toMotorcycle(e) : null,
            row.LeavesLimitsLatestAt is { } l ? toMotorcycle(l) : null, row.Reason);
    }
}

/// <summary>What is expected of the valves, as it is said to the owner.</summary>
public static class ValveForecastWords
{
    private const decimal RoundedTo = 1000;
    private const string NotYet = "No forecast yet";

    /// <summary>
    /// A sentence for each side that the engine has: "The exhaust valves will probably need shims between 31,000 and 42,000 km." It is
    /// about the first valve of the side that leaves its limits: the span begins where one of them has with a probability of 10 %, and
    /// ends where one of them has with 90 %. Rounded to the thousand, the beginning down and the end up, as an estimate claims no more.
    /// </summary>
    /// <param name="valves">All of the engine.</param>
    /// <param name="now">What the motorcycle has done.</param>
    /// <param name="unit">Of its odometer.</param>
    /// <param name="byShim">The valves are set by shims, not by screws.</param>
    public static IReadOnlyList<RecordedForecast> Say(IReadOnlyList<ValveOutlookAhead> valves, Distance now, OdometerUnit unit, bool byShim)
    {
        ArgumentNullException.ThrowIfNull(valves);
        return [.. valves.GroupBy(v => v.Lobe.Valve.Side).OrderBy(g => g.Key).Select(side => Of(side.Key, [.. side], now, unit, byShim ? "need shims" : "need to be set"))];
    }

    private static RecordedForecast Of(Side side, IReadOnlyList<ValveOutlookAhead> valves, Distance now, OdometerUnit unit, string need)
    {
        var known = valves.Where(v => v.WhyNot is null).ToList();
        var unknown = valves.Where(v => v.WhyNot is not null).OrderBy(v => v.Lobe).ToList();
        if (known.Count == 0)
        {
            return new RecordedForecast(side, null, null, false, NotTold($"the {side.Spoken()} valves", unknown));
        }

        var (from, to) = (known.Min(v => v.Earliest), known.Min(v => v.Latest));
        var but = unknown.Count == 0 ? "" : $" {NotTold(string.Join("; ", unknown.Select(v => v.Lobe.Spoken)), unknown)}";
        return new RecordedForecast(side, from, to, true, $"The {side.Spoken()} valves {Ahead(from, to, now, unit, need)}.{but}");
    }

    private static string Ahead(Distance? from, Distance? to, Distance now, OdometerUnit unit, string need) => (from, to) switch
    {
        (null, _) => $"will probably not {need} within {DueWords.InUnit(Reach, unit)} of this visit",
        (_, { } last) when last <= now => $"probably {need} now",
        ({ } first, { } last) when first <= now => $"may {need} at any time, probably before {Far(last, unit, up: true)}",
        ({ } first, { } last) => $"will probably {need} between {Figure(first, unit, up: false)} and {Far(last, unit, up: true)}",
        ({ } first, null) when first <= now => $"may {need} at any time; it cannot be told until when",
        ({ } first, null) => $"will probably not {need} before {Far(first, unit, up: false)}",
    };

    private static Distance Reach => EngineForecast.Reach;

    /// <summary>"Yet" is of the day of the record, which is read years later: said as what was known then.</summary>
    private static string NotTold(string of, IReadOnlyCollection<ValveOutlookAhead> valves) => valves.All(v => v.WhyNot!.StartsWith(NotYet, StringComparison.Ordinal))
        ? $"Of {of} nothing was foretold at this visit: how the clearances of this engine model change with distance had not been worked out from its readings by then. The intervals above hold."
        : $"Of {of} there is no forecast, because {Reasons(valves)}";

    /// <summary>What stands in a reason after "No forecast: ", each once.</summary>
    private static string Reasons(IEnumerable<ValveOutlookAhead> valves) => string.Join(" And ", valves.Select(v => After(v.WhyNot!)).Distinct(StringComparer.Ordinal));

    private static string After(string reason)
    {
        var colon = reason.IndexOf(": ", StringComparison.Ordinal);
        return reason.StartsWith("No forecast", StringComparison.Ordinal) && colon > 0 ? reason[(colon + 2)..] : reason;
    }

    private static string Far(Distance distance, OdometerUnit unit, bool up) => $"{Figure(distance, unit, up)} {unit.Symbol()}";

    private static string Figure(Distance distance, OdometerUnit unit, bool up)
    {
        var count = unit == OdometerUnit.Miles ? distance.Miles : distance.Kilometres;
        return FormattableString.Invariant($"{RoundedTo * (up ? decimal.Ceiling(count / RoundedTo) : decimal.Floor(count / RoundedTo)):#,0}");
    }
}
