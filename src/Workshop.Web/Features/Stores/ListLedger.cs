using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// What happened to a part, the latest first, a page at a time. Of the very part that the code names: one that was merged keeps its
/// own ledger, which ends with the merging.
/// </summary>
public static class ListLedger
{
    /// <param name="After">The id of the last row of the page before.</param>
    /// <param name="Kind">Only movements of that kind.</param>
    public sealed record Request(string Code, Guid? After = null, int? Take = null, string? Kind = null);

    public sealed record Answer(string Code, string Name, PartUnit Unit, string? MergedInto, IReadOnlyList<Row> Rows, Guid? Next);

    /// <param name="OnHandChange">Negative when it leaves.</param>
    /// <param name="Who">Empty once the person was erased.</param>
    public sealed record Row(
        Guid Id, Instant MovedAt, MovementKind Kind, decimal OnHandChange, decimal ReservedChange, string Place, string? Lot,
        ShimThickness? ThicknessMm, int? JobCardNumber, string Who, ScrapReason? ScrapReason, string? Remark, Guid? CountId);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Kind).IsWordOf<Request, MovementKind>();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var part = await db.Parts.AsNoTracking().SingleOrDefaultAsync(p => p.Code == request.Code, ct);
        if (part is null)
        {
            return Problem.NotFound($"Part {request.Code}");
        }

        var movements = db.StockMovements.AsNoTracking().Where(m => m.PartId == part.Id);
        if (Words.Read<MovementKind>(request.Kind) is { } kind)
        {
            movements = movements.Where(m => m.Kind == kind);
        }

        if (request.After is { } after)
        {
            var at = await db.StockMovements.Where(m => m.Id == after && m.PartId == part.Id).Select(m => (Instant?)m.MovedAt).SingleOrDefaultAsync(ct);
            if (at is null)
            {
                return Problem.Impossible("after-unknown", "after", $"after is {after}: no movement of {part.Name} has that id; begin at the first page.");
            }

            var moment = at.Value;
            movements = movements.Where(m => EF.Functions.LessThan(ValueTuple.Create(m.MovedAt, m.Id), ValueTuple.Create(moment, after)));
        }

        // The page is cut before anything is joined to it.
        var page = movements.OrderByDescending(m => m.MovedAt).ThenByDescending(m => m.Id).Take((request.Take ?? Slice.Usual) + 1);
        var rows = await (
            from movement in page
            join place in db.StoragePlaces on movement.PlaceId equals place.Id
            join person in db.People on movement.MovedBy equals person.Id
            join lot in db.StockLots on movement.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            join remark in db.Remarks on movement.ReasonRemarkId equals remark.Id into remarks
            from remark in remarks.DefaultIfEmpty()
            orderby movement.MovedAt descending, movement.Id descending
            select new Row(
                movement.Id, movement.MovedAt, movement.Kind, movement.OnHandChange, movement.ReservedChange, place.Name, lot!.Code,
                movement.Thickness, movement.JobCardNumber, person.Name, movement.ScrapReason, remark!.Text, movement.CountId)).ToListAsync(ct);
        var take = request.Take ?? Slice.Usual;
        var mergedInto = part.MergedIntoId is { } id ? await db.Parts.Where(p => p.Id == id).Select(p => p.Code).SingleAsync(ct) : null;
        return new Answer(
            part.Code, part.Name, part.Unit, mergedInto, rows.Count > take ? rows[..take] : rows, rows.Count > take ? rows[take - 1].Id : null);
    }
}
