using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Clearances;

public class ThermalGrowthTests
{
    /// <summary>ISO 1:2022: lengths hold at 20 °C, which it gives as 68 °F too.</summary>
    [Fact]
    public void Lengths_hold_at_twenty_degrees()
    {
        Assert.Equal(68, ThermalGrowth.Reference.Celsius * 9 / 5 + 32);
        Assert.Equal(0, ThermalGrowth.OpenedMm(ThermalGrowth.Reference));
    }

    /// <summary>
    /// First row: a public page of a machining handbook, mild steel with 11.7e-6, seen, 100 mm, 100 K: 0.117 mm. The others by exact
    /// arithmetic from ISO 3650's 11.5e-6: a shim of 2.5 mm by 10 K, and a head of 100 mm by 80 K beside steel.
    /// </summary>
    [Theory]
    [InlineData(100, 11.7e-6, 100, 0.117)]
    [InlineData(2.5, ThermalGrowth.Steel, 10, 0.0002875)]
    [InlineData(100, ThermalGrowth.LightAlloy - ThermalGrowth.Steel, 80, 0.0984)]
    [InlineData(100, ThermalGrowth.LightAlloy - ThermalGrowth.Steel, -10, -0.0123)]
    public void A_length_grows_by_its_expansion(double length, double perKelvin, double kelvin, double growth) =>
        Assert.Equal(growth, ThermalGrowth.Of(length, perKelvin, kelvin), 12);

    /// <summary>Why a shim's thickness is not corrected for temperature: over 20 K it stays below the digit of a micrometer, 0.001 mm.</summary>
    [Fact]
    public void A_shim_of_three_millimetres_hides_twenty_degrees_below_the_digit_of_a_micrometer() =>
        Assert.InRange(ThermalGrowth.Of(3, ThermalGrowth.Steel, 20), 0, 0.001);

    [Theory]
    [InlineData(45, "reads about 0.03 mm more at 45 °C than at 20 °C")]
    [InlineData(5, "reads about 0.02 mm less at 5 °C than at 20 °C")]
    public void What_it_does_to_a_reading_is_said(int celsius, string words) =>
        Assert.Contains(words, ThermalGrowth.Words(Temperature.FromCelsius(celsius)), StringComparison.Ordinal);
}
