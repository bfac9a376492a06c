using System.Globalization;
using NodaTime;

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

    /// <summary>Date and time to the minute, for a sentence or a page: "2026-03-02 09:00".</summary>
    public string Say(Instant instant) => At(instant).ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
