using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Measures;

public class PressureTests
{
    /// <summary>NIST SP 811 (2008), appendix B.8: millimeter of mercury, conventional, 1.333 224 E+02 Pa; centimeter of mercury 1.333 224 E+03 Pa.</summary>
    [Fact]
    public void A_millimetre_of_mercury_is_the_conventional_one()
    {
        Assert.Equal(133.3224m, decimal.Round(Pressure.KilopascalsPerMillimetreOfMercury * 1000, 4));
        Assert.Equal(15.0m, decimal.Round(Pressure.FromKilopascals(2).MillimetresOfMercury, 1));

        // One atmosphere, 101.325 kPa exactly, is 760 mm of mercury to the digits of the conventional one (SP 811, B.8).
        Assert.Equal(760.0m, decimal.Round(Pressure.FromKilopascals(101.33m).MillimetresOfMercury, 1));
    }

    /// <summary>NIST SP 811 (2008), appendix B.8: bar 1.0 E+02 kPa (exact); pound-force per square inch (psi) 6.894 757 E+00 kPa.</summary>
    [Fact]
    public void A_bar_is_a_hundred_kilopascals_and_a_psi_is_made_of_the_pound_force_and_the_inch()
    {
        Assert.Equal(6.894757m, decimal.Round(Pressure.KilopascalsPerPsi, 6));
        // By definition: 0.45359237 kg x 9.80665 m/s2 over a square of 0.0254 m.
        Assert.Equal(0.45359237m * 9.80665m / (0.0254m * 0.0254m) / 1000, Pressure.KilopascalsPerPsi, 12);
        Assert.Equal((12m, 174.05m), (Pressure.FromKilopascals(1200).Bar, decimal.Round(Pressure.FromKilopascals(1200).Psi, 2)));
    }

    [Fact]
    public void A_pressure_is_neither_negative_nor_finer_than_a_hundredth()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Pressure.FromKilopascals(-0.01m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pressure.FromKilopascals(1.005m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pressure.FromKilopascals(10_000.01m));
        Assert.Equal("2.4 kPa", Pressure.FromKilopascals(2.4m).ToString());
    }
}
