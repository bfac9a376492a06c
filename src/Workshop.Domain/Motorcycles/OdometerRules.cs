using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Motorcycles;

/// <summary>Judges a new odometer reading by its neighbours in order of date, not in order of entry.</summary>
public static class OdometerRules
{
    /// <summary>
    /// Further in a day than this is a slip: a day and a night at 83 km/h without a stop. Endurance rides certified as 1000 miles in
    /// 24 hours stay below. Common practice, no source.
    /// </summary>
    public static readonly Distance FurthestInADay = Distance.FromKilometres(2_000);

    /// <summary>
    /// Nothing when the reading fits; else a refusal that names the neighbour it runs against: backwards, or too far in the days
    /// between. Somebody who knows that it is right may confirm it. Readings of one day may stand in any order. All counts are of
    /// one instrument.
    /// </summary>
    /// <param name="field">The name of the field as the caller wrote it.</param>
    /// <param name="count">Whole units, as typed.</param>
    /// <param name="readOn">The day of the reading.</param>
    /// <param name="instrument">The odometer that was read.</param>
    /// <param name="others">The readings of the same instrument that count: neither superseded nor overruled.</param>
    /// <param name="confirmed">Somebody said that it is right, slip or not.</param>
    public static Problem? Judge(
        string field, int count, LocalDate readOn, Odometer instrument, IEnumerable<OdometerReading> others, bool confirmed = false)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (readOn < instrument.FittedOn)
        {
            return Problem.Impossible("before-odometer", field,
                $"{field} is of {Day(readOn)}, but this odometer was fitted on {Day(instrument.FittedOn)}; give a day from then on.");
        }

        if (confirmed)
        {
            return null;
        }

        var unit = instrument.Unit.Symbol();
        var all = others.OrderBy(o => o.ReadOn).ThenBy(o => o.Count).ToList();
        if (all.Any(o => o.ReadOn == readOn && o.Count == count && o.Confirmed))
        {
            return null;
        }

        var before = all.LastOrDefault(o => o.ReadOn < readOn);
        if (before is not null && count < before.Count)
        {
            return Problem.Impossible("odometer-backwards", field,
                $"{field} is {count} {unit}: it runs backwards; on {Day(before.ReadOn)} it showed {before.Count} {unit}. At least {before.Count} is allowed; {Confirm}");
        }

        var after = all.FirstOrDefault(o => o.ReadOn > readOn);
        if (after is not null && count > after.Count)
        {
            return Problem.Impossible("odometer-backwards", field,
                $"{field} is {count} {unit} on {Day(readOn)}: later, on {Day(after.ReadOn)}, it showed {after.Count} {unit}. At most {after.Count} is allowed; {Confirm}");
        }

        return TooFar(field, before, count, readOn, instrument.Unit) ?? TooFar(field, count, readOn, after, instrument.Unit);
    }

    private const string Confirm =
        "where it is right all the same, enter it with the motorcycle's odometer, say why and confirm it (confirmUnusual).";

    private static Problem? TooFar(string field, OdometerReading? before, int count, LocalDate readOn, OdometerUnit unit) =>
        before is not null && IsTooFar(before.ReadOn, before.Count, readOn, count, unit)
            ? Problem.Impossible("odometer-too-far", field,
                $"{field} is {count} {unit.Symbol()}: on {Day(before.ReadOn)} it showed {before.Count} {unit.Symbol()}, which is {count - before.Count} {unit.Symbol()} in {Days(before.ReadOn, readOn)}. At most {MostAfter(before, readOn, unit)} is allowed; {Confirm}")
            : null;

    private static Problem? TooFar(string field, int count, LocalDate readOn, OdometerReading? after, OdometerUnit unit) =>
        after is not null && IsTooFar(readOn, count, after.ReadOn, after.Count, unit)
            ? Problem.Impossible("odometer-too-far", field,
                $"{field} is {count} {unit.Symbol()} on {Day(readOn)}: on {Day(after.ReadOn)} it showed {after.Count} {unit.Symbol()}, which is {after.Count - count} {unit.Symbol()} in {Days(readOn, after.ReadOn)}; {Confirm}")
            : null;

    private static bool IsTooFar(LocalDate from, int count, LocalDate to, int later, OdometerUnit unit) =>
        unit.ToDistance(later - count).Metres > FurthestInADay.Metres * Period.DaysBetween(from, to);

    private static int MostAfter(OdometerReading before, LocalDate readOn, OdometerUnit unit) => before.Count
        + unit.CountOf(Distance.FromMetres(FurthestInADay.Metres * Period.DaysBetween(before.ReadOn, readOn)));

    private static string Days(LocalDate from, LocalDate to) => Period.DaysBetween(from, to) is var days && days == 1 ? "a day" : $"{days} days";

    /// <summary>Refuses a day that has not come yet; nothing when it has.</summary>
    /// <param name="field">The name of the field as the caller wrote it.</param>
    /// <param name="day">The day that something is said to have happened on.</param>
    /// <param name="today">The workshop's day.</param>
    public static Problem? JudgeDay(string field, LocalDate day, LocalDate today) => day <= today
        ? null
        : Problem.Impossible("in-future", field,
            $"{field} is {Day(day)}, which has not come yet: today, {Day(today)}, or an earlier day is allowed.");

    /// <summary>What the motorcycle has done when its instrument shows <paramref name="count"/>.</summary>
    public static Distance DistanceAt(this Odometer instrument, int count)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return instrument.Offset + instrument.Unit.ToDistance(count);
    }

    /// <summary>
    /// The offset of a new instrument: what the motorcycle had done when it showed zero. Below zero where it came from a
    /// motorcycle that had gone further.
    /// </summary>
    /// <param name="done">What the motorcycle has done when the instrument is fitted.</param>
    /// <param name="unit">The unit of the new instrument.</param>
    /// <param name="count">What the new instrument shows then.</param>
    public static Distance OffsetAfter(Distance done, OdometerUnit unit, int count) => done - unit.ToDistance(count);

    private static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", null);
}
