using Workshop.Domain.Clearances;
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
}
