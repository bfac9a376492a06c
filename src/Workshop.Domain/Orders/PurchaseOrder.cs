using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Orders;

public enum PurchaseOrderState
{
    /// <summary>Lines may still be changed.</summary>
    Draft,

    /// <summary>With the supplier; its lines are expected.</summary>
    Placed,

    /// <summary>All of it came or was given up.</summary>
    Closed,
}

public sealed class PurchaseOrder
{
    public int Number { get; init; }

    public required Guid SupplierId { get; init; }

    public PurchaseOrderState State { get; set; } = PurchaseOrderState.Draft;

    public required Guid MadeBy { get; init; }

    public required Instant MadeAt { get; init; }

    public Guid? PlacedBy { get; set; }

    public Instant? PlacedAt { get; set; }

    public Guid? RemarkId { get; set; }
}

public sealed class PurchaseOrderLine
{
    public required Guid Id { get; init; }

    public required int OrderNumber { get; init; }

    public required Guid PartId { get; init; }

    /// <summary>Shims only.</summary>
    public ShimThickness? Thickness { get; init; }

    /// <summary>In the part's unit, whole packages of the supplier's.</summary>
    public required decimal Quantity { get; set; }

    public decimal? UnitCost { get; set; }

    public LocalDate? ExpectedOn { get; set; }

    /// <summary>What came so far.</summary>
    public decimal Received { get; set; }

    /// <summary>Why it was proposed, as it was said then.</summary>
    public string? Reason { get; set; }
}
