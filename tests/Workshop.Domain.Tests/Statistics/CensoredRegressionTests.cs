using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

/// <summary>
/// Against survreg of R's survival 3.5-3 (R 4.2.2), with rel.tolerance = 1e-15. Standard errors are from the observed
/// information in coefficients and log scale there as here.
/// </summary>
public class CensoredRegressionTests
{
    private const double Infinity = double.PositiveInfinity;

    /// <summary>Tobin (1958), data set tobin: <c>survreg(Surv(durable, durable > 0, type = "left") ~ age + quant, dist = "gaussian")</c>.</summary>
    [Fact]
    public void Values_censored_on_the_left_agree_with_survreg()
    {
        var table = CsvTable.Read("tobin", CheckValues.Lines("censored/tobin.csv"));
        var durable = table.Numbers("durable");
        var sample = CensoredSample.WithConstant(
            [.. durable.Select(d => d > 0 ? d : -Infinity)], durable, table.Numbers("age"), table.Numbers("quant"));

        Agrees(
            CensoredRegression.Fit(sample).Value,
            [(15.1448663322209, 16.0794532023836), (-0.129059283864553, 0.218583596716444), (-0.0455416628896779, 0.0582541155075963)],
            5.57253976599521, 0.31032272018759, -28.9401331997206);
        Assert.Equal(
            -29.4921995481776,
            CensoredRegression.Fit(CensoredSample.WithConstant([.. durable.Select(d => d > 0 ? d : -Infinity)], durable)).Value.LogLikelihood,
            1e-8);
    }

    /// <summary>Ezekiel (1930), datasets::cars, dist in classes of 10 ft: <c>survreg(Surv(lo, hi, type = "interval2") ~ speed)</c>.</summary>
    [Fact]
    public void Values_in_classes_agree_with_survreg()
    {
        var (table, lower, upper) = Brackets("censored/cars-in-classes.csv");

        Agrees(
            CensoredRegression.Fit(CensoredSample.WithConstant(lower, upper, table.Numbers("speed"))).Value,
            [(-16.5708113022995, 6.87704836552841), (3.94640780901811, 0.42276838656686)],
            15.3795953889041, null, -93.3243160165483);
    }

    /// <summary>datasets::women, weight in classes of 5 lb: the line passes through nearly all of them.</summary>
    [Fact]
    public void A_nearly_saturated_set_agrees_with_survreg()
    {
        var (table, lower, upper) = Brackets("censored/women-in-classes.csv");

        Agrees(
            CensoredRegression.Fit(CensoredSample.WithConstant(lower, upper, table.Numbers("height"))).Value,
            [(-75.0850206306751, 6.13354259545424), (3.26544875502594, 0.0944010095988988)],
            1.01296661233144, null, -5.90159699226999);
    }

    /// <summary>Without censoring it is least squares with the maximum likelihood scale sqrt(RSS / n).</summary>
    [Fact]
    public void Exact_values_agree_with_least_squares()
    {
        var table = CsvTable.Read("cars", CheckValues.Lines("regression/cars.csv"));
        var (speed, dist) = (table.Numbers("speed"), table.Numbers("dist"));
        var fit = CensoredRegression.Fit(CensoredSample.WithConstant(dist, dist, speed)).Value;

        Agrees(fit, [(-17.5790948905109, null), (3.93240875912409, null)], 15.0688559957914, 0.1, -206.578431513677);

        // A standard error of least squares has the divisor n - 2.
        Assert.Equal(0.415512776657122 * Math.Sqrt(48.0 / 50), fit.Coefficients[1].StandardError, 1e-9);
    }

    /// <summary>NIST/ITL StRD Norris; the certified standard errors have the divisor n - 2, those of maximum likelihood n.</summary>
    [Fact]
    public void Exact_values_agree_with_the_certified_line()
    {
        var set = NistDataSet.Read("nist/Norris.dat");
        var y = set.Column(0);
        var fit = CensoredRegression.Fit(CensoredSample.WithConstant(y, y, set.Column(1))).Value;

        DigitsOfAgreement.AtLeast(11, fit.Coefficients[0].Value, set.Certified("B0"), "constant");
        DigitsOfAgreement.AtLeast(12, fit.Coefficients[1].Value, set.Certified("B1"), "slope");
        DigitsOfAgreement.AtLeast(9, fit.Coefficients[1].StandardError, Math.Sqrt(34.0 / 36) * set.Certified("B1", 1), "standard error");
    }

