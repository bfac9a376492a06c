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
    /// <param name="lastPlan">When the visit's last plan was made.</param>
    public static IReadOnlyList<CalendarEvent> Of(JobCard card, VisitEnd? ended, IReadOnlyCollection<Occupancy> rows, Instant lastPlan)
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(rows);
        return [.. rows.GroupBy(r => r.Phase)
            .SelectMany(phase => OfPhase(card, ended, phase.Key, [.. phase], lastPlan))
            .OrderBy(e => e.Span.Start).ThenBy(e => e.Key, StringComparer.Ordinal)];
    }

    private static IEnumerable<CalendarEvent> OfPhase(JobCard card, VisitEnd? ended, VisitPhase phase, IReadOnlyCollection<Occupancy> rows, Instant lastPlan)
    {
        var signedAt = ended is { State: JobCardState.SignedOff, At: { } at } ? at : (Instant?)null;
        var stands = HeldSpans.Standing(rows, lastPlan, signedAt);
        var standing = stands.Select((row, ordinal) => Event(row, ordinal, cancelled: false));
        var gone = HeldSpans.Plans(rows.Except(stands))
            .SelectMany(plan => plan.OrderBy(r => r.Span.Start).Select((row, ordinal) => (row, ordinal)))
            .Where(r => r.ordinal >= stands.Count)
            .GroupBy(r => r.ordinal)
            .Select(same => Event(same.Last().row, same.Key, cancelled: true));
        return standing.Concat(gone);

        CalendarEvent Event(Occupancy row, int ordinal, bool cancelled)
        {
            var made = NewId.TimeOf(row.Id);
            var changed = !cancelled && ended is null ? made : Instant.Max(made, ended?.At ?? lastPlan);
            return new CalendarEvent(
                $"{card.Number}-{phase}-{ordinal}", card.Number, phase, cancelled ? row.Span : HeldSpans.Until(row.Span, signedAt),
                card.PlanRevision + (ended is null ? 0 : 1), cancelled, changed);
        }
    }
}
