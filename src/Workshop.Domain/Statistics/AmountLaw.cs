namespace Workshop.Domain.Statistics;

/// <summary>A law of how much: any amount, with a mean that is finite. Counts of pieces have <see cref="CountLaw"/>.</summary>
/// <param name="Mean">The expected amount.</param>
public abstract record AmountLaw(double Mean)
{
    /// <summary>The amount that is enough with this probability.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    public abstract double Quantile(double probability);

    /// <summary>E[(demand - stock)+]: what is expected to be missing; the law's loss function.</summary>
    public abstract double ExpectedMissing(double stock);

    /// <summary>E[(stock - demand)+]: what is expected to lie there unused.</summary>
    public double ExpectedLeft(double stock) => Math.Max(stock - Mean + ExpectedMissing(stock), 0);
}

/// <summary>The normal law: what many small demands add up to.</summary>
public sealed record NormalLaw : AmountLaw
{
    /// <param name="mean">Any finite value.</param>
    /// <param name="deviation">The standard deviation, above 0.</param>
    public NormalLaw(double mean, double deviation)
        : base(mean)
    {
        Guard.Finite(mean, nameof(mean));
        Guard.Finite(deviation, nameof(deviation));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(deviation);
        Deviation = deviation;
    }

    /// <summary>The standard deviation.</summary>
    public double Deviation { get; }

    /// <inheritdoc/>
    public override double Quantile(double probability) => Mean + (NormalTails.Deviate(probability) * Deviation);

    /// <inheritdoc/>
    public override double ExpectedMissing(double stock) => Deviation * StandardMissing((stock - Mean) / Deviation);

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

/// <summary>The law of an amount whose logarithm is normal: never below zero, with a long upper tail.</summary>
public sealed record LogNormalLaw : AmountLaw
{
    /// <param name="logMean">Mean of the natural logarithm.</param>
    /// <param name="logDeviation">Standard deviation of the natural logarithm, above 0.</param>
    public LogNormalLaw(double logMean, double logDeviation)
        : base(Math.Exp(logMean + (logDeviation * logDeviation / 2)))
    {
        Guard.Finite(Mean, nameof(logMean));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(logDeviation);
        (LogMean, LogDeviation) = (logMean, logDeviation);
    }

    /// <summary>Mean of the natural logarithm.</summary>
    public double LogMean { get; }

    /// <summary>Standard deviation of the natural logarithm.</summary>
    public double LogDeviation { get; }

    /// <inheritdoc/>
    public override double Quantile(double probability) => Math.Exp(LogMean + (NormalTails.Deviate(probability) * LogDeviation));

    /// <inheritdoc/>
    public override double ExpectedMissing(double stock)
    {
        if (stock <= 0)
        {
            return Mean - stock;
        }

        var z = (Math.Log(stock) - LogMean) / LogDeviation;
        return Math.Max((Mean * NormalTails.UpperTail(z - LogDeviation)) - (stock * NormalTails.UpperTail(z)), 0);
    }
}

/// <summary>Every amount between two ends alike.</summary>
public sealed record UniformLaw : AmountLaw
{
    /// <param name="least">The lower end.</param>
    /// <param name="most">The upper end, above the lower.</param>
    public UniformLaw(double least, double most)
        : base((least + most) / 2)
    {
        Guard.Finite([least, most], nameof(least));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(most, least);
        (Least, Most) = (least, most);
    }

    /// <summary>The lower end.</summary>
    public double Least { get; }

    /// <summary>The upper end.</summary>
    public double Most { get; }

    /// <inheritdoc/>
    public override double Quantile(double probability)
    {
        Guard.Confidence(probability);
        return Least + (probability * (Most - Least));
    }

    /// <inheritdoc/>
    public override double ExpectedMissing(double stock) =>
        stock <= Least ? Mean - stock
        : stock >= Most ? 0
        : (Most - stock) * (Most - stock) / (2 * (Most - Least));
}
