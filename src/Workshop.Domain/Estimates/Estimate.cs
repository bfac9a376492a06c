using NodaTime;

namespace Workshop.Domain.Estimates;

/// <summary>A tax rate of the workshop's country; the latest by day holds.</summary>
public sealed class TaxRate
{
    public required string Code { get; init; }

    public required LocalDate ValidFrom { get; init; }

    public required string Name { get; set; }

    /// <summary>0 to 100.</summary>
    public required decimal Percent { get; set; }
}

/// <summary>
/// What a visit, or a piece of work found later, will cost, as it was put to the owner. Never changed: another is made, and the
/// owner answers one of them.
/// </summary>
public sealed class Estimate
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>From 1 on each card.</summary>
    public required int Version { get; init; }

    /// <summary>The finding whose work it is; absent for the visit itself.</summary>
    public Guid? FindingId { get; init; }

    /// <summary>Three letters of ISO 4217.</summary>
    public required string Currency { get; init; }

    public required decimal Net { get; init; }

    public required decimal Tax { get; init; }

    public required decimal Gross { get; init; }

    /// <summary>The last day on which the figures hold.</summary>
    public LocalDate? ValidUntil { get; init; }

    public required Guid MadeBy { get; init; }

    public required Instant MadeAt { get; init; }
}

public enum EstimateLineKind
{
    Labour,
    Part,

    /// <summary>A part that lies ready: charged only when it is used.</summary>
    PartIfUsed,

    Other,
}

public sealed class EstimateLine
{
    public required Guid EstimateId { get; init; }

    /// <summary>From 1 on.</summary>
    public required int Place { get; init; }

    public required EstimateLineKind Kind { get; init; }

    public required string Text { get; init; }

    public string? PartCode { get; init; }

    /// <summary>Hours of labour; the part's own unit of parts.</summary>
    public required decimal Quantity { get; init; }

    /// <summary>Of one, before tax.</summary>
    public required decimal UnitPrice { get; init; }

    /// <summary>What it costs the workshop, where that is known; not shown to the owner.</summary>
    public decimal? UnitCost { get; init; }

    public required decimal TaxPercent { get; init; }

    public required decimal Net { get; init; }
}

public enum EstimateDecision
{
    Agreed,
    Declined,
}

/// <summary>How the owner said it.</summary>
public enum AnswerWay
{
    InPerson,
    Telephone,
    Email,
    Letter,
}

/// <summary>What the owner said to an estimate. Only ever added; the last holds.</summary>
public sealed class EstimateAnswer
{
    public required Guid Id { get; init; }

    public required Guid EstimateId { get; init; }

    public required EstimateDecision Decision { get; init; }

    /// <summary>Who spoke: a person of the books, or nobody that is in them.</summary>
    public Guid? PersonId { get; init; }

    public required AnswerWay Way { get; init; }

    public required Instant SaidAt { get; init; }

    public Guid? RemarkId { get; init; }

    public required Guid RecordedBy { get; init; }

    public required Instant RecordedAt { get; init; }
}
