namespace Workshop.Domain.Orders;

/// <summary>
/// How long before its day a visit is booked. What will be asked for on a day ahead is partly booked already; this tells how much of
/// it is not.
/// </summary>
/// <param name="Days">Of visits that took place, from booking to arrival, whole days.</param>
public sealed record NoticeOfVisits(IReadOnlyList<int> Days)
{
    /// <summary>With fewer visits nothing is told, and all of the demand counts as not yet booked; our own choice.</summary>
    public const int FewestVisits = 20;

    /// <summary>The share of what is asked for so many days ahead that is booked only later than now.</summary>
    public double NotYetBooked(int daysAhead) =>
        Days.Count < FewestVisits ? 1 : (double)Days.Count(d => d < daysAhead) / Days.Count;

    /// <summary>Of the next days, as many as the demand that is not booked yet amounts to: 0 to <paramref name="days"/>.</summary>
    /// <param name="days">0 or above.</param>
    public double DaysNotYetBooked(int days)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(days);
        return Enumerable.Range(1, days).Sum(NotYetBooked);
    }
}
