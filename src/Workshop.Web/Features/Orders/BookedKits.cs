using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Kits;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Kits;

namespace Workshop.Web.Features.Orders;

/// <summary>A part that a kit names and the stores do not know.</summary>
public sealed record UnknownPart(string PartCode, IReadOnlyList<int> JobCardNumbers);

/// <summary>A part of a kit as it is taken, whether the stores know it or not.</summary>
internal sealed record WantedPart(string Code, Part? Part);

/// <summary>
/// What the visits that are booked, or here, still want of each part on the day on which their work begins. What was issued to them is
/// wanted no more; what stands in for a part on a card is wanted in its place. All of them, always: shares are worked out together.
/// </summary>
/// <param name="Visits">By number.</param>
/// <param name="Wanted">What each visit wants of each part that it names.</param>
internal sealed record BookedKits(
    IReadOnlyDictionary<int, OpenVisits> Visits, IReadOnlyList<(WantedPart Part, BookedNeed Need)> Wanted)
{
    /// <summary>By id, of those that the stores know.</summary>
    public IReadOnlyDictionary<Guid, Part> Parts { get; } =
        Wanted.Select(w => w.Part.Part).OfType<Part>().DistinctBy(p => p.Id).ToDictionary(p => p.Id);

    /// <summary>By part that the stores know.</summary>
    public ILookup<Guid, BookedNeed> Needs { get; } = Wanted.Where(w => w.Part.Part is not null).ToLookup(w => w.Part.Part!.Id, w => w.Need);

    /// <summary>Whose day has come, or passed, wants its kit today.</summary>
    public static async Task<BookedKits> Read(WorkshopDbContext db, WorkshopTime time, LocalDate today, CancellationToken ct)
    {
        var open = await OpenVisits.Read(db, time, today, ct);
        return new BookedKits(
            open.ToDictionary(v => v.Number),
            [.. open.SelectMany(v => v.Lines, (v, line) => (new WantedPart(line.PartCode, line.Part), Remaining(v, line)))
                .Where(w => w.Item2.Needed > 0 || w.Item2.HaveReady > 0 || w.Item2.Held.Count > 0)]);
    }

    /// <summary>Named by kits of visits until a day, and not known to the stores.</summary>
    public IReadOnlyList<UnknownPart> Unknown(LocalDate until) =>
    [
        .. Wanted.Where(w => w.Part.Part is null && w.Need.On <= until).GroupBy(w => w.Part.Code, w => w.Need.JobCardNumber, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new UnknownPart(g.Key, [.. g.Order()])),
    ];

    private static BookedNeed Remaining(OpenVisits visit, OpenVisits.Line line) => new(
        visit.Number, visit.Begins, visit.On, Math.Max(line.Needed - line.Issued, 0),
        Math.Clamp(line.Needed + line.HaveReady - line.Issued, 0, line.HaveReady), line.Held);
}
