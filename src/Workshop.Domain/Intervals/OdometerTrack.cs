using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Intervals;

/// <summary>What a motorcycle had done by the end of a day, in metres behind <see cref="Distance"/>.</summary>
public readonly record struct OdometerPoint(LocalDate On, Distance Distance);

/// <summary>A span of days, both ends within it; the first is not after the last.</summary>
public readonly record struct DaySpan(LocalDate First, LocalDate Last);

/// <summary>
/// What is known of the distance of one motorcycle by date: the day from which it counts, then one point a day, the furthest
/// where a day has several readings. Readings are joined by straight lines.
/// </summary>
public sealed class OdometerTrack
{
    private OdometerTrack(IReadOnlyList<OdometerPoint> points) => Points = points;

    /// <summary>In order of date; never empty.</summary>
    public IReadOnlyList<OdometerPoint> Points { get; }

    /// <summary>The latest point.</summary>
    public OdometerPoint Last => Points[^1];

    /// <summary>The track of these readings, in any order.</summary>
    /// <param name="start">The day from which the odometer counts, and what the motorcycle had done then.</param>
    /// <param name="readings">The readings that stand, of every instrument that the motorcycle had.</param>
    public static OdometerTrack Of(OdometerPoint start, IEnumerable<OdometerPoint> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return new OdometerTrack([.. readings
            .Where(reading => reading.On >= start.On)
            .Append(start)
            .GroupBy(point => point.On)
            .OrderBy(day => day.Key)
            .Select(day => day.MaxBy(point => point.Distance))]);
    }

    /// <summary>
    /// The day on which a distance was reached, by the straight line between the two readings around it, with the days of
    /// those readings as its span; nothing where the last reading has not come so far.
    /// </summary>
    public (LocalDate On, DaySpan Span)? Reached(Distance distance)
    {
        for (var i = 0; i < Points.Count; i++)
        {
            if (Points[i].Distance < distance)
            {
                continue;
            }

            if (i == 0)
            {
                return (Points[0].On, new DaySpan(Points[0].On, Points[0].On));
            }

            var (before, after) = (Points[i - 1], Points[i]);
            var days = Period.DaysBetween(before.On, after.On)
                * (distance - before.Distance).Metres / (after.Distance - before.Distance).Metres;
            return (before.On.PlusDays((int)Math.Floor(days)), new DaySpan(before.On, after.On));
        }

        return null;
    }
}
