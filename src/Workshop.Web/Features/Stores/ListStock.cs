using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>What is to be shown of the stores.</summary>
public enum StockFilter
{
    /// <summary>Nothing free of what is kept in stock, no more free than the reorder point set by hand, or less there than is reserved.</summary>
    RunsShort,

    /// <summary>Something lies there that expires soon, or is expired.</summary>
    Expiring,

    Discontinued,
}

/// <summary>Parts with what is there of each, by code, a page at a time. Parts that were merged into others are found as those.</summary>
public static class ListStock
{
    /// <param name="Search">In the code (also of a part that was merged), the name, or the code on a package.</param>
    /// <param name="Kind">Only parts of that kind: shims, for the shim boxes.</param>
    /// <param name="Place">Only what lies at the place with that code.</param>
    /// <param name="Show">Only what is short, expires soon or is discontinued.</param>
    public sealed record Request(
        string? After = null, string? Search = null, int? Take = null, string? Kind = null, string? Place = null, string? Show = null);

    /// <param name="OnHand">In the part's unit, whoever has reserved it.</param>
    /// <param name="Reserved">For cards, of what is on hand.</param>
    /// <param name="At">Where it lies; of shims, thickness by thickness.</param>
    /// <param name="ExpiresOn">The last day of the lot that expires first, where it lies by lot.</param>
    public sealed record Row(
        string Code,
        string Name,
        PartKind Kind,
        PartUnit Unit,
        bool Discontinued,
        decimal OnHand,
        decimal Reserved,
        IReadOnlyList<Lying> At,
        bool IsShort,
        LocalDate? ExpiresOn);

    public sealed record Lying(
        Guid PlaceId, string Place, decimal? ThicknessMm, StockCondition Condition, decimal OnHand, decimal Reserved, string? Lot);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Kind).IsWordOf<Request, PartKind>();
            RuleFor(r => r.Show).IsWordOf<Request, StockFilter>();
            RuleFor(r => r.Search).IsAtMost(Limits.Name);
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var parts = Filtered(db, request, today);
        if (request.After is { Length: > 0 } after)
        {
            parts = parts.Where(p => string.Compare(p.Code, after) > 0);
        }

        var slice = await parts.OrderBy(p => p.Code).ToSlice(request.Take, p => p.Code, ct);
        var ids = slice.Rows.Select(p => p.Id).ToList();
        var lying = (await (
            from balance in db.StockBalances.AsNoTracking()
            join place in db.StoragePlaces on balance.PlaceId equals place.Id
            join lot in db.StockLots on balance.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            where ids.Contains(balance.PartId) && (balance.OnHand != 0 || balance.Reserved != 0)
            orderby balance.Thickness, place.WalkOrder, place.Name, balance.Condition, lot!.ExpiresOn
            select new { balance, place.Name, Lot = (string?)lot.Code, lot.ExpiresOn }).ToListAsync(ct)).ToLookup(l => l.balance.PartId);
        return new Slice<Row>([.. slice.Rows.Select(p => RowOf(
            p,
            [.. lying[p.Id].Select(l => new Lying(
                l.balance.PlaceId, l.Name, Thickness(l.balance.Thickness), l.balance.Condition, l.balance.OnHand, l.balance.Reserved, l.Lot))],
            lying[p.Id].Where(l => l.balance.OnHand > 0).Min(l => l.ExpiresOn)))],
            slice.Next);
    }

    private static IQueryable<Part> Filtered(WorkshopDbContext db, Request request, LocalDate today)
    {
        var parts = db.Parts.AsNoTracking().Where(p => p.MergedIntoId == null);
        if (Words.Read<PartKind>(request.Kind) is { } kind)
        {
            parts = parts.Where(p => p.Kind == kind);
        }

        if (request.Search is { Length: > 0 } search)
        {
            // Sets of ids of their own: each is made once, not once for each part.
            var like = $"%{Slice.EscapeLike(search)}%";
            var packages = db.PartScanCodes.Where(c => EF.Functions.ILike(c.Code, like)).Select(c => c.PartId);
            var merged = db.Parts.Where(p => p.MergedIntoId != null && EF.Functions.ILike(p.Code, like)).Select(p => p.MergedIntoId!.Value);
            parts = parts.Where(p => EF.Functions.ILike(p.Code, like) || EF.Functions.ILike(p.Name, like)
                || packages.Contains(p.Id) || merged.Contains(p.Id));
        }

        if (request.Place is { Length: > 0 } code)
        {
            var there = db.StockBalances.Where(b => (b.OnHand != 0 || b.Reserved != 0) && db.StoragePlaces.Any(p => p.Id == b.PlaceId && p.Code == code))
                .Select(b => b.PartId);
            parts = parts.Where(p => there.Contains(p.Id));
        }

        var soon = today.PlusDays(ListExpiring.UsualDays);
        return Words.Read<StockFilter>(request.Show) switch
        {
            StockFilter.RunsShort => Short(db, parts),
            StockFilter.Expiring => parts.Where(p => db.StockBalances
                .Where(b => b.OnHand > 0 && db.StockLots.Any(l => l.Id == b.LotId && l.ExpiresOn <= soon)).Select(b => b.PartId).Contains(p.Id)),
            StockFilter.Discontinued => parts.Where(p => p.Discontinued),
            _ => parts,
        };
    }

    /// <summary>What is free is summed of all parts at once: asked part by part, it would take as long as the stores are large.</summary>
    private static IQueryable<Part> Short(WorkshopDbContext db, IQueryable<Part> parts) =>
        from part in parts
        where !part.Discontinued
        join balance in db.StockBalances.GroupBy(b => b.PartId).Select(g => new { g.Key, Free = (decimal?)g.Sum(b => b.OnHand - b.Reserved) })
            on part.Id equals balance.Key into balances
        from balance in balances.DefaultIfEmpty()
        where (balance.Free ?? 0) <= (part.Stocked ? part.ReorderPoint ?? 0 : -SmallestShortage)
        select part;

    private static Row RowOf(Part part, IReadOnlyList<Lying> at, LocalDate? expiresOn)
    {
        var (onHand, reserved) = (at.Sum(l => l.OnHand), at.Sum(l => l.Reserved));
        var isShort = !part.Discontinued && onHand - reserved <= (part.Stocked ? part.ReorderPoint ?? 0 : -SmallestShortage);
        return new Row(part.Code, part.Name, part.Kind, part.Unit, part.Discontinued, onHand, reserved, at, isShort, expiresOn);
    }

    // Quantities have four decimals: what is not kept in stock is short only where more is reserved than lies there.
    private const decimal SmallestShortage = 0.0001m;

    private static decimal? Thickness(ShimThickness? thickness) => thickness?.Millimetres;
}
