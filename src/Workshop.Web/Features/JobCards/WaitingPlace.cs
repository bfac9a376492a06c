using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.JobCards;

/// <summary>The place of a visit that waits: kept until it is expected to go on, and for as long after as was left of its plan.</summary>
internal static class WaitingPlace
{
    /// <param name="until">When it is expected to go on.</param>
    /// <param name="keepsTools">Special tools stay taken, too.</param>
    /// <returns>What is not free for so long, and who has it.</returns>
    public static async Task<IReadOnlyList<string>> Keep(
        WorkshopDbContext db, VisitState visit, Instant until, bool keepsTools, WorkshopTime time, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var stands = visit.StandsIn(now);
        var kept = visit.Taken.Where(t => t.Resource.Kind == ResourceKind.SpecialTool && keepsTools).Select(t => t.Resource)
            .Concat(visit.Places.Where(p => p.Resource.Id == stands).Select(p => p.Resource)).DistinctBy(r => r.Id).ToList();
        var waitedUntil = visit.Taken.Where(t => t.Row.Phase == VisitPhase.Waiting && t.Resource.Id == stands)
            .Select(t => t.Row.Span.End).DefaultIfEmpty(now).Max();
        var left = kept.ToDictionary(r => r.Id, r => visit.Taken
            .Where(t => t.Resource.Id == r.Id && t.Row.Phase != VisitPhase.Waiting && t.Row.Span.End > now)
            .Select(t => t.Row.Span.End - waitedUntil).DefaultIfEmpty(Duration.Zero).Max());
        TakeWhatIsFree.Free(visit.Taken.Select(t => t.Row), now);
        visit.Card.PlanRevision++;
        await db.SaveChangesAsync(ct);

        var warnings = new List<string>();
        foreach (var resource in kept)
        {
            var rest = new Interval(until, until + Duration.Max(Duration.Zero, left[resource.Id]));
            var missing = await TakeWhatIsFree.Take(db, visit.Card, VisitPhase.Waiting, resource, new Interval(now, until), time, clock, ct)
                ?? await TakeWhatIsFree.Take(db, visit.Card, VisitPhase.Work, resource, rest, time, clock, ct);
            if (missing is not null)
            {
                warnings.Add(missing);
            }
        }

        return warnings;
    }
}
