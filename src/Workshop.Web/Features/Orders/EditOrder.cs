using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Changes a draft: all its lines are sent; those that are left out, or without a quantity, are dropped.</summary>
public static class EditOrder
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public int Number { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public IList<OrderLineFields> Lines { get; init; } = [];
    }

    public sealed record Answer(int Number, int Lines, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleForEach(r => r.Lines).SetValidator(new OrderLineFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OrderLines.Lock(db, request.Number, ct)).TryGet(out var order, out var problem))
        {
            return problem;
        }

        if (OrderRules.RefuseChange(order) is { } refused)
        {
            return refused;
        }

        var read = await OrderLines.Read(db, order.SupplierId, request.Lines, clock.GetCurrentInstant(), ct);
        if (!read.TryGet(out var lines, out problem))
        {
            return problem;
        }

        var before = await db.PurchaseOrderLines.Where(l => l.OrderNumber == order.Number).ToListAsync(ct);
        foreach (var line in lines)
        {
            if (before.Find(l => l.PartId == line.Part.Id && l.Thickness == line.Thickness) is { } known)
            {
                (known.Quantity, known.UnitCost, known.Reason) = (line.Quantity, line.UnitCost, line.Reason ?? known.Reason);
                before.Remove(known);
            }
            else
            {
                db.PurchaseOrderLines.Add(line.Row(order.Number));
            }
        }

        db.PurchaseOrderLines.RemoveRange(before);
        return new Answer(order.Number, lines.Count, await Versions.Save(db, order, request.RowVersion!.Value, ct));
    }
}
