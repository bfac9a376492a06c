using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Stores;

/// <summary>Parts that are ordered and on their way. A visit whose kit is short can start once they are here.</summary>
public sealed class ExpectedDelivery
{
    public required Guid Id { get; init; }

    public required Guid PartId { get; init; }

    /// <summary>Shims only.</summary>
    public ShimThickness? Thickness { get; init; }

    /// <summary>In the part's own unit; above 0.</summary>
    public required decimal Quantity { get; set; }

    /// <summary>On the workshop's calendar; counted on from the opening of the next working day.</summary>
    public required LocalDate ExpectedOn { get; set; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    /// <summary>The order that it belongs to, where it was ordered here.</summary>
    public Guid? OrderLineId { get; init; }

    /// <summary>When it arrived or was given up; from then on it is not expected any more.</summary>
    public Instant? ClosedAt { get; set; }
}
