using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>
/// An order that a person is writing: of a proposal, with what was changed and dropped, or from nothing. It goes to nobody until it is
/// placed.
/// </summary>
public static class DraftOrder
{
    public sealed record Request
    {
        public Guid? SupplierId { get; init; }

        // A list that can be added to: the page's binder fills it in place.
        public IList<OrderLineFields> Lines { get; init; } = [];
    }

    public sealed record Answer(int Number, string Supplier, int Lines);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.SupplierId).IsGiven("the supplier it goes to");
            RuleForEach(r => r.Lines).SetValidator(new OrderLineFieldsValidator());
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        // Held, so that nobody retires the supplier meanwhile.
        await db.Database.ExecuteSqlAsync($"select 1 from suppliers where id = {request.SupplierId} for share", ct);
        var supplier = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(s => s.Id == request.SupplierId, ct);
        if (supplier is null || supplier.Retired)
        {
            return Problem.Impossible("supplier-unknown", "supplierId", supplier is null
                ? $"supplierId is {request.SupplierId}: no supplier has it; choose one of GET /api/v1/suppliers."
                : $"supplierId is {supplier.Name}, which is retired; restore it, or choose another.");
        }

        var now = clock.GetCurrentInstant();
        var order = new PurchaseOrder { SupplierId = supplier.Id, MadeBy = actor.PersonId, MadeAt = now };
        var read = await OrderLines.Read(db, supplier.Id, request.Lines, now, ct);
        if (!read.TryGet(out var lines, out var problem))
        {
            return problem;
        }

        if (lines.Count == 0)
        {
            return Problem.Impossible("nothing-ordered", "lines", "lines holds nothing to order: give at least one part with a quantity.");
        }

        db.PurchaseOrders.Add(order);
        await db.SaveChangesAsync(ct);
        db.PurchaseOrderLines.AddRange(lines.Select(l => l.Row(order.Number)));
        await db.SaveChangesAsync(ct);
        return new Answer(order.Number, supplier.Name, lines.Count);
    }
}
