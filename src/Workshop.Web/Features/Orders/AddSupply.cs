using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>A supplier sells a part. The first one is preferred, whether it is said or not.</summary>
public static class AddSupply
{
    public sealed record Request : ISupplyFields
    {
        [JsonIgnore]
        public string PartCode { get; init; } = "";

        public Guid? SupplierId { get; init; }

        public string? SupplierCode { get; init; }

        public decimal? PackQuantity { get; init; }

        public decimal? SmallestQuantity { get; init; }

        public decimal? UnitCost { get; init; }

        public int? DeliveryDays { get; init; }

        public bool Preferred { get; init; }
    }

    public sealed record Answer(Guid Id, string PartCode, string Supplier, bool Preferred);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.SupplierId).IsGiven("the supplier who sells it");
            Include(new SupplyFieldsValidator());
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartOrdering.Lock(db, request.PartCode, ct)).TryGet(out var part, out var problem))
        {
            return problem;
        }

        var supplier = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(s => s.Id == request.SupplierId, ct);
        if (supplier is null)
        {
            return Problem.Impossible("supplier-unknown", "supplierId",
                $"supplierId is {request.SupplierId}: no supplier has it; choose one of GET /api/v1/suppliers.");
        }

        if (supplier.Retired)
        {
            return Problem.Impossible("supplier-retired", "supplierId", $"supplierId is {supplier.Name}, which is retired; restore it, or choose another.");
        }

        if (SupplyRows.Refuse(part, request) is { } refused)
        {
            return refused;
        }

        var others = await db.PartSupplies.AsNoTracking().Where(s => s.PartId == part.Id).ToListAsync(ct);
        if (others.Exists(s => s.SupplierId == supplier.Id))
        {
            return Problem.Impossible("sold-already", "supplierId", $"supplierId is {supplier.Name}, which sells {part.Name} already; change that entry.");
        }

        var supply = new PartSupply { Id = NewId.At(clock), PartId = part.Id, SupplierId = supplier.Id };
        supply.Put(request);
        supply.Preferred |= !others.Exists(s => s.Preferred);
        await PartOrdering.PreferOnly(db, supply, ct);
        db.PartSupplies.Add(supply);
        await db.SaveChangesAsync(ct);
        return new Answer(supply.Id, part.Code, supplier.Name, supply.Preferred);
    }
}
