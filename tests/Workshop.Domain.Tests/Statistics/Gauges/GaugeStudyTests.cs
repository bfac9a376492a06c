using CsCheck;
using Workshop.Domain.Statistics;
using Workshop.Domain.Statistics.Gauges;
using Xunit;

namespace Workshop.Domain.Tests.Statistics.Gauges;

public class GaugeStudyTests
{
    private static readonly double[][][] Aiag = ReadAiag();

    /// <summary>
    /// AIAG, Measurement Systems Analysis, 4th ed.: 10 parts, 3 appraisers, 3 trials. Sums of squares by R 4.2.2,
    /// <c>anova(lm(y ~ part * appr))</c>; the manual prints 88.3619, 3.1673, 0.3590, 2.7589, 94.6471.
    /// </summary>
    [Fact]
    public void The_table_of_the_published_study_agrees_with_R()
    {
        var table = GaugeStudy.Fit(Aiag, GaugeDesign.Crossed).Value.Table;

        DigitsOfAgreement.AtLeast(12, table.Parts.SumOfSquares, 88.36193444444, "parts");
        DigitsOfAgreement.AtLeast(12, table.Appraisers.SumOfSquares, 3.16726222222, "appraisers");
        DigitsOfAgreement.AtLeast(10, table.Interaction!.SumOfSquares, 0.35898222222, "interaction");
        DigitsOfAgreement.AtLeast(11, table.Repeatability.SumOfSquares, 2.75893333333, "repeatability");
        Assert.Equal((9, 2, 18, 60),
            (table.Parts.DegreesOfFreedom, table.Appraisers.DegreesOfFreedom, table.Interaction.DegreesOfFreedom, table.Repeatability.DegreesOfFreedom));
    }

    /// <summary>
    /// The same study, interaction pooled: the manual prints EV 0.199933, AV 0.226838, GRR 0.302373, PV 1.042327, TV 1.0853 and
    /// 4.861 categories; more digits by R 4.2.2's lme4, <c>lmer(y ~ (1|part) + (1|appr))</c>, which agrees as the study is balanced.
    /// </summary>
    [Fact]
    public void The_published_study_pools_its_interaction_and_gives_the_printed_deviations()
    {
        var study = GaugeStudy.Fit(Aiag, GaugeDesign.Crossed).Value;

        Assert.True(study.Table.InteractionPooled);
        DigitsOfAgreement.AtLeast(11, study.Repeatability.StandardDeviation.Estimate, 0.199933179721, "repeatability");
        DigitsOfAgreement.AtLeast(11, study.Reproducibility.StandardDeviation.Estimate, 0.226837521496, "reproducibility");
        DigitsOfAgreement.AtLeast(11, study.Gauge.StandardDeviation.Estimate, 0.302371522323, "gauge");
        DigitsOfAgreement.AtLeast(11, study.Parts.StandardDeviation.Estimate, 1.042327493838, "parts");
        DigitsOfAgreement.AtLeast(11, study.TotalStandardDeviation, 1.085299563219, "total");
        DigitsOfAgreement.AtLeast(8, 100 * study.Gauge.ShareOfVariance, 7.7621587, "share of variance");
        DigitsOfAgreement.AtLeast(7, 100 * study.Gauge.ShareOfDeviation, 27.860651, "share of deviation");
        DigitsOfAgreement.AtLeast(5, study.Categories.Value.Estimate, 4.8605, "categories");
        Assert.Equal(4, study.DistinctCategories.Value);
    }

    /// <summary>The F values of the same two sources (R 4.2.2): with the interaction as denominator where it is kept.</summary>
    [Fact]
    public void An_interaction_that_is_kept_is_what_parts_and_appraisers_are_tested_against()
    {
        var study = GaugeStudy.Fit(Aiag, GaugeDesign.Crossed, InteractionRule.Kept).Value;

        DigitsOfAgreement.AtLeast(5.5, study.PartsTest.F.Value, 492.291, "parts");
        DigitsOfAgreement.AtLeast(5, study.AppraisersTest.F.Value, 79.406, "appraisers");
        DigitsOfAgreement.AtLeast(5, study.InteractionTest!.F.Value, 0.43372, "interaction");
        DigitsOfAgreement.AtLeast(5, study.InteractionTest.PValue.Value, 0.97411, "p");
        DigitsOfAgreement.AtLeast(11, study.Repeatability.StandardDeviation.Estimate, 0.214434657232, "repeatability");
        Assert.Equal(0, study.Interaction.Variance);
    }

