using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Orders;

/// <summary>One more supplier; what it sells is entered with the parts.</summary>
public static class AddSupplier
{
    public sealed record Request : ISupplierFields
    {
        public string? Name { get; init; }

        public string? Email { get; init; }

        public string? CustomerNumber { get; init; }

        public int? DeliveryDays { get; init; }

        public decimal? DeliveryDaysSd { get; init; }

        public decimal? SmallestOrder { get; init; }
    }

    public sealed record Answer(Guid Id);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new SupplierFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await SupplierRows.NameTaken(db, request.Name!, except: null, ct) is { } taken)
        {
            return taken;
        }

        var supplier = new Supplier { Id = NewId.At(clock), Name = "" };
        supplier.Put(request);
        db.Suppliers.Add(supplier);
        await db.SaveChangesAsync(ct);
        return new Answer(supplier.Id);
    }
}
