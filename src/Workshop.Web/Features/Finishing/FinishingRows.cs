using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.Finishing;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Finishing;

/// <summary>What a card shows of what follows its work.</summary>
internal static class FinishingRows
{
    public static async Task<FinishedWork> Read(WorkshopDbContext db, int number, CancellationToken ct)
    {
        var phases = await db.PhaseStarts.AsNoTracking().Where(s => s.JobCardNumber == number)
            .OrderBy(s => s.StartedAt).ThenBy(s => s.Id).ToListAsync(ct);
        return new FinishedWork
        {
            Balances = await db.BalanceRuns.AsNoTracking().Where(r => r.JobCardNumber == number).ToListAsync(ct),
            Leaks = await db.LeakLooks.AsNoTracking().Where(l => l.JobCardNumber == number).ToListAsync(ct),
            Rides = await db.TestRides.AsNoTracking().Where(r => r.JobCardNumber == number).ToListAsync(ct),
            Rechecks = await db.VisitRechecks.AsNoTracking().Where(r => r.JobCardNumber == number).ToListAsync(ct),
            Reminders = await db.ReminderResets.AsNoTracking().Where(r => r.JobCardNumber == number).ToListAsync(ct),
            Taps = await db.CountTaps.AsNoTracking().Where(t => t.JobCardNumber == number).ToListAsync(ct),
            Explanations = await db.CountExplanations.AsNoTracking().Where(e => e.JobCardNumber == number).ToListAsync(ct),

            // A reason is asked of a hand-over for one thing alone: that nobody looked at the cooled engine.
            HandedOverUncooled = phases is [.., { Phase: VisitPhase.HandOver, ReasonRemarkId: not null }],
        };
    }
}
