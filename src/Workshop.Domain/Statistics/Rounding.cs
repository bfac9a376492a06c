namespace Workshop.Domain.Statistics;

/// <summary>
/// Rounding of decimal numbers by ISO 80000-1, Annex B. Round once, from the full value: 1.347 to one place is 1.3,
/// never 1.4 by way of 1.35. A value is not rounded before it is compared with a limit.
/// </summary>
public static class Rounding
{
    /// <summary>
    /// Rule A: to the nearest; of two equally near, to the even one. For measured values, where it leaves no bias.
    /// </summary>
    /// <param name="value">The value to round.</param>
    /// <param name="decimals">Decimal places kept, 0 to 28.</param>
    /// <exception cref="ArgumentOutOfRangeException">The places are out of range.</exception>
    public static decimal HalfEven(decimal value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.ToEven);

    /// <summary>Rule B: to the nearest; of two equally near, to the one of larger magnitude.</summary>
    /// <param name="value">The value to round; a negative one is rounded like its magnitude.</param>
    /// <param name="decimals">Decimal places kept, 0 to 28.</param>
    /// <exception cref="ArgumentOutOfRangeException">The places are out of range.</exception>
    public static decimal HalfUp(decimal value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero);

    /// <summary>Rule A to a multiple of any rounding range, such as a step of 0.025.</summary>
    /// <param name="value">The value to round.</param>
    /// <param name="range">The rounding range, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range is not above 0.</exception>
    public static decimal HalfEvenToMultiple(decimal value, decimal range) =>
        ToMultiple(value, range, multipleBelow => multipleBelow % 2 != 0);

    /// <summary>Rule B to a multiple of any rounding range, such as a step of 0.025.</summary>
    /// <param name="value">The value to round; a negative one is rounded like its magnitude.</param>
    /// <param name="range">The rounding range, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range is not above 0.</exception>
    public static decimal HalfUpToMultiple(decimal value, decimal range) => ToMultiple(value, range, _ => true);

    /// <summary>By remainder, which is exact, not by quotient, which is not where the range is no power of ten.</summary>
    private static decimal ToMultiple(decimal value, decimal range, Func<decimal, bool> halfGoesUpFrom)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(range);
        var magnitude = Math.Abs(value);
        var over = magnitude % range;
        var below = magnitude - over;
        var up = (2 * over).CompareTo(range) switch
        {
            < 0 => false,
            > 0 => true,
            _ => halfGoesUpFrom(below / range),
        };
        var rounded = up ? below + range : below;
        return value < 0 ? -rounded : rounded;
    }
}
