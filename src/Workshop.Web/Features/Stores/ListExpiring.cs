using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Lots that lie in the stores and are expired, or will be soon; those that expire first come first.</summary>
public static class ListExpiring
{
    public const int UsualDays = 60;
    private const int MostDays = 3_650;
    private const int Most = 500;

    /// <param name="WithinDays">60 where it is not given.</param>
    public sealed record Request(int? WithinDays = null);

    /// <param name="More">Lots beyond those that are listed.</param>
    public sealed record Answer(LocalDate Today, int WithinDays, IReadOnlyList<Row> Rows, bool More);

    public sealed record Row(
        string PartCode, string Name, PartUnit Unit, string Lot, LocalDate ExpiresOn, bool Expired, string PlaceCode, string Place, decimal OnHand, decimal Reserved);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.WithinDays).IsWhole(0, MostDays);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var days = request.WithinDays ?? UsualDays;
        var until = today.PlusDays(days);
        var rows = await (
            from lot in db.StockLots.AsNoTracking()
            where lot.ExpiresOn != null && lot.ExpiresOn <= until
            join balance in db.StockBalances on lot.Id equals balance.LotId
            where balance.OnHand > 0
            join part in db.Parts on balance.PartId equals part.Id
            join place in db.StoragePlaces on balance.PlaceId equals place.Id
            orderby lot.ExpiresOn, part.Code, lot.Code, place.WalkOrder
            select new Row(
                part.Code, part.Name, part.Unit, lot.Code, lot.ExpiresOn!.Value, lot.ExpiresOn < today, place.Code, place.Name,
                balance.OnHand, balance.Reserved)).Take(Most + 1).ToListAsync(ct);
        return new Answer(today, days, rows.Count > Most ? rows[..Most] : rows, rows.Count > Most);
    }
}
