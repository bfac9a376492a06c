using System.Globalization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tooling;

/// <summary>The scale of a torque wrench, in its own unit.</summary>
/// <param name="NewtonMetres">In one of its unit.</param>
/// <param name="Start">Where its marks begin; 0 where nobody says.</param>
/// <param name="Lowest">What it is good for at least: the start of the scale, or a fifth of the rated maximum, whichever is greater.</param>
/// <param name="Rated">The rated maximum.</param>
/// <param name="Graduation">From mark to mark; nothing where nobody says.</param>
public sealed record WrenchScale(string Unit, decimal NewtonMetres, decimal Start, decimal Lowest, decimal Rated, decimal? Graduation)
{
    /// <summary>The dialled setting is at least this share of the rated maximum. Common practice, no source.</summary>
    public const decimal SmallestShareOfRated = 0.20m;

    // Without a graduation a figure is shown as finely as this.
    private const int DecimalsWithoutGraduation = 3;

    /// <summary>The units in which torque wrenches are marked.</summary>
    public static readonly IReadOnlyList<string> Units = ["N.m", "lbf.ft", "lbf.in", "kgf.m", "kgf.cm"];

    /// <summary>Newton metres in one of the units in which wrenches are marked; nothing for a unit that is no torque.</summary>
    public static decimal? NewtonMetresIn(string unit) => unit switch
    {
        "N.m" => 1m,
        "lbf.ft" => Torque.NewtonMetresPerPoundFoot,
        "lbf.in" => Torque.NewtonMetresPerPoundInch,
        "kgf.m" => Torque.NewtonMetresPerKilogramForceMetre,
        "kgf.cm" => Torque.NewtonMetresPerKilogramForceMetre / 100,
        _ => null,
    };

    /// <summary>The scale of an instrument; nothing where it is no torque wrench, or its unit or rated maximum is unknown.</summary>
    public static WrenchScale? Of(Instrument wrench)
    {
        ArgumentNullException.ThrowIfNull(wrench);
        return wrench.Kind == InstrumentKind.TorqueWrench && NewtonMetresIn(wrench.Unit) is { } factor && wrench.RangeHighest is { } rated
            ? new WrenchScale(
                wrench.Unit, factor, wrench.RangeLowest ?? 0, Math.Max(wrench.RangeLowest ?? 0, SmallestShareOfRated * rated), rated,
                wrench.Graduation is > 0 ? wrench.Graduation : null)
            : null;
    }

    /// <summary>It may be set there.</summary>
    public bool IsGoodFor(decimal setting) => setting >= Lowest && setting <= Rated;

    /// <summary>The setting is the first or the last for which the wrench is good.</summary>
    public bool IsAtEnd(decimal setting) => setting <= Lowest || setting >= Rated;

    /// <summary>The marks next to a setting, the nearer first, of two as near the lower; the setting itself where marks are unknown.</summary>
    public IReadOnlyList<decimal> MarksNear(decimal setting)
    {
        if (Graduation is not { } step)
        {
            return [setting];
        }

        var below = Start + (decimal.Floor((setting - Start) / step) * step);
        var above = below + step;
        return below == setting ? [setting] : setting - below <= above - setting ? [below, above] : [above, below];
    }

    /// <summary>A figure with its unit, as the scale shows it: "8.5 N.m".</summary>
    public string Say(decimal setting) => $"{Write(setting)} {Unit}";

    /// <summary>"5 to 25 N.m": what it is good for.</summary>
    public string SayGoodRange() => $"{Write(Lowest)} to {Write(Rated)} {Unit}";

    private static string Write(decimal setting) =>
        decimal.Round(setting, DecimalsWithoutGraduation).ToString("0.###", CultureInfo.InvariantCulture);
}
