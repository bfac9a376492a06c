using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Stores;

public enum PartKind
{
    General,
    SealingRing,
    ORing,
    Gasket,
    Fluid,
    Sealant,
    Shim,
    FastenerUsedOnce,
}

public enum PartUnit
{
    Piece,
    Millilitre,
}

/// <summary>
/// What the stores keep. Shims are one part per diameter and form; movements and balances tell thicknesses apart.
/// </summary>
public sealed class Part
{
    public required Guid Id { get; init; }

    public required string Code { get; init; }

    public required string Name { get; set; }

    public required PartKind Kind { get; init; }

    public required PartUnit Unit { get; init; }

    public decimal? InnerDiameterMm { get; init; }

    public decimal? OuterDiameterMm { get; init; }

    /// <summary>Thickness of a sealing ring, section of an O-ring.</summary>
    public decimal? SectionMm { get; init; }

    public string? Material { get; init; }

    public bool Discontinued { get; set; }

    /// <summary>Days from an order to its delivery, where the workshop knows them.</summary>
    public int? DeliveryDays { get; set; }
}

public sealed class StoragePlace
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }
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

/// <summary>What is there, by part, place, thickness and condition. Written by the database's trigger only.</summary>
public sealed class StockBalance
{
    public Guid Id { get; init; }

    public required Guid PartId { get; init; }

    public required Guid PlaceId { get; init; }

    public ShimThickness? Thickness { get; init; }

    public StockCondition Condition { get; init; }

    public decimal OnHand { get; init; }

    public decimal Reserved { get; init; }
}