    /// <summary>
    /// Every kind of censoring in one set: dist exact in every second row, else in classes of 10 ft; at most 10 ft censored on
    /// the left, 85 ft and more on the right; a lower end of 0 is open on the logarithmic scales.
    /// </summary>
    [Theory]
    [InlineData(ErrorLaw.Normal, -24.4417624711141, 7.631079625609518, 4.3219203787848, 0.467922600169431, 14.8696170659261, 0.112854714127176, -130.263912251769)]
    [InlineData(ErrorLaw.Lognormal, 1.765619609153897, 0.1864396577752451, 0.118197403974989, 0.0115889455597843, 0.370036921063611, 0.1128284553963744, -127.142973746913)]
    [InlineData(ErrorLaw.Weibull, 2.03652087784544, 0.2304266519020255, 0.11276196554843, 0.0148564126587963, 0.393861743684165, 0.1102250463663217, -132.290671615692)]
    public void Mixed_censoring_agrees_with_survreg(
        ErrorLaw law, double constant, double constantError, double slope, double slopeError, double scale, double logScaleError, double logLikelihood)
    {
        var table = CsvTable.Read("cars", CheckValues.Lines("regression/cars.csv"));
        var ends = table.Numbers("dist").Select((d, i) =>
            d <= 10 ? (-Infinity, 10)
            : d >= 85 ? (85, Infinity)
            : i % 2 == 1 ? (d, d)
            : (10 * Math.Floor(d / 10), (10 * Math.Floor(d / 10)) + 10)).ToList();
        var sample = CensoredSample.WithConstant(
            [.. ends.Select(e => e.Item1)], [.. ends.Select(e => e.Item2)], table.Numbers("speed"));

        Agrees(
            CensoredRegression.Fit(sample, law).Value,
            [(constant, constantError), (slope, slopeError)], scale, logScaleError, logLikelihood);
    }

    /// <summary>
    /// Cracks of nlme::Fatigue (Lu and Meeker, Technometrics 35 (1993) 161-174): inspections between which each reached 1.60
    /// in, in millions of cycles; <c>survreg(Surv(lo, hi, type = "interval2") ~ 1)</c>.
    /// </summary>
    [Theory]
    [InlineData(ErrorLaw.Normal, 0.116753466481115, 0.00376334657976515, 0.0148988393599587, -29.0177369371034)]
    [InlineData(ErrorLaw.Lognormal, -2.14846624676547, 0.0353788723082921, 0.139998020222662, -28.9030039792344)]
    [InlineData(ErrorLaw.Weibull, -2.1077874623863, 0.030532735182891, 0.0999755896623775, -29.3660520585528)]
    public void Times_between_inspections_agree_with_survreg(ErrorLaw law, double constant, double error, double scale, double logLikelihood)
    {
        var (_, lower, upper) = Brackets("censored/fatigue-inspections.csv");

        Agrees(
            CensoredRegression.Fit(CensoredSample.WithConstant(lower, upper), law).Value, [(constant, error)], scale, null, logLikelihood);
    }

    [Fact]
    public void Far_offsets_and_other_units_change_nothing_else()
    {
        var (table, lower, upper) = Brackets("censored/cars-in-classes.csv");
        var speed = table.Numbers("speed");
        var plain = CensoredRegression.Fit(CensoredSample.WithConstant(lower, upper, speed)).Value;
        var moved = CensoredRegression.Fit(CensoredSample.WithConstant(
            [.. lower.Select(e => (1e-6 * e) + 1e4)], [.. upper.Select(e => (1e-6 * e) + 1e4)], [.. speed.Select(s => (1e5 * s) - 1e9)])).Value;

        DigitsOfAgreement.AtLeast(5, moved.Coefficients[1].Value * 1e11, plain.Coefficients[1].Value, "slope");
        DigitsOfAgreement.AtLeast(5, moved.Coefficients[1].StandardError * 1e11, plain.Coefficients[1].StandardError, "its error");
        DigitsOfAgreement.AtLeast(6, moved.LogLikelihood, plain.LogLikelihood, "log-likelihood");
    }

    /// <summary>The fall of the log-likelihood at both limits is half the 95 % quantile of chi squared, 3.841459.</summary>
    [Fact]
    public void Profile_limits_lie_where_the_likelihood_has_fallen_by_half_of_chi_squared()
    {
        var (table, lower, upper) = Brackets("censored/cars-in-classes.csv");
        var speed = table.Numbers("speed");
        var sample = CensoredSample.WithConstant(lower, upper, speed);
        var fit = CensoredRegression.Fit(sample).Value;
        var profile = CensoredRegression.Profile(sample, 1, 0.95).Value;

        foreach (var limit in new[] { profile.Lower, profile.Upper })
        {
            var held = CensoredSample.WithConstant(
                [.. lower.Select((e, i) => e - (limit * speed[i]))], [.. upper.Select((e, i) => e - (limit * speed[i]))]);
            Assert.Equal(3.841458820694124 / 2, fit.LogLikelihood - CensoredRegression.Fit(held).Value.LogLikelihood, 1e-6);
        }

        Assert.True(profile.Lower < fit.Coefficients[1].Value && fit.Coefficients[1].Value < profile.Upper);
    }

