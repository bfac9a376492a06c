using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.JobCards;

/// <summary>Where a motorcycle stands that is here: where it was pushed to last, or else where its phase was planned.</summary>
public static class StandingPlace
{
    /// <summary>The bay or parking place; nothing where nobody planned or said one.</summary>
    /// <param name="begun">Phases that were begun, in order of time.</param>
    /// <param name="moves">By hand, in order of time.</param>
    /// <param name="places">What the visit takes of bays and parking places, as planned.</param>
    /// <param name="now">Of several spans of one phase the last that began by then counts.</param>
    public static Guid? Of(
        IReadOnlyList<PhaseStart> begun, IReadOnlyList<MotorcycleMove> moves, IReadOnlyCollection<Take> places, Instant now)
    {
        ArgumentNullException.ThrowIfNull(begun);
        ArgumentNullException.ThrowIfNull(moves);
        ArgumentNullException.ThrowIfNull(places);
        for (var i = begun.Count - 1; i >= 0; i--)
        {
            if (moves.Count > 0 && moves[^1].MovedAt >= begun[i].StartedAt)
            {
                return moves[^1].ResourceId;
            }

            if (Planned(places.Where(p => p.Phase == begun[i].Phase), now) is { } planned)
            {
                return planned;
            }
        }

        return moves.Count > 0
            ? moves[^1].ResourceId
            : Planned(places.Where(p => p.Phase is VisitPhase.Arrival or VisitPhase.ColdSoak || p.Span.Start <= now), now);
    }

    private static Guid? Planned(IEnumerable<Take> places, Instant now)
    {
        var inOrder = places.OrderBy(p => p.Span.Start).ToList();
        return (inOrder.FindLast(p => p.Span.Start <= now) ?? inOrder.FirstOrDefault())?.ResourceId;
    }
}
