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

    [Fact]
    public void A_pressure_is_neither_negative_nor_finer_than_a_hundredth()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Pressure.FromKilopascals(-0.01m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pressure.FromKilopascals(1.005m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pressure.FromKilopascals(10_000.01m));
        Assert.Equal("2.4 kPa", Pressure.FromKilopascals(2.4m).ToString());
    }
}
