using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

/// <summary>NIST/ITL Statistical Reference Datasets, univariate summary statistics.</summary>
public class NistSummaryTests
{
    /// <summary>
    /// NumAcc4 differs in the last of nine digits only: 10000000.2 as a double is off by 1 in the 8th digit of the
    /// spread, so no algorithm on doubles can agree in more.
    /// </summary>
    [Theory]
    [InlineData("nist/Mavro.dat", 15, 12.5, 12.5)]
    [InlineData("nist/NumAcc4.dat", 15, 8, 8)]
    public void Mean_deviation_and_autocorrelation_agree(
        string file, double digitsOfMean, double digitsOfDeviation, double digitsOfAutocorrelation)
    {
        var set = NistDataSet.Read(file);
        var summary = UnivariateSummary.Of(set.Column(0)).Value;

        Assert.Equal(set.Certified("Number of Observations:"), summary.Count);
        Assert.Equal(summary.Count - 1, summary.DegreesOfFreedom);
        DigitsOfAgreement.AtLeast(digitsOfMean, summary.Mean.Value, set.Certified("Sample Mean", 0), "mean");
        DigitsOfAgreement.AtLeast(
            digitsOfDeviation,
            summary.StandardDeviation,
            set.Certified("Sample Standard Deviation (denom. = n-1)"),
            "standard deviation");
        DigitsOfAgreement.AtLeast(
            digitsOfAutocorrelation,
            summary.Lag1Autocorrelation.Value,
            set.Certified("Sample Autocorrelation Coefficient (lag 1) r(1):"),
            "lag-1 autocorrelation");
    }

    [Fact]
    public void The_reader_sees_all_the_data()
    {
        Assert.Equal(1001, NistDataSet.Read("nist/NumAcc4.dat").Column(0).Length);
        Assert.Equal(36, NistDataSet.Read("nist/Norris.dat").Column(0).Length);
        Assert.Equal([130, 131, 132], NistDataSet.Read("nist/NoInt1.dat").Column(0).Take(3));
        Assert.Equal(9, NistDataSet.Read("nist/SmLs01t.dat").Columns.Count);
        Assert.All(NistDataSet.Read("nist/SmLs01t.dat").Columns, column => Assert.Equal(21, column.Count));
    }
}
