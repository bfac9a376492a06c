using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class TheilSenTests
{
    /// <summary>
    /// Sen's own example, J. Amer. Statist. Assoc. 63 (1968) 1379: slope 4, limits 26/7 and 35/8 as corrected in the
    /// tests of the CRAN package deming (the paper's list of slopes has slips), 3.71 and 4.38 in SciPy's. Both call it
    /// 93 %; of the 5040 orders of seven points 76 have three discordant pairs or fewer and 174 four (exact counts), so
    /// that span has 1 - 152/5040, and the next narrower still 1 - 348/5040.
    /// </summary>
    [Theory]
    [InlineData(0.95, 26.0 / 7, 35.0 / 8, 152)]
    [InlineData(0.93, 15.0 / 4, 46.0 / 11, 348)]
    public void Sens_own_example_gives_his_slope_and_limits(double wished, double lower, double upper, int outside)
    {
        var line = TheilSen.Fit([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78], wished).Value;

        Assert.Equal(4, line.Slope, 1e-12);
        Assert.Equal(lower, line.Lower, 1e-12);
        Assert.Equal(upper, line.Upper, 1e-12);
        Assert.Equal(1 - (outside / 5040.0), line.Confidence, 1e-12);
        Assert.Equal(6, line.Intercept, 1e-12);
        Assert.Equal((7, 21), (line.Count, line.Pairs));
        Assert.True(line.HasConfidenceWished);
    }

    /// <summary>
    /// R 4.2.2, datasets::cars (Ezekiel 1930): <c>i &lt;- combn(50, 2); dx &lt;- cars$speed[i[2,]] - cars$speed[i[1,]]; s &lt;-
    /// ((cars$dist[i[2,]] - cars$dist[i[1,]]) / dx)[dx != 0]; b &lt;- median(s)</c>; then <c>median(cars$dist - b * cars$speed)</c>
    /// and <c>length(s)</c>.
    /// </summary>
    [Fact]
    public void Slope_and_offset_of_a_small_set_with_ties_agree_with_R()
    {
        var table = CsvTable.Read("cars", CheckValues.Lines("regression/cars.csv"));

        var line = TheilSen.Fit(table.Numbers("speed"), table.Numbers("dist"), 0.9).Value;

        Assert.Equal(3.66666666666667, line.Slope, 1e-13);
        Assert.Equal(-15.66666666666666, line.Intercept, 1e-13);
        Assert.Equal(1169, line.Pairs);
    }

    /// <summary>The same in R 4.2.2 for ten invented readings of an odometer, with a lay-up over winter.</summary>
    [Fact]
    public void The_rate_of_an_odometer_agrees_with_R()
    {
        double[] days = [0, 31, 75, 140, 150, 240, 365, 371, 420, 500];
        double[] km = [12_000, 12_310, 13_015, 13_600, 13_710, 14_100, 17_020, 17_050, 17_600, 18_400];

        var line = TheilSen.Fit(days, km, 0.9).Value;

        Assert.Equal(13.2898550724638, line.Slope, 1e-12);
        Assert.Equal(11949.0072463768120, line.Intercept, 1e-9);
    }

    /// <summary>Of n! orders of n points, only two have all pairs alike: the widest span has 1 - 2/n! (exact).</summary>
    [Theory]
    [InlineData(3, 2.0 / 3)]
    [InlineData(4, 11.0 / 12)]
    [InlineData(5, 59.0 / 60)]
    public void Few_points_say_how_little_confidence_their_widest_span_has(int points, double confidence)
    {
        var x = Enumerable.Range(1, points).Select(i => (double)i).ToArray();

        var line = TheilSen.Fit(x, x.Select(i => i * i).ToArray(), 0.99).Value;

        Assert.Equal(confidence, line.Confidence, 1e-12);
        Assert.False(line.HasConfidenceWished);
        Assert.Equal((3, (2 * points) - 1), (line.Lower, line.Upper));
    }

    /// <summary>
    /// Kendall's S for 10 points: P(S >= 25) = 0.014, P(S >= 23) = 0.023, P(S >= 21) = 0.036 (Kendall, Rank Correlation
    /// Methods, appendix table 1; from memory), so 95 % leaves 11 slopes off at each end of 45 and has 1 - 2 x 0.023.
    /// </summary>
    [Fact]
    public void The_exact_distribution_is_Kendalls_table()
    {
        var x = Enumerable.Range(1, 10).Select(i => (double)i).ToArray();
        var y = x.Select(i => Math.Pow(2, i)).ToArray();

        var line = TheilSen.Fit(x, y, 0.95).Value;

        Assert.Equal(1 - (2 * 0.023), line.Confidence, 0.001);
        var slopes = x.SelectMany(i => x.Where(j => j > i).Select(j => (Math.Pow(2, j) - Math.Pow(2, i)) / (j - i))).Order().ToArray();
        Assert.Equal((slopes[11], slopes[^12]), (line.Lower, line.Upper));
    }

    /// <summary>An odometer read wrong by a digit, and one exchanged figure, leave the rate alone.</summary>
    [Fact]
    public void Two_wrong_readings_in_nine_hardly_move_the_rate()
    {
        double[] days = [0, 40, 95, 180, 260, 300, 365, 430, 500];
        var km = days.Select(day => 12_000 + (30 * day)).ToArray();
        km[2] += 90_000;
        km[6] -= 2_700;

        var line = TheilSen.Fit(days, km, 0.9).Value;

        Assert.Equal(30, line.Slope, 1e-9);
        Assert.True(Math.Abs(LinearRegression.Fit(days, km).Value.Slope.Value - 30) > 20);
    }

    [Fact]
    public void Readings_of_one_day_give_no_slope_among_themselves()
    {
        var line = TheilSen.Fit([0, 0, 10, 10, 20], [5, 6, 15, 16, 26], 0.9).Value;

        Assert.Equal(8, line.Pairs);
        Assert.Equal(1, line.Slope, 1e-12);
    }

    /// <summary>What a span promises, it keeps: the count of spans that hold the true slope, normal and heavy errors.</summary>
    [Theory]
    [InlineData(6, false)]
    [InlineData(9, true)]
    [InlineData(60, false)]
    public void Spans_hold_the_true_slope_as_often_as_they_say(int points, bool heavyTailed)
    {
        const int Trials = 4000;
        var random = new RandomSource(1968);
        var x = Enumerable.Range(0, points).Select(i => i + (0.3 * (i % 3))).ToArray();
        int held = 0;
        double promised = 0;
        for (var trial = 0; trial < Trials; trial++)
        {
            var y = x.Select(at => (2 * at) + Error()).ToArray();
            var line = TheilSen.Fit(x, y, 0.9).Value;
            held += line.Lower <= 2 && 2 <= line.Upper ? 1 : 0;
            promised = line.Confidence;
        }

        // Four standard errors of a proportion of 0.9 among 4000 are 0.019.
        Assert.True(promised >= 0.9);
        Assert.Equal(promised, (double)held / Trials, 0.02);

        double Error() => heavyTailed ? random.Normal(0, 1) / (0.05 + random.Uniform()) : random.Normal(0, 1);
    }
}
