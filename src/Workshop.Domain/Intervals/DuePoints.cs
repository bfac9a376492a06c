using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Intervals;

/// <summary>The next occurrence of an interval, as a day of the calendar and as a distance of the motorcycle.</summary>
/// <param name="On">Where the interval has months, or a date.</param>
/// <param name="At">Where it has kilometres.</param>
public readonly record struct DuePoint(LocalDate? On, Distance? At);

/// <summary>From what was done to the next occurrence.</summary>
/// <remarks>
/// Calendar months by the rule of NodaTime's PlusMonths: a day that the month lacks becomes its last. Counted from what was done,
/// a month after 31 January is 28 or 29 February, and a month after that the 28th or 29th of March; on a fixed grid every point is
/// reckoned from the start, so that the 31st comes back. Distances are added exactly, in kilometres and in miles alike.
/// </remarks>
public static class DuePoints
{
    /// <summary>The next occurrence; without day and distance where there is none any more.</summary>
    /// <param name="interval">The figures that count for the motorcycle: see <see cref="IntervalRules.For"/>.</param>
    /// <param name="start">From when and from what distance the engine counts.</param>
    /// <param name="lastDone">When the item was last done; nothing when never.</param>
    /// <param name="early">On a fixed grid, how much early it counts for the point ahead.</param>
    public static DuePoint Next(ServiceInterval interval, OdometerPoint start, OdometerPoint? lastDone, TogetherWithin early)
    {
        ArgumentNullException.ThrowIfNull(interval);
        ArgumentNullException.ThrowIfNull(early);
        if (lastDone is not null && interval.Once)
        {
            return default;
        }

        var point = lastDone is not { } done ? First(interval, start)
            : interval.Counting == CountingRule.OnFixedGrid ? OnGrid(interval, start, done, early)
            : new DuePoint(After(done.On, interval.EveryMonths), done.Distance + interval.Every);
        return interval.AfterDate is { } day
            ? point with
            {
                On = point.On is { } on ? LocalDate.Max(on, day) : point.At is null && interval.Once ? day : null,
            }
            : point;
    }

    private static DuePoint First(ServiceInterval interval, OdometerPoint start) => new(
        After(start.On, interval.FirstMonths ?? interval.EveryMonths), start.Distance + (interval.First ?? interval.Every));

    private static LocalDate? After(LocalDate from, int? months) => months is { } count ? from.PlusMonths(count) : null;

    private static DuePoint OnGrid(ServiceInterval interval, OdometerPoint start, OdometerPoint done, TogetherWithin early) => new(
        interval.EveryMonths is { } months ? GridDay(start.On, interval.FirstMonths, months, done.On.PlusDays(early.Days)) : null,
        interval.Every is { } every
            ? start.Distance + GridDistance(interval.First, every, done.Distance + early.Far - start.Distance)
            : null);

    /// <summary>The first of the grid beyond what counts as done: the first occurrence, then multiples of the interval.</summary>
    private static Distance GridDistance(Distance? first, Distance every, Distance done) =>
        done < first ? first.Value
        : Distance.FromMetres(every.Metres * (Math.Max(0, decimal.Floor(done.Metres / every.Metres)) + 1));

    private static LocalDate GridDay(LocalDate start, int? first, int every, LocalDate done)
    {
        if (first is { } months && done < start.PlusMonths(months))
        {
            return start.PlusMonths(months);
        }

        // Whole months between are never more than one grid point short, whatever the ends of the months.
        var step = Math.Max(1, Period.Between(start, done, PeriodUnits.Months).Months / every);
        while (start.PlusMonths(step * every) <= done)
        {
            step++;
        }

        return start.PlusMonths(step * every);
    }
}
