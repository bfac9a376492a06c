using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>What is taken by which visit.</summary>
internal static class Occupied
{
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

    /// <summary>The refusal of a visit that wants what others have: what is taken, by what, and until when.</summary>
    /// <param name="wanted">Resources with the field that asked for each.</param>
    public static async Task<Problem> Refuse(
        WorkshopDbContext db, Interval span, IReadOnlyDictionary<Guid, string> wanted, WorkshopTime time, CancellationToken ct)
    {
        var taken = (await During(db, span, ct)).Where(t => wanted.ContainsKey(t.Resource.Id)).ToList();
        var faults = taken.Select(t => new FieldFault(wanted[t.Resource.Id], t.Say(time))).ToList();
        return Problem.Conflict("taken", string.Join(" ", faults.Select(f => f.Sentence))) with { Faults = faults };
    }
}
