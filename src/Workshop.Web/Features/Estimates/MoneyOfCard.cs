using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Estimates;

/// <summary>What was agreed of a visit, what it would now be, and, once it is signed off, what it came to.</summary>
/// <param name="Newest">The newest estimate of the visit itself, answered or not; nothing where none was made.</param>
/// <param name="Sum">Absent where nothing was agreed.</param>
/// <param name="Final">Absent until the card is signed off.</param>
internal sealed record MoneyOfCard(int Number, string Currency, Estimate? Newest, EstimateAnswer? NewestAnswer, AgreedSum? Sum, FinalSum? Final)
{
    public static async Task<MoneyOfCard> Read(WorkshopDbContext db, OpenCard open, IClock clock, CancellationToken ct)
    {
        var number = open.Card.Number;
        var estimates = await db.Estimates.AsNoTracking().Where(e => e.JobCardNumber == number).OrderBy(e => e.Version).ToListAsync(ct);
        var ids = estimates.Select(e => e.Id).ToList();
        var answers = await db.EstimateAnswers.AsNoTracking().Where(a => a.EstimateId != null && ids.Contains(a.EstimateId.Value))
            .OrderBy(a => a.RecordedAt).ThenBy(a => a.Id).ToListAsync(ct);
        var last = answers.GroupBy(a => a.EstimateId!.Value).ToDictionary(g => g.Key, g => g.Last());
        var closed = open.Card.State == JobCardState.SignedOff;

        var withdrawn = await db.Findings.Where(f => f.JobCardNumber == number && f.WithdrawnAt != null).Select(f => f.Id).ToListAsync(ct);

        // Of the visit and of each finding the newest that was answered holds, if it was agreed.
        var standing = estimates.Where(e => last.ContainsKey(e.Id) && (e.FindingId is null || !withdrawn.Contains(e.FindingId.Value))).GroupBy(e => e.FindingId)
            .Select(g => g.Last()).Where(e => last[e.Id].Decision == EstimateDecision.Agreed).Select(e => e.Id).ToList();
        var agreed = standing.Count == 0 ? [] : await AgreedLines(db, standing, ct);
        var newest = estimates.LastOrDefault(e => e.FindingId is null);
        var used = closed ? await Used(db, number, ct) : [];
        if (standing.Count == 0 && !closed)
        {
            return new MoneyOfCard(number, newest?.Currency ?? await CurrencyOf(db, ct), newest, newest is null ? null : last.GetValueOrDefault(newest.Id), null, null);
        }

        var items = EstimateCase.ItemsOf(open);
        var prices = await EstimateCase.PricesFor(db, open, null, used.Select(u => u.Code), clock, ct);
        var sum = standing.Count == 0 ? null : AgreedSum.Of(agreed, EstimateProposal.Of(open.Specification, items, prices));
        var final = closed ? FinalSum.Of(open.Specification, await Done(db, open, ct), used, agreed, prices) : null;
        return new MoneyOfCard(number, newest?.Currency ?? prices.Currency, newest, newest is null ? null : last.GetValueOrDefault(newest.Id), sum, final);
    }

    private static async Task<IReadOnlyList<AgreedLine>> AgreedLines(WorkshopDbContext db, List<Guid> estimates, CancellationToken ct) =>
        [.. (await db.EstimateLines.AsNoTracking().Where(l => estimates.Contains(l.EstimateId)).OrderBy(l => l.EstimateId).ThenBy(l => l.Place).ToListAsync(ct))
            .Select(l => new AgreedLine(l.Source, l.Text, l.Charge, l.Option, l.PartCode, GetEstimate.Priced(l), l.Dropped))];

    private static async Task<IReadOnlyList<ServiceItem>> Done(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var codes = await db.DoneItems.Where(d => d.JobCardNumber == open.Card.Number).Select(d => d.ServiceItemCode).ToListAsync(ct);
        return [.. open.Specification.ServiceItems.Where(i => codes.Contains(i.Code))];
    }

    /// <summary>What left the stores for the card and did not come back.</summary>
    private static async Task<IReadOnlyList<UsedPart>> Used(WorkshopDbContext db, int number, CancellationToken ct) => await (
        from movement in db.StockMovements.AsNoTracking()
        join part in db.Parts on movement.PartId equals part.Id
        where movement.JobCardNumber == number && (movement.Kind == MovementKind.Issued || movement.Kind == MovementKind.Returned)
        group movement.OnHandChange by part.Code into changes
        orderby changes.Key
        select new UsedPart(changes.Key, -changes.Sum())).ToListAsync(ct);

    private static Task<string> CurrencyOf(WorkshopDbContext db, CancellationToken ct) => db.WorkshopProfiles.Select(p => p.Currency).SingleAsync(ct);
}
