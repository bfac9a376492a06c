using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Motorcycles;

/// <summary>Judges a new odometer reading by its neighbours in order of date, not in order of entry.</summary>
public static class OdometerRules
{
    /// <summary>
    /// Nothing when the reading fits; else a refusal that names the neighbour it runs against. Readings of one day may
    /// stand in any order. All counts are of one instrument.
    /// </summary>
    /// <param name="field">The name of the field as the caller wrote it.</param>
    /// <param name="count">Whole units, as typed.</param>
    /// <param name="readOn">The day of the reading.</param>
    /// <param name="instrument">The odometer that was read.</param>
    /// <param name="others">The readings of the same instrument that stand, superseded ones left out.</param>
    public static Problem? Judge(
        string field, int count, LocalDate readOn, Odometer instrument, IEnumerable<OdometerReading> others)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (readOn < instrument.FittedOn)
        {
            return Problem.Impossible("before-odometer", field,
                $"{field} is of {Day(readOn)}, but this odometer was fitted on {Day(instrument.FittedOn)}; give a day from then on.");
        }

        var unit = instrument.Unit.Symbol();
        var known = others.Where(o => o.ReadOn != readOn).OrderBy(o => o.ReadOn).ThenBy(o => o.Count).ToList();
        if (known.LastOrDefault(o => o.ReadOn < readOn) is { } before && count < before.Count)
        {
            return Problem.Impossible("odometer-backwards", field,
                $"{field} is {count} {unit}: it runs backwards; on {Day(before.ReadOn)} it showed {before.Count} {unit}. At least {before.Count} is allowed.");
        }

        if (known.FirstOrDefault(o => o.ReadOn > readOn) is { } after && count > after.Count)
        {
            return Problem.Impossible("odometer-backwards", field,
                $"{field} is {count} {unit} on {Day(readOn)}: later, on {Day(after.ReadOn)}, it showed {after.Count} {unit}. At most {after.Count} is allowed.");
        }

        return null;
    }

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
