namespace Workshop.Domain.Statistics.Paths;

/// <summary>Where a group is looked at: see <see cref="GroupPosterior.LeftBy"/>.</summary>
/// <param name="From">Where the count begins, along the group's last leg.</param>
/// <param name="X">How far is looked.</param>
/// <param name="Lower">Lower limit, minus infinity where there is none.</param>
/// <param name="Upper">Upper limit, infinity where there is none.</param>
public readonly record struct Outlook(double From, double X, double Lower, double Upper);

/// <summary>What is known of the groups of one cluster together.</summary>
public sealed class ClusterPosterior
{
    private readonly IReadOnlyList<(double Weight, ClusterGivenParameters Given)> parts;

    internal ClusterPosterior(IReadOnlyList<(double Weight, ClusterGivenParameters Given)> parts)
    {
        this.parts = parts;
        Groups = Enumerable.Range(0, parts[0].Given.Groups.Length)
            .Select(g => new GroupPosterior(parts.Select(part => (part.Weight, part.Given.Groups[g])).ToArray()))
            .ToArray();
    }

    /// <summary>Each group by itself, in the order of the data.</summary>
    public IReadOnlyList<GroupPosterior> Groups { get; }

    /// <summary>
    /// The probability that any of the groups has left its limits. Where slopes share a part, groups leave together more often
    /// than each by itself would make one think.
    /// </summary>
    /// <param name="outlooks">One for each group; none: that group is left out.</param>
    public double AnyLeftBy(IReadOnlyList<Outlook?> outlooks)
    {
        ArgumentNullException.ThrowIfNull(outlooks);
        ArgumentOutOfRangeException.ThrowIfNotEqual(outlooks.Count, Groups.Count);
        return Math.Clamp(parts.Sum(part => part.Weight * part.Given.AnyLeftBy(outlooks)), 0, 1);
    }
}

/// <summary>A cluster's groups given the parameters, with the nodes of their common part; none: they share nothing.</summary>
internal sealed record ClusterGivenParameters(GroupGivenParameters[] Groups, double[] Weights, GivenCommon[] Given)
{
    public double AnyLeftBy(IReadOnlyList<Outlook?> outlooks)
    {
        var shares = Weights.Length > 0;
        var none = new double[Math.Max(1, Weights.Length)];
        Array.Fill(none, 1);
        for (var g = 0; g < outlooks.Count; g++)
        {
            if (outlooks[g] is not { } outlook)
            {
                continue;
            }

            for (var i = 0; i < none.Length; i++)
            {
                none[i] *= 1 - (shares
                    ? Given[g].LeftBy(outlook, i)
                    : Groups[g].LeftBy(outlook.From, outlook.X, outlook.Lower, outlook.Upper));
            }
        }

        return 1 - (shares ? Weights.Zip(none, (w, p) => w * p).Sum() : none[0]);
    }
}

/// <summary>One group's probabilities given the common part of its cluster.</summary>
internal sealed class GivenCommon(GroupGivenParameters group, SlopePrior prior, double mean, double[] nodes)
{
    private double[][] weights = [];
    private Outlook last;
    private double[] left = [];

    public double LeftBy(Outlook outlook, int node)
    {
        if (outlook != last || left.Length == 0)
        {
            left = group.LeftAtSlopes(outlook);
            last = outlook;
        }

        if (weights.Length == 0 || weights[0].Length != left.Length)
        {
            weights = Weights();
        }

        var sum = 0.0;
        for (var i = 0; i < left.Length; i++)
        {
            sum += weights[node][i] * left[i];
        }

        return Math.Clamp(sum, 0, 1);
    }

    /// <summary>The group's weights with its prior changed for that of a given common part, for each node.</summary>
    private double[][] Weights()
    {
        var slopes = group.Slopes();
        var apart = slopes.Select(s => s.LogWeight - prior.Log(s.Slope)).ToArray();
        return [.. nodes.Select(Given)];

        double[] Given(double common)
        {
            var logs = new double[slopes.Length];
            for (var i = 0; i < logs.Length; i++)
            {
                var z = (slopes[i].Slope - mean - common) / prior.Deviation;
                logs[i] = apart[i] - (0.5 * z * z);
            }

            var top = logs.Max();
            var total = 0.0;
            for (var i = 0; i < logs.Length; i++)
            {
                total += logs[i] = Math.Exp(logs[i] - top);
            }

            for (var i = 0; i < logs.Length; i++)
            {
                logs[i] /= total;
            }

            return logs;
        }
    }
}
