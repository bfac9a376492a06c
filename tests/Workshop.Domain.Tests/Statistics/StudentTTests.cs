using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Statistics;

public class StudentTTests
{
    /// <summary>R 4.2.2: <c>qt(0.975, df)</c>, and <c>qt(0.95, 5)</c> for a confidence of 0.9.</summary>
    [Theory]
    [InlineData(0.95, 1, 12.7062047361747)]
    [InlineData(0.95, 2, 4.30265272974946)]
    [InlineData(0.95, 5, 2.57058183563631)]
    [InlineData(0.95, 10, 2.22813885198627)]
    [InlineData(0.95, 30, 2.04227245630124)]
    [InlineData(0.95, 48, 2.01063475762423)]
    [InlineData(0.90, 5, 2.01504837333302)]
    public void Quantiles_agree_with_R(double confidence, double degreesOfFreedom, double t) =>
        DigitsOfAgreement.AtLeast(13, StudentT.TwoSidedQuantile(confidence, degreesOfFreedom), t, "t");

    /// <summary>Closed forms: Cauchy for 1 degree of freedom, t = z sqrt(2 / (1 - z^2)) for 2 at confidence z.</summary>
    [Theory]
    [InlineData(0.001)]
    [InlineData(0.5)]
    [InlineData(0.99)]
    [InlineData(0.999999)]
    public void Quantiles_agree_with_the_closed_forms(double confidence)
    {
        DigitsOfAgreement.AtLeast(
            10, StudentT.TwoSidedQuantile(confidence, 1), Math.Tan(Math.PI * confidence / 2), "1 degree of freedom");
        DigitsOfAgreement.AtLeast(
            10,
            StudentT.TwoSidedQuantile(confidence, 2),
            confidence * Math.Sqrt(2 / (1 - (confidence * confidence))),
            "2 degrees of freedom");
    }

    /// <summary>
    /// Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5, about R 4.2.2's <c>qnorm(0.975)</c>.
    /// </summary>
    [Theory]
    [InlineData(1e3, 12)]
    [InlineData(1e4, 12)]
    [InlineData(1e6, 9)]
    public void Many_degrees_of_freedom_agree_with_the_expansion_about_the_normal_quantile(double many, double digits)
    {
        const double Z = 1.95996398454005;
        var (z3, z5) = (Math.Pow(Z, 3), Math.Pow(Z, 5));
        var expansion = Z + ((z3 + Z) / (4 * many)) + (((5 * z5) + (16 * z3) + (3 * Z)) / (96 * many * many))
            + (((3 * Math.Pow(Z, 7)) + (19 * z5) + (17 * z3) - (15 * Z)) / (384 * Math.Pow(many, 3)));

        DigitsOfAgreement.AtLeast(digits, StudentT.TwoSidedQuantile(0.95, many), expansion, "t");
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(12.5)]
    [InlineData(400)]
    public void The_tail_beyond_a_quantile_is_what_was_asked_for(double degreesOfFreedom)
    {
        foreach (var confidence in new[] { 1e-6, 0.1, 0.68, 0.95, 0.9999 })
        {
            var t = StudentT.TwoSidedQuantile(confidence, degreesOfFreedom);
            DigitsOfAgreement.AtLeast(
                11, StudentT.UpperTail(t, degreesOfFreedom), (1 - confidence) / 2, $"tail at {confidence}");
            DigitsOfAgreement.AtLeast(
                14, 1 - StudentT.UpperTail(t, degreesOfFreedom), StudentT.UpperTail(-t, degreesOfFreedom), "symmetry");
        }
    }
}
