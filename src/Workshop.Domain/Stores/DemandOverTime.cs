using Workshop.Domain.Statistics;

namespace Workshop.Domain.Stores;

/// <summary>How much is asked for over a number of days that itself is not certain.</summary>
/// <param name="Mean">0 or above.</param>
/// <param name="Variance">0 or above.</param>
public sealed record DemandOverTime(double Mean, double Variance)
{
    /// <summary>
    /// Of days that are independent and alike, over a lead time that scatters: mean mu L, variance sigma^2 L + mu^2 s^2 (law of
    /// total variance).
    /// </summary>
    /// <param name="perDay">mu, the mean of one day.</param>
    /// <param name="dayVariance">sigma^2, its variance.</param>
    /// <param name="days">L, the mean number of days.</param>
    /// <param name="daysDeviation">s, how far the days scatter.</param>
    public static DemandOverTime Of(double perDay, double dayVariance, double days, double daysDeviation = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(dayVariance);
        ArgumentOutOfRangeException.ThrowIfNegative(days);
        ArgumentOutOfRangeException.ThrowIfNegative(daysDeviation);
        return new DemandOverTime(perDay * days, (dayVariance * days) + (perDay * perDay * daysDeviation * daysDeviation));
    }

    /// <summary>The reorder point of a demand that is large enough to be normal: mu L + z sqrt(variance).</summary>
    /// <param name="serviceLevel">The share of lead times without a shortage, above 0 and below 1.</param>
    public double NormalReorderPoint(double serviceLevel) =>
        Variance > 0 ? new NormalLaw(Mean, Math.Sqrt(Variance)).Quantile(serviceLevel) : Mean;
}
