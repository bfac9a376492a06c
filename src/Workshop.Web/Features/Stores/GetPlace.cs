using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>One place with what lies there, by part, a page at a time.</summary>
public static class GetPlace
{
    /// <param name="Code">What its label says.</param>
    public sealed record Request(string Code, string? After = null, int? Take = null);

    public sealed record Answer(
        Guid Id, string Name, string Code, int WalkOrder, bool Retired, Guid? OpenCountId, IReadOnlyList<Lying> Lying, string? Next, uint RowVersion) : IHasVersion;

    /// <summary>A part there; shims of all thicknesses together.</summary>
    public sealed record Lying(
        string PartCode, string Name, PartKind Kind, PartUnit Unit, decimal OnHand, decimal Reserved, IReadOnlyList<string> Lots);

    public sealed class Validator : FluentValidation.AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Take).IsPageSize();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var place = (await ListPlaces.Handle(new ListPlaces.Request(Retired: true), db, actor, clock, ct)).Value.Places
            .SingleOrDefault(p => p.Code == request.Code);
        if (place is null)
        {
            return Problem.NotFound($"Place {request.Code}");
        }

        var slice = await db.Parts.AsNoTracking()
            .Where(p => string.Compare(p.Code, request.After ?? "") > 0
                && db.StockBalances.Any(b => b.PartId == p.Id && b.PlaceId == place.Id && (b.OnHand != 0 || b.Reserved != 0)))
            .OrderBy(p => p.Code).ToSlice(request.Take, p => p.Code, ct);
        var ids = slice.Rows.Select(p => p.Id).ToList();
        var balances = (await (
            from balance in db.StockBalances.AsNoTracking()
            where balance.PlaceId == place.Id && ids.Contains(balance.PartId)
            join lot in db.StockLots on balance.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            select new { balance, Lot = (string?)lot!.Code }).ToListAsync(ct)).ToLookup(b => b.balance.PartId);
        return new Answer(
            place.Id, place.Name, place.Code, place.WalkOrder, place.Retired, place.OpenCountId,
            [.. slice.Rows.Select(p => new Lying(
                p.Code, p.Name, p.Kind, p.Unit, balances[p.Id].Sum(b => b.balance.OnHand), balances[p.Id].Sum(b => b.balance.Reserved),
                [.. balances[p.Id].Where(b => b.Lot is not null && b.balance.OnHand > 0).Select(b => b.Lot!).Order(StringComparer.Ordinal)]))],
            slice.Next, place.RowVersion);
    }
}
