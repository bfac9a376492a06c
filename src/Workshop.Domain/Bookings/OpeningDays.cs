using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>An opening calendar laid out over some days once, for all technicians and every phase that needs open doors.</summary>
public sealed class OpeningDays
{
    private readonly Dictionary<LocalDate, Interval> openOn;

    /// <summary>The opening spans of the days of the window; a day that the window touches counts whole.</summary>
    public OpeningDays(OpeningCalendar calendar, DateInterval days)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        ArgumentNullException.ThrowIfNull(days);
        Calendar = calendar;
        openOn = days.Select(day => (Day: day, Open: calendar.OpenOn(day))).Where(d => d.Open is not null)
            .ToDictionary(d => d.Day, d => d.Open!.Value);
        Open = Spans.Of(openOn.Values);
    }

    public OpeningCalendar Calendar { get; }

    internal Spans Open { get; }

    /// <summary>The spans that somebody works: the opening hours, or own hours on days that are no holiday.</summary>
    internal Spans Shifts(DateInterval days, Dictionary<IsoDayOfWeek, WorkingHours> own) => own.Count == 0
        ? Open
        : Spans.Of(days
            .Where(day => own.ContainsKey(day.DayOfWeek) && !Calendar.IsHoliday(day))
            .Select(day => Of(day, own[day.DayOfWeek].StartsAt, own[day.DayOfWeek].EndsAt)));

    internal Spans Breaks(DateInterval days, ILookup<IsoDayOfWeek, WorkBreak> breaks) => breaks.Count == 0
        ? Spans.None
        : Spans.Of(days.SelectMany(day => breaks[day.DayOfWeek].Select(b => Of(day, b.StartsAt, b.EndsAt))));

    // As OpeningCalendar reads the wall clock on a day on which the clocks change.
    private Interval Of(LocalDate day, LocalTime from, LocalTime until)
    {
        var zone = Calendar.Time.Zone;
        var start = (day + from).InZoneLeniently(zone).ToInstant();
        return new Interval(start, Instant.Max(start, (day + until).InZoneLeniently(zone).ToInstant()));
    }
}
