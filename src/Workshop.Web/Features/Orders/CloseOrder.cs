using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Nothing more comes of an order, or a draft is thrown away: what is still open of it is not expected any more.</summary>
public static class CloseOrder
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public int Number { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    /// <param name="GivenUp">Lines of which not all came.</param>
    public sealed record Answer(int Number, int GivenUp, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OrderLines.Lock(db, request.Number, ct)).TryGet(out var order, out var problem))
        {
            return problem;
        }

        if (order.State == PurchaseOrderState.Closed)
        {
            return Problem.Conflict("closed", $"Order {order.Number} is closed already.");
        }

        var open = await (
            from line in db.PurchaseOrderLines
            join delivery in db.ExpectedDeliveries on line.Id equals delivery.OrderLineId
            where line.OrderNumber == order.Number && delivery.ClosedAt == null
            select delivery).ToListAsync(ct);
        open.ForEach(d => d.ClosedAt = clock.GetCurrentInstant());
        order.State = PurchaseOrderState.Closed;
        return new Answer(order.Number, open.Count, await Versions.Save(db, order, request.RowVersion!.Value, ct));
    }
}
