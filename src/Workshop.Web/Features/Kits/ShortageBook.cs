using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Orders;
using Workshop.Web.Features.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

/// <summary>What all visits to come lack, worked out together: what is free and what comes is shared out once, first to who starts first.</summary>
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
        var visits = await OpenVisits.Read(db, calendar.Time, today, ct);
        var ids = visits.SelectMany(v => v.Lines).Select(l => l.Part?.Id).OfType<Guid>().Distinct().ToList();
        var shelves = await Shelves.Read(db, ids, null, today, ct);
        var deliveries = (await db.ExpectedDeliveries.AsNoTracking()
            .Where(d => ids.Contains(d.PartId) && d.ClosedAt == null && d.Thickness == null)
            .Select(d => new { d.PartId, d.ExpectedOn, d.Quantity }).ToListAsync(ct)).ToLookup(d => d.PartId, d => new PartComing(d.ExpectedOn, d.Quantity));
        var alternatives = await Alternatives.Read(db, ids, today, ct);
        var days = await DeliveryTimes.Read(db, ids, ct);
        var byPart = visits.SelectMany(v => v.Lines, (v, l) => (Visit: v, Line: l)).GroupBy(l => (l.Line.Part?.Id, l.Line.PartCode));
        List<ListShortages.MissingPart> parts =
        [
            .. byPart.Select(g => Missing(
                g.First().Line, [.. g], g.Key.Id is { } id ? shelves[id] : null,
                g.Key.Id is { } coming ? [.. deliveries[coming].OrderBy(d => d.On)] : [],
                g.Key.Id is { } other ? [.. alternatives[other].Select(NotThere.Other)] : [],
                g.Key.Id is { } sold && days.TryGetValue(sold, out var its) ? today.PlusDays(its) : null)).OfType<ListShortages.MissingPart>()
                .OrderBy(p => p.Visits[0].StartsAt).ThenBy(p => p.PartCode, StringComparer.Ordinal),
        ];
        return new ShortageBook(calendar, today, parts);
    }

    private static ListShortages.MissingPart? Missing(
        OpenVisits.Line named, List<(OpenVisits Visit, OpenVisits.Line Line)> lines, PartOnShelves? part,
        List<PartComing> coming, List<KitOnShelf.OtherPart> alternatives, LocalDate? orderedToday)
    {
        // Where others took what was reserved, the visits that come last do without.
        var gone = part?.Shelves.Where(s => !s.Expired).Sum(s => Math.Max(0, s.Reserved - s.OnHand)) ?? 0;
        var wanted = new List<PartWanted>();
        foreach (var (visit, line) in lines.OrderByDescending(l => l.Visit.StartsAt).ThenByDescending(l => l.Visit.Number))
        {
            var lost = Math.Min(gone, line.Reserved);
            gone -= lost;
            var has = line.Issued + line.Reserved - lost;
            var needed = Math.Max(0, line.Needed - has);
            wanted.Add(new PartWanted(visit.Number, visit.StartsAt, needed, Math.Max(0, line.Needed + line.HaveReady - has) - needed));
        }

        var ordered = part?.Part.Discontinued == false ? orderedToday : null;
        var registrations = lines.ToDictionary(l => l.Visit.Number, l => l.Visit);
        var awaited = Shortages.Of(wanted, part?.Free ?? 0, coming, ordered);
        return awaited.Count == 0 ? null : new ListShortages.MissingPart(
            named.PartCode, part?.Part.Name, part?.Part.Unit ?? PartUnit.Piece, awaited.Sum(a => a.NeededShort), awaited.Sum(a => a.ReadyShort),
            part?.Part.Discontinued ?? false, [.. coming.Select(c => new ListShortages.Coming(c.On, c.Quantity))], alternatives,
            [.. awaited.Select(a => new ListShortages.PartOfVisit(
                a.Card, registrations[a.Card].Registration, registrations[a.Card].StartsAt, a.NeededShort, a.ReadyShort, a.ComesOn))]);
    }

    private IReadOnlyList<ListShortages.Waiting> VisitsOf(IReadOnlyList<ListShortages.MissingPart> parts) =>
    [
        .. parts.SelectMany(p => p.Visits, (p, v) => (Part: p, Visit: v)).Where(p => p.Visit.ShortBy > 0)
            .GroupBy(p => p.Visit.JobCardNumber)
            .OrderBy(g => g.First().Visit.StartsAt).ThenBy(g => g.Key)
            .Select(g => WaitingOf([.. g])),
    ];

    private ListShortages.Waiting WaitingOf(List<(ListShortages.MissingPart Part, ListShortages.PartOfVisit Visit)> lacks)
    {
        var visit = lacks[0].Visit;
        var planned = calendar.Time.DayOf(visit.StartsAt);
        var unknown = lacks.Where(l => l.Visit.ComesOn is null).ToList();

        // What was expected before today and is not here yet may come today; work goes on the working day after.
        var earliest = unknown.Count > 0 ? null
            : calendar.FirstOpenDay(lacks.Max(l => LocalDate.Max(l.Visit.ComesOn!.Value, today)).PlusDays(1));
        var what = KitWords.And(lacks.Select(l => $"{l.Part.Unit.Say(l.Visit.ShortBy)} of {l.Part.Name ?? l.Part.PartCode}"
            + (l.Visit.ComesOn is { } on ? $" (expected on {Days.Write(on)})" : l.Part.Discontinued ? " (made no more)" : " (nobody has entered when it comes)")));
        return new ListShortages.Waiting(
            visit.JobCardNumber, visit.Registration, visit.StartsAt, earliest, earliest is null || earliest > planned,
            $"Lacks {what}; planned on {Days.Write(planned)}, " + (earliest is { } day
                ? day > planned ? $"can be done on {Days.Write(day)} at the earliest." : "which leaves time for it."
                : "and nobody knows when it can be done."));
    }
}
