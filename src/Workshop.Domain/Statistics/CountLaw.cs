using MathNet.Numerics;

namespace Workshop.Domain.Statistics;

/// <summary>A law of how many: 0, 1, 2 and so on, with a mean and a variance that are finite.</summary>
/// <param name="Mean">The expected count, 0 or above.</param>
/// <param name="Variance">Of the count.</param>
public abstract record CountLaw(double Mean, double Variance)
{
    /// <summary>Larger means than this are no count of pieces on a shelf.</summary>
    public const double LargestMean = 10_000;

    /// <summary>
    /// The law with this mean and variance: Poisson where the variance is no larger than the mean (and then a little wider
    /// than asked for, to the safe side), negative binomial where it is.
    /// </summary>
    /// <param name="mean">0 to <see cref="LargestMean"/>.</param>
    /// <param name="variance">0 or above.</param>
    public static CountLaw WithMoments(double mean, double variance)
    {
        Check(mean);
        ArgumentOutOfRangeException.ThrowIfNegative(variance);

        // So near to Poisson that the size parameter would be lost in rounding: the two laws agree to nine digits there.
        return variance - mean <= 1e-9 * mean
            ? new PoissonLaw(mean)
            : new NegativeBinomialLaw(mean * mean / (variance - mean), mean / variance);
    }

    /// <summary>The probability of exactly so many; 0 below zero.</summary>
    public abstract double Probability(int count);

    /// <summary>The probability of so many or fewer.</summary>
    public double Cumulative(int count)
    {
        var sum = 0.0;
        for (var k = 0; k <= count; k++)
        {
            sum += Probability(k);
        }

        return Math.Min(sum, 1);
    }

    /// <summary>The smallest stock that is enough with at least this probability: the base-stock level.</summary>
    /// <param name="serviceLevel">Above 0 and below 1.</param>
    public int SmallestCovering(double serviceLevel)
    {
        if (!(serviceLevel > 0 && serviceLevel < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(serviceLevel), serviceLevel, "A service level lies between 0 and 1.");
        }

        // What rounding takes from a sum of probabilities must not ask for one more piece.
        var wanted = serviceLevel - 1e-12;
        var (stock, sum) = (0, Probability(0));
        while (sum < wanted)
        {
            sum += Probability(++stock);
        }

        return stock;
    }

    /// <summary>E[(stock - demand)+]: what is expected to lie there unused.</summary>
    public double ExpectedLeft(int stock)
    {
        var left = 0.0;
        for (var k = 0; k < stock; k++)
        {
            left += (stock - k) * Probability(k);
        }

        return left;
    }

    /// <summary>E[(demand - stock)+]: what is expected to be missing; the law's loss function.</summary>
    public double ExpectedMissing(int stock) => Math.Max(Mean - stock + ExpectedLeft(stock), 0);

    /// <summary>Refuses a mean that no shelf has.</summary>
    protected static void Check(double mean)
    {
        if (!(mean >= 0 && mean <= LargestMean))
        {
            throw new ArgumentOutOfRangeException(nameof(mean), mean, $"A mean from 0 to {LargestMean} is wanted.");
        }
    }
}

/// <summary>Poisson's law: many chances, each rare, none knowing of the others.</summary>
public sealed record PoissonLaw : CountLaw
{
    /// <param name="mean">0 to <see cref="CountLaw.LargestMean"/>.</param>
    public PoissonLaw(double mean)
        : base(mean, mean) => Check(mean);

    /// <inheritdoc/>
    public override double Probability(int count) =>
        count < 0 ? 0
        : Mean == 0 ? (count == 0 ? 1 : 0)
        : Math.Exp((count * Math.Log(Mean)) - Mean - SpecialFunctions.FactorialLn(count));
}

/// <summary>
/// The negative binomial law, Poisson with a mean that itself varies: P(k) = Gamma(k + r) / (k! Gamma(r)) p^r (1 - p)^k, with
/// mean r (1 - p) / p and variance mean / p.
/// </summary>
public sealed record NegativeBinomialLaw : CountLaw
{
    /// <param name="size">r, above 0.</param>
    /// <param name="probability">p, above 0 and below 1.</param>
    public NegativeBinomialLaw(double size, double probability)
        : base(size * (1 - probability) / probability, size * (1 - probability) / (probability * probability))
    {
        if (!(size > 0 && probability > 0 && probability < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(size), $"A size above 0 and a probability between 0 and 1 are wanted, not {size} and {probability}.");
        }

        Check(Mean);
        (Size, Chance) = (size, probability);
    }

    /// <summary>r, the smaller the wider.</summary>
    public double Size { get; }

    /// <summary>p.</summary>
    public double Chance { get; }

    /// <inheritdoc/>
    public override double Probability(int count) => count < 0 ? 0 : Math.Exp(
        SpecialFunctions.GammaLn(count + Size) - SpecialFunctions.FactorialLn(count) - SpecialFunctions.GammaLn(Size)
        + (Size * Math.Log(Chance)) + (count * Math.Log(1 - Chance)));
}
