using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Kits;

/// <summary>A part that does the work of another.</summary>
/// <param name="Note">What is to be kept in mind.</param>
/// <param name="Replaces">It took the other's place when that was discontinued.</param>
/// <param name="Free">On hand, not expired, reserved for nobody.</param>
internal sealed record Alternative(Part Part, string? Note, bool Replaces, decimal Free);

internal static class Alternatives
{
    /// <summary>What may stand in for each part, by its id: replacements first, then by what is free. Parts that are made no more count only while some is free.</summary>
    public static async Task<ILookup<Guid, Alternative>> Read(
        WorkshopDbContext db, IReadOnlyCollection<Guid> partIds, LocalDate usedOn, CancellationToken ct)
    {
        var pairs = await (
            from pair in db.PartAlternatives.AsNoTracking()
            where partIds.Contains(pair.PartId) || partIds.Contains(pair.AlternativeId)
            select new { pair.PartId, pair.AlternativeId, pair.Note }).ToListAsync(ct);
        var replaced = await db.Parts.AsNoTracking().Where(p => partIds.Contains(p.Id) && p.ReplacedById != null)
            .Select(p => new { p.Id, ReplacedById = p.ReplacedById!.Value }).ToListAsync(ct);
        var links = replaced.Select(r => new Link(r.Id, r.ReplacedById, null, true))
            .Concat(pairs.Select(p => new Link(p.PartId, p.AlternativeId, p.Note, false)))
            .Concat(pairs.Select(p => new Link(p.AlternativeId, p.PartId, p.Note, false)))
            .Where(l => partIds.Contains(l.For))
            .ToList();
        var others = links.Select(l => l.Other).Distinct().ToList();
        var meant = await (
            from named in db.Parts.AsNoTracking()
            where others.Contains(named.Id)
            select new { named.Id, Meant = named.MergedIntoId ?? named.Id }).ToDictionaryAsync(p => p.Id, p => p.Meant, ct);
        var shelves = await Shelves.Read(db, [.. meant.Values.Distinct()], null, usedOn, ct);
        return links
            .Select(l => (l.For, Other: shelves[meant[l.Other]], l.Note, l.Replaces))
            .Where(l => l.Other.Part.Id != l.For && (!l.Other.Part.Discontinued || l.Other.Free > 0))
            .OrderByDescending(l => l.Replaces).ThenByDescending(l => l.Other.Free).ThenBy(l => l.Other.Part.Code, StringComparer.Ordinal)
            .DistinctBy(l => (l.For, l.Other.Part.Id))
            .ToLookup(l => l.For, l => new Alternative(l.Other.Part, l.Note, l.Replaces, l.Other.Free));
    }

    private sealed record Link(Guid For, Guid Other, string? Note, bool Replaces);
}
