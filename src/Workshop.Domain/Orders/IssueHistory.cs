namespace Workshop.Domain.Orders;

/// <summary>What visits took of a part, week by week, what they brought back taken off.</summary>
/// <param name="Weeks">In the part's unit; the latest last, none of them still running.</param>
public sealed record IssueHistory(IReadOnlyList<decimal> Weeks)
{
    /// <summary>Fewer weeks tell no rate; our own choice.</summary>
    public const int FewestWeeks = 4;

    /// <summary>Looked back on: a year has every season.</summary>
    public const int MostWeeks = 52;

    private const int DaysOfWeek = 7;

    public decimal Total => Weeks.Sum();

    /// <summary>Enough weeks to speak of a rate.</summary>
    public bool TellsRate => Weeks.Count >= FewestWeeks;

    /// <summary>The mean of a day, 0 where more came back than went out or no rate is told.</summary>
    public double PerDay => TellsRate ? Math.Max((double)Total / Weeks.Count / DaysOfWeek, 0) : 0;

    /// <summary>The variance of a day: of independent days alike, a seventh of a week's.</summary>
    public double DayVariance
    {
        get
        {
            if (!TellsRate)
            {
                return 0;
            }

            var mean = (double)Total / Weeks.Count;
            return Weeks.Sum(w => ((double)w - mean) * ((double)w - mean)) / (Weeks.Count - 1) / DaysOfWeek;
        }
    }

    /// <summary>How many of the weeks took anything.</summary>
    public int WeeksWithIssues => Weeks.Count(w => w > 0);
}
