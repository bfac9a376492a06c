namespace Workshop.Domain.Statistics.Paths;

/// <summary>The nodes of a cluster's common part, in units of its standard deviation, with their posterior weights.</summary>
internal sealed class SharedNodes
{
    private readonly GrowingBuffer nodes = new();
    private readonly GrowingBuffer logs = new();
    private double deviation;

    public int Count => nodes.Count;

    /// <summary>A node in units of the standard deviation.</summary>
    public double Node(int index) => nodes[index];

    /// <summary>The common part itself.</summary>
    public double Common(int index) => deviation * nodes[index];

    /// <summary>Posterior weight, after <see cref="Finish"/>; all of them sum to 1.</summary>
    public double Weight(int index) => logs[index];

    public void Clear(double standardDeviation)
    {
        deviation = standardDeviation;
        nodes.Clear();
        logs.Clear();
    }

    public void Add(double node, double log)
    {
        nodes.Add(node);
        logs.Add(log);
    }

    /// <summary>Turns logs into weights.</summary>
    /// <param name="step">Distance of the nodes.</param>
    /// <returns>Log of the integral against the standard normal density.</returns>
    public double Finish(double step)
    {
        var all = logs.From(0);
        var largest = double.NegativeInfinity;
        foreach (var log in all)
        {
            largest = Math.Max(largest, log);
        }

        var sum = 0.0;
        foreach (ref var log in all)
        {
            log = Math.Exp(log - largest);
            sum += log;
        }

        foreach (ref var log in all)
        {
            log /= sum;
        }

        return largest + Math.Log(sum * step) - NormalTails.LogRootTwoPi;
    }

    /// <summary>The one node of a cluster that shares nothing has all the weight.</summary>
    public void FinishAlone() => logs.From(0)[0] = 1;
}
