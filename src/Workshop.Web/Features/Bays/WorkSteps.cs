using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bays;

/// <summary>How far the work on a visit is, by what was written down last.</summary>
internal static class WorkSteps
{
    public static async Task<IReadOnlyDictionary<int, string>> Read(WorkshopDbContext db, int[] numbers, CancellationToken ct)
    {
        if (numbers.Length == 0)
        {
            return new Dictionary<int, string>();
        }

        var read = await db.ClearanceReadings.AsNoTracking()
            .Where(r => r.JobCardNumber != null && numbers.Contains(r.JobCardNumber.Value))
            .GroupBy(r => new { Number = r.JobCardNumber!.Value, r.Stage })
            .Select(g => new { g.Key.Number, g.Key.Stage, At = g.Max(r => r.EnteredAt) }).ToListAsync(ct);
        var begun = await db.JobCardItems.AsNoTracking().Where(i => numbers.Contains(i.JobCardNumber) && i.StartedAt != null)
            .GroupBy(i => i.JobCardNumber).Select(g => new { Number = g.Key, At = g.Max(i => i.StartedAt!.Value) }).ToListAsync(ct);
        var ticked = await db.FastenerTicks.AsNoTracking().Where(t => numbers.Contains(t.JobCardNumber))
            .GroupBy(t => t.JobCardNumber).Select(g => new { Number = g.Key, At = g.Max(t => t.TickedAt) }).ToListAsync(ct);
        return read.Select(r => (r.Number, r.At, Step: r.Stage == Stage.AsFound ? "measured as found" : "measured as left"))
            .Concat(begun.Select(b => (b.Number, b.At, Step: "adjusting")))
            .Concat(ticked.Select(t => (t.Number, t.At, Step: "tightening")))
            .GroupBy(s => s.Number).ToDictionary(g => g.Key, g => g.MaxBy(s => s.At).Step);
    }
}
