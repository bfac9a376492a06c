using MathNet.Numerics.Distributions;

namespace Workshop.Domain.Statistics;

/// <summary>
/// How many of the pairs of n points fall when x and y have nothing to do with each other (Kendall's S = pairs - 2 of
/// them): exact for few points with distinct x, normal with the correction for ties otherwise.
/// </summary>
/// <remarks>
/// Counts of permutations by inversions: Knuth, The Art of Computer Programming 3, 5.1.1. Variance with ties: Kendall,
/// Rank Correlation Methods, chapter 4.
/// </remarks>
internal sealed class DiscordantPairs
{
    /// <summary>Up to here the exact distribution costs nothing; beyond, the normal one is good to three digits.</summary>
    private const int MostPointsExactly = 50;

    private readonly double[]? cumulative;
    private readonly double mean;
    private readonly double deviation;

    private DiscordantPairs(double[]? cumulative, double mean, double deviation)
    {
        this.cumulative = cumulative;
        this.mean = mean;
        this.deviation = deviation;
    }

    public static DiscordantPairs UnderNoAssociation(ReadOnlySpan<double> x, int pairs)
    {
        var sorted = x.ToArray();
        Array.Sort(sorted);
        var n = (double)sorted.Length;
        var variance = n * (n - 1) * ((2 * n) + 5);
        var tied = false;
        for (int from = 0, to; from < sorted.Length; from = to)
        {
            to = from + 1;
            while (to < sorted.Length && sorted[to] == sorted[from])
            {
                to++;
            }

            double together = to - from;
            tied |= together > 1;
            variance -= together * (together - 1) * ((2 * together) + 5);
        }

        // The variance is that of S; discordant pairs are (pairs - S) / 2.
        return new(
            tied || sorted.Length > MostPointsExactly ? null : CumulativeInversions(sorted.Length),
            pairs / 2.0,
            Math.Sqrt(variance / 18) / 2);
    }

    /// <summary>The probability of at most so many discordant pairs.</summary>
    public double AtMost(int discordant) => cumulative is null
        ? Normal.CDF(mean, deviation, discordant + 0.5)
        : cumulative[Math.Min(discordant, cumulative.Length - 1)];

    private static double[] CumulativeInversions(int points)
    {
        double[] probabilities = [1];
        for (var n = 2; n <= points; n++)
        {
            // The nth point is inverted with 0 to n - 1 of those before it, each as likely.
            var next = new double[probabilities.Length + n - 1];
            for (var inversions = 0; inversions < next.Length; inversions++)
            {
                for (var withNewest = Math.Max(0, inversions - probabilities.Length + 1);
                     withNewest < n && withNewest <= inversions;
                     withNewest++)
                {
                    next[inversions] += probabilities[inversions - withNewest] / n;
                }
            }

            probabilities = next;
        }

        for (var i = 1; i < probabilities.Length; i++)
        {
            probabilities[i] += probabilities[i - 1];
        }

        return probabilities;
    }
}
