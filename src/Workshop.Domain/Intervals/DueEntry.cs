using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Intervals;

/// <summary>Of one motorcycle, all that decides what is due.</summary>
/// <param name="Specification">The current version of its engine model.</param>
/// <param name="Facts">What the motorcycle is.</param>
/// <param name="EngineStart">Where the engine that is fitted now stood at zero, in the motorcycle's distance.</param>
/// <param name="Track">The odometer's readings.</param>
/// <param name="Rate">How far it is ridden in a day.</param>
/// <param name="LastDone">By code of service item, what contains it included.</param>
/// <param name="Together">Which items fall together.</param>
public sealed record DueSubject(
    EngineSpecification Specification,
    MotorcycleFacts Facts,
    OdometerPoint EngineStart,
    OdometerTrack Track,
    RidingRate Rate,
    IReadOnlyDictionary<string, OdometerPoint> LastDone,
    TogetherWithin Together)
{
    /// <summary>Where the drift of its valves wants them checked, in the motorcycle's distance, whatever the interval says.</summary>
    public Distance? DriftWantsAt { get; init; }

    /// <summary>By code of service item, those that count.</summary>
    public IReadOnlyDictionary<string, PutOff> PutOffs { get; init; } = new Dictionary<string, PutOff>();

    /// <summary>
    /// When its valves are checked next, by interval or by drift, whichever first: the one rule of what the next check is. Nothing where
    /// the maker wants none.
    /// </summary>
    public DueNext? NextCheck() => Specification.ServiceItems.Where(IsValveCheck).Select(Next).OfType<DueNext>().MinBy(n => n.ExpectedOn);

    /// <summary>Whether an item is a check of the valves' clearances that comes round.</summary>
    public static bool IsValveCheck(ServiceItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return item is { Kind: ServiceItemKind.ValveClearanceCheck, Interval: not null };
    }

    /// <summary>When one item is due next, by what counts for this motorcycle; nothing where it never is.</summary>
    /// <param name="item">Of its engine model.</param>
    public DueNext? Next(ServiceItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return item.Interval is { } interval && item.AppliesTo(Facts)
            ? NextDue.Of(
                interval.For(Facts), EngineStart, DoneLast(item.Code), Track, Rate,
                item.Kind == ServiceItemKind.ValveClearanceCheck ? DriftWantsAt : null, Together)
            : null;
    }

    /// <summary>When an item was last done; nothing when never.</summary>
    public OdometerPoint? DoneLast(string code) => LastDone.TryGetValue(code, out var done) ? done : null;
}

/// <summary>One item that is due some day.</summary>
/// <param name="Item">What is done.</param>
/// <param name="Next">When.</param>
/// <param name="LastDone">When it was done last; nothing when never.</param>
public sealed record DueEntry(ServiceItem Item, DueNext Next, OdometerPoint? LastDone)
{
    /// <summary>The item that contains this one and comes before it would be late: doing that one does it.</summary>
    public string? IncludedIn { get; init; }

    /// <summary>It was put off, and not done since.</summary>
    public PutOff? PutOff { get; init; }

    /// <summary>The day on which it comes up: when it is expected, or until when it was put off.</summary>
    public LocalDate ComesOn => PutOff?.Until is { } until ? LocalDate.Max(until, Next.ExpectedOn) : Next.ExpectedOn;

    /// <summary>
    /// What a motorcycle is due for, in order of the specification: what applies to it, each at its next occurrence, with those
    /// that a bigger one swallows.
    /// </summary>
    public static IReadOnlyList<DueEntry> Of(DueSubject subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var entries = subject.Specification.ServiceItems
            .Select(item => (Item: item, Next: subject.Next(item)))
            .Where(due => due.Next is not null)
            .Select(due => new DueEntry(due.Item, due.Next!, subject.DoneLast(due.Item.Code))
            {
                PutOff = subject.PutOffs.GetValueOrDefault(due.Item.Code),
            })
            .ToArray();
        var inclusion = Inclusion.Of(subject.Specification.ServiceItems);
        return [.. entries.Select(small => small with
        {
            IncludedIn = entries
                .Where(big => inclusion.Contains(big.Item.Code, small.Item.Code) && Swallows(big.Next, small.Next, subject.Together))
                .OrderBy(big => big.Next.ExpectedOn).ThenBy(big => big.Item.Code, StringComparer.Ordinal)
                .FirstOrDefault()?.Item.Code,
        })];
    }

    /// <summary>
    /// Whether an item may wait for a bigger one that contains it: it is not due before that one, or it would be late by no more
    /// than what falls together, in distance and in days alike.
    /// </summary>
    public static bool Swallows(DueNext big, DueNext small, TogetherWithin within)
    {
        ArgumentNullException.ThrowIfNull(big);
        ArgumentNullException.ThrowIfNull(small);
        ArgumentNullException.ThrowIfNull(within);
        if (big.ExpectedOn <= small.ExpectedOn)
        {
            return true;
        }

        var days = Period.DaysBetween(small.On ?? small.ExpectedOn, big.ExpectedOn);
        return small.At is { } at && big.At is { } later
            ? later - at <= within.Far && (small.On is null || days <= within.Days)
            : days <= within.Days;
    }
}

/// <summary>When items were last done, those included that a bigger one contains.</summary>
public static class LastDone
{
    /// <summary>By code of service item, the latest of its own and of what contains it.</summary>
    /// <param name="done">What was done, in any order.</param>
    /// <param name="items">Of the engine model as it is now.</param>
    public static IReadOnlyDictionary<string, OdometerPoint> Of(
        IEnumerable<(string Code, OdometerPoint Point)> done, IReadOnlyList<ServiceItem> items)
    {
        var inclusion = Inclusion.Of(items);
        return done.SelectMany(d => inclusion.DoneWith(d.Code).Select(code => (Code: code, d.Point)))
            .GroupBy(d => d.Code)
            .ToDictionary(of => of.Key, of => of.Select(d => d.Point).OrderBy(p => p.On).ThenBy(p => p.Distance).Last(), StringComparer.Ordinal);
    }
}
