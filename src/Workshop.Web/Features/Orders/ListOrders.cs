using System.Globalization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Orders, the newest first, a page at a time.</summary>
public static class ListOrders
{
    /// <param name="State">draft, placed or closed; all where it is not given.</param>
    public sealed record Request(string? State = null, string? After = null, int? Take = null);

    /// <param name="NetSum">Of the lines whose cost is known.</param>
    /// <param name="Open">Lines of which not all came.</param>
    /// <param name="NextExpectedOn">The earliest day of what is open.</param>
    public sealed record Row(
        int Number, PurchaseOrderState State, string Supplier, Instant MadeAt, Instant? PlacedAt, int Lines, int Open, decimal NetSum,
        LocalDate? NextExpectedOn);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.State).IsWordOf<Request, PurchaseOrderState>();
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.After).Must(a => string.IsNullOrEmpty(a) || int.TryParse(a, NumberStyles.None, CultureInfo.InvariantCulture, out _))
                .WithMessage((_, a) => $"after is \"{a}\": the number of an order is allowed.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var orders = db.PurchaseOrders.AsNoTracking();
        if (Words.Read<PurchaseOrderState>(request.State) is { } state)
        {
            orders = orders.Where(o => o.State == state);
        }

        if (request.After is { Length: > 0 } after)
        {
            var number = int.Parse(after, CultureInfo.InvariantCulture);
            orders = orders.Where(o => o.Number < number);
        }

        var slice = await orders.OrderByDescending(o => o.Number)
            .Join(db.Suppliers, o => o.SupplierId, s => s.Id, (o, s) => new { Order = o, s.Name })
            .ToSlice(request.Take, o => o.Order.Number.ToString(CultureInfo.InvariantCulture), ct);
        var numbers = slice.Rows.Select(r => r.Order.Number).ToList();
        var lines = (await db.PurchaseOrderLines.AsNoTracking().Where(l => numbers.Contains(l.OrderNumber)).ToListAsync(ct)).ToLookup(l => l.OrderNumber);
        return new Slice<Row>([.. slice.Rows.Select(r =>
        {
            var (order, its) = (r.Order, lines[r.Order.Number].ToList());
            var open = order.State == PurchaseOrderState.Placed ? its.Where(l => l.Received < l.Quantity).ToList() : [];
            return new Row(
                order.Number, order.State, r.Name, order.MadeAt, order.PlacedAt, its.Count, open.Count,
                its.Sum(l => OrderSums.OfLine(l.Quantity, l.UnitCost) ?? 0), open.Min(l => l.ExpectedOn));
        })], slice.Next);
    }
}
