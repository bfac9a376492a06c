using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Parts with what is there of each, by code, a page at a time.</summary>
public static class ListStock
{
    /// <param name="Kind">Only parts of that kind: shims, for the shim boxes.</param>
    public sealed record Request(string? After = null, string? Search = null, int? Take = null, string? Kind = null);

    /// <param name="OnHand">In the part's unit, whoever has reserved it.</param>
    /// <param name="Reserved">For cards, of what is on hand.</param>
    /// <param name="At">Where it lies; of shims, thickness by thickness.</param>
    public sealed record Row(
        string Code,
        string Name,
        PartKind Kind,
        PartUnit Unit,
        bool Discontinued,
        decimal OnHand,
        decimal Reserved,
        IReadOnlyList<Lying> At);

    public sealed record Lying(
        Guid PlaceId, string Place, decimal? ThicknessMm, StockCondition Condition, decimal OnHand, decimal Reserved);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Kind).IsWordOf<Request, PartKind>();
            RuleFor(r => r.Search).IsAtMost(Limits.Name);
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var parts = db.Parts.AsNoTracking();
        if (Words.Read<PartKind>(request.Kind) is { } kind)
        {
            parts = parts.Where(p => p.Kind == kind);
        }

        if (request.Search is { Length: > 0 } search)
        {
            var like = $"%{Slice.EscapeLike(search)}%";
            parts = parts.Where(p => EF.Functions.ILike(p.Code, like) || EF.Functions.ILike(p.Name, like));
        }

        if (request.After is { Length: > 0 } after)
        {
            parts = parts.Where(p => string.Compare(p.Code, after) > 0);
        }

        var slice = await parts.OrderBy(p => p.Code).ToSlice(request.Take, p => p.Code, ct);
        var ids = slice.Rows.Select(p => p.Id).ToList();
        var lying = (await (
            from balance in db.StockBalances.AsNoTracking()
            join place in db.StoragePlaces on balance.PlaceId equals place.Id
            where ids.Contains(balance.PartId) && (balance.OnHand != 0 || balance.Reserved != 0)
            orderby balance.Thickness, place.Name, balance.Condition
            select new { balance, place.Name }).ToListAsync(ct)).ToLookup(l => l.balance.PartId);
        return new Slice<Row>([.. slice.Rows.Select(p => new Row(
            p.Code, p.Name, p.Kind, p.Unit, p.Discontinued,
            lying[p.Id].Sum(l => l.balance.OnHand), lying[p.Id].Sum(l => l.balance.Reserved),
            [.. lying[p.Id].Select(l => new Lying(
                l.balance.PlaceId, l.Name, Thickness(l.balance.Thickness), l.balance.Condition, l.balance.OnHand, l.balance.Reserved))]))],
            slice.Next);
    }

    private static decimal? Thickness(ShimThickness? thickness) => thickness?.Millimetres;
}
