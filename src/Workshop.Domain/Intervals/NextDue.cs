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
/// The day before which it comes in one case in ten, and that by which it comes in nine; nothing where the calendar alone decides, as
/// that day is certain. Where the last is beyond the horizon and there is no day by the calendar, <see cref="IsOpenEnded"/>.
/// </param>
/// <param name="IsOpenEnded">The last day of the span is not known: it is beyond the horizon.</param>
/// <param name="ByForecast">The distance is that of a forecast, which comes before the interval's.</param>
public sealed record DueNext(
    LocalDate? On, Distance? At, LocalDate ExpectedOn, DaySpan? Span, bool IsOpenEnded, bool ByForecast = false);

/// <summary>Next by distance and by date, whichever first.</summary>
public static class NextDue
{
    /// <summary>Dates further than this many days after the last reading are not told apart (20 years of the calendar).</summary>
    public const int HorizonDays = 7305;

    /// <summary>When an item is due next; nothing when it is done once and for all, or has no figures at all.</summary>
    /// <remarks>Days are whole: expected and earliest ones rounded down, latest ones up.</remarks>
    /// <param name="interval">The figures that count for the motorcycle: see <see cref="IntervalRules.For"/>.</param>
    /// <param name="start">From when and from what distance the engine counts.</param>
    /// <param name="lastDone">When the item was last done; nothing when never.</param>
    /// <param name="track">The odometer's readings.</param>
    /// <param name="rate">How far it is ridden in a day.</param>
    /// <param name="forecastAt">The motorcycle's distance at which a forecast wants it done: it may come before the interval, never after, and never before it was last done.</param>
    /// <param name="early">On a fixed grid, how much early it counts for the point ahead; the usual where absent.</param>
    public static DueNext? Of(
        ServiceInterval interval, OdometerPoint start, OdometerPoint? lastDone, OdometerTrack track, RidingRate rate,
        Distance? forecastAt = null, TogetherWithin? early = null)
    {
        ArgumentNullException.ThrowIfNull(interval);
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(rate);
        var (on, at) = DuePoints.Next(interval, start, lastDone, early ?? TogetherWithin.Usual);
        var wanted = forecastAt < lastDone?.Distance ? lastDone?.Distance : forecastAt;
        var byForecast = wanted is { } foretold && !(at <= foretold);
        return (on, byForecast ? wanted : at) switch
        {
            (null, null) => null,
            ({ } day, null) => new DueNext(day, null, day, null, false),
            (_, { } point) => NotBefore(byForecast ? lastDone?.On : null, NotBefore(interval.AfterDate, ByDistance(on, point, track, rate)))
                with { ByForecast = byForecast },
        };
    }

    private static DueNext NotBefore(LocalDate? day, DueNext due) => day is not { } first
        ? due
        : due with
        {
            ExpectedOn = LocalDate.Max(due.ExpectedOn, first),
            Span = due.Span is { } span ? new DaySpan(LocalDate.Max(span.First, first), LocalDate.Max(span.Last, first)) : null,
        };

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
    /// When a distance is reached: by the readings where they have passed it, by the rate beyond the last one, with the days
    /// before which one in ten gets there and by which nine in ten do. What the rate does not reach within
    /// <see cref="HorizonDays"/> is expected then; its latest day is nothing where that is beyond.
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

        var (last, left) = (track.Last.On, at - track.Last.Distance);
        return (
            last.PlusDays((int)Math.Floor(rate.DaysFor(last, left, 0, HorizonDays) ?? HorizonDays)),
            last.PlusDays((int)Math.Floor(rate.DaysFor(last, left, -RidingRate.SpanDeviations, HorizonDays) ?? HorizonDays)),
            rate.DaysFor(last, left, RidingRate.SpanDeviations, HorizonDays) is { } latest ? last.PlusDays((int)Math.Ceiling(latest)) : null);
    }

    private static LocalDate Horizon(OdometerTrack track) => track.Last.On.PlusDays(HorizonDays);

    private static LocalDate First(LocalDate one, LocalDate other) => LocalDate.Min(one, other);
}
