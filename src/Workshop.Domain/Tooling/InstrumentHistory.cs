using NodaTime;

namespace Workshop.Domain.Tooling;

/// <summary>A calibration as its certificate states it. Only ever added; the latest by day holds.</summary>
public sealed class Calibration
{
    public required Guid Id { get; init; }

    public required Guid InstrumentId { get; init; }

    public required LocalDate DoneOn { get; init; }

    public LocalDate? DueOn { get; init; }

    /// <summary>Its number.</summary>
    public required string Certificate { get; init; }

    /// <summary>Who calibrated it.</summary>
    public required string Laboratory { get; init; }

    /// <summary>As <see cref="Instrument.Uncertainty"/>.</summary>
    public decimal? Uncertainty { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }
}

public enum InstrumentEventKind
{
    /// <summary>It fell: not offered until it is calibrated or released.</summary>
    Dropped,

    /// <summary>Torqued beyond its rated maximum, or used to loosen; likewise.</summary>
    Overloaded,

    /// <summary>The manager lets it be used in spite of what stands against it, with a reason, until the next calibration or a day.</summary>
    Released,

    SentForCalibration,
    Withdrawn,
    BackInUse,
    HandedTo,
}

/// <summary>What happened to an instrument. Only ever added.</summary>
public sealed class InstrumentEvent
{
    public required Guid Id { get; init; }

    public required Guid InstrumentId { get; init; }

    public required InstrumentEventKind Kind { get; init; }

    public Guid? RemarkId { get; init; }

    /// <summary>Who has it from now on, where it was handed to somebody; nobody where it was put back into its place.</summary>
    public Guid? HolderId { get; init; }

    /// <summary>The last day of a release; absent: until the next calibration.</summary>
    public LocalDate? Until { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant At { get; init; }
}
