using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Drift;

/// <summary>
/// The rows from which the legs of an engine are built, superseded ones included, in any order.
/// </summary>
/// <param name="DistanceAt">What the engine had done at each odometer reading that a row names, by the reading's id.</param>
public sealed record EngineHistory(
    IReadOnlyList<ClearanceReading> Readings,
    IReadOnlyList<ShimObservation> Shims,
    IReadOnlyList<ValveEvent> Events,
    IReadOnlyList<PartChange> PartChanges,
    IReadOnlyDictionary<Guid, Distance> DistanceAt)
{
    /// <summary>
    /// Where the maker wants the first valve clearance check. A valve first read no later than a quarter past it is taken as
    /// never opened since new: nobody had a reason to (common practice, no source). Absent where the maker states none; then
    /// every first leg is first seen.
    /// </summary>
    public Distance? FirstCheckDue { get; init; }

    /// <summary>Visits that a person left out of the fits.</summary>
    public LeftOutVisits LeftOut { get; init; } = LeftOutVisits.None;

    /// <summary>Clearances aimed at on a card, in mm, where they were others than those of the version in force now.</summary>
    public IReadOnlyDictionary<(int Card, LobeKey Lobe), decimal> Aims { get; init; } =
        new Dictionary<(int Card, LobeKey Lobe), decimal>();
}

/// <summary>
/// Visits whose readings a person has left out, because they disagree with all others and the cause is known or plain: by job
/// card, or by odometer reading where there was no card.
/// </summary>
public sealed record LeftOutVisits(IReadOnlySet<int> Cards, IReadOnlySet<Guid> OdometerReadings)
{
    /// <summary>Every visit counts.</summary>
    public static readonly LeftOutVisits None = new(new HashSet<int>(), new HashSet<Guid>());

    /// <summary>Whether a reading belongs to one of them.</summary>
    public bool Contains(ClearanceReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.JobCardNumber is { } card ? Cards.Contains(card) : OdometerReadings.Contains(reading.OdometerReadingId);
    }
}
