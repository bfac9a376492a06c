using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Intervals;

/// <summary>When an item falls due next.</summary>
/// <param name="On">By the calendar, where the interval has months.</param>
/// <param name="At">By the motorcycle's distance, where the interval has kilometres.</param>
/// <param name="ExpectedOn">
/// Whichever comes first: the day by the calendar, or the day on which the distance is expected to be reached (or was, where
/// the readings have passed it).
/// </param>
/// <param name="Span">
/// The same for the fastest and the slowest rate; nothing where the calendar alone decides, as that day is certain. Where the
/// slowest rate never gets there and there is no day by the calendar, <see cref="IsOpenEnded"/>.
/// </param>
/// <param name="IsOpenEnded">The last day of the span is not known: at the slowest rate it is beyond the horizon.</param>
/// <param name="ByForecast">The distance is that of a forecast, which comes before the interval's.</param>
public sealed record DueNext(
    LocalDate? On, Distance? At, LocalDate ExpectedOn, DaySpan? Span, bool IsOpenEnded, bool ByForecast = false);

/// <summary>Next by distance and by date, whichever first.</summary>
public static class NextDue
{
    /// <summary>Dates further than this many days after the last reading are not told apart (20 years of the calendar).</summary>
    public const int HorizonDays = 7305;

    /// <summary>
    /// When an item is due next; nothing when it is done once and for all (an interval with a first occurrence and no
    /// other), or has no figures at all.
    /// </summary>
    /// <remarks>
    /// <para>Done before: so far and so long after it was last done. Never done: at the first occurrence, counted from
    /// <paramref name="start"/>; where that has no figures of its own, after the usual interval.</para>
    /// <para>Calendar months by the rule of NodaTime's PlusMonths: a day that the month lacks becomes its last, so a month
    /// after 31 January is 28 or 29 February. Distances are exact, in kilometres and in miles alike.</para>
    /// <para>Days are whole: expected and earliest ones rounded down, latest ones up.</para>
    /// </remarks>
    /// <param name="interval">Of the engine model.</param>
    /// <param name="start">From when and from what distance the engine counts.</param>
    /// <param name="lastDone">When the item was last done; nothing when never.</param>
    /// <param name="track">The odometer's readings.</param>
    /// <param name="rate">How far it is ridden in a day.</param>
    /// <param name="forecastAt">The motorcycle's distance at which a forecast wants it done: it may come before the interval, never after.</param>
    public static DueNext? Of(
        ServiceInterval interval, OdometerPoint start, OdometerPoint? lastDone, OdometerTrack track, RidingRate rate,
        Distance? forecastAt = null)
    {
        ArgumentNullException.ThrowIfNull(interval);
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(rate);
        var (distance, months) = lastDone is null
            ? (interval.First ?? interval.Every, interval.FirstMonths ?? interval.EveryMonths)
            : (interval.Every, interval.EveryMonths);
        var from = lastDone ?? start;
        LocalDate? on = months is { } count ? from.On.PlusMonths(count) : null;
        Distance? at = distance is { } far ? from.Distance + far : null;
        var byForecast = forecastAt is { } foretold && !(at <= foretold);
        return (on, byForecast ? forecastAt : at) switch
        {
            (null, null) => null,
            ({ } day, null) => new DueNext(day, null, day, null, false),
            (_, { } point) => ByDistance(on, point, track, rate) with { ByForecast = byForecast },
        };
    }

    private static DueNext ByDistance(LocalDate? on, Distance at, OdometerTrack track, RidingRate rate)
    {
        var (expected, earliest, latest) = Reach(at, track, rate);
        if (on is { } day)
        {
            return new DueNext(on, at, First(expected, day), new DaySpan(First(earliest, day), First(latest ?? day, day)), false);
        }

        return new DueNext(null, at, expected, new DaySpan(earliest, latest ?? Horizon(track)), latest is null);
    }

    /// <summary>
    /// When a distance is reached: by the readings where they have passed it, by the rate beyond the last one. What the rate
    /// does not reach within <see cref="HorizonDays"/> is expected then; its latest day is nothing where the slowest rate does not.
    /// </summary>
    /// <param name="at">In the motorcycle's distance.</param>
    /// <param name="track">The odometer's readings.</param>
    /// <param name="rate">How far it is ridden in a day.</param>
    public static (LocalDate Expected, LocalDate Earliest, LocalDate? Latest) Reach(
        Distance at, OdometerTrack track, RidingRate rate)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(rate);
        if (track.Reached(at) is { } passed)
        {
            return (passed.On, passed.Span.First, passed.Span.Last);
        }

        var left = at - track.Last.Distance;
        return (
            track.Last.On.PlusDays((int)Math.Floor(DaysFor(left, rate.PerDay))),
            track.Last.On.PlusDays((int)Math.Floor(DaysFor(left, rate.Fastest))),
            DaysFor(left, rate.Slowest) is var slowest && slowest < HorizonDays
                ? track.Last.On.PlusDays((int)Math.Ceiling(slowest))
                : null);
    }

    private static decimal DaysFor(Distance left, Distance perDay) =>
        perDay.Metres * HorizonDays <= left.Metres ? HorizonDays : left.Metres / perDay.Metres;

    private static LocalDate Horizon(OdometerTrack track) => track.Last.On.PlusDays(HorizonDays);

    private static LocalDate First(LocalDate one, LocalDate other) => LocalDate.Min(one, other);
}
