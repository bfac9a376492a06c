using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>What of a visit's occupancies came to pass, or is still to come.</summary>
public static class HeldSpans
{
    /// <summary>The rows of one plan are made within it; no person changes a plan twice in so short a time.</summary>
    private static readonly Duration OneSave = Duration.FromSeconds(2);

    /// <summary>
    /// The rows that stand: the live ones, and of a visit that was signed off those of the last plan that had begun by then, since a
    /// sign-off lets go what was left of them.
    /// </summary>
    /// <param name="rows">Of one visit, live or not, of one phase and resource.</param>
    /// <param name="lastPlan">When the visit's last plan was made; see <see cref="LastPlan"/>.</param>
    /// <param name="signedAt">Absent where the visit was not signed off.</param>
    public static IReadOnlyList<Occupancy> Standing(IReadOnlyCollection<Occupancy> rows, Instant lastPlan, Instant? signedAt)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return [.. rows
            .Where(r => r.Live || (r.Span.Start < signedAt && lastPlan - NewId.TimeOf(r.Id) <= OneSave))
            .OrderBy(r => r.Span.Start)];
    }

    /// <summary>When the last plan of a visit was made, from all its rows, whoever has them.</summary>
    public static Instant LastPlan(IEnumerable<Occupancy> rowsOfVisit) =>
        rowsOfVisit.Select(r => NewId.TimeOf(r.Id)).DefaultIfEmpty(Instant.MinValue).Max();

    /// <summary>The span of a row, ended by the sign-off where that came within it.</summary>
    public static Interval Until(Interval span, Instant? signedAt) =>
        signedAt is { } signed && span.Start < signed && signed < span.End ? new Interval(span.Start, signed) : span;

    /// <summary>The rows plan by plan, oldest first: when a row was made is in its id.</summary>
    public static IReadOnlyList<IReadOnlyList<Occupancy>> Plans(IEnumerable<Occupancy> rows)
    {
        var plans = new List<List<Occupancy>>();
        foreach (var row in rows.OrderBy(r => NewId.TimeOf(r.Id)))
        {
            if (plans.Count == 0 || NewId.TimeOf(row.Id) - NewId.TimeOf(plans[^1][^1].Id) > OneSave)
            {
                plans.Add(new List<Occupancy>());
            }

            plans[^1].Add(row);
        }

        return plans;
    }
}
