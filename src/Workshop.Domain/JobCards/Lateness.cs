using NodaTime;

namespace Workshop.Domain.JobCards;

/// <summary>How a visit stands beside its plan at a moment, as a word of the Diary.</summary>
public static class Lateness
{
    /// <summary>Whoever is a little late is not called late.</summary>
    public static readonly Duration Grace = Duration.FromMinutes(10);

    /// <summary>Nothing while the visit goes as planned, or is over.</summary>
    /// <param name="state">Of the card.</param>
    /// <param name="plan">The planned phases, in any order.</param>
    /// <param name="begun">The phase that was begun last; nothing where none was.</param>
    /// <param name="now">The moment.</param>
    public static string? Of(JobCardState state, IReadOnlyCollection<Bookings.PlannedPhase> plan, Bookings.VisitPhase? begun, Instant now)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Count == 0 || state is not (JobCardState.Booked or JobCardState.CheckedIn))
        {
            return null;
        }

        var due = now - Grace;
        var inOrder = plan.OrderBy(p => p.Span.Start).ToList();
        if (state == JobCardState.Booked)
        {
            return inOrder[0].Span.Start < due ? "has not come yet" : null;
        }

        var at = inOrder.FindLastIndex(p => p.Phase == begun);
        return begun == Bookings.VisitPhase.Waiting ? null
            : (at < 0 ? inOrder[0] : inOrder[at]).Span.End < due ? "runs late"
            : null;
    }
}
