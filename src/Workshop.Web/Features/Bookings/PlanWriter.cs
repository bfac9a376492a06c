using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// The one place that writes the plans of visits: planned phases, occupancies, arrival and readiness of the card, and the count of
/// its changes. Whoever calls it has locked the resources by <see cref="Lock"/> and planned on what was then free.
/// </summary>
internal static class PlanWriter
{
    /// <summary>Locks resources in order of id, so that nobody ends in a deadlock, and nobody else plans with them meanwhile.</summary>
    public static Task Lock(WorkshopDbContext db, Guid[] resources, CancellationToken ct) =>
        db.Database.ExecuteSqlAsync($"select 1 from resources where id = any ({resources}) order by id for update", ct);

    /// <summary>The plan of one visit; see the other.</summary>
    public static Task<Problem?> Write(WorkshopDbContext db, JobCard card, VisitPlan plan, IClock clock, CancellationToken ct) =>
        Write(db, [(card, plan)], clock, ct);

    /// <summary>
    /// Plans of several visits at once, which may take each other's places. What the cards held and is over stays; what they hold now
    /// ends now; what they were to hold is let go and kept for the record.
    /// </summary>
    /// <param name="plans">Cards that the context tracks and has saved, each with its new plan.</param>
    /// <returns>Nothing; or who has what, when somebody wrote without the locks. Nothing of the plans is then written.</returns>
    public static async Task<Problem?> Write(
        WorkshopDbContext db, IReadOnlyList<(JobCard Card, VisitPlan Plan)> plans, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var numbers = plans.Select(p => p.Card.Number).ToList();
        var planned = await db.PlannedPhases.Where(p => numbers.Contains(p.JobCardNumber)).ToListAsync(ct);
        await LetGo(db, numbers, now, ct);
        foreach (var (card, plan) in plans)
        {
            var changed = planned.Exists(p => p.JobCardNumber == card.Number);
            card.StartsAt = plan.ArrivesAt;
            card.EndsAt = plan.ReadyAt;
            card.PlanRevision += changed ? 1 : 0;
            Rewrite(db, card.Number, planned, plan);
            db.Occupancies.AddRange(plan.Takes
                .Where(t => !changed || t.Span.End > now)
                .Select(t => new Occupancy
                {
                    Id = NewId.At(clock),
                    JobCardNumber = card.Number,
                    Phase = t.Phase,
                    ResourceId = t.ResourceId,
                    Span = changed ? new Interval(Instant.Max(t.Span.Start, now), t.Span.End) : t.Span,
                }));
        }

        try
        {
            await db.SaveChangesAsync(ct);
            return null;
        }
        catch (DbUpdateException fault) when (fault.InnerException is PostgresException { SqlState: PostgresErrorCodes.ExclusionViolation })
        {
            // Back at its savepoint, the transaction can still say who has what.
            var time = await WorkshopTimes.Read(db, ct);
            return await Occupied.Refuse(db, [.. plans.SelectMany(p => p.Plan.Takes)], numbers, time, ct);
        }
    }

    /// <summary>Frees what cards hold from now on: moved, cancelled, not come.</summary>
    public static async Task LetGo(WorkshopDbContext db, IReadOnlyList<int> numbers, Instant now, CancellationToken ct)
    {
        foreach (var held in await db.Occupancies.Where(o => numbers.Contains(o.JobCardNumber) && o.Live).ToListAsync(ct))
        {
            if (held.Span.Start >= now)
            {
                held.Live = false;
            }
            else if (held.Span.End > now)
            {
                held.Span = new Interval(held.Span.Start, now);
            }
        }

        // Before anything new is written: rows of one save reach the database in no order of ours.
        await db.SaveChangesAsync(ct);
    }

    private static void Rewrite(WorkshopDbContext db, int number, List<PlannedPhase> planned, VisitPlan plan)
    {
        var before = planned.Where(p => p.JobCardNumber == number).ToDictionary(p => p.Phase);
        foreach (var phase in plan.Phases)
        {
            if (before.Remove(phase.Phase, out var row))
            {
                row.Span = phase.Span;
            }
            else
            {
                db.PlannedPhases.Add(new PlannedPhase { JobCardNumber = number, Phase = phase.Phase, Span = phase.Span });
            }
        }

        db.PlannedPhases.RemoveRange(before.Values);
    }
}
