using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Orders;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Features.Orders;

/// <summary>A part that a kit names and the stores do not know.</summary>
public sealed record UnknownPart(string PartCode, IReadOnlyList<int> JobCardNumbers);

/// <summary>
/// What the visits that are booked, or here, still want of each part on the day on which their work begins. Certain and likely items
/// are needed; what may turn out to be wanted lies ready, as the search for slots has it. What was issued is wanted no more.
/// </summary>
/// <param name="Visits">How many there are until then.</param>
/// <param name="Parts">By id, of those that are wanted.</param>
/// <param name="Needs">By part.</param>
internal sealed record BookedKits(
    int Visits, IReadOnlyDictionary<Guid, Part> Parts, ILookup<Guid, BookedNeed> Needs, IReadOnlyList<UnknownPart> Unknown)
{
    private sealed record Visit(int Number, Guid VersionId, LocalDate On);

    private sealed record Wanted(string PartCode, decimal Needed, decimal HaveReady);

    /// <summary>Kits are worked out once for each version of a specification and set of items: most visits are alike.</summary>
    /// <param name="until">The last day of work that counts.</param>
    public static async Task<BookedKits> Read(WorkshopDbContext db, WorkshopTime time, LocalDate today, LocalDate until, CancellationToken ct)
    {
        var visits = await ReadVisits(db, time, today, until, ct);
        var open = visits.Select(v => v.Number).ToHashSet();
        var versionIds = visits.Select(v => v.VersionId).Distinct().ToList();
        var specifications = await db.EngineModelVersions.AsNoTracking().Where(v => versionIds.Contains(v.Id))
            .ToDictionaryAsync(v => v.Id, v => v.Specification, ct);
        var items = (await OpenCards(db).Join(db.JobCardItems, c => c.Number, i => i.JobCardNumber, (_, i) => i).AsNoTracking().ToListAsync(ct))
            .Where(i => open.Contains(i.JobCardNumber)).ToLookup(i => i.JobCardNumber);
        var moved = await ReadMoved(db, ct);

        var kits = new Dictionary<(Guid, string), IReadOnlyList<Wanted>>();
        IReadOnlyList<Wanted> KitOf(Visit visit)
        {
            var booked = items[visit.Number].OrderBy(i => i.ServiceItemCode, StringComparer.Ordinal).ToList();
            var key = (visit.VersionId, string.Join(' ', booked.Select(i => $"{(IsNeeded(i) ? '+' : '?')}{i.ServiceItemCode}")));
            if (!kits.TryGetValue(key, out var kit))
            {
                var specification = specifications[visit.VersionId];
                var known = specification.ServiceItems.ToDictionary(s => s.Code, StringComparer.Ordinal);
                kit = [.. Kit.Of(
                    specification,
                    booked.Where(IsNeeded).Select(i => known[i.ServiceItemCode]),
                    booked.Where(i => !IsNeeded(i)).Select(i => known[i.ServiceItemCode]))
                    .Lines.Select(l => new Wanted(l.PartCode, l.Needed, l.HaveReady))];
                kits.Add(key, kit);
            }

            return kit;
        }

        var wanted = visits.SelectMany(v => KitOf(v).Select(w => (Visit: v, Wanted: w))).ToList();
        var parts = await PartsByCode.Read(db, [.. wanted.Select(w => w.Wanted.PartCode).Distinct()], ct);
        var needs = wanted.Where(w => parts.ContainsKey(w.Wanted.PartCode))
            .GroupBy(w => (parts[w.Wanted.PartCode].Id, w.Visit))
            .Select(g => (g.Key.Id, Need: Remaining(g.Key.Visit, g.Sum(w => w.Wanted.Needed), g.Sum(w => w.Wanted.HaveReady),
                moved.GetValueOrDefault((g.Key.Visit.Number, g.Key.Id)))))
            .Where(n => n.Need.Needed > 0 || n.Need.HaveReady > 0);
        return new BookedKits(
            visits.Count,
            parts.Values.DistinctBy(p => p.Id).ToDictionary(p => p.Id),
            needs.ToLookup(n => n.Id, n => n.Need),
            [.. wanted.Where(w => !parts.ContainsKey(w.Wanted.PartCode)).GroupBy(w => w.Wanted.PartCode, w => w.Visit.Number, StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new UnknownPart(g.Key, [.. g.Order()]))]);
    }

    private static bool IsNeeded(JobCardItem item) => item.Likelihood != Likelihood.Possible || item.StartedAt is not null;

    private static IQueryable<JobCard> OpenCards(WorkshopDbContext db) =>
        db.JobCards.Where(c => c.State == JobCardState.Booked || c.State == JobCardState.CheckedIn);

    /// <summary>Whose day has come, or passed, wants its kit today.</summary>
    private static async Task<IReadOnlyList<Visit>> ReadVisits(
        WorkshopDbContext db, WorkshopTime time, LocalDate today, LocalDate until, CancellationToken ct)
    {
        var end = time.WholeDay(until).End;
        var cards = await (
            from card in OpenCards(db).AsNoTracking()
            join phase in db.PlannedPhases.Where(p => p.Phase == VisitPhase.Work) on card.Number equals phase.JobCardNumber into works
            from work in works.DefaultIfEmpty()
            where card.StartsAt < end
            select new { card.Number, card.EngineModelVersionId, card.StartsAt, Work = (Interval?)work.Span }).ToListAsync(ct);
        return [.. cards
            .Select(c => new Visit(c.Number, c.EngineModelVersionId, LocalDate.Max(time.DayOf(c.Work?.Start ?? c.StartsAt), today)))
            .Where(v => v.On <= until)];
    }

    /// <summary>What was issued to each open visit, returns taken off, and what it still holds.</summary>
    private static async Task<Dictionary<(int, Guid), (decimal Issued, decimal Reserved)>> ReadMoved(WorkshopDbContext db, CancellationToken ct) =>
        (await (
            from card in OpenCards(db)
            join movement in db.StockMovements on card.Number equals movement.JobCardNumber
            where movement.Thickness == null && movement.Condition == StockCondition.New
            group movement by new { card.Number, movement.PartId } into moves
            select new { moves.Key, Issued = -moves.Sum(m => m.OnHandChange), Reserved = moves.Sum(m => m.ReservedChange) }).ToListAsync(ct))
        .ToDictionary(m => (m.Key.Number, m.Key.PartId), m => (m.Issued, m.Reserved));

    private static BookedNeed Remaining(Visit visit, decimal needed, decimal ready, (decimal Issued, decimal Reserved) moved) => new(
        visit.Number, visit.On, Math.Max(needed - moved.Issued, 0), Math.Clamp(needed + ready - moved.Issued, 0, ready), Math.Max(moved.Reserved, 0));
}
