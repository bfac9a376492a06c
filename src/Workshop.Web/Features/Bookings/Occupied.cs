using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>What is taken by which visit.</summary>
internal static class Occupied
{
    private static readonly Duration FollowsWithin = Duration.FromDays(2);

    /// <param name="Resource">The bay, technician, tool or place.</param>
    /// <param name="By">The job card's number.</param>
    /// <param name="Motorcycle">Registration, maker and model.</param>
    public sealed record Taken(Resource Resource, VisitPhase Phase, Interval Span, int By, string Motorcycle)
    {
        public string Say(WorkshopTime time) =>
            $"{Resource.Name} is taken by job card {By} ({Motorcycle}) until {time.Say(Span.End)}.";
    }

    /// <summary>Live occupancies that overlap a span, by the index of the rule that keeps them apart.</summary>
    public static IQueryable<Occupancy> LiveDuring(WorkshopDbContext db, Interval span) =>
        db.Occupancies.FromSql($"select * from occupancies where live and span && {span}").AsNoTracking();

    public static async Task<IReadOnlyList<Taken>> During(WorkshopDbContext db, Interval span, CancellationToken ct)
    {
        var rows = await (
            from occupancy in LiveDuring(db, span)
            join resource in db.Resources.AsNoTracking() on occupancy.ResourceId equals resource.Id
            join card in db.JobCards on occupancy.JobCardNumber equals card.Number
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            select new
            {
                resource, occupancy.Phase, occupancy.Span, card.Number,
                motorcycle.Registration, motorcycle.Maker, motorcycle.Model,
            }).ToListAsync(ct);
        return [.. rows
            .Select(r => new Taken(r.resource, r.Phase, r.Span, r.Number, $"{r.Registration}, {r.Maker} {r.Model}"))
            .OrderBy(t => t.Resource.Kind).ThenBy(t => t.Resource.Name, StringComparer.Ordinal).ThenBy(t => t.Span.Start)];
    }

    /// <summary>The refusal of a visit that wants what others have: what is taken, by what, and until when; each thing once.</summary>
    /// <param name="wanted">What a plan would take, or the spans that stood in its way.</param>
    /// <param name="except">Cards that do not stand in the way.</param>
    public static async Task<Problem> Refuse(
        WorkshopDbContext db, IReadOnlyList<Take> wanted, IReadOnlyList<int> except, WorkshopTime time, CancellationToken ct)
    {
        var window = new Interval(wanted.Min(w => w.Span.Start), wanted.Max(w => w.Span.End) + FollowsWithin);
        var during = await During(db, window, ct);
        var faults = during
            .Where(t => !except.Contains(t.By) && wanted.Any(w => w.ResourceId == t.Resource.Id && w.Span.Start < t.Span.End && t.Span.Start < w.Span.End))
            .GroupBy(t => (t.Resource.Id, t.By))
            .Select(g => Through(g.MaxBy(t => t.Span.End)!, during))
            .Select(t => new FieldFault(FieldOf(t.Resource.Kind), t.Say(time))).ToList();
        return Problem.Conflict("taken", string.Join(" ", faults.Select(f => f.Sentence))) with { Faults = faults };
    }

    /// <summary>With the phases of the same visit that follow without a gap.</summary>
    private static Taken Through(Taken taken, IReadOnlyList<Taken> during) =>
        during.FirstOrDefault(t => t.Resource.Id == taken.Resource.Id && t.By == taken.By && t.Span.Start == taken.Span.End) is { } next
            ? Through(taken with { Span = new Interval(taken.Span.Start, next.Span.End) }, during)
            : taken;

    /// <summary>The field of a booking that asks for a resource of that kind.</summary>
    public static string FieldOf(ResourceKind kind) => kind switch
    {
        ResourceKind.Bay => "bayId",
        ResourceKind.Technician => "technicianId",
        _ => "items",
    };
}
