using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Findings;

/// <summary>Findings as rows, with what is known of each.</summary>
internal static class FindingRows
{
    /// <summary>All findings of a visit, in order of time.</summary>
    public static async Task<IReadOnlyList<FindingFacts>> Facts(WorkshopDbContext db, int number, CancellationToken ct) =>
        await Facts(db, db.Findings.Where(f => f.JobCardNumber == number), ct);

    /// <summary>What is known of some findings, in order of time.</summary>
    public static async Task<IReadOnlyList<FindingFacts>> Facts(WorkshopDbContext db, IQueryable<Finding> which, CancellationToken ct)
    {
        var findings = await which.AsNoTracking().OrderBy(f => f.FoundAt).ThenBy(f => f.Id).ToListAsync(ct);
        if (findings.Count == 0)
        {
            return [];
        }

        var ids = findings.Select(f => f.Id).ToList();
        var answers = (await db.EstimateAnswers.AsNoTracking().Where(a => a.FindingId != null && ids.Contains(a.FindingId.Value))
            .OrderBy(a => a.RecordedAt).ThenBy(a => a.Id).ToListAsync(ct))
            .GroupBy(a => a.FindingId!.Value).ToDictionary(g => g.Key, g => g.Last());
        var priced = (await db.Estimates.Where(e => e.FindingId != null && ids.Contains(e.FindingId.Value)).Select(e => e.FindingId!.Value).Distinct().ToListAsync(ct)).ToHashSet();
        return [.. findings.Select(f => new FindingFacts(
            f.Id, f.Place, f.Gravity, answers.GetValueOrDefault(f.Id)?.Decision, answers.GetValueOrDefault(f.Id)?.ToldOfDanger ?? false, priced.Contains(f.Id),
            f.ServiceItemCode is not null, f.DoneAt is not null, f.WithdrawnAt is not null))];
    }

    /// <summary>A finding to change, its card locked; refused where the card is not worked on.</summary>
    public static async Task<Outcome<(Finding Finding, OpenCard Open)>> ForWork(WorkshopDbContext db, Guid id, CancellationToken ct)
    {
        var number = await db.Findings.Where(f => f.Id == id).Select(f => (int?)f.JobCardNumber).SingleOrDefaultAsync(ct);
        if (number is null)
        {
            return Problem.NotFound($"Finding {id}");
        }

        return (await OpenCard.ForWork(db, number.Value, ct)).TryGet(out var open, out var problem)
            ? (await db.Findings.SingleAsync(f => f.Id == id, ct), open)
            : problem;
    }
}