    /// <summary>
    /// The same numbers as if every appraiser had measured ten parts of their own. R 4.2.2, <c>anova(lm(y ~ appr / part))</c>:
    /// mean squares 1.583631111111, 3.285959876543, 0.045982222222; components by (MS - MS below) / readings below, as nested
    /// designs have it.
    /// </summary>
    [Fact]
    public void A_nested_study_agrees_with_R()
    {
        var study = GaugeStudy.Fit(Aiag, GaugeDesign.Nested).Value;

        DigitsOfAgreement.AtLeast(12, study.Table.Parts.MeanSquare, 3.285959876543, "parts in appraisers");
        DigitsOfAgreement.AtLeast(12, study.Table.Appraisers.MeanSquare, 1.583631111111, "appraisers");
        DigitsOfAgreement.AtLeast(10, study.Parts.Variance, (3.285959876543 - 0.045982222222) / 3, "parts");
        Assert.Equal(27, study.Table.Parts.DegreesOfFreedom);
        Assert.Equal(0, study.Reproducibility.Variance);
        Assert.Null(study.InteractionTest);
    }

    /// <summary>
    /// NIST/ITL StRD: the 9 groups of 21 values as 9 parts that 3 people read 7 times. What lies between parts is then the certified
    /// sum between groups, and all the rest together the certified sum within.
    /// </summary>
    [Theory]
    [InlineData("nist/SmLs01t.dat", 13)]
    [InlineData("nist/SmLs04t.dat", 9)]
    public void Sums_of_squares_add_up_to_those_that_NIST_certifies(string file, double digits)
    {
        var set = NistDataSet.Read(file);
        var readings = Enumerable.Range(0, 3).Select(a => set.Columns.Select(group => group.Skip(7 * a).Take(7).ToArray()).ToArray()).ToArray();
        var table = GaugeStudy.Fit(readings, GaugeDesign.Crossed).Value.Table;

        DigitsOfAgreement.AtLeast(digits, table.Parts.SumOfSquares, set.Certified("Between Treatment", 1), "between");
        DigitsOfAgreement.AtLeast(
            digits,
            table.Appraisers.SumOfSquares + table.Interaction!.SumOfSquares + table.Repeatability.SumOfSquares,
            set.Certified("Within Treatment", 1),
            "within");
    }

    /// <summary>
    /// The limits of repeatability are exact; those of gauge and parts are compared with the modified large-sample limits of Burdick,
    /// Borror and Montgomery, Journal of Quality Technology 35 (2003) 342-354, written from memory: another way to the same end.
    /// </summary>
    [Fact]
    public void Limits_lie_where_another_method_puts_them()
    {
        var study = GaugeStudy.Fit(Aiag, GaugeDesign.Crossed, InteractionRule.Kept).Value;
        var (p, a, r) = (10.0, 3.0, 3.0);
        var (part, appraiser, both, within) = (
            study.Table.Parts.MeanSquare, study.Table.Appraisers.MeanSquare, study.Table.Interaction!.MeanSquare, study.Table.Within.MeanSquare);

        double G(int degrees) => 1 - (degrees / Chi(0.975, degrees));
        double H(int degrees) => (degrees / Chi(0.025, degrees)) - 1;
        double Squared(double x) => x * x;
        var gauge = (appraiser + ((p - 1) * both) + (p * (r - 1) * within)) / (p * r);
        var below = Math.Sqrt(Squared(G(2) * appraiser) + Squared(G(18) * (p - 1) * both) + Squared(G(60) * p * (r - 1) * within)) / (p * r);
        var above = Math.Sqrt(Squared(H(2) * appraiser) + Squared(H(18) * (p - 1) * both) + Squared(H(60) * p * (r - 1) * within)) / (p * r);

        Assert.InRange(study.Gauge.StandardDeviation.Lower / Math.Sqrt(gauge - below), 0.90, 1.10);
        Assert.InRange(study.Gauge.StandardDeviation.Upper / Math.Sqrt(gauge + above), 0.90, 1.10);
        Assert.InRange(study.Parts.StandardDeviation.Upper / Math.Sqrt(((part * 9 / Chi(0.025, 9)) - both) / (a * r)), 0.97, 1.03);
        Assert.InRange(study.Parts.StandardDeviation.Lower / Math.Sqrt(((part * 9 / Chi(0.975, 9)) - both) / (a * r)), 0.97, 1.03);
    }

