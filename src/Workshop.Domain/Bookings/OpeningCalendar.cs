using System.Globalization;
using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Bookings;

/// <summary>
/// When the workshop is open, by its own clock. Hours are compared as instants, so that a day on which the clocks change
/// has the hours that it has.
/// </summary>
public sealed class OpeningCalendar
{
    private const int DaysLookedAhead = 366;

    private readonly Dictionary<IsoDayOfWeek, OpeningHours> hours;
    private readonly Dictionary<LocalDate, Holiday> holidays;

    /// <summary>The calendar of a workshop in its zone, with a row for each weekday on which it opens, and its holidays.</summary>
    public OpeningCalendar(WorkshopTime time, IEnumerable<OpeningHours> hours, IEnumerable<Holiday> holidays)
    {
        Time = time;
        this.hours = hours.ToDictionary(h => h.Weekday);
        this.holidays = holidays.ToDictionary(h => h.Day);
    }

    public WorkshopTime Time { get; }

    /// <summary>From opening to closing on a day; nothing when it is closed.</summary>
    public Interval? OpenOn(LocalDate day)
    {
        if (holidays.ContainsKey(day) || !hours.TryGetValue(day.DayOfWeek, out var open))
        {
            return null;
        }

        // A wall-clock time that the change of the clocks skips is moved on by the gap; one that comes twice is the first.
        return new Interval(
            (day + open.OpensAt).InZoneLeniently(Time.Zone).ToInstant(),
            (day + open.ClosesAt).InZoneLeniently(Time.Zone).ToInstant());
    }

    public bool IsHoliday(LocalDate day) => holidays.ContainsKey(day);

    /// <summary>Why it is closed on a day: the holiday's name, or the weekday; nothing when it is open.</summary>
    public string? ClosedBecause(LocalDate day) =>
        OpenOn(day) is not null ? null
        : holidays.TryGetValue(day, out var holiday) ? holiday.Name
        : day.DayOfWeek.ToString();

    /// <summary>The first day from <paramref name="from"/> on which it is open, within a year; nothing when there is none.</summary>
    public LocalDate? FirstOpenDay(LocalDate from)
    {
        for (var ahead = 0; ahead < DaysLookedAhead; ahead++)
        {
            if (OpenOn(from.PlusDays(ahead)) is not null)
            {
                return from.PlusDays(ahead);
            }
        }

        return null;
    }

    /// <summary>Nothing when the workshop is open at a moment; else a refusal that says the hours.</summary>
    /// <param name="field">The field of the moment as the caller wrote it.</param>
    /// <param name="moment">When work starts or a motorcycle comes.</param>
    public Problem? Refuse(string field, Instant moment)
    {
        var day = Time.DayOf(moment);
        var start = $"{field} is {Time.Say(moment)}";
        if (OpenOn(day) is not { } open)
        {
            var next = FirstOpenDay(day) is { } first ? $"; it opens again on {Hours(first)}" : "";
            return Closed(field, $"{start}: the workshop is closed that day ({ClosedBecause(day)}){next}.");
        }

        return moment < open.Start || moment >= open.End ? Closed(field, $"{start}: the workshop is open on {Hours(day)}.") : null;
    }

    private static Problem Closed(string field, string sentence) => Problem.Impossible("outside-opening-hours", field, sentence);

    private string Hours(LocalDate day)
    {
        var open = OpenOn(day)!.Value;
        return $"{day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)} from {Clock(open.Start)} to {Clock(open.End)}";
    }

    private string Clock(Instant instant) => Time.At(instant).ToString("HH:mm", CultureInfo.InvariantCulture);
}
