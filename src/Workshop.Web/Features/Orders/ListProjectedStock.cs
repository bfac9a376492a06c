using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>
/// The parts that booked visits want, on the days to come: those that will not be enough first, with the visits that are short and until
/// when.
/// </summary>
public static class ListProjectedStock
{
    public const int UsualDays = 90;
    public const int MostDays = 366;

    /// <param name="Days">From today.</param>
    /// <param name="OnlyShort">Only what will not be enough.</param>
    public sealed record Request(int? Days = null, bool? OnlyShort = null);

    /// <param name="Visits">That are booked until then, or here.</param>
    /// <param name="Unknown">Parts that kits name and the stores do not know: nothing can be said of them.</param>
    public sealed record Answer(LocalDate Today, LocalDate Until, int Visits, IReadOnlyList<Row> Rows, IReadOnlyList<UnknownPart> Unknown);

    /// <param name="Expired">Lies there, but beyond its last day; not counted.</param>
    /// <param name="Comes">Expected until then.</param>
    /// <param name="ExpiresUnused">Of what is on hand, what expires until then before a visit wants it.</param>
    /// <param name="Needed">By the visits until then.</param>
    /// <param name="HaveReady">What may be wanted beside that.</param>
    /// <param name="Lowest">The lowest that it will be; below zero where it is not enough.</param>
    /// <param name="FirstBelowZero">Absent where it is enough.</param>
    /// <param name="FirstBelowZeroIfAllUsed">If all that lies ready were used as well.</param>
    /// <param name="ShortVisits">Visits that cannot have all they need on their day, by day.</param>
    public sealed record Row(
        string PartCode,
        string Name,
        PartUnit Unit,
        decimal OnHand,
        decimal Expired,
        decimal ExpiresUnused,
        decimal Comes,
        decimal Needed,
        decimal HaveReady,
        decimal Lowest,
        LocalDate? FirstBelowZero,
        LocalDate? FirstBelowZeroIfAllUsed,
        IReadOnlyList<ShortVisit> ShortVisits)
    {
        public bool IsShort => FirstBelowZero is not null || ShortVisits.Count > 0;
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Days).IsWhole(1, MostDays);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var today = calendar.Time.DayOf(clock.GetCurrentInstant());
        var until = today.PlusDays(request.Days ?? UsualDays);
        var kits = await BookedKits.Read(db, calendar.Time, today, ct);
        var there = await PartsOnHand.Read(db, [.. kits.Parts.Keys], today, ct);
        var deliveries = await PartsOnHand.Deliveries(db, calendar, today, ct);
        var rows = kits.Needs.Where(w => w.Any(n => n.On <= until && n.Needed + n.HaveReady > 0)).Select(wanted =>
        {
            var (part, onHand, shown) = (kits.Parts[wanted.Key], there[wanted.Key], wanted.Where(n => n.On <= until).ToList());
            var coming = deliveries[wanted.Key].Where(d => d.UsableFrom <= until).ToList();
            var stock = ProjectedStock.Of(new DateInterval(today, until), onHand.Lots, [.. deliveries[wanted.Key]], [.. wanted]);
            return new Row(
                part.Code, part.Name, part.Unit, onHand.OnHand, onHand.Expired, stock.Days.Sum(d => d.Expires), coming.Sum(d => d.Quantity), shown.Sum(n => n.Needed),
                shown.Sum(n => n.HaveReady), stock.Lowest, stock.FirstBelowZero, stock.FirstBelowZeroIfAllUsed, stock.ShortVisits);
        });
        return new Answer(
            today, until, kits.Visits.Values.Count(v => v.On <= until),
            [.. rows.Where(r => r.IsShort || request.OnlyShort != true)
                .OrderBy(r => r.FirstBelowZero ?? (r.ShortVisits.Count > 0 ? r.ShortVisits[0].On : LocalDate.MaxIsoValue))
                .ThenBy(r => r.FirstBelowZeroIfAllUsed ?? LocalDate.MaxIsoValue)
                .ThenBy(r => r.PartCode, StringComparer.Ordinal)],
            kits.Unknown(until));
    }
}
