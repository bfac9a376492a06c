using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

/// <summary>
/// NIST/ITL Statistical Reference Datasets, linear regression. Digits asked for are one below what a correct double
/// computation gives on the set, and never below 12.
/// </summary>
public class NistLinearTests
{
    [Fact]
    public void Norris_agrees_with_every_certified_value()
    {
        var set = NistDataSet.Read("nist/Norris.dat");
        var line = LinearRegression.Fit(set.Column(1), set.Column(0)).Value;

        Agrees(12, line.Intercept.Value, set.Certified("B0"), "intercept");
        Agrees(13, line.Intercept.StandardError, set.Certified("B0", 1), "its standard error");
        Agrees(14, line.Slope.Value, set.Certified("B1"), "slope");
        Agrees(13, line.Slope.StandardError, set.Certified("B1", 1), "its standard error");
        AgreesWithAnalysis(13, set, line.AnalysisOfVariance);
        Assert.Equal(36, line.Count);
        Assert.Equal(34, line.DegreesOfFreedom);
    }

    [Theory]
    [InlineData("nist/NoInt1.dat")]
    [InlineData("nist/NoInt2.dat")]
    public void Lines_through_the_origin_agree_with_every_certified_value(string file)
    {
        var set = NistDataSet.Read(file);
        var line = ThroughOrigin.Fit(set.Column(1), set.Column(0)).Value;

        Agrees(14, line.Slope.Value, set.Certified("B1"), "slope");
        Agrees(13, line.Slope.StandardError, set.Certified("B1", 1), "its standard error");
        AgreesWithAnalysis(13, set, line.AnalysisOfVariance);
    }

    /// <summary>The comparison itself: NoInt1's line, fitted with an intercept, is another line.</summary>
    [Fact]
    public void A_line_with_an_intercept_does_not_pass_for_one_without()
    {
        var set = NistDataSet.Read("nist/NoInt1.dat");
        var line = LinearRegression.Fit(set.Column(1), set.Column(0)).Value;

        Assert.True(DigitsOfAgreement.Between(line.Slope.Value, set.Certified("B1")) < 1);
    }

    private static void AgreesWithAnalysis(double digits, NistDataSet set, AnalysisOfVariance analysis)
    {
        Agrees(digits, analysis.ResidualStandardDeviation, set.Certified("Standard Deviation"), "residual sd");
        Agrees(digits, analysis.RSquared.Value, set.Certified("R-Squared"), "R squared");
        Assert.Equal(set.Certified("Regression"), analysis.Explained.DegreesOfFreedom);
        Agrees(digits, analysis.Explained.SumOfSquares, set.Certified("Regression", 1), "explained sum of squares");
        Agrees(digits, analysis.Explained.MeanSquare, set.Certified("Regression", 2), "explained mean square");
        Agrees(digits, analysis.F.Value, set.Certified("Regression", 3), "F");
        Assert.Equal(set.Certified("Residual"), analysis.Residual.DegreesOfFreedom);
        Agrees(digits, analysis.Residual.SumOfSquares, set.Certified("Residual", 1), "residual sum of squares");
        Agrees(digits, analysis.Residual.MeanSquare, set.Certified("Residual", 2), "residual mean square");
    }

    private static void Agrees(double digits, double computed, double certified, string what) =>
        DigitsOfAgreement.AtLeast(digits, computed, certified, what);
}
