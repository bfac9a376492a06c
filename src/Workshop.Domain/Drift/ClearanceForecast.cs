using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>
/// What is expected of one lobe's clearance: a row that lists read by index, rewritten per engine on a new reading. Where
/// nothing can be said, <see cref="Reason"/> says why and the figures are absent.
/// </summary>
public sealed class ClearanceForecast
{
    public required Guid EngineId { get; init; }

    public required ValveKey Valve { get; init; }

    public required int Lobe { get; init; }

    public required Instant ComputedAt { get; init; }

    /// <summary>Readings that entered.</summary>
    public required int Readings { get; init; }

    /// <summary>Present clearance in mm, from the line.</summary>
    public decimal? PresentMm { get; init; }

    /// <summary>Drift: mm per 10,000 km with the shim's part taken out.</summary>
    public decimal? DriftMmPer10000Km { get; init; }

    /// <summary>Standard error of the drift.</summary>
    public decimal? DriftStandardError { get; init; }

    /// <summary>What the engine will have done when the line reaches a limit; absent where it does not.</summary>
    public Distance? LeavesLimitsAt { get; init; }

    /// <summary>The early end of the interval for it (95 %).</summary>
    public Distance? LeavesLimitsEarliestAt { get; init; }

    /// <summary>The date of <see cref="LeavesLimitsAt"/> by the odometer's rate.</summary>
    public LocalDate? LeavesLimitsOn { get; init; }

    public string? Reason { get; init; }
}
