using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>
/// A person has sent the order to the supplier, by whatever way: each line is a delivery that is expected, on the day that the supplier
/// said or by its usual days.
/// </summary>
public static class PlaceOrder
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public int Number { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>For all lines, as the supplier said; by the usual days where it is not given.</summary>
        public LocalDate? ExpectedOn { get; init; }
    }

    /// <param name="FirstExpectedOn">The first of its deliveries.</param>
    public sealed record Answer(int Number, int Lines, LocalDate FirstExpectedOn, LocalDate LastExpectedOn, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OrderLines.Lock(db, request.Number, ct)).TryGet(out var order, out var problem))
        {
            return problem;
        }

        var now = clock.GetCurrentInstant();
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
        var lines = await db.PurchaseOrderLines.Where(l => l.OrderNumber == order.Number).ToListAsync(ct);
        if (OrderRules.RefuseChange(order) is { } refused)
        {
            return refused;
        }

        if (OrderRules.RefusePast("expectedOn", request.ExpectedOn, today) is { } past)
        {
            return Problem.Impossible("past", [past]);
        }

        if (lines.Count == 0)
        {
            return Problem.Conflict("nothing-ordered", $"Order {order.Number} has no line; there is nothing to order.");
        }

        var supplier = await db.Suppliers.AsNoTracking().SingleAsync(s => s.Id == order.SupplierId, ct);
        var ids = lines.ConvertAll(l => l.PartId);
        var supplies = await db.PartSupplies.AsNoTracking().Where(s => s.SupplierId == supplier.Id && ids.Contains(s.PartId)).ToDictionaryAsync(s => s.PartId, ct);
        foreach (var line in lines)
        {
            var days = supplies.TryGetValue(line.PartId, out var supply) ? OrderingOutlook.DaysOf(supply, supplier) : supplier.DeliveryDays;
            line.ExpectedOn = request.ExpectedOn ?? today.PlusDays(days);
            db.ExpectedDeliveries.Add(new ExpectedDelivery
            {
                Id = NewId.At(now), PartId = line.PartId, Thickness = line.Thickness, Quantity = line.Quantity, ExpectedOn = line.ExpectedOn.Value,
                EnteredBy = actor.PersonId, EnteredAt = now, OrderLineId = line.Id,
            });
        }

        (order.State, order.PlacedBy, order.PlacedAt) = (PurchaseOrderState.Placed, actor.PersonId, now);
        return new Answer(
            order.Number, lines.Count, lines.Min(l => l.ExpectedOn)!.Value, lines.Max(l => l.ExpectedOn)!.Value,
            await Versions.Save(db, order, request.RowVersion!.Value, ct));
    }
}
