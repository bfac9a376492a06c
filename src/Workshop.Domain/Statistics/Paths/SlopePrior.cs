namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// What is known of one group's slope without its own readings: normal about the mean of its class, or, where slopes of a
/// cluster share a part, a mixture of such over what the other groups tell of that part.
/// </summary>
internal sealed class SlopePrior
{
    private readonly double[] centres;
    private readonly double[] logs;

    private SlopePrior(double[] centres, double[] logs, double deviation)
    {
        this.centres = centres;
        this.logs = logs;
        Deviation = deviation;
        var top = logs.Max();
        var weights = logs.Select(log => Math.Exp(log - top)).ToArray();
        var total = weights.Sum();
        Mean = centres.Zip(weights, (c, w) => c * w).Sum() / total;
        var mean = Mean;
        Variance = (deviation * deviation) + (centres.Zip(weights, (c, w) => w * (c - mean) * (c - mean)).Sum() / total);
    }

    /// <summary>Standard deviation of the slope about the common part, or what stands for it where it is very small.</summary>
    public double Deviation { get; }

    public double Mean { get; }

    public double Variance { get; }

    public static SlopePrior Normal(double mean, double deviation) => new([mean], [0], deviation);

    /// <summary>The mixture for a group, from what its cluster without it tells of the common part.</summary>
    /// <param name="common">The common part's nodes.</param>
    /// <param name="others">Log weight of each by the other groups.</param>
    /// <param name="mean">Mean of the class of slopes.</param>
    /// <param name="deviation">Standard deviation of the slopes about the common part.</param>
    public static SlopePrior Mixture(CommonPart common, double[] others, double mean, double deviation)
    {
        var parts = common.PartsFor(deviation);
        var logs = common.Between(others, parts);
        return new SlopePrior([.. common.Nodes(parts).Select(c => mean + c)], logs, Math.Max(deviation, common.LeastDeviation));
    }

    /// <summary>Log density up to a constant.</summary>
    public double Log(double slope)
    {
        if (centres.Length == 1)
        {
            return About(centres[0], slope);
        }

        var top = double.NegativeInfinity;
        for (var i = 0; i < centres.Length; i++)
        {
            top = Math.Max(top, logs[i] + About(centres[i], slope));
        }

        var sum = 0.0;
        for (var i = 0; i < centres.Length; i++)
        {
            sum += Math.Exp(logs[i] + About(centres[i], slope) - top);
        }

        return top + Math.Log(sum);
    }

    private double About(double centre, double slope)
    {
        if (Deviation == 0)
        {
            return 0;
        }

        var z = (slope - centre) / Deviation;
        return -0.5 * z * z;
    }
}
