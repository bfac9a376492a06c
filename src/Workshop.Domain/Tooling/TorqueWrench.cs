using System.Globalization;
using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tooling;

/// <summary>
/// Which torque wrench suits a setting: one that may be used on that day, whose scale holds the dialled setting, and not
/// below a fifth of its rated maximum, where click wrenches are least sure.
/// </summary>
public static class TorqueWrench
{
    /// <summary>The dialled setting is at least this share of the rated maximum. Common practice, no source.</summary>
    public const decimal SmallestShareOfRated = 0.20m;

    /// <summary>Newton metres in one of the units in which wrenches are marked; nothing for a unit that is no torque.</summary>
    public static decimal? NewtonMetresIn(string unit) => unit switch
    {
        "N.m" => 1m,
        "lbf.ft" => Torque.NewtonMetresPerPoundFoot,
        "lbf.in" => Torque.NewtonMetresPerPoundInch,
        _ => null,
    };

    /// <summary>
    /// The settings that a wrench is good for, in N.m: from the start of its scale or a fifth of its rated maximum, whichever
    /// is greater, to that maximum. Nothing where its scale is unknown or is no torque.
    /// </summary>
    public static (decimal LowestNm, decimal HighestNm)? RangeOf(Instrument wrench)
    {
        ArgumentNullException.ThrowIfNull(wrench);
        return wrench.Kind == InstrumentKind.TorqueWrench && NewtonMetresIn(wrench.Unit) is { } factor && wrench.RangeHighest is { } rated
            ? (Math.Max(wrench.RangeLowest ?? 0, SmallestShareOfRated * rated) * factor, rated * factor)
            : null;
    }

    /// <summary>Nothing where the wrench suits; else why not, in words that go on after its name.</summary>
    /// <param name="setting">What would be dialled.</param>
    /// <param name="day">The workshop's day of the work.</param>
    public static string? ReasonAgainst(Instrument wrench, Torque setting, LocalDate day)
    {
        ArgumentNullException.ThrowIfNull(wrench);
        if (RangeOf(wrench) is not { } range)
        {
            return wrench.Kind == InstrumentKind.TorqueWrench ? "has no known scale" : "is no torque wrench";
        }

        if (wrench.State != InstrumentState.InUse)
        {
            return wrench.State == InstrumentState.Withdrawn ? "is withdrawn" : "is out for calibration";
        }

        if (!wrench.MayBeUsedOn(day))
        {
            return $"was due for calibration on {wrench.CalibrationDueOn!.Value.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}";
        }

        return setting.NewtonMetres < range.LowestNm || setting.NewtonMetres > range.HighestNm
            ? $"is good for {Figure(range.LowestNm)} to {Figure(range.HighestNm)} N.m, and {setting} is to be dialled"
            : null;
    }

    /// <summary>Those that suit, the finest scale first.</summary>
    public static IReadOnlyList<Instrument> Suited(IEnumerable<Instrument> wrenches, Torque setting, LocalDate day) =>
        [.. wrenches
            .Where(w => ReasonAgainst(w, setting, day) is null)
            .OrderBy(w => RangeOf(w)!.Value.HighestNm)
            .ThenBy(w => w.Name, StringComparer.Ordinal)
            .ThenBy(w => w.SerialNumber, StringComparer.Ordinal)];

    private static string Figure(decimal newtonMetres) => newtonMetres.ToString("0.#", CultureInfo.InvariantCulture);
}
