using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>
/// What is expected of one lobe's clearance: a row that lists read by index, rewritten per engine on a new reading and per
/// engine model on a refit. Where nothing can be said, <see cref="Reason"/> says why and the figures are absent. Dates are by
/// the odometer's own rate; absent where it does not get there within twenty years.
/// </summary>
public sealed class ClearanceForecast
{
    public required Guid EngineId { get; init; }

    public required ValveKey Valve { get; init; }

    public required int Lobe { get; init; }

    public required Instant ComputedAt { get; init; }

    /// <summary>Readings of the present slope that entered; 0 where the engine model alone tells.</summary>
    public required int Readings { get; init; }

    /// <summary>Version of the engine model's fit that it rests on; absent where there is none.</summary>
    public int? FitVersion { get; init; }

    /// <summary>What the engine had done where the forecast begins.</summary>
    public Distance? PresentAt { get; init; }

    /// <summary>Mean of the true clearance there in mm, with the shim that is in now.</summary>
    public decimal? PresentMm { get; init; }

    /// <summary>Standard deviation of it.</summary>
    public decimal? PresentDeviationMm { get; init; }

    /// <summary>Drift: mm per 10,000 km with the shim's part taken out.</summary>
    public decimal? DriftMmPer10000Km { get; init; }

    /// <summary>Standard deviation of the drift.</summary>
    public decimal? DriftDeviation { get; init; }

    /// <summary>What the engine will have done when it has left its limits with a probability of 50 %; absent beyond reach.</summary>
    public Distance? LeavesLimitsAt { get; init; }

    /// <summary>The same for 10 %.</summary>
    public Distance? LeavesLimitsEarliestAt { get; init; }

    /// <summary>The same for 90 %.</summary>
    public Distance? LeavesLimitsLatestAt { get; init; }

    /// <summary>The date of <see cref="LeavesLimitsAt"/>.</summary>
    public LocalDate? LeavesLimitsOn { get; init; }

    /// <summary>The date of <see cref="LeavesLimitsEarliestAt"/>.</summary>
    public LocalDate? LeavesLimitsEarliestOn { get; init; }

    /// <summary>The date of <see cref="LeavesLimitsLatestAt"/>.</summary>
    public LocalDate? LeavesLimitsLatestOn { get; init; }

    /// <summary>The probability that it is outside its limits at the next check, by interval or drift.</summary>
    public double? OutsideAtNextCheck { get; init; }

    public string? Reason { get; init; }
}
