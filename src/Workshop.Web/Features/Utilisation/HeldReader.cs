using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Utilisation;

/// <summary>What bays and technicians were held by, and what was sold.</summary>
internal static class HeldReader
{
    /// <summary>Occupancies as they came to pass: those that stand, and of signed-off visits what had begun, until the sign-off.</summary>
    public static async Task<IReadOnlyList<HeldBy>> Read(WorkshopDbContext db, Interval period, CancellationToken ct)
    {
        var numbers = await db.Occupancies.FromSql($"select * from occupancies where span && {period}")
            .Select(o => o.JobCardNumber).Distinct().ToListAsync(ct);
        var rows = (await db.Occupancies.AsNoTracking().Where(o => numbers.Contains(o.JobCardNumber)).ToListAsync(ct))
            .ToLookup(o => o.JobCardNumber);
        var signed = await db.SignOffs.Where(s => numbers.Contains(s.JobCardNumber))
            .ToDictionaryAsync(s => s.JobCardNumber, s => (Instant?)s.SignedAt, ct);
        return [.. rows.SelectMany(card =>
        {
            var signedAt = signed.GetValueOrDefault(card.Key);
            return HeldSpans.Standing([.. card], HeldSpans.LastPlan(card), signedAt)
                .Select(r => new HeldBy(r.JobCardNumber, r.ResourceId, r.Phase, HeldSpans.Until(r.Span, signedAt)));
        })];
    }

    /// <summary>Per card that was signed off in the period: labour of what was done, each access once.</summary>
    public static async Task<IReadOnlyDictionary<int, int>> Sold(WorkshopDbContext db, Interval period, CancellationToken ct)
    {
        var (start, end) = (period.Start, period.End);
        var done = await (
            from signOff in db.SignOffs
            join card in db.JobCards on signOff.JobCardNumber equals card.Number
            join item in db.DoneItems on (int?)card.Number equals item.JobCardNumber
            where signOff.SignedAt >= start && signOff.SignedAt < end
            select new { card.Number, card.EngineModelVersionId, item.ServiceItemCode }).ToListAsync(ct);
        var versions = done.Select(d => d.EngineModelVersionId).Distinct().ToList();
        var specifications = (await db.EngineModelVersions.AsNoTracking().Where(v => versions.Contains(v.Id)).ToListAsync(ct))
            .ToDictionary(v => v.Id, v => v.Specification);
        return done.GroupBy(d => (d.Number, d.EngineModelVersionId)).ToDictionary(card => card.Key.Number, card =>
        {
            var specification = specifications[card.Key.EngineModelVersionId];
            return VisitDuration.Of(specification, [.. card.Select(d => d.ServiceItemCode).Distinct()
                .Select(code => VisitItems.Find(specification, code)).OfType<Domain.EngineModels.ServiceItem>()
                .Select(item => new ChosenItem(item, Likelihood.Certain))]).BookedMinutes;
        });
    }
}
