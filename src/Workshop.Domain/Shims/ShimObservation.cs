using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>
/// The shim of a valve at a visit: as found, the one that came out; as left, the one that went in. Only ever added.
/// </summary>
public sealed class ShimObservation
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public int? JobCardNumber { get; init; }

    public Guid? ImportId { get; init; }

    public required ValveKey Valve { get; init; }

    public required Stage Stage { get; init; }

    /// <summary>By micrometer; absent where nobody measured it, which cuts the leg.</summary>
    public ShimThickness? Thickness { get; init; }

    public Guid? MicrometerId { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required Instant MeasuredAt { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }
}
