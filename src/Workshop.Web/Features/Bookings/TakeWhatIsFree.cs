using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// What becomes of the occupancies of a visit that is under way when it does not go as planned. A motorcycle that stands
/// somewhere cannot be refused: what is free is taken, and who has the rest is said.
/// </summary>
internal static class TakeWhatIsFree
{
    /// <summary>Locks resources in the order of their ids, as whoever takes them does.</summary>
    public static Task<int> Lock(WorkshopDbContext db, IEnumerable<Guid> resources, CancellationToken ct)
    {
        var ids = resources.Distinct().ToArray();
        return db.Database.ExecuteSqlAsync($"select 1 from resources where id = any ({ids}) order by id for update", ct);
    }

    /// <summary>Lets occupancies go from a moment on: what was taken until then stays.</summary>
    public static void Free(IEnumerable<Occupancy> rows, Instant from)
    {
        ArgumentNullException.ThrowIfNull(rows);
        foreach (var row in rows.Where(r => r.Live && r.Span.End > from))
        {
            if (row.Span.Start < from)
            {
                row.Span = new Interval(row.Span.Start, from);
            }
            else
            {
                row.Live = false;
            }
        }
    }

    /// <summary>
    /// Takes a resource from the start of a span until its end, or until the next visit has it. What was freed before must be
    /// saved; the resource's row is locked.
    /// </summary>
    /// <returns>Who has the rest; nothing where all was free.</returns>
    public static async Task<string?> Take(
        WorkshopDbContext db, JobCard card, VisitPhase phase, Resource resource, Interval span, WorkshopTime time, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(resource);
        if (span.Duration <= Duration.Zero)
        {
            return null;
        }

        var other = (await Occupied.During(db, span, ct)).FirstOrDefault(t => t.Resource.Id == resource.Id);
        var until = other is null ? span.End : other.Span.Start;
        if (until > span.Start)
        {
            db.Occupancies.Add(new Occupancy
            {
                Id = NewId.At(clock), JobCardNumber = card.Number, Phase = phase, ResourceId = resource.Id,
                Span = new Interval(span.Start, until),
            });
            await db.SaveChangesAsync(ct);
        }

        return other is null
            ? null
            : $"{resource.Name} is taken by job card {other.By} ({other.Motorcycle}) from {time.Say(other.Span.Start)}: move that visit, or move this motorcycle.";
    }
}
