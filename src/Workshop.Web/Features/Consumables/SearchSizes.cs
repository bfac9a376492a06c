using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Consumables;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

/// <summary>Which seals come near a size, or fit a groove: those of the stores, and the standard sizes.</summary>
public static class SearchSizes
{
    private const int MostRows = 40;
    private const int MostRead = 2000;

    public sealed record Request
    {
        /// <summary>As people write it; see <see cref="SizeQuestion"/>.</summary>
        public string? Size { get; init; }

        /// <summary>The size is a groove's: the diameter that the ring lies on, and the section that it is made for.</summary>
        public bool Groove { get; init; }

        /// <summary>0.5 where none is given.</summary>
        public decimal? ToleranceMm { get; init; }

        /// <summary>Part of its name; standard sizes have no material.</summary>
        public string? Material { get; init; }
    }

    /// <param name="Asked">How the size was understood.</param>
    /// <param name="MoreInStores">Found beyond those that are shown.</param>
    public sealed record Answer(
        string Asked, SizeOf Of, decimal FirstMm, decimal SecondMm, decimal? ThirdMm, decimal ToleranceMm,
        IReadOnlyList<Row> InStores, int MoreInStores, IReadOnlyList<Row> Standard, int MoreStandard);

    /// <param name="PartCode">Of the stores; absent of a standard size.</param>
    /// <param name="Free">On hand and not reserved.</param>
    /// <param name="OuterOffMm">Of flat rings only.</param>
    /// <param name="StretchPercent">Of O-rings only, on the diameter that was asked for.</param>
    /// <param name="Source">Of a standard size: where it comes from.</param>
    public sealed record Row(
        string? PartCode, string Name, string Size, string? Designation, string? Material, int? Hardness, string? Form, decimal? Free,
        decimal InnerOffMm, decimal? OuterOffMm, decimal? SectionOffMm, decimal? StretchPercent, bool SitsWell, string Fit, string? Source);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Size).IsGiven("a size").IsAtMost(Limits.Code);
            RuleFor(r => r.Size).Must((r, s) => string.IsNullOrWhiteSpace(s) || SizeQuestion.TryParse(s, r.Groove, out _))
                .WithMessage((r, s) => $"{{PropertyName}} is \"{s}\": {(r.Groove ? "of a groove, diameter x section such as 25 x 2.5" : SizeQuestion.Form)}{(r.Groove ? " is allowed" : "")}.");
            RuleFor(r => r.ToleranceMm).IsWithin(0, SizeSearch.LargestToleranceMm, 3, "mm");
            RuleFor(r => r.Material).IsAtMost(Limits.Name);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!SizeQuestion.TryParse(request.Size, request.Groove, out var question))
        {
            throw new InvalidOperationException("The validator lets no such size through.");
        }

        if (question.Code is { } code)
        {
            if (SizeCatalogue.Find(code) is not { } known)
            {
                return Problem.Impossible("size-unknown", "size",
                    $"size is \"{request.Size}\": the catalogue has no {code}; it has {SizeCatalogue.Numbers}. Give inner diameter and section instead.");
            }

            question = question.With(known.Size);
        }

        var tolerance = request.ToleranceMm ?? SizeSearch.UsualToleranceMm;
        var parts = SizeSearch.Rank(question, tolerance, await Near(question, tolerance, request.Material, db, ct), p => p.MeasuredSize()!);
        var standard = SizeSearch.Rank(question, tolerance, SizeCatalogue.All, s => s.Size);
        var free = await Free(db, parts.Take(MostRows).Select(p => p.Item.Id), ct);
        return new Answer(
            question.Spoken(), question.Of, question.FirstMm, question.SecondMm, question.ThirdMm, tolerance,
            [.. parts.Take(MostRows).Select(p => RowOf(p, question.Of, p.Item, free.GetValueOrDefault(p.Item.Id)))], Math.Max(0, parts.Count - MostRows),
            [.. standard.Take(MostRows).Select(s => RowOf(s, question.Of))], Math.Max(0, standard.Count - MostRows));
    }

    /// <summary>What is on hand and not reserved, by part.</summary>
    internal static async Task<Dictionary<Guid, decimal>> Free(WorkshopDbContext db, IEnumerable<Guid> partIds, CancellationToken ct)
    {
        var ids = partIds.ToList();
        return await db.StockBalances.AsNoTracking().Where(b => ids.Contains(b.PartId)).GroupBy(b => b.PartId)
            .Select(g => new { g.Key, Free = g.Sum(b => b.OnHand - b.Reserved) }).ToDictionaryAsync(g => g.Key, g => Math.Max(0, g.Free), ct);
    }

    private static async Task<List<Part>> Near(SizeQuestion question, decimal tolerance, string? material, WorkshopDbContext db, CancellationToken ct)
    {
        var (from, to) = SizeSearch.InnerSpan(question, tolerance);
        var kind = question.Of == SizeOf.SealingRing ? PartKind.SealingRing : PartKind.ORing;
        var parts = db.Parts.AsNoTracking().Where(p =>
            p.Kind == kind && p.MergedIntoId == null && p.InnerDiameterMm >= from && p.InnerDiameterMm <= to
            && (kind == PartKind.ORing ? p.SectionMm != null : p.OuterDiameterMm != null));
        if (material is { Length: > 0 })
        {
            var like = $"%{Slice.EscapeLike(material)}%";
            parts = parts.Where(p => p.Material != null && EF.Functions.ILike(p.Material, like));
        }

        return await parts.OrderBy(p => p.Code).Take(MostRead).ToListAsync(ct);
    }

    private static Row RowOf(SizeMatch<Part> match, SizeOf asked, Part part, decimal free) => new(
        part.Code, part.Discontinued ? $"{part.Name} (discontinued)" : part.Name, match.Size.ToString(), part.Designation, part.Material, part.Hardness, part.Form, free,
        match.InnerOffMm, match.OuterOffMm, match.SectionOffMm, Tenths(match.StretchPercent), match.SitsWell, match.Fit(asked), null);

    private static Row RowOf(SizeMatch<StandardSize> match, SizeOf asked) => new(
        null, match.Item.Designation, match.Size.ToString(), match.Item.Designation, null, null, null, null,
        match.InnerOffMm, match.OuterOffMm, match.SectionOffMm, Tenths(match.StretchPercent), match.SitsWell, match.Fit(asked), match.Item.Source);

    private static decimal? Tenths(decimal? percent) => percent is { } value ? Math.Round(value, 1) : null;
}
