using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>
/// What is expected of an engine's valves together: a row beside its <see cref="ClearanceForecast"/>s, rewritten with them, by
/// which lists are ordered and the check falls due.
/// </summary>
public sealed class EngineOutlook
{
    public required Guid EngineId { get; init; }

    public required Instant ComputedAt { get; init; }

    public int? FitVersion { get; init; }

    /// <summary>
    /// What the engine will have done at its next valve clearance check, by interval or drift as Due says it when both are written: the
    /// check of which the probabilities are stated. Absent where there is none.
    /// </summary>
    public Distance? NextCheckAt { get; init; }

    /// <summary>The day of it.</summary>
    public LocalDate? NextCheckOn { get; init; }

    /// <summary>The probability that any valve is outside its limits then.</summary>
    public double? OutsideAtNextCheck { get; init; }

    /// <summary>The same of the intake valves.</summary>
    public double? IntakeOutsideAtNextCheck { get; init; }

    /// <summary>The same of the exhaust valves.</summary>
    public double? ExhaustOutsideAtNextCheck { get; init; }

    /// <summary>Where the probability that any valve has left its limits passes the manager's threshold.</summary>
    public Distance? PassesThresholdAt { get; init; }

    /// <summary>The day of it.</summary>
    public LocalDate? PassesThresholdOn { get; init; }

    /// <summary>The earliest day on which a valve has left its limits with a probability of 50 %.</summary>
    public LocalDate? SoonestOn { get; init; }

    /// <summary>The same of the intake valves.</summary>
    public LocalDate? SoonestIntakeOn { get; init; }

    /// <summary>The same of the exhaust valves.</summary>
    public LocalDate? SoonestExhaustOn { get; init; }
}
