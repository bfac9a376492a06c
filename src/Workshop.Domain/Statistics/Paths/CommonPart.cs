namespace Workshop.Domain.Statistics.Paths;

/// <summary>The nodes of a cluster's common part in rising order, with nodes put in between where the slopes need them.</summary>
internal sealed class CommonPart
{
    /// <summary>A sum over normal densities this many deviations apart, or less, is smooth to a few parts in a million.</summary>
    private const double MostSpacing = 1.2;

    private const int MostParts = 8;

    private readonly double[] nodes;
    private readonly int[] order;

    public CommonPart(SharedNodes shared)
    {
        // They were walked out to either side of a start.
        order = [.. Enumerable.Range(0, shared.Count).OrderBy(shared.Node)];
        nodes = [.. order.Select(shared.Common)];
        LogWeights = [.. order.Select(i => Math.Log(shared.Weight(i)))];
    }

    /// <summary>Log posterior weight of each node.</summary>
    public double[] LogWeights { get; }

    /// <summary>The index that a node had in the order of the walk.</summary>
    public IReadOnlyList<int> Order => order;

    /// <summary>A smaller deviation of slopes about the common part cannot be told from this one.</summary>
    public double LeastDeviation => (nodes[1] - nodes[0]) / (MostParts * MostSpacing);

    /// <summary>Into how many parts the distance of two nodes must be cut.</summary>
    public int PartsFor(double deviation) =>
        Math.Clamp((int)Math.Ceiling((nodes[1] - nodes[0]) / (MostSpacing * Math.Max(deviation, LeastDeviation))), 1, MostParts);

    /// <summary>The nodes with those in between.</summary>
    public double[] Nodes(int parts)
    {
        var step = (nodes[1] - nodes[0]) / parts;
        return [.. Enumerable.Range(0, ((nodes.Length - 1) * parts) + 1).Select(i => nodes[0] + (step * i))];
    }

    /// <summary>Values at the nodes, with those in between.</summary>
    public double[] Between(double[] values, int parts) =>
        [.. Enumerable.Range(0, ((nodes.Length - 1) * parts) + 1)
            .Select(i => SmoothTable.Between(values, i / parts, (double)(i % parts) / parts))];
}
