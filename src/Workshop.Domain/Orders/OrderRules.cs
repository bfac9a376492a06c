using System.Globalization;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Orders;

/// <summary>What may be done with an order as it stands.</summary>
public static class OrderRules
{
    /// <summary>Only a draft is changed or placed.</summary>
    public static Problem? RefuseChange(PurchaseOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return order.State == PurchaseOrderState.Draft ? null : Problem.Conflict("order-not-draft",
            $"Order {order.Number} is {order.State.Spoken()}; only a draft is changed or placed.");
    }

    /// <summary>Goods are taken in against an order that was placed.</summary>
    public static Problem? RefuseReceipt(PurchaseOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return order.State == PurchaseOrderState.Placed ? null : Problem.Conflict("order-not-placed",
            $"Order {order.Number} is {order.State.Spoken()}; goods come in against an order that is placed.");
    }

    /// <summary>More than was ordered asks once before it is taken in.</summary>
    /// <param name="field">Of the quantity, as the caller wrote it.</param>
    /// <param name="part">What came.</param>
    /// <param name="line">As ordered, with what came before.</param>
    /// <param name="quantity">That comes now.</param>
    public static FieldFault? AskIfOver(string field, Part part, PurchaseOrderLine line, decimal quantity)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(line);
        var over = line.Received + quantity - line.Quantity;
        return over <= 0 ? null : new FieldFault(field, string.Create(CultureInfo.InvariantCulture,
            $"{field} is {quantity}: of {part.Name} {part.Unit.Say(line.Quantity)} are ordered and {part.Unit.Say(line.Received)} came before; that is {part.Unit.Say(over)} more than ordered. Count again, and confirm that all of it is kept."));
    }

    /// <summary>A delivery is expected today or later.</summary>
    public static FieldFault? RefusePast(string field, LocalDate? expectedOn, LocalDate today) =>
        expectedOn is { } day && day < today
            ? new FieldFault(field, $"{field} is {OrderWords.Say(day)}, which is past; {OrderWords.Say(today)} or a later day is allowed.")
            : null;
}
