using System.Globalization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Clearances;

/// <summary>
/// What a temperature does to a reading. Lengths hold at 20 °C (ISO 1:2022); off it, a length L grows by L alpha (t - 20 °C). A head of
/// light alloy grows about twice as much as the steel valve that it holds, so a warm engine reads too large; an evenly warm
/// engine only: behind a valve that has just run hot the sign may be the other. Says how much, and corrects nothing.
/// </summary>
public static class ThermalGrowth
{
    /// <summary>Linear expansion of gauge-block steel, 1/K: ISO 3650.</summary>
    public const double Steel = 11.5e-6;

    /// <summary>Linear expansion of aluminium, 1/K: between 23 and 24 in handbook tables; cast alloys are lower, from 21.5.</summary>
    public const double LightAlloy = 23.8e-6;

    /// <summary>From cam to valve seat, mm; common practice, no source.</summary>
    public const double TrainMm = 100;

    private const double Ten = 10;

    /// <summary>The temperature at which lengths hold.</summary>
    public static readonly Temperature Reference = Temperature.FromCelsius(20);

    /// <summary>By how much a length grows, in the unit of the length; negative where it shrinks.</summary>
    /// <param name="length">At the first temperature, 0 or above.</param>
    /// <param name="perKelvin">Linear expansion, 1/K.</param>
    /// <param name="kelvin">Warmer by so many kelvin; below 0 colder.</param>
    public static double Of(double length, double perKelvin, double kelvin)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(length);
        return length * perKelvin * kelvin;
    }

    /// <summary>By how many mm more than at 20 °C a head of light alloy stands off its steel valves, the whole at one temperature.</summary>
    public static double OpenedMm(Temperature head) =>
        Of(TrainMm, LightAlloy - Steel, (double)(head.Celsius - Reference.Celsius));

    /// <summary>As a sentence: "Light alloy around steel valves reads about 0.03 mm more at 45 °C than at 20 °C."</summary>
    public static string Words(Temperature head)
    {
        var opened = OpenedMm(head);
        return string.Create(CultureInfo.InvariantCulture,
            $"Light alloy around steel valves reads about {Math.Abs(opened):0.00} mm {(opened < 0 ? "less" : "more")} at {head} than at {Reference}.");
    }

    /// <summary>The same for any temperature: "10 °C more read as about 0.012 mm more".</summary>
    public static string PerTenDegrees { get; } = string.Create(CultureInfo.InvariantCulture,
        $"10 °C more read as about {Of(TrainMm, LightAlloy - Steel, Ten):0.000} mm more where light alloy holds steel valves");
}
