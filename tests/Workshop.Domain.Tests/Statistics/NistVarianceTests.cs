using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

/// <summary>
/// NIST/ITL Statistical Reference Datasets, one-way analysis of variance. The sets of Simon and Lesage are one set of
/// numbers with more and more constant leading digits; what those digits take from a double is taken before any
/// algorithm begins (1000000.4 itself is off by 1 in the 17th digit, 1 in the 10th of its spread).
/// </summary>
public class NistVarianceTests
{
    [Theory]
    [InlineData("nist/SmLs01t.dat", "Treatment", 13.5)]
    [InlineData("nist/SmLs04t.dat", "Treatment", 9)]
    [InlineData("nist/SiRstvt.dat", "Instrument", 12)]
    public void Groups_agree_with_every_certified_value(string file, string groups, double digits)
    {
        var set = NistDataSet.Read(file);
        var analysis = OneWayAnova.Fit(set.Columns).Value.AnalysisOfVariance;

        Assert.Equal(set.Certified($"Between {groups}"), analysis.Explained.DegreesOfFreedom);
        Agrees(analysis.Explained.SumOfSquares, set.Certified($"Between {groups}", 1), "between sum of squares");
        Agrees(analysis.Explained.MeanSquare, set.Certified($"Between {groups}", 2), "between mean square");
        Agrees(analysis.F.Value, set.Certified($"Between {groups}", 3), "F");
        Assert.Equal(set.Certified($"Within {groups}"), analysis.Residual.DegreesOfFreedom);
        Agrees(analysis.Residual.SumOfSquares, set.Certified($"Within {groups}", 1), "within sum of squares");
        Agrees(analysis.Residual.MeanSquare, set.Certified($"Within {groups}", 2), "within mean square");
        Agrees(analysis.RSquared.Value, set.Certified("Certified R-Squared"), "R squared");
        Agrees(analysis.ResidualStandardDeviation, set.Certified("Standard Deviation"), "residual sd");

        void Agrees(double computed, double certified, string what) =>
            DigitsOfAgreement.AtLeast(digits, computed, certified, what);
    }

    /// <summary>
    /// Components follow from the certified mean squares by (MS between - MS within) / group size, in exact arithmetic.
    /// </summary>
    [Theory]
    [InlineData("nist/SmLs01t.dat", 0.2 / 21, 0.01, 13)]
    [InlineData("nist/SmLs04t.dat", 0.2 / 21, 0.01, 9)]
    [InlineData("nist/SiRstvt.dat", (1.27865654e-2 - 1.0831828e-2) / 5, 1.0831828e-2, 10)]
    public void Components_of_variance_follow_from_the_mean_squares(
        string file, double between, double within, double digits)
    {
        var analysis = OneWayAnova.Fit(NistDataSet.Read(file).Columns).Value;

        DigitsOfAgreement.AtLeast(digits, analysis.BetweenVariance.Value, between, "between");
        DigitsOfAgreement.AtLeast(digits, analysis.WithinVariance.Value, within, "within");
    }

    /// <summary>R 4.2.2 <c>qf(0.95, 4, 20)</c> = 2.86608140201566.</summary>
    [Fact]
    public void The_tail_of_F_is_that_of_the_printed_quantile()
    {
        var analysis = new AnalysisOfVariance(new(2.86608140201566 * 4, 4), new(20, 20));

        DigitsOfAgreement.AtLeast(12, analysis.PValue.Value, 0.05, "p");
    }
}
