using MathNet.Numerics.Distributions;

namespace Workshop.Domain.Statistics.Gauges;

/// <summary>The mean squares of a study.</summary>
internal readonly record struct GaugeMeanSquares(double Parts, double Appraisers, double Interaction, double Within)
{
    public static GaugeMeanSquares Of(GaugeTable table) => new(
        table.Parts.MeanSquare, table.Appraisers.MeanSquare, table.Interaction?.MeanSquare ?? 0, table.Within.MeanSquare);
}

/// <summary>Components of variance.</summary>
internal readonly record struct GaugeVariances(double Repeatability, double Appraisers, double Interaction, double Parts)
{
    public double Reproducibility => Appraisers + Interaction;

    public double Gauge => Repeatability + Reproducibility;

    public GaugeVariances NotBelowZero => new(
        Math.Max(0, Repeatability), Math.Max(0, Appraisers), Math.Max(0, Interaction), Math.Max(0, Parts));
}

/// <summary>
/// Limits of components by generalised inference: each mean square is replaced by what it says of its expectation, sum of squares /
/// chi-squared, in many draws from one fixed seed, so that the same study has the same limits on every machine.
/// </summary>
/// <remarks>
/// Hamada and Weerahandi, Measurement system assessment via generalized inference, Journal of Quality Technology 32 (2000) 241-253.
/// A test looks whether the limits hold the truth as often as they say.
/// </remarks>
internal sealed class GaugeDraws
{
    private const int Count = 8_000;
    private const ulong Seed = 20261126;

    // Beyond it the cube root of chi-squared is normal to better than a thousandth (Wilson and Hilferty 1931).
    private const int MostSummed = 30;

    private readonly GaugeVariances[] draws;
    private readonly double confidence;

    private GaugeDraws(GaugeVariances[] draws, double confidence) => (this.draws, this.confidence) = (draws, confidence);

    public static GaugeDraws Of(GaugeTable table, Func<GaugeMeanSquares, GaugeVariances> variancesOf, double confidence)
    {
        var random = new RandomSource(Seed);
        var draws = new GaugeVariances[Count];
        for (var i = 0; i < Count; i++)
        {
            draws[i] = variancesOf(new GaugeMeanSquares(
                Draw(table.Parts, random),
                Draw(table.Appraisers, random),
                table.Interaction is { } interaction ? Draw(interaction, random) : 0,
                Draw(table.Within, random))).NotBelowZero;
        }

        return new GaugeDraws(draws, confidence);
    }

    /// <summary>The limits of a mean square's root, exact for normal errors.</summary>
    public static GaugeLimits Exact(SourceOfVariation source, double confidence)
    {
        var law = new ChiSquared(source.DegreesOfFreedom);
        return new GaugeLimits(
            Math.Sqrt(source.MeanSquare),
            Math.Sqrt(source.SumOfSquares / law.InverseCumulativeDistribution((1 + confidence) / 2)),
            Math.Sqrt(source.SumOfSquares / law.InverseCumulativeDistribution((1 - confidence) / 2)),
            confidence);
    }

    /// <summary>An estimate with the limits that the draws give to it.</summary>
    public GaugeLimits Limits(double estimate, Func<GaugeVariances, double> of)
    {
        var sorted = draws.Select(of).Order().ToArray();
        var beyond = (1 - confidence) / 2;
        return new GaugeLimits(estimate, At(sorted, beyond), At(sorted, 1 - beyond), confidence);
    }

    private static double At(double[] sorted, double share) =>
        sorted[Math.Clamp((int)Math.Round(share * (sorted.Length - 1)), 0, sorted.Length - 1)];

    private static double Draw(SourceOfVariation source, RandomSource random) => source.SumOfSquares == 0
        ? 0
        : source.SumOfSquares / ChiSquare(source.DegreesOfFreedom, random);

    private static double ChiSquare(int degrees, RandomSource random)
    {
        if (degrees > MostSummed)
        {
            var ninth = 2.0 / (9 * degrees);
            return degrees * Math.Pow(1 - ninth + (Math.Sqrt(ninth) * random.Normal(0, 1)), 3);
        }

        var sum = 0.0;
        for (var i = 0; i < degrees; i++)
        {
            var normal = random.Normal(0, 1);
            sum += normal * normal;
        }

        return sum;
    }
}
