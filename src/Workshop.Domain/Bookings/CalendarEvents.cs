using NodaTime;
using Workshop.Domain.JobCards;

namespace Workshop.Domain.Bookings;

/// <summary>One stretch of a visit in the calendar of a bay or a technician.</summary>
/// <param name="Key">Names the same stretch for good, however often it moves: card, phase, and which stretch of the phase it is.</param>
/// <param name="Sequence">Rises with every change of the plan (RFC 5545, 3.8.7.4).</param>
/// <param name="Cancelled">It does not take place, or no longer for this resource.</param>
/// <param name="ChangedAt">When it last changed.</param>
public sealed record CalendarEvent(
    string Key, int JobCardNumber, VisitPhase Phase, Interval Span, int Sequence, bool Cancelled, Instant ChangedAt);

/// <summary>What ended a visit or called it off.</summary>
/// <param name="At">Absent when nobody recorded the moment.</param>
public sealed record VisitEnd(JobCardState State, Instant? At);

/// <summary>The calendar of one resource, from its occupancies: those that stand, and those that stood once and are kept.</summary>
public static class CalendarEvents
{
    /// <summary>The events of one visit for one resource, in order of time.</summary>
    /// <param name="card">The visit.</param>
    /// <param name="ended">How it ended; absent while it goes on.</param>
    /// <param name="rows">All occupancies of the visit and the resource, live or not.</param>
    public static IReadOnlyList<CalendarEvent> Of(JobCard card, VisitEnd? ended, IReadOnlyCollection<Occupancy> rows)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(rows);
        return [.. rows.GroupBy(r => r.Phase)
            .SelectMany(phase => OfPhase(card, ended, phase.Key, [.. phase]))
            .OrderBy(e => e.Span.Start).ThenBy(e => e.Key, StringComparer.Ordinal)];
    }

    private static IEnumerable<CalendarEvent> OfPhase(JobCard card, VisitEnd? ended, VisitPhase phase, IReadOnlyCollection<Occupancy> rows)
    {
        // A sign-off lets go what is left of a plan: that part of it still stands in the calendar, as far as it went.
        var signedAt = ended is { State: JobCardState.SignedOff, At: { } at } ? at : (Instant?)null;
        var last = rows.Count == 0 ? default : rows.Max(PlannedAt);
        var stands = rows
            .Where(r => r.Live || (signedAt is { } signed && PlannedAt(r) == last && r.Span.Start < signed))
            .OrderBy(r => r.Span.Start)
            .ToArray();
        var standing = stands.Select((row, ordinal) => Event(row, ordinal, cancelled: false));
        var gone = rows.Except(stands)
            .GroupBy(PlannedAt)
            .SelectMany(plan => plan.OrderBy(r => r.Span.Start).Select((row, ordinal) => (row, ordinal)))
            .Where(r => r.ordinal >= stands.Length)
            .GroupBy(r => r.ordinal)
            .Select(same => Event(same.MaxBy(r => PlannedAt(r.row)).row, same.Key, cancelled: true));
        return standing.Concat(gone);

        CalendarEvent Event(Occupancy row, int ordinal, bool cancelled)
        {
            var span = !cancelled && signedAt is { } signed && signed < row.Span.End && signed > row.Span.Start
                ? new Interval(row.Span.Start, signed)
                : row.Span;
            var changed = cancelled || ended is not null ? Instant.Max(ended?.At ?? last, NewId.TimeOf(row.Id)) : NewId.TimeOf(row.Id);
            return new CalendarEvent(
                $"{card.Number}-{phase}-{ordinal}", card.Number, phase, span,
                card.PlanRevision + (ended is null ? 0 : 1), cancelled, changed);
        }
    }

    /// <summary>The rows of one plan are made at one moment, which is in their ids; to the second, as a save takes some milliseconds.</summary>
    private static Instant PlannedAt(Occupancy row) =>
        Instant.FromUnixTimeSeconds(NewId.TimeOf(row.Id).ToUnixTimeSeconds());
}
