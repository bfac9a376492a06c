using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Consumables;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

/// <summary>What could stand in for a part: what was named so, the same size in other materials, near sizes of other series.</summary>
public static class FindEquivalents
{
    private const int MostRows = 60;

    public sealed record Request
    {
        public string? Part { get; init; }
    }

    /// <param name="Size">Absent where the part is no seal, or its sizes are not known: then only what was named is found.</param>
    public sealed record Answer(string PartCode, string Name, string? Size, string? Material, IReadOnlyList<Row> Rows);

    /// <param name="PartCode">Absent of a standard size that the stores do not keep.</param>
    /// <param name="Difference">Of the sizes, in words; absent where one of them is not known.</param>
    public sealed record Row(
        EquivalenceKind Kind, string? PartCode, string Name, string? Size, string? Material, int? Hardness, decimal? Free, string? Difference,
        string? Note, string? Source);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Part).IsGiven("the stores' code of a part").IsAtMost(Limits.Code);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartsByCode.Read(db, [request.Part!], ct)).TryGetValue(request.Part!, out var part))
        {
            return Problem.NotFound($"Part {request.Part}");
        }

        var named = await Named(db, part, ct);
        var size = part.MeasuredSize();
        var near = size is null ? [] : (await Near(db, part, size, ct))
            .Where(other => named.All(n => n.Other.Id != other.Id))
            .Select(other => (Other: other, Kind: Equivalence.Between(size, part.Material, other.MeasuredSize()!, other.Material)))
            .Where(o => o.Kind is not null)
            .OrderBy(o => o.Kind).ThenBy(o => Off(size, o.Other.MeasuredSize()!)).ThenBy(o => o.Other.Code, StringComparer.Ordinal)
            .Take(MostRows).ToList();
        var free = await SearchSizes.Free(db, named.Select(n => n.Other.Id).Concat(near.Select(n => n.Other.Id)), ct);
        var standard = size is null ? [] : SizeCatalogue.All
            .Where(s => Equivalence.Between(size, null, s.Size, null) == EquivalenceKind.NearSize)
            .OrderBy(s => Off(size, s.Size)).ThenBy(s => s.Designation, StringComparer.Ordinal).Take(MostRows);
        return new Answer(part.Code, part.Name, size?.ToString(), part.Material,
        [
            .. named.Select(n => RowOf(EquivalenceKind.Named, size, n.Other, free, n.Note)),
            .. near.Select(n => RowOf(n.Kind!.Value, size, n.Other, free, null)),
            .. standard.Select(s => new Row(
                EquivalenceKind.NearSize, null, s.Designation, s.Size.ToString(), null, null, null, Equivalence.Difference(size!, s.Size), null, s.Source)),
        ]);
    }

    /// <summary>Alternatives hold in both directions, whichever was entered.</summary>
    private static async Task<List<(Part Other, string? Note)>> Named(WorkshopDbContext db, Part part, CancellationToken ct)
    {
        var rows = await db.PartAlternatives.AsNoTracking().Where(a => a.PartId == part.Id || a.AlternativeId == part.Id).ToListAsync(ct);
        var ids = rows.Select(a => a.PartId == part.Id ? a.AlternativeId : a.PartId).Distinct().ToList();
        var parts = await db.Parts.AsNoTracking().Where(p => ids.Contains(p.Id)).OrderBy(p => p.Code).ToListAsync(ct);
        return [.. parts.Select(p => (p, rows.First(a => a.PartId == p.Id || a.AlternativeId == p.Id).Note))];
    }

    private static Task<List<Part>> Near(WorkshopDbContext db, Part part, SealSize size, CancellationToken ct)
    {
        var (from, to) = (size.InnerMm - Equivalence.NearDiameterMm, size.InnerMm + Equivalence.NearDiameterMm);
        return db.Parts.AsNoTracking().Where(p =>
            p.Kind == part.Kind && p.Id != part.Id && p.MergedIntoId == null && p.InnerDiameterMm >= from && p.InnerDiameterMm <= to
            && (part.Kind == PartKind.ORing ? p.SectionMm != null : p.OuterDiameterMm != null)).ToListAsync(ct);
    }

    private static decimal Off(SealSize one, SealSize other) =>
        Math.Abs(one.InnerMm - other.InnerMm) + Math.Abs(one.OuterMm - other.OuterMm) + Math.Abs(one.SectionMm - other.SectionMm);

    private static Row RowOf(EquivalenceKind kind, SealSize? size, Part other, Dictionary<Guid, decimal> free, string? note) => new(
        kind, other.Code, other.Discontinued ? $"{other.Name} (discontinued)" : other.Name, other.MeasuredSize()?.ToString(), other.Material, other.Hardness,
        free.GetValueOrDefault(other.Id), size is not null && other.MeasuredSize() is { } its && its.Kind == size.Kind ? Equivalence.Difference(size, its) : null, note, null);
}
