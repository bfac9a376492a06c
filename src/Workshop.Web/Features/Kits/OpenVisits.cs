using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Features.Kits;

/// <summary>A visit that is booked or here, with what its kit wants and what it has of it.</summary>
/// <param name="StartsAt">When the motorcycle is to be here.</param>
/// <param name="Begins">When its work is planned.</param>
/// <param name="On">The day of that, today where it is past: what expires before it is not there for the visit.</param>
internal sealed record OpenVisits(
    int Number, string Registration, Instant StartsAt, Instant Begins, LocalDate On, IReadOnlyList<OpenVisits.Line> Lines)
{
    /// <param name="PartCode">Of the part that is taken; the specification's where the stores do not know it.</param>
    /// <param name="Needed">Of certain and likely items: what only lies ready holds nothing up.</param>
    /// <param name="Held">Reserved for it, by last day, lasting or not.</param>
    /// <param name="Issued">On its bench.</param>
    public sealed record Line(string PartCode, Part? Part, decimal Needed, decimal HaveReady, IReadOnlyList<LotQuantity> Held, decimal Issued);

    /// <summary>All of them, in eight statements however many they are.</summary>
    public static async Task<IReadOnlyList<OpenVisits>> Read(WorkshopDbContext db, WorkshopTime time, LocalDate today, CancellationToken ct)
    {
        var cards = await (
            from card in db.JobCards.AsNoTracking()
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            where card.State == JobCardState.Booked || card.State == JobCardState.CheckedIn
            orderby card.StartsAt, card.Number
            select new { card.Number, card.State, card.StartsAt, card.EngineModelVersionId, motorcycle.Registration }).ToListAsync(ct);
        var numbers = cards.ConvertAll(c => c.Number);
        var works = await WorkBegins(db, numbers, ct);
        var items = (await db.JobCardItems.AsNoTracking().Where(i => numbers.Contains(i.JobCardNumber)).ToListAsync(ct)).ToLookup(i => i.JobCardNumber);
        var versions = cards.ConvertAll(c => c.EngineModelVersionId).Distinct().ToList();
        var specifications = await db.EngineModelVersions.AsNoTracking().Where(v => versions.Contains(v.Id)).ToDictionaryAsync(v => v.Id, v => v.Specification, ct);
        var parts = await PartsByCode.Read(db, [.. specifications.Values.SelectMany(NamedParts.CodesOf).Distinct()], ct);
        var instead = await KitCase.Substitutions(db, numbers, ct);
        var held = await Held(db, numbers, ct);

        // Most visits are alike: a kit is worked out once for each version of a specification and set of items.
        var kits = new Dictionary<(Guid, string), Kit>();
        Kit KitOf(Guid version, IEnumerable<JobCardItem> booked)
        {
            var specification = specifications[version];
            var chosen = booked.OrderBy(i => i.ServiceItemCode, StringComparer.Ordinal)
                .ToLookup(i => i.Likelihood != Likelihood.Possible || i.StartedAt is not null, i => i.ServiceItemCode);
            var key = (version, $"{string.Join(' ', chosen[true])}/{string.Join(' ', chosen[false])}");
            if (!kits.TryGetValue(key, out var kit))
            {
                kits[key] = kit = Kit.Of(specification, chosen[true].Select(ItemOf), chosen[false].Select(ItemOf), parts);
            }

            return kit;

            ServiceItem ItemOf(string code) => specification.ServiceItems.Single(s => s.Code == code);
        }

        return [.. cards.Select(card =>
        {
            var begins = works.TryGetValue(card.Number, out var planned) ? planned : card.StartsAt;
            var visit = new KitCase(
                KitOf(card.EngineModelVersionId, items[card.Number]), parts,
                instead[card.Number].ToDictionary(i => i.Original, i => i.StandIn),
                LocalDate.Max(today, time.DayOf(begins)));
            return new OpenVisits(card.Number, card.Registration, card.StartsAt, begins, visit.UsedOn, [.. LinesOf(visit, held[card.Number])]);
        })];
    }

    /// <summary>When the work of each card is planned, where it has a plan.</summary>
    public static async Task<IReadOnlyDictionary<int, Instant>> WorkBegins(WorkshopDbContext db, IReadOnlyCollection<int> cards, CancellationToken ct) =>
        await db.PlannedPhases.AsNoTracking().Where(p => p.Phase == VisitPhase.Work && cards.Contains(p.JobCardNumber))
            .ToDictionaryAsync(p => p.JobCardNumber, p => p.Span.Start, ct);

    /// <summary>Those cards that hold something with a last day, by number.</summary>
    public static async Task<IReadOnlyList<int>> HoldingWhatEnds(WorkshopDbContext db, IReadOnlyCollection<int> cards, CancellationToken ct) => await (
        from movement in db.StockMovements.AsNoTracking()
        join lot in db.StockLots on movement.LotId equals lot.Id
        where movement.JobCardNumber != null && cards.Contains(movement.JobCardNumber.Value) && lot.ExpiresOn != null
        group movement by movement.JobCardNumber!.Value into held
        where held.Sum(m => m.ReservedChange) > 0
        orderby held.Key
        select held.Key).ToListAsync(ct);

    private static IEnumerable<Line> LinesOf(KitCase visit, IEnumerable<HeldPart> held)
    {
        var own = held.ToLookup(h => h.PartId);
        return visit.Kit.Lines
            .GroupBy(l => (visit.TakenFor(l)?.Id, Code: visit.TakenFor(l)?.Code ?? l.PartCode))
            .Select(g => new Line(
                g.Key.Code, visit.TakenFor(g.First()), g.Sum(l => l.Needed), g.Sum(l => l.HaveReady),
                [.. own[g.Key.Id ?? Guid.Empty].Where(h => h.Reserved > 0).Select(h => new LotQuantity(h.ExpiresOn, h.Reserved))],
                own[g.Key.Id ?? Guid.Empty].Sum(h => h.Issued)));
    }

    private sealed record HeldPart(Guid PartId, LocalDate? ExpiresOn, decimal Reserved, decimal Issued);

    private static async Task<ILookup<int, HeldPart>> Held(WorkshopDbContext db, List<int> numbers, CancellationToken ct)
    {
        var rows = await (
            from movement in db.StockMovements.AsNoTracking()
            join part in db.Parts on movement.PartId equals part.Id
            join lot in db.StockLots on movement.LotId equals lot.Id into lots
            from lot in lots.DefaultIfEmpty()
            where movement.JobCardNumber != null && numbers.Contains(movement.JobCardNumber.Value)
                && movement.Thickness == null && movement.Condition == StockCondition.New
            group movement by new { Card = movement.JobCardNumber!.Value, PartId = part.MergedIntoId ?? part.Id, ExpiresOn = lot == null ? null : lot.ExpiresOn } into held
            select new
            {
                held.Key,
                Reserved = held.Sum(m => m.ReservedChange),
                Issued = -held.Where(m => m.Kind == MovementKind.Issued || m.Kind == MovementKind.Returned).Sum(m => m.OnHandChange),
            }).ToListAsync(ct);
        return rows.ToLookup(r => r.Key.Card, r => new HeldPart(r.Key.PartId, r.Key.ExpiresOn, r.Reserved, r.Issued));
    }
}
