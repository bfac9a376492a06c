using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Stores;

public sealed class StoragePlace
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    /// <summary>What its label says to a scanner; short, capital letters and figures. The database gives the next free one where none is said.</summary>
    public string Code { get; set; } = null!;

    /// <summary>Where it comes on a walk through the stores; picking follows it.</summary>
    public int WalkOrder { get; set; }

    public bool Retired { get; set; }
}

/// <summary>What came in together of a part that does not keep for ever.</summary>
public sealed class StockLot
{
    public required Guid Id { get; init; }

    public required Guid PartId { get; init; }

    /// <summary>As the maker marks it on the package.</summary>
    public required string Code { get; init; }

    /// <summary>The last day on which it may be used unopened.</summary>
    public LocalDate? ExpiresOn { get; set; }

    public required LocalDate ReceivedOn { get; init; }
}

public enum MovementKind
{
    Received,
    Reserved,
    Released,
    Issued,
    Returned,
    Counted,
    Scrapped,

    /// <summary>A shim came out of an engine: it lies on the bench of the visit until it is fitted, put away or scrapped.</summary>
    CameOut,

    /// <summary>From one place to another: a row that takes it and a row that puts it.</summary>
    Moved,

    /// <summary>Two parts were found to be one: a row that takes it from the one and a row that puts it to the other.</summary>
    Merged,
}

/// <summary>Parts that nobody has used, or shims out of an engine.</summary>
public enum StockCondition
{
    New,
    Used,
}

/// <summary>
/// One change of stock; only ever added. The database moves the balance by trigger and refuses a balance below zero.
/// </summary>
public sealed class StockMovement
{
    public required Guid Id { get; init; }

    public required Guid PartId { get; init; }

    /// <summary>Where it is put or taken from; where the stock does not change, the box that the shim belongs to.</summary>
    public required Guid PlaceId { get; init; }

    /// <summary>Shims only: the measured thickness.</summary>
    public ShimThickness? Thickness { get; init; }

    /// <summary>Shims only, and of every shim: one movement moves one shim. Its row is made and moved by the database.</summary>
    public Guid? ShimId { get; init; }

    /// <summary>Shims only: what is stamped on it, where it is noted.</summary>
    public ShimThickness? Nominal { get; init; }

    /// <summary>Absent where the part is not kept by lot.</summary>
    public Guid? LotId { get; init; }

    /// <summary>Receipts only: what one unit cost, before tax, where it is known.</summary>
    public decimal? UnitCost { get; init; }

    /// <summary>Receipts only: the order that it belongs to.</summary>
    public Guid? OrderLineId { get; init; }

    /// <summary>Counts only.</summary>
    public Guid? CountId { get; init; }

    /// <summary>Shims only: the engine that it went into or came out of.</summary>
    public Guid? EngineId { get; init; }

    public ValveKey? Valve { get; init; }

    public ScrapReason? ScrapReason { get; init; }

    /// <summary>Why a count differed, or what was seen on what is scrapped.</summary>
    public Guid? ReasonRemarkId { get; init; }

    public StockCondition Condition { get; init; } = StockCondition.New;

    public required MovementKind Kind { get; init; }

    /// <summary>In the part's unit; negative when it leaves.</summary>
    public required decimal OnHandChange { get; init; }

    public required decimal ReservedChange { get; init; }

    public int? JobCardNumber { get; init; }

    public required Guid MovedBy { get; init; }

    public required Instant MovedAt { get; init; }
}

/// <summary>What is there, by part, place, thickness, condition and lot. Written by the database's trigger only.</summary>
public sealed class StockBalance
{
    public Guid Id { get; init; }

    public required Guid PartId { get; init; }

    public required Guid PlaceId { get; init; }

    public ShimThickness? Thickness { get; init; }

    public StockCondition Condition { get; init; }

    public Guid? LotId { get; init; }

    public decimal OnHand { get; init; }

    public decimal Reserved { get; init; }
}
