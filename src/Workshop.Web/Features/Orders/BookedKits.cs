using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Orders;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Kits;

namespace Workshop.Web.Features.Orders;

/// <summary>A part that a kit names and the stores do not know.</summary>
public sealed record UnknownPart(string PartCode, IReadOnlyList<int> JobCardNumbers);

/// <summary>
/// What the visits that are booked, or here, still want of each part on the day on which their work begins. What was issued to them is
/// wanted no more; what stands in for a part on a card is wanted in its place.
/// </summary>
/// <param name="Registrations">Of the visits until then, by number.</param>
/// <param name="Parts">By id, of those that are wanted.</param>
/// <param name="Needs">By part.</param>
internal sealed record BookedKits(
    IReadOnlyDictionary<int, string> Registrations, IReadOnlyDictionary<Guid, Part> Parts, ILookup<Guid, BookedNeed> Needs, IReadOnlyList<UnknownPart> Unknown)
{
    /// <summary>Whose day has come, or passed, wants its kit today.</summary>
    /// <param name="until">The last day of work that counts.</param>
    public static async Task<BookedKits> Read(WorkshopDbContext db, WorkshopTime time, LocalDate today, LocalDate until, CancellationToken ct)
    {
        var open = await OpenVisits.Read(db, time, today, ct);
        var numbers = open.Select(v => v.Number).ToList();
        var works = await db.PlannedPhases.AsNoTracking().Where(p => p.Phase == VisitPhase.Work && numbers.Contains(p.JobCardNumber))
            .ToDictionaryAsync(p => p.JobCardNumber, p => p.Span.Start, ct);
        var visits = open
            .Select(v => (Visit: v, On: LocalDate.Max(time.DayOf(works.TryGetValue(v.Number, out var begins) ? begins : v.StartsAt), today)))
            .Where(v => v.On <= until).ToList();
        var wanted = visits.SelectMany(v => v.Visit.Lines, (v, line) => (v.Visit.Number, v.On, Line: line)).ToList();
        return new BookedKits(
            visits.ToDictionary(v => v.Visit.Number, v => v.Visit.Registration),
            wanted.Select(w => w.Line.Part).OfType<Part>().DistinctBy(p => p.Id).ToDictionary(p => p.Id),
            wanted.Where(w => w.Line.Part is not null)
                .Select(w => (w.Line.Part!.Id, Need: Remaining(w.Number, w.On, w.Line)))
                .Where(n => n.Need.Needed > 0 || n.Need.HaveReady > 0)
                .ToLookup(n => n.Id, n => n.Need),
            [.. wanted.Where(w => w.Line.Part is null).GroupBy(w => w.Line.PartCode, w => w.Number, StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new UnknownPart(g.Key, [.. g.Order()]))]);
    }

    private static BookedNeed Remaining(int number, LocalDate on, OpenVisits.Line line) => new(
        number, on, Math.Max(line.Needed - line.Issued, 0), Math.Clamp(line.Needed + line.HaveReady - line.Issued, 0, line.HaveReady), Math.Max(line.Reserved, 0));
}
