using System.Globalization;
using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Bookings;

/// <summary>
/// The workshop's own time: dates and hours are those of its zone, whatever the clock of a server or a browser is set to.
/// </summary>
/// <param name="Zone">Of the tz database.</param>
public sealed record WorkshopTime(DateTimeZone Zone)
{
    /// <summary>The time of the workshop's zone.</summary>
    /// <exception cref="NodaTime.TimeZones.DateTimeZoneNotFoundException">The tz database knows no such zone.</exception>
    public static WorkshopTime Of(WorkshopProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return new WorkshopTime(DateTimeZoneProviders.Tzdb[profile.TimeZone]);
    }

    /// <summary>The day on the workshop's wall calendar.</summary>
    public LocalDate DayOf(Instant instant) => instant.InZone(Zone).Date;

    /// <summary>Date and time on the workshop's wall clock.</summary>
    public LocalDateTime At(Instant instant) => instant.InZone(Zone).LocalDateTime;

    /// <summary>From midnight to midnight on the workshop's calendar: 23 or 25 hours where the clocks change.</summary>
    public Interval WholeDay(LocalDate day) =>
        new(Zone.AtStartOfDay(day).ToInstant(), Zone.AtStartOfDay(day.PlusDays(1)).ToInstant());

    /// <summary>
    /// The instant of a date and a time on the workshop's wall clock. A time that the change of the clocks skips is refused;
    /// one that comes twice is the first of the two.
    /// </summary>
    /// <param name="field">The field of the time as the caller wrote it.</param>
    /// <param name="day">On the workshop's calendar.</param>
    /// <param name="time">On the workshop's clock.</param>
    public Outcome<Instant> InstantOf(string field, LocalDate day, LocalTime time)
    {
        var mapping = Zone.MapLocal(day + time);
        return mapping.Count == 0
            ? Problem.Impossible("time-skipped", field,
                $"{field} is {time.ToString("HH:mm", CultureInfo.InvariantCulture)}: on {day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)} the clocks skip that time; give one before or after.")
            : mapping.First().ToInstant();
    }

    /// <summary>Date and time to the minute, for a sentence or a page: "2026-03-02 09:00".</summary>
    public string Say(Instant instant) => At(instant).ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
