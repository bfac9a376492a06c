using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Shims;

/// <summary>A box with the part and the series that it holds.</summary>
internal sealed record FoundBox(Part Part, ShimSeries Series, StoragePlace Place);

/// <summary>The series of a part, the box that holds it, and the workshop's policy on used shims.</summary>
internal static class ShimBoxes
{
    /// <summary>Nothing where the part has no series: its shims lie without compartments.</summary>
    public static Task<ShimSeries?> Find(WorkshopDbContext db, string partCode, CancellationToken ct) => (
        from series in db.ShimSeries.AsNoTracking()
        join part in db.Parts on series.PartId equals part.Id
        where part.Code == partCode
        select series).SingleOrDefaultAsync(ct);

    /// <summary>The box of a part that somebody names.</summary>
    public static async Task<Outcome<FoundBox>> Named(WorkshopDbContext db, string partCode, CancellationToken ct)
    {
        var found = await (
            from series in db.ShimSeries.AsNoTracking()
            join part in db.Parts.AsNoTracking() on series.PartId equals part.Id
            join place in db.StoragePlaces.AsNoTracking() on series.PlaceId equals place.Id
            where part.Code == partCode
            select new { part, series, place }).SingleOrDefaultAsync(ct);
        return found is null
            ? new Problem(ProblemKind.NotFound, "box-unknown",
                $"partCode is \"{partCode}\": no shim box holds it; choose one of GET /api/v1/shims/boxes, or add its series.")
            : new FoundBox(found.part, found.series, found.place);
    }

    /// <summary>The same for a write: the part's row is locked first, as a visit's is that takes a shim.</summary>
    public static async Task<Outcome<FoundBox>> Locked(WorkshopDbContext db, string partCode, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from parts where code = {partCode} for no key update", ct);
        return await Named(db, partCode, ct);
    }

    /// <summary>A shim to be moved, its part's row locked, and the box where it belongs.</summary>
    public static async Task<Outcome<(Shim Shim, Guid Home)>> ToMove(WorkshopDbContext db, Guid id, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync(
            $"select 1 from parts where id = (select part_id from shims where id = {id}) for no key update", ct);
        if (await db.Shims.AsNoTracking().SingleOrDefaultAsync(s => s.Id == id, ct) is not { } shim)
        {
            return Problem.NotFound($"Shim {id}");
        }

        var home = await db.ShimSeries.Where(s => s.PartId == shim.PartId).Select(s => (Guid?)s.PlaceId).SingleOrDefaultAsync(ct)
            ?? shim.PlaceId ?? await db.StockMovements.Where(m => m.ShimId == id).OrderByDescending(m => m.Id).Select(m => m.PlaceId).FirstAsync(ct);
        return (shim, home);
    }

    /// <summary>Said where a shim is neither in the box nor on a bench.</summary>
    public static Problem NotAtHand(Shim shim) => shim.Where == ShimWhere.Engine
        ? Problem.Conflict("shim-elsewhere", $"The shim of {shim.Thickness} is in an engine, {shim.Valve!.Value.Spoken}; what is in an engine is not in the box.")
        : Problem.Conflict("shim-elsewhere", $"The shim of {shim.Thickness} is {shim.Gone!.Value.Spoken()} already.");

    public static Task<UsedShimPolicy> UsedShimPolicy(this WorkshopDbContext db, CancellationToken ct) =>
        db.WorkshopProfiles.Select(w => w.UsedShims).SingleAsync(ct);

    /// <summary>Where a shim lies, in words: "Shim box 8.9, C4".</summary>
    public static string Say(string place, Guid placeId, ShimSeries? box, ShimThickness thickness) =>
        CompartmentOf(placeId, box, thickness) is { } compartment ? $"{place}, {compartment.Address}" : place;

    public static Compartment? CompartmentOf(Guid placeId, ShimSeries? box, ShimThickness thickness) =>
        box is not null && box.PlaceId == placeId ? BoxMap.Of(box).For(thickness) : null;
}