    /// <summary>100 studies with known deviations: 95 of them are expected to hold it, with a deviation of 2.2; 84 is 5 of these below.</summary>
    [Theory]
    [InlineData(GaugeDesign.Crossed)]
    [InlineData(GaugeDesign.Nested)]
    public void Limits_hold_the_truth_as_often_as_they_say(GaugeDesign design)
    {
        var random = new RandomSource(7);
        var (gaugeHeld, partsHeld, repeatHeld, categoriesHeld) = (0, 0, 0, 0);
        for (var run = 0; run < 100; run++)
        {
            var study = GaugeStudy.Fit(Simulated(random, design, 4, 8, 3, 1.0, 0.3, 0.2, 0.25), design, InteractionRule.Kept).Value;
            var interaction = design == GaugeDesign.Crossed ? 0.2 : 0;
            var gauge = Math.Sqrt((0.3 * 0.3) + (interaction * interaction) + (0.25 * 0.25));
            gaugeHeld += Holds(study.Gauge.StandardDeviation, gauge);
            partsHeld += Holds(study.Parts.StandardDeviation, 1.0);
            repeatHeld += Holds(study.Repeatability.StandardDeviation, 0.25);
            categoriesHeld += Holds(study.Categories.Value, 1.41 / gauge);
        }

        Assert.All([gaugeHeld, partsHeld, repeatHeld, categoriesHeld], held => Assert.InRange(held, 84, 100));
    }

    [Fact]
    public void The_order_of_appraisers_parts_and_trials_changes_nothing() => GenStudy.Sample(readings =>
    {
        var straight = GaugeStudy.Fit(readings, GaugeDesign.Crossed, InteractionRule.Kept).Value;
        var turned = readings.Reverse().Select(a => a.Reverse().Select(part => part.Reverse().ToArray()).ToArray()).ToArray();
        var other = GaugeStudy.Fit(turned, GaugeDesign.Crossed, InteractionRule.Kept).Value;

        Close(straight.Gauge.StandardDeviation.Estimate, other.Gauge.StandardDeviation.Estimate);
        Close(straight.Parts.StandardDeviation.Estimate, other.Parts.StandardDeviation.Estimate);
    }, iter: 100);

    [Fact]
    public void A_constant_added_to_every_reading_changes_nothing_and_a_factor_scales_every_deviation() => GenStudy.Sample(readings =>
    {
        var straight = GaugeStudy.Fit(readings, GaugeDesign.Crossed).Value;
        var moved = GaugeStudy.Fit([.. readings.Select(a => a.Select(p => p.Select(v => (2 * v) + 8).ToArray()).ToArray())], GaugeDesign.Crossed).Value;

        Close(2 * straight.Gauge.StandardDeviation.Upper, moved.Gauge.StandardDeviation.Upper);
        Close(2 * straight.Repeatability.StandardDeviation.Estimate, moved.Repeatability.StandardDeviation.Estimate);
        Close(straight.Gauge.ShareOfVariance, moved.Gauge.ShareOfVariance);
    }, iter: 30);

