using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Intervals;

/// <summary>How an item that falls due stands on a given day.</summary>
public enum DueState
{
    /// <summary>Neither the day nor the distance is passed.</summary>
    Ahead,

    /// <summary>By its rate the motorcycle should have passed the distance, but no reading shows it yet.</summary>
    OverdueByRate,

    /// <summary>The day is past, or a reading shows that the distance is.</summary>
    Overdue,
}

/// <summary>What is due, said as a person says it. Whole units, rounded down; nothing here is computed with.</summary>
public static class DueWords
{
    private const int DaysPerWeek = 7;
    private const int DaysSaidAsDays = 14;
    private const int DaysSaidAsWeeks = 70;
    private const int MonthsSaidAsMonths = 24;
    private const int MonthsPerYear = 12;

    /// <summary>How an item stands on a day.</summary>
    /// <param name="dueOn">Its day by the calendar, if it has one.</param>
    /// <param name="left">The distance left by the last reading, negative when passed; nothing where it has no distance.</param>
    /// <param name="expectedOn">Whichever is expected first.</param>
    /// <param name="today">The workshop's day.</param>
    public static DueState StateOf(LocalDate? dueOn, Distance? left, LocalDate expectedOn, LocalDate today) =>
        dueOn < today || (left < Distance.Zero && expectedOn <= today) ? DueState.Overdue
        : expectedOn < today ? DueState.OverdueByRate
        : DueState.Ahead;

    /// <summary>"today", "in 9 days", "3 weeks ago", "in 5 months", "in 2 years".</summary>
    public static string When(LocalDate day, LocalDate today)
    {
        if (day == today)
        {
            return "today";
        }

        var (from, to) = day > today ? (today, day) : (day, today);
        var length = Length(from, to);
        return day > today ? $"in {length}" : $"{length} ago";
    }

    /// <summary>"in 900 km", "now", "1,250 mi ago": from the last reading to where it is due.</summary>
    public static string HowFar(Distance left, OdometerUnit unit)
    {
        var passed = left < Distance.Zero;
        var count = unit.CountOf(passed ? Distance.Zero - left : left);
        return count == 0 ? "now" : passed ? $"{Figure(count, unit)} ago" : $"in {Figure(count, unit)}";
    }

    /// <summary>Why a check is due again where it was last done.</summary>
    public static string LeftOutside(LocalDate on) => $"a valve was left outside its limits on {Day(on)}: to come back for it";

    /// <summary>"24,000 km": a distance in the unit of the motorcycle's own odometer.</summary>
    public static string InUnit(Distance distance, OdometerUnit unit) => Figure(unit.CountOf(distance), unit);

    /// <summary>
    /// The expected day with its span and what it rests on: "2026-04-20 (2026-03-30 to 2026-06-01), by its own readings"; the
    /// day alone where the calendar decides; "passed 2026-02-10 (2026-01-05 to 2026-02-28)" where readings show the distance
    /// behind them.
    /// </summary>
    /// <param name="expectedOn">Whichever is expected first.</param>
    /// <param name="earliestOn">At the fastest rate; nothing where the calendar alone decides.</param>
    /// <param name="latestOn">At the slowest rate; nothing beside an earliest day where it is not within the horizon.</param>
    /// <param name="basis">What the rate rests on, where one is used.</param>
    /// <param name="left">The distance left by the last reading; nothing where it has no distance.</param>
    public static string Expected(
        LocalDate expectedOn, LocalDate? earliestOn, LocalDate? latestOn, RateBasis? basis, Distance? left)
    {
        if (earliestOn is not { } earliest || earliest == latestOn)
        {
            return Day(expectedOn);
        }

        var span = latestOn is { } latest ? $"{Day(earliest)} to {Day(latest)}" : $"{Day(earliest)} or any time later";
        return left < Distance.Zero ? $"passed {Day(expectedOn)} ({span})"
            : basis is { } known ? $"{Day(expectedOn)} ({span}), {known.Spoken()}"
            : $"{Day(expectedOn)} ({span})";
    }

    /// <summary>How an item stands, in words; empty while it is ahead.</summary>
    public static string Spoken(this DueState state) => state switch
    {
        DueState.Ahead => "",
        DueState.OverdueByRate => "overdue by its rate",
        DueState.Overdue => "overdue",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };

    /// <summary>What a date by the rate rests on.</summary>
    public static string Spoken(this RateBasis basis) => basis switch
    {
        RateBasis.OwnReadings => "by its own readings",
        RateBasis.Borrowed => "by few readings and what others ride, so a wide guess",
        RateBasis.Assumed => "by what others ride, as its readings tell nothing",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, null),
    };

    /// <summary>How a motorcycle is ridden, in words.</summary>
    public static string Spoken(this RidingUse use) => use switch
    {
        RidingUse.Normal => "as usual",
        RidingUse.Severe => "hard: short trips, dust, heat or tracks",
        _ => throw new ArgumentOutOfRangeException(nameof(use), use, null),
    };

    private static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", null);

    private static string Length(LocalDate from, LocalDate to)
    {
        var days = Period.DaysBetween(from, to);
        if (days < DaysSaidAsDays)
        {
            return Count(days, "day");
        }

        if (days < DaysSaidAsWeeks)
        {
            return Count(days / DaysPerWeek, "week");
        }

        var months = Period.Between(from, to, PeriodUnits.Months).Months;
        return months < MonthsSaidAsMonths ? Count(months, "month") : Count(months / MonthsPerYear, "year");
    }

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";

    private static string Figure(int count, OdometerUnit unit) => $"{count:#,0} {unit.Symbol()}";
}
