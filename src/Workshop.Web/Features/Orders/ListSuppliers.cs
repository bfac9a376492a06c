using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Orders;

/// <summary>Who sells parts to the workshop, retired ones last.</summary>
public static class ListSuppliers
{
    public sealed record Request;

    /// <param name="Parts">How many parts it sells.</param>
    /// <param name="OpenOrders">Drafts and orders that are with it.</param>
    public sealed record Row(
        Guid Id, string Name, int DeliveryDays, double DeliveryDaysSd, decimal? SmallestOrder, bool Retired, int Parts, int OpenOrders);

    public sealed record Answer(string Currency, IReadOnlyList<Row> Suppliers);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        new Answer(
            await db.WorkshopProfiles.AsNoTracking().Select(p => p.Currency).SingleAsync(ct),
            await db.Suppliers.AsNoTracking().OrderBy(s => s.Retired).ThenBy(s => s.Name).Select(s => new Row(
                s.Id, s.Name, s.DeliveryDays, s.DeliveryDaysSd, s.SmallestOrder, s.Retired,
                db.PartSupplies.Count(p => p.SupplierId == s.Id),
                db.PurchaseOrders.Count(o => o.SupplierId == s.Id && o.State != PurchaseOrderState.Closed))).ToListAsync(ct));
}