    [Fact]
    public void Shares_of_variance_add_up_and_squares_are_all_there() => GenStudy.Sample(readings =>
    {
        var study = GaugeStudy.Fit(readings, GaugeDesign.Crossed).Value;
        var all = readings.SelectMany(a => a).SelectMany(p => p).ToArray();
        var mean = all.Average();

        Close(1, study.Gauge.ShareOfVariance + study.Parts.ShareOfVariance);
        Close(study.Gauge.Variance, study.Repeatability.Variance + study.Appraisers.Variance + study.Interaction.Variance);
        Close(
            all.Sum(v => (v - mean) * (v - mean)),
            study.Table.Parts.SumOfSquares + study.Table.Appraisers.SumOfSquares + study.Table.Interaction!.SumOfSquares + study.Table.Repeatability.SumOfSquares);
    }, iter: 100);

    [Fact]
    public void Readings_that_never_differ_are_told_as_such()
    {
        var equal = Enumerable.Repeat(Enumerable.Repeat(new[] { 0.15, 0.15 }, 3).ToArray(), 2).ToArray();
        Assert.Equal(NotComputableReason.NoSpreadInY, GaugeStudy.Fit(equal, GaugeDesign.Crossed).WhyNot!.Reason);

        // Parts differ, nobody ever reads one twice differently: there is no scatter to set parts against.
        double[][][] coarse = [[[1, 1], [2, 2]], [[1, 1], [2, 2]]];
        var study = GaugeStudy.Fit(coarse, GaugeDesign.Crossed).Value;
        Assert.Equal(NotComputableReason.NoResidualVariation, study.Categories.WhyNot!.Reason);
        Assert.Equal(0, study.Gauge.StandardDeviation.Upper);
    }

    [Fact]
    public void A_study_wants_two_of_everything_and_balance()
    {
        Assert.Equal(NotComputableReason.TooFewPoints, GaugeStudy.Fit([[[1, 2], [2, 3]]], GaugeDesign.Crossed).WhyNot!.Reason);
        Assert.Throws<ArgumentException>(() => GaugeStudy.Fit([[[1, 2], [2, 3]], [[1, 2], [2]]], GaugeDesign.Crossed));
        Assert.Throws<ArgumentException>(() => GaugeStudy.Fit([[[1, double.NaN], [2, 3]], [[1, 2], [2, 3]]], GaugeDesign.Crossed));
    }

    private static Gen<double[][][]> GenStudy { get; } =
        from shape in Gen.Select(Gen.Int[2, 4], Gen.Int[2, 6], Gen.Int[2, 4])
        from readings in Gen.Double[0, 1].Array[shape.Item3].Array[shape.Item2].Array[shape.Item1]
        select readings;

    private static void Close(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1e-9 * (1 + Math.Abs(expected)), $"{actual:R} is not {expected:R}.");

    private static int Holds(GaugeLimits limits, double truth) => truth >= limits.Lower && truth <= limits.Upper ? 1 : 0;

    private static double Chi(double share, int degrees) => MathNet.Numerics.Distributions.ChiSquared.InvCDF(degrees, share);

    private static double[][][] Simulated(
        RandomSource random, GaugeDesign design, int appraisers, int parts, int trials, double part, double appraiser, double interaction, double repeat)
    {
        var shared = Draw(parts, part);
        return [.. Enumerable.Range(0, appraisers).Select(_ =>
        {
            var bias = random.Normal(0, appraiser);
            var own = design == GaugeDesign.Crossed ? shared : Draw(parts, part);
            return own.Select(truth =>
            {
                var both = design == GaugeDesign.Crossed ? random.Normal(0, interaction) : 0;
                return Enumerable.Range(0, trials).Select(_ => truth + bias + both + random.Normal(0, repeat)).ToArray();
            }).ToArray();
        })];

        double[] Draw(int count, double deviation) => [.. Enumerable.Range(0, count).Select(_ => random.Normal(0, deviation))];
    }

    private static double[][][] ReadAiag() =>
        [.. CsvTable.Read("aiag", CheckValues.Lines("gauges/aiag-10x3x3.csv")).Rows
            .GroupBy(row => row["appr"])
            .Select(appraiser => appraiser.GroupBy(row => row["part"])
                .Select(part => part.Select(row => (double)row.Number("y")).ToArray()).ToArray())];
}
