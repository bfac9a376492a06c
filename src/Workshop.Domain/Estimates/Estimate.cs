using NodaTime;

namespace Workshop.Domain.Estimates;

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

    /// <summary>Of the lines that are charged in any case.</summary>
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

    /// <summary>Typed by a person: carriage, work that the engine model does not list.</summary>
    Other,
}

/// <summary>When a line is charged.</summary>
public enum EstimateCharge
{
    /// <summary>In any case; of an option, whenever that is done.</summary>
    Always,

    /// <summary>A part that lies ready: charged only when it is used.</summary>
    IfUsed,
}

/// <summary>What a quantity counts.</summary>
public enum EstimateUnit
{
    /// <summary>Priced by the hour.</summary>
    Minute,
    Piece,

    /// <summary>Priced by the litre.</summary>
    Millilitre,
}

/// <summary>A line as it was put to the owner. Only ever added.</summary>
public sealed class EstimateLine
{
    public required Guid EstimateId { get; init; }

    /// <summary>From 1 on.</summary>
    public required int Place { get; init; }

    /// <summary>Where it comes from, by which later estimates are compared: "item:oil-service", "access:tank", "part:R-14"; typed lines "other:1".</summary>
    public required string Source { get; init; }

    public required EstimateLineKind Kind { get; init; }

    public required EstimateCharge Charge { get; init; }

    /// <summary>The possible service item, by code, with which alone it is done; absent of what is done in any case.</summary>
    public string? Option { get; init; }

    public required string Text { get; init; }

    public string? PartCode { get; init; }

    public required decimal Quantity { get; init; }

    public required EstimateUnit Unit { get; init; }

    /// <summary>Of one hour, piece or litre, before tax.</summary>
    public required decimal UnitPrice { get; init; }

    /// <summary>What was proposed, where a person put another price; absent where nothing was proposed.</summary>
    public decimal? ProposedUnitPrice { get; init; }

    /// <summary>Why the price was changed.</summary>
    public Guid? ReasonRemarkId { get; init; }

    /// <summary>What one hour, piece or litre costs the workshop, where that is known; not shown to the owner.</summary>
    public decimal? UnitCost { get; init; }

    public required string TaxCode { get; init; }

    public required decimal TaxPercent { get; init; }

    public required decimal Net { get; init; }

    /// <summary>A person took it out of the estimate: not shown to the owner, not charged.</summary>
    public bool Dropped { get; init; }
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

/// <summary>What the owner said to an estimate, or to a finding without one. Only ever added; the last holds.</summary>
public sealed class EstimateAnswer
{
    public required Guid Id { get; init; }

    /// <summary>Absent where a finding was declined before it had a price.</summary>
    public Guid? EstimateId { get; init; }

    public Guid? FindingId { get; init; }

    public required EstimateDecision Decision { get; init; }

    /// <summary>Who spoke, a person of the books; absent where somebody else did, whom the remark names.</summary>
    public Guid? PersonId { get; init; }

    public required AnswerWay Way { get; init; }

    public required Instant SaidAt { get; init; }

    /// <summary>Of a finding that is not safe and stays so: whoever spoke was told not to ride like this.</summary>
    public bool ToldOfDanger { get; init; }

    public Guid? RemarkId { get; init; }

    public required Guid RecordedBy { get; init; }

    public required Instant RecordedAt { get; init; }
}
