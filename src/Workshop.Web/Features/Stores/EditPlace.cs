using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// Changes a place, or retires it: what lies there, a shim box that belongs there, and a count that is open stand against that. Nothing
/// is put to a retired place; the database keeps that, too.
/// </summary>
public static class EditPlace
{
    private const int MostNamed = 5;

    public sealed record Request : IPlaceFields, IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Name { get; init; }

        public string? Code { get; init; }

        public int? WalkOrder { get; init; }

        public bool Retired { get; init; }
    }

    public sealed record Answer(Guid Id, string Name, string Code, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            Include(new PlaceFieldsValidator());
            RuleFor(r => r.Code).IsGiven("what its label says");
            RuleFor(r => r.WalkOrder).IsGiven("where it comes on a walk");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        // For update: whoever puts something there waits until it is known whether the place is still used, and is waited for.
        await db.Database.ExecuteSqlAsync($"select 1 from storage_places where id = {request.Id} for update", ct);
        var place = await db.StoragePlaces.SingleOrDefaultAsync(p => p.Id == request.Id, ct);
        if (place is null)
        {
            return Problem.NotFound($"Place {request.Id}");
        }

        if ((await PlaceFields.Taken(db, request, place.Id, ct)
            ?? (request.Retired && !place.Retired ? await RefuseRetiring(db, place, ct) : null)) is { } refused)
        {
            return refused;
        }

        (place.Name, place.Code, place.WalkOrder, place.Retired) = (request.Name!, request.Code!, request.WalkOrder!.Value, request.Retired);
        var row = db.Entry(place);
        row.State = EntityState.Modified;
        var version = row.Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(place.Id, place.Name, place.Code, version.CurrentValue);
    }

    private static async Task<Problem?> RefuseRetiring(WorkshopDbContext db, StoragePlace place, CancellationToken ct)
    {
        var lying = await (
            from balance in db.StockBalances
            where balance.PlaceId == place.Id && (balance.OnHand != 0 || balance.Reserved != 0)
            join part in db.Parts on balance.PartId equals part.Id
            select part.Name).Distinct().ToListAsync(ct);
        if (lying.Count > 0)
        {
            var more = lying.Count > MostNamed ? $" and {lying.Count - MostNamed} more" : "";
            return Refuse($"{string.Join(", ", lying.Order(StringComparer.Ordinal).Take(MostNamed))}{more} still lie there; move them first.");
        }

        var box = await db.ShimSeries.Where(s => s.PlaceId == place.Id)
            .Join(db.Parts, s => s.PartId, p => p.Id, (_, p) => p.Name).FirstOrDefaultAsync(ct);
        if (box is not null)
        {
            return Refuse($"it is where {box} belong; give that box another place first.");
        }

        return await db.StockCounts.AnyAsync(c => c.PlaceId == place.Id && c.ClosedAt == null, ct)
            ? Refuse("a count of it is open; close it or give it up first.") : null;

        Problem Refuse(string why)
        {
            var sentence = $"{place.Name} cannot be retired: {why}";
            return Problem.Conflict("place-in-use", sentence) with { Faults = [new FieldFault("retired", sentence)] };
        }
    }
}
