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

/// <summary>
/// Changes a supplier, retires it or restores it. Nothing is proposed from a retired one; while an order is with it, it is not retired.
/// </summary>
public static class EditSupplier
{
    public sealed record Request : ISupplierFields, IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public string? Email { get; init; }

        public string? CustomerNumber { get; init; }

        public int? DeliveryDays { get; init; }

        public decimal? DeliveryDaysSd { get; init; }

        public decimal? SmallestOrder { get; init; }

        /// <summary>Nothing is ordered from them any more; old orders stay in the books.</summary>
        public bool Retired { get; init; }
    }

    public sealed record Answer(Guid Id, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new SupplierFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from suppliers where id = {request.Id} for update", ct);
        if (await db.Suppliers.SingleOrDefaultAsync(s => s.Id == request.Id, ct) is not { } supplier)
        {
            return Problem.NotFound($"Supplier {request.Id}");
        }

        if (await SupplierRows.NameTaken(db, request.Name!, supplier.Id, ct) is { } taken)
        {
            return taken;
        }

        if (request.Retired && !supplier.Retired && await OpenOrders(db, supplier.Id, ct) is { Count: > 0 } open)
        {
            var sentence = $"retired: order {string.Join(", ", open)} is still open with {supplier.Name}; receive or close what is open first.";
            return Problem.Conflict("orders-open", sentence) with { Faults = [new FieldFault("retired", sentence)] };
        }

        supplier.Put(request);
        supplier.Retired = request.Retired;
        return new Answer(supplier.Id, await Versions.Save(db, supplier, request.RowVersion!.Value, ct));
    }

    private static Task<List<int>> OpenOrders(WorkshopDbContext db, Guid supplierId, CancellationToken ct) =>
        db.PurchaseOrders.AsNoTracking().Where(o => o.SupplierId == supplierId && o.State != PurchaseOrderState.Closed)
            .OrderBy(o => o.Number).Select(o => o.Number).ToListAsync(ct);
}