    [Fact]
    public void A_line_through_every_bracket_is_named()
    {
        var fit = CensoredRegression.Fit(CensoredSample.WithConstant([0, 1, 2, 3], [1, 2, 3, 4], [0, 1, 2, 3]));

        Assert.Equal(NotComputableReason.BracketsTooCoarse, fit.WhyNot?.Reason);
        Assert.Contains("4 brackets", fit.WhyNot?.Explanation);
    }

    [Fact]
    public void Readings_all_alike_are_named() =>
        Assert.Equal(
            NotComputableReason.BracketsTooCoarse,
            CensoredRegression.Fit(CensoredSample.WithConstant([0.2, 0.2, 0.2], [0.25, 0.25, 0.25])).WhyNot?.Reason);

    [Theory]
    [InlineData(1)]
    [InlineData(1e9)]
    public void Points_on_a_line_are_named(double offset) =>
        Assert.Equal(
            NotComputableReason.NoResidualVariation,
            CensoredRegression.Fit(CensoredSample.WithConstant(
                [offset, offset + 2, offset + 4], [offset, offset + 2, offset + 4], [0, 1, 2])).WhyNot?.Reason);

    [Fact]
    public void Observations_bounded_on_one_side_only_are_named()
    {
        var above = CensoredRegression.Fit(CensoredSample.WithConstant([1, 2, 3], [Infinity, Infinity, Infinity]));
        var group = CensoredRegression.Fit(CensoredSample.WithConstant(
            [1, 2, 3, 5, 5], [1.5, 2.5, 3.5, Infinity, Infinity], [0, 0, 0, 1, 1]));

        Assert.Equal(NotComputableReason.NoFiniteMaximum, above.WhyNot?.Reason);
        Assert.Equal(NotComputableReason.NoFiniteMaximum, group.WhyNot?.Reason);
    }

    [Fact]
    public void A_redundant_covariate_and_too_few_observations_are_named()
    {
        Assert.Equal(
            NotComputableReason.CollinearCovariates,
            CensoredRegression.Fit(CensoredSample.WithConstant([1, 2, 4], [2, 3, 5], [0.1, 0.1, 0.1])).WhyNot?.Reason);
        Assert.Equal(
            NotComputableReason.TooFewPoints,
            CensoredRegression.Fit(CensoredSample.WithConstant([1, 2], [2, 3], [0, 1])).WhyNot?.Reason);
        Assert.Equal(NotComputableReason.TooFewPoints, CensoredRegression.Fit(CensoredSample.WithConstant([], [])).WhyNot?.Reason);
    }

    [Fact]
    public void Brackets_that_are_none_are_a_bug_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => CensoredSample.WithConstant([2], [1]));
        Assert.Throws<ArgumentException>(() => CensoredSample.WithConstant([double.NaN], [1]));
        Assert.Throws<ArgumentException>(() => CensoredSample.WithConstant([Infinity], [Infinity]));
        Assert.Throws<ArgumentException>(() => CensoredSample.WithConstant([1, 2], [2, 3], [1.0]));
        Assert.Throws<ArgumentException>(() => CensoredRegression.Fit(CensoredSample.WithConstant([-1, 1], [0, 2]), ErrorLaw.Weibull));
    }

    private static (CsvTable Table, double[] Lower, double[] Upper) Brackets(string file)
    {
        var table = CsvTable.Read(file, CheckValues.Lines(file));
        return (
            table,
            [.. table.Rows.Select(row => (double?)row.NumberOrNone("lo") ?? -Infinity)],
            [.. table.Rows.Select(row => (double?)row.NumberOrNone("hi") ?? Infinity)]);
    }

    private static void Agrees(
        CensoredRegressionFit fit, (double Value, double? Error)[] coefficients, double scale, double? logScaleError, double logLikelihood)
    {
        for (var i = 0; i < coefficients.Length; i++)
        {
            DigitsOfAgreement.AtLeast(8, fit.Coefficients[i].Value, coefficients[i].Value, $"coefficient {i}");
            if (coefficients[i].Error is { } error)
            {
                DigitsOfAgreement.AtLeast(7, fit.Coefficients[i].StandardError, error, $"standard error {i}");
            }
        }

        DigitsOfAgreement.AtLeast(8, fit.Scale, scale, "scale");
        if (logScaleError is { } expected)
        {
            DigitsOfAgreement.AtLeast(7, fit.LogScaleStandardError, expected, "standard error of the log scale");
        }

        Assert.Equal(logLikelihood, fit.LogLikelihood, 1e-10);
    }
}
