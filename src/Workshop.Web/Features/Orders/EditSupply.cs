using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Changes how a supplier sells a part. When another is to be preferred, that one is said to be.</summary>
public static class EditSupply
{
    public sealed record Request : ISupplyFields, IExpectsVersion
    {
        [JsonIgnore]
        public string PartCode { get; init; } = "";

        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? SupplierCode { get; init; }

        public decimal? PackQuantity { get; init; }

        public decimal? SmallestQuantity { get; init; }

        public decimal? UnitCost { get; init; }

        public int? DeliveryDays { get; init; }

        public bool Preferred { get; init; }
    }

    public sealed record Answer(Guid Id, bool Preferred, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new SupplyFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartOrdering.Lock(db, request.PartCode, ct)).TryGet(out var part, out var problem))
        {
            return problem;
        }

        if (await db.PartSupplies.SingleOrDefaultAsync(s => s.Id == request.Id && s.PartId == part.Id, ct) is not { } supply)
        {
            return Problem.NotFound($"Supply {request.Id} of {part.Code}");
        }

        if (SupplyRows.Refuse(part, request) is { } refused)
        {
            return refused;
        }

        supply.Put(request);
        await PartOrdering.PreferOnly(db, supply, ct);
        return new Answer(supply.Id, supply.Preferred, await Versions.Save(db, supply, request.RowVersion!.Value, ct));
    }
}
