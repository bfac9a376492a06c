using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Orders;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// What all visits to come lack now, worked out together by <see cref="StockShares"/>, as the projected stock is: there it is asked what
/// will not be there on the visit's day, here what is not there yet and what that delays.
/// </summary>
internal sealed class ShortageBook
{
    private readonly OpeningCalendar calendar;
    private readonly LocalDate today;

    private ShortageBook(OpeningCalendar calendar, LocalDate today, IReadOnlyList<ListShortages.MissingPart> parts)
    {
        (this.calendar, this.today) = (calendar, today);
        All = new ListShortages.Answer(parts, VisitsOf(parts));
    }

    public ListShortages.Answer All { get; }

    /// <summary>The part of one card, as it came out with all others counted.</summary>
    public ListShortages.Answer Of(int number)
    {
        var parts = All.Parts
            .Where(p => p.Visits.Any(v => v.JobCardNumber == number))
            .Select(p => p.Visits.Single(v => v.JobCardNumber == number) is var own
                ? p with { ShortBy = own.ShortBy, ReadyShortBy = own.ReadyShortBy, Visits = [own] }
                : p)
            .ToList();
        return new ListShortages.Answer(parts, [.. All.Visits.Where(v => v.JobCardNumber == number)]);
    }

    public static async Task<ShortageBook> Read(WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var today = calendar.Time.DayOf(clock.GetCurrentInstant());
        var kits = await BookedKits.Read(db, calendar.Time, today, ct);
        var ids = kits.Parts.Keys.ToList();
        var there = await PartsOnHand.Read(db, ids, today, ct);
        var deliveries = await PartsOnHand.Deliveries(db, calendar, today, ct);
        var alternatives = await Alternatives.Read(db, ids, today, ct);
        var days = await DeliveryTimes.Read(db, ids, ct);
        List<ListShortages.MissingPart> parts =
        [
            .. kits.Wanted.GroupBy(w => (w.Part.Part?.Id, w.Part.Code)).Select(g => Missing(
                g.First().Part, [.. g.Select(w => w.Need)], kits.Visits, g.Key.Id is { } id ? there[id].Lots : [],
                g.Key.Id is { } coming ? [.. deliveries[coming].OrderBy(d => d.ExpectedOn)] : [],
                g.Key.Id is { } other ? [.. alternatives[other].Select(NotThere.Other)] : [],
                g.Key.Id is { } sold && days.TryGetValue(sold, out var its) ? today.PlusDays(its) : null)).OfType<ListShortages.MissingPart>()
                .OrderBy(p => p.Visits[0].On).ThenBy(p => p.Visits[0].StartsAt).ThenBy(p => p.PartCode, StringComparer.Ordinal),
        ];
        return new ShortageBook(calendar, today, parts);
    }

    private static ListShortages.MissingPart? Missing(
        WantedPart named, List<BookedNeed> needs, IReadOnlyDictionary<int, OpenVisits> visits, IReadOnlyList<LotThere> lots,
        List<Coming> coming, List<KitOnShelf.OtherPart> alternatives, LocalDate? orderedToday)
    {
        var part = named.Part;
        var lacking = StockShares.Of(lots, coming, needs).Where(s => s.NotHere > 0 || s.ReadyNotHere > 0).ToList();
        return lacking.Count == 0 ? null : new ListShortages.MissingPart(
            named.Code, part?.Name, part?.Unit ?? PartUnit.Piece, lacking.Sum(s => s.NotHere), lacking.Sum(s => s.ReadyNotHere),
            part?.Discontinued ?? false, [.. coming.Select(c => new ListShortages.Coming(c.ExpectedOn, c.Quantity))], alternatives,
            [.. lacking.Select(s => new ListShortages.PartOfVisit(
                s.Need.JobCardNumber, visits[s.Need.JobCardNumber].Registration, visits[s.Need.JobCardNumber].StartsAt, s.Need.On,
                s.NotHere, s.ReadyNotHere, s.ShortOnDay, s.NotOnOrder == 0,
                s.NotHere == 0 ? null : s.NotOnOrder == 0 ? s.Last?.ExpectedOn : part?.Discontinued == false ? orderedToday : null)
            {
                Ends = LotWords.Ends(part?.Unit ?? PartUnit.Piece, lots.Select(l => new LotQuantity(l.ExpiresOn, l.OnHand)), s.Need.On),
            })]);
    }

    private IReadOnlyList<ListShortages.Waiting> VisitsOf(IReadOnlyList<ListShortages.MissingPart> parts) =>
    [
        .. parts.SelectMany(p => p.Visits, (p, v) => (Part: p, Visit: v)).Where(p => p.Visit.ShortBy > 0)
            .GroupBy(p => p.Visit.JobCardNumber)
            .OrderBy(g => g.First().Visit.On).ThenBy(g => g.First().Visit.StartsAt).ThenBy(g => g.Key)
            .Select(g => WaitingOf([.. g])),
    ];

    private ListShortages.Waiting WaitingOf(List<(ListShortages.MissingPart Part, ListShortages.PartOfVisit Visit)> lacks)
    {
        var visit = lacks[0].Visit;
        var planned = visit.On;
        var unknown = lacks.Where(l => l.Visit.ComesOn is null).ToList();

        // What was expected before today and is not here yet may come today; work goes on the working day after.
        var earliest = unknown.Count > 0 ? null
            : calendar.FirstOpenDay(lacks.Max(l => LocalDate.Max(l.Visit.ComesOn!.Value, today)).PlusDays(1));
        var what = KitWords.And(lacks.Select(l => $"{l.Part.Unit.Say(l.Visit.ShortBy)} of {l.Part.Name ?? l.Part.PartCode}"
            + (l.Visit.Ends is { } ends ? $" ({ends})" : "") + (l.Visit.ComesOn is { } on ? l.Visit.Ordered ? $" (expected on {Days.Write(on)})" : $" (not on order; ordered today it comes on {Days.Write(on)})"
                : l.Part.Discontinued ? " (made no more)" : " (nobody has entered when it comes)")));
        return new ListShortages.Waiting(
            visit.JobCardNumber, visit.Registration, visit.StartsAt, earliest, earliest is null || earliest > planned,
            $"Lacks {what}; planned on {Days.Write(planned)}, " + (earliest is { } day
                ? day > planned ? $"can be done on {Days.Write(day)} at the earliest." : "which leaves time for it."
                : "and nobody knows when it can be done."));
    }
}
