using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Kits;

/// <summary>What stands in for a part of the kit on one card.</summary>
/// <param name="Reason">Why, as it was typed.</param>
internal sealed record StandIn(Part Part, string? Reason);

/// <summary>
/// The kit of a visit, with what its codes mean in the stores and what stands in for what on its card. The one way from a visit
/// to its kit: what is fitted once, merged or substituted is known here only.
/// </summary>
/// <param name="Parts">By code of the specification; codes that the stores do not know are left out.</param>
/// <param name="Instead">By id of the part that it stands in for.</param>
/// <param name="UsedOn">The day on which the kit is used: what expires before it is not offered.</param>
internal sealed record KitCase(
    Kit Kit, IReadOnlyDictionary<string, Part> Parts, IReadOnlyDictionary<Guid, StandIn> Instead, LocalDate UsedOn)
{
    /// <summary>How much of each part the card wants on its bench, by part as it is taken.</summary>
    public IReadOnlyDictionary<Guid, decimal> Wanted => Kit.Lines
        .Where(l => l.Part is not null)
        .GroupBy(l => TakenFor(l)!.Id, l => l.Wanted)
        .ToDictionary(g => g.Key, g => g.Sum());

    /// <summary>The part that is taken for a line: its own, or what stands in for it.</summary>
    public Part? TakenFor(KitLine line) => line.Part is { } part ? TakenFor(part) : null;

    public Part TakenFor(Part part) => Instead.GetValueOrDefault(part.Id)?.Part ?? part;

    /// <summary>The kit of a card as its items now are.</summary>
    public static async Task<KitCase> OfCard(WorkshopDbContext db, OpenCard open, IClock clock, CancellationToken ct) => await Of(
        db, open.Specification, open.ItemsUnderWay, open.ItemsHeldReady, open.Card.Number, await UsedOnDay(db, open.Card, clock, ct), ct);

    /// <summary>The kit of a visit that is on a card, or only thought of.</summary>
    /// <param name="cardNumber">Absent for a visit that is not booked yet.</param>
    public static async Task<KitCase> Of(
        WorkshopDbContext db, EngineSpecification specification, IEnumerable<ServiceItem> underWay, IEnumerable<ServiceItem> heldReady,
        int? cardNumber, LocalDate usedOn, CancellationToken ct)
    {
        var parts = await NamedParts.Read(db, specification, ct);
        var instead = cardNumber is { } number ? (await Substitutions(db, [number], ct))[number] : [];
        return new KitCase(
            Kit.Of(specification, underWay, heldReady, parts), parts, instead.ToDictionary(i => i.Original, i => i.StandIn), usedOn);
    }

    /// <summary>The day on which the work of an open visit begins; today where that is past, and once the card is closed.</summary>
    public static async Task<LocalDate> UsedOnDay(WorkshopDbContext db, JobCard card, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var today = time.DayOf(clock.GetCurrentInstant());
        if (card.State is not (JobCardState.Booked or JobCardState.CheckedIn))
        {
            return today;
        }

        var works = await OpenVisits.WorkBegins(db, [card.Number], ct);
        return LocalDate.Max(today, time.DayOf(works.TryGetValue(card.Number, out var begins) ? begins : card.StartsAt));
    }

    /// <summary>What stands in for what, by card: the last word on each part, and only where that is another part.</summary>
    public static async Task<ILookup<int, (Guid Original, StandIn StandIn)>> Substitutions(
        WorkshopDbContext db, IReadOnlyCollection<int> cards, CancellationToken ct)
    {
        var rows = await (
            from row in db.KitSubstitutions.AsNoTracking()
            join named in db.Parts on row.PartCode equals named.Code
            join chosen in db.Parts on row.InsteadId equals chosen.Id
            from meant in db.Parts.Where(p => p.Id == (chosen.MergedIntoId ?? chosen.Id))
            join remark in db.Remarks on row.ReasonRemarkId equals remark.Id into remarks
            from remark in remarks.DefaultIfEmpty()
            where cards.Contains(row.JobCardNumber)
            orderby row.ChosenAt, row.Id
            select new { row.JobCardNumber, Original = named.MergedIntoId ?? named.Id, Part = meant, Reason = remark == null ? null : remark.Text })
            .ToListAsync(ct);
        return rows.GroupBy(r => (r.JobCardNumber, r.Original)).Select(g => g.Last()).Where(r => r.Part.Id != r.Original)
            .ToLookup(r => r.JobCardNumber, r => (r.Original, new StandIn(r.Part, r.Reason)));
    }
}
