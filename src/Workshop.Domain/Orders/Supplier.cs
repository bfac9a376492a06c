namespace Workshop.Domain.Orders;

/// <summary>Who sells parts to the workshop.</summary>
public sealed class Supplier
{
    public required Guid Id { get; init; }

    public required string Name { get; set; }

    public string? Email { get; set; }

    /// <summary>The workshop's number with them.</summary>
    public string? CustomerNumber { get; set; }

    /// <summary>Days from an order to its delivery, where nothing is said of the part itself.</summary>
    public int DeliveryDays { get; set; }

    /// <summary>How far delivery days scatter: their standard deviation, in days.</summary>
    public double DeliveryDaysSd { get; set; }

    /// <summary>Below this net sum an order costs extra or is refused; absent where they take any.</summary>
    public decimal? SmallestOrder { get; set; }

    public bool Retired { get; set; }
}

/// <summary>A part as one supplier sells it.</summary>
public sealed class PartSupply
{
    public required Guid Id { get; init; }

    public required Guid PartId { get; init; }

    public required Guid SupplierId { get; init; }

    /// <summary>Under which they sell it.</summary>
    public string? SupplierCode { get; set; }

    /// <summary>How much is in one package of theirs, in the part's unit; only whole packages are sold.</summary>
    public decimal PackQuantity { get; set; } = 1;

    /// <summary>The least that they sell at once, in the part's unit.</summary>
    public decimal? SmallestQuantity { get; set; }

    /// <summary>Of one unit, before tax, in the workshop's currency.</summary>
    public decimal? UnitCost { get; set; }

    /// <summary>Absent where the supplier's own days hold.</summary>
    public int? DeliveryDays { get; set; }

    /// <summary>The one that proposals go to; one a part.</summary>
    public bool Preferred { get; set; }
}
