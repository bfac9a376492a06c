namespace Workshop.Domain.Statistics;

/// <summary>The normal law of an amount: what many small demands add up to. Counts of pieces have <see cref="CountLaw"/>.</summary>
public sealed record NormalLaw
{
    /// <param name="mean">Any finite value.</param>
    /// <param name="deviation">The standard deviation, above 0.</param>
    public NormalLaw(double mean, double deviation)
    {
        Guard.Finite(mean, nameof(mean));
        Guard.Finite(deviation, nameof(deviation));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(deviation);
        (Mean, Deviation) = (mean, deviation);
    }

    /// <summary>The expected amount.</summary>
    public double Mean { get; }

    /// <summary>The standard deviation.</summary>
    public double Deviation { get; }

    /// <summary>The amount that is enough with this probability.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    public double Quantile(double probability) => Mean + (NormalTails.Deviate(probability) * Deviation);

    /// <summary>E[(demand - stock)+]: what is expected to be missing; the law's loss function.</summary>
    public double ExpectedMissing(double stock) => Deviation * StandardMissing((stock - Mean) / Deviation);

    /// <summary>The loss function of the standard normal law: phi(z) - z Q(z).</summary>
    /// <param name="z">Any finite value.</param>
    public static double StandardMissing(double z)
    {
        Guard.Finite(z, nameof(z));
        return z < 0
            ? StandardMissing(-z) - z
            : Math.Exp(NormalTails.LogDensity(z)) * (1 - (z * NormalTails.MillsRatio(z)));
    }
}
