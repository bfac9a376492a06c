using System.Globalization;
using NodaTime;
using NodaTime.Calendars;

namespace Workshop.Domain.Bookings;

/// <summary>A week of the calendar, from Monday to Sunday, numbered as ISO 8601 does: week 1 is that of the year's first Thursday.</summary>
public readonly record struct IsoWeek
{
    private static readonly IWeekYearRule Rule = WeekYearRules.Iso;

    private IsoWeek(int year, int number) => (Year, Number) = (year, number);

    /// <summary>The year that the number counts in; the last days of December may lie in week 1 of the next.</summary>
    public int Year { get; }

    /// <summary>1 to 52 or 53.</summary>
    public int Number { get; }

    public LocalDate Monday => Rule.GetLocalDate(Year, Number, IsoDayOfWeek.Monday);

    /// <summary>Monday to Sunday.</summary>
    public IReadOnlyList<LocalDate> Days
    {
        get
        {
            var monday = Monday;
            return Enumerable.Range(0, 7).Select(monday.PlusDays).ToArray();
        }
    }

    public IsoWeek Next => Of(Monday.PlusDays(7));

    public IsoWeek Previous => Of(Monday.PlusDays(-7));

    public static IsoWeek Of(LocalDate day) => new(Rule.GetWeekYear(day), Rule.GetWeekOfWeekYear(day));

    /// <summary>Reads "2026-W49", as ISO 8601 writes a week; false for what is no week of that year.</summary>
    public static bool TryParse(string? text, out IsoWeek week)
    {
        week = default;
        if (text is not { Length: 8 } || text[4..6] != "-W"
            || !int.TryParse(text[..4], NumberStyles.None, CultureInfo.InvariantCulture, out var year)
            || !int.TryParse(text[6..], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || year < 1 || number < 1 || number > Rule.GetWeeksInWeekYear(year))
        {
            return false;
        }

        week = new IsoWeek(year, number);
        return true;
    }

    /// <summary>As ISO 8601 writes it: "2026-W49".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Year:0000}-W{Number:00}");
}
