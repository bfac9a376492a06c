using Workshop.Domain.EngineModels;

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
    SparkPlug,
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

    public decimal? InnerDiameterMm { get; set; }

    public decimal? OuterDiameterMm { get; set; }

    /// <summary>Thickness of a sealing ring, section of an O-ring.</summary>
    public decimal? SectionMm { get; set; }

    public string? Material { get; set; }

    /// <summary>A form of its standard: "A" of DIN 7603 is flat and solid, "C" is filled.</summary>
    public string? Form { get; set; }

    /// <summary>By its standard: "AS568-014", "DIN 7603 A 14x18x1.5", a plug's number, an oil's grade "10W-40".</summary>
    public string? Designation { get; set; }

    /// <summary>Rubber only: IRHD or Shore A, 30 to 95.</summary>
    public int? Hardness { get; set; }

    /// <summary>Fitted once and never again, as a crush ring is, unless the engine maker says so (<see cref="Seal"/>).</summary>
    public bool FittedOnce { get; set; }

    public bool Discontinued { get; set; }

    /// <summary>What takes its place since it was discontinued.</summary>
    public Guid? ReplacedById { get; set; }

    /// <summary>The part that this one was found to be; its code goes on to mean that one, and nothing lies under its own.</summary>
    public Guid? MergedIntoId { get; set; }

    /// <summary>Days from an order to its delivery, where the workshop knows them and no supplier says so.</summary>
    public int? DeliveryDays { get; set; }

    /// <summary>How much is in one package, in the part's unit: 1000 of an oil that comes in bottles of a litre.</summary>
    public decimal? PackQuantity { get; set; }

    /// <summary>Unopened, from the day of manufacture or receipt.</summary>
    public int? ShelfLifeMonths { get; set; }

    /// <summary>
    /// What one piece sells for, or one litre of what is counted in millilitres, before tax, in the workshop's currency.
    /// </summary>
    public decimal? NetPrice { get; set; }

    /// <summary>Absent where the workshop's usual rate holds.</summary>
    public string? TaxRateCode { get; set; }

    /// <summary>Kept in stock and proposed for ordering; else ordered for a visit only.</summary>
    public bool Stocked { get; set; } = true;

    /// <summary>The share of lead times without a shortage that is wanted, 0.5 to 0.999; absent where the workshop's own holds.</summary>
    public double? ServiceLevel { get; set; }

    /// <summary>Set by hand, in the part's unit; absent where it is reckoned from the demand.</summary>
    public decimal? ReorderPoint { get; set; }
}

/// <summary>Another part that does the same work. Holds in both directions.</summary>
public sealed class PartAlternative
{
    public required Guid PartId { get; init; }

    public required Guid AlternativeId { get; init; }

    /// <summary>What is to be kept in mind: "aluminium instead of copper".</summary>
    public string? Note { get; set; }
}

/// <summary>What a scanner reads on a package or a label, beside the part's own code.</summary>
public sealed class PartScanCode
{
    public required string Code { get; init; }

    public required Guid PartId { get; init; }

    /// <summary>What one such package holds, in the part's unit.</summary>
    public decimal Quantity { get; set; } = 1;
}
