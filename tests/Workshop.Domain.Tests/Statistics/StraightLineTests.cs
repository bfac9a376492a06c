using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class StraightLineTests
{
    /// <summary>R 4.2.2: <c>fit &lt;- lm(dist ~ speed, cars)</c>; data of Ezekiel (1930), datasets::cars.</summary>
    private static StraightLine Cars()
    {
        var table = CsvTable.Read("cars", CheckValues.Lines("regression/cars.csv"));
        return LinearRegression.Fit(table.Numbers("speed"), table.Numbers("dist")).Value;
    }

    /// <summary>
    /// Massart et al., Handbook of Chemometrics and Qualimetrics A (1997), chapter 8, example 8; data from memory, they
    /// reproduce all three published results.
    /// </summary>
    private static StraightLine Massart()
    {
        var table = CsvTable.Read("massart", CheckValues.Lines("regression/massart97ex1.csv"));
        return LinearRegression.Fit(table.Numbers("x"), table.Numbers("y")).Value;
    }

    /// <summary>R 4.2.2: <c>summary(fit)</c>.</summary>
    [Fact]
    public void Coefficients_and_their_standard_errors_agree_with_R()
    {
        var line = Cars();

        Agrees(-17.5790948905109, line.Intercept.Value);
        Agrees(6.75844016937923, line.Intercept.StandardError);
        Agrees(3.93240875912409, line.Slope.Value);
        Agrees(0.415512776657122, line.Slope.StandardError);
        Agrees(15.37958674882, line.ResidualStandardDeviation);
        Assert.Equal(48, line.DegreesOfFreedom);
    }

    /// <summary>R 4.2.2: <c>predict(fit, data.frame(speed = x), interval = "prediction", level = c)</c>.</summary>
    [Theory]
    [InlineData(15, 0.95, 41.4070364963504, 10.174820505211, 72.6392524874898)]
    [InlineData(21, 0.95, 65.0014890510949, 33.4225736404645, 96.5804044617253)]
    [InlineData(30, 0.95, 100.393167883212, 66.8652933407665, 133.921042425657)]
    [InlineData(15, 0.90, 41.4070364963504, 15.3538569418415, 67.4602160508592)]
    public void Prediction_intervals_agree_with_R(double x, double confidence, double fit, double lower, double upper)
    {
        var prediction = Cars().PredictionAt(x, confidence);

        Agrees(fit, prediction.Estimate);
        Agrees(lower, prediction.Lower);
        Agrees(upper, prediction.Upper);
        Assert.Equal(48, prediction.DegreesOfFreedom);
    }

    /// <summary>R 4.2.2: <c>predict(fit, data.frame(speed = 15), interval = "confidence")</c>.</summary>
    [Fact]
    public void The_interval_of_the_mean_agrees_with_R()
    {
        var mean = Cars().MeanResponseAt(15, 0.95);

        Agrees(37.0211521535371, mean.Lower);
        Agrees(45.7929208391637, mean.Upper);
    }

    [Fact]
    public void The_mean_of_many_new_observations_is_known_as_well_as_the_line()
    {
        var line = Cars();

        var many = line.PredictionAt(15, 0.95, 1_000_000_000);

        Assert.Equal(line.MeanResponseAt(15, 0.95).Upper, many.Upper, 1e-3);
        Assert.True(line.PredictionAt(15, 0.95, 4).Upper < line.PredictionAt(15, 0.95).Upper);
    }

    /// <summary>
    /// Published, to the digits printed: 15 gives 6.1 +/- 4.9, 90 gives 43.9 +/- 4.9, the mean of five 43.9 +/- 3.2
    /// (as tested by the CRAN package chemCal, <c>inverse.predict</c>); further digits from R 4.2.2 by the same formula.
    /// </summary>
    [Theory]
    [InlineData(15, 1, 6.1, 4.9, 6.09381007305, 4.90675126995)]
    [InlineData(90, 1, 43.9, 4.9, 43.9398308343, 4.90805306939)]
    [InlineData(90, 5, 43.9, 3.2, 43.9398308343, 3.16848925728)]
    public void Symmetrical_limits_agree_with_the_handbook(
        double y, int observations, double printed, double printedHalf, double x, double half)
    {
        var limits = Massart().InverseOfObservation(y, 0.95, observations).Value.Symmetrical;

        Assert.Equal(printed, limits.Estimate, 0.05);
        Assert.Equal(printedHalf, limits.Upper - limits.Estimate, 0.05);
        Agrees(x, limits.Estimate, 11);
        Agrees(half, limits.Upper - limits.Estimate, 11);
    }

    /// <summary>
    /// Fieller's limits by R 4.2.2 from the formula of Draper and Smith, Applied Regression Analysis, section 3.2.
    /// </summary>
    [Theory]
    [InlineData(15, 1, 0.966872479438, 10.837435873752)]
    [InlineData(90, 1, 39.1952254123, 49.0684300986)]
    [InlineData(90, 5, 40.9415365988, 47.3221189121)]
    public void Fieller_limits_of_an_observation_agree_with_R(double y, int observations, double lower, double upper)
    {
        var inverse = Massart().InverseOfObservation(y, 0.95, observations).Value;

        Agrees(lower, inverse.Lower, 11);
        Agrees(upper, inverse.Upper, 11);
        Assert.Equal(4, inverse.DegreesOfFreedom);
    }

    /// <summary>R 4.2.2, the same formula on cars, distance 60.</summary>
    [Fact]
    public void Fieller_limits_of_the_mean_response_agree_with_R()
    {
        var mean = Cars().InverseOfMeanResponse(60, 0.95).Value;

        Agrees(19.7281360210862, mean.Estimate);
        Agrees(18.4419162404114, mean.Lower);
        Agrees(21.4235287902239, mean.Upper);
        Agrees(0.0451354552457343, mean.G);
        Agrees(0.717679355107941, mean.StandardError);

        var single = Cars().InverseOfObservation(60, 0.95).Value;
        Agrees(11.7485316342561, single.Lower);
        Agrees(28.1169133963792, single.Upper);
    }

    /// <summary>Fieller's limits are where the confidence band of the line crosses the height: an independent road.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(150)]
    public void Fieller_limits_lie_where_the_band_crosses_the_height(double y)
    {
        var line = Cars();

        var inverse = line.InverseOfMeanResponse(y, 0.95).Value;

        Assert.Equal(y, line.MeanResponseAt(inverse.Lower, 0.95).Upper, 1e-9);
        Assert.Equal(y, line.MeanResponseAt(inverse.Upper, 0.95).Lower, 1e-9);
    }

    [Fact]
    public void A_slope_that_may_be_zero_gives_a_reason_instead_of_limits()
    {
        var line = LinearRegression.Fit([0, 1, 2, 3], [0.20, 0.21, 0.19, 0.20]).Value;

        var inverse = line.InverseOfMeanResponse(0.10, 0.999);

        Assert.False(inverse.HasValue);
        Assert.Equal(NotComputableReason.SlopeNotDistinguishableFromZero, inverse.WhyNot.Reason);
        Assert.Contains("not distinguishable from zero at 99.9 % confidence", inverse.WhyNot.Explanation);
        Assert.Throws<InvalidOperationException>(() => inverse.Value);
    }

    [Fact]
    public void The_same_slope_has_limits_at_a_lower_confidence()
    {
        // t = slope / SE = sqrt(3) on 1 degree of freedom: two-sided p is exactly 1/3 (t with 1 df is Cauchy's).
        var line = LinearRegression.Fit([-1, 0, 1], [-1, -1, 1]).Value;
        Assert.Equal(Math.Sqrt(3), line.Slope.Value / line.Slope.StandardError, 1e-12);

        Assert.False(line.InverseOfMeanResponse(5, 0.667).HasValue);
        Assert.True(line.InverseOfMeanResponse(5, 0.666).HasValue);
    }

    private static void Agrees(double certified, double computed, double digits = 12) =>
        DigitsOfAgreement.AtLeast(digits, computed, certified, "value");
}
