namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The density of one leg's level given the slope, for one slope after the other, at the nodes of the trapezoid rule; in
/// between by the polynomial of degree 5 that has the density's value, slope and curvature at both ends (Hermite).
/// </summary>
/// <remarks>
/// A probability up to a limit is this density integrated to the limit, exact for the polynomial. Nodes lie one standard
/// deviation of a normal density apart, where the polynomial's integral over one step is within 1e-4 of the whole.
/// </remarks>
internal sealed class LevelDensities
{
    /// <summary>Nodes of a group as most are.</summary>
    private const int Capacity = 1024;

    private readonly GrowingBuffer density = new(Capacity);
    private readonly GrowingBuffer slope = new(Capacity);
    private readonly GrowingBuffer curvature = new(Capacity);
    private readonly GrowingBuffer cumulative = new(Capacity);
    private readonly List<(int From, int Count, double First, double Step, double Mean, double Deviation)> rows = [];
    private double firstNode;
    private double nodeStep;

    /// <summary>How many slopes were taken.</summary>
    public int Rows => rows.Count;

    /// <summary>Mean of the level given the slope of a row, in standard deviations of its class.</summary>
    public double Mean(int row) => rows[row].Mean;

    /// <summary>Standard deviation of the level given the slope of a row, in the same unit.</summary>
    public double Deviation(int row) => rows[row].Deviation;

    /// <summary>Turns rows that were taken walking up and then down from a start into rising order.</summary>
    public void Order(int up)
    {
        rows.Reverse(up, rows.Count - up);
        var down = rows.GetRange(up, rows.Count - up);
        rows.RemoveRange(up, rows.Count - up);
        rows.InsertRange(0, down);
    }

    /// <summary>Begins a row.</summary>
    /// <param name="node">Number of its first node, which lies at that many steps from 0.</param>
    /// <param name="step">Distance of the nodes.</param>
    public void Begin(double node, double step)
    {
        (firstNode, nodeStep) = (node, step);
        rows.Add((density.Count, 0, node * step, step, 0, 0));
    }

    /// <summary>Takes the next node: density up to a factor, its first and second derivative per step.</summary>
    public void Add(double value, double byStep, double byStepTwice)
    {
        density.Add(value);
        slope.Add(byStep);
        curvature.Add(byStepTwice);
    }

    /// <summary>Ends a row: scales it to integral 1; returns the sum of the densities taken.</summary>
    public double Finish()
    {
        var (from, _, first, step, _, _) = rows[^1];
        var values = density.From(from);
        double sum = 0, moment = 0, square = 0;
        for (var i = 0; i < values.Length; i++)
        {
            sum += values[i];
            moment += values[i] * i;
        }

        var middle = moment / sum;
        for (var i = 0; i < values.Length; i++)
        {
            square += values[i] * (i - middle) * (i - middle);
        }

        rows[^1] = (from, values.Length, first, step, step * (firstNode + middle), nodeStep * Math.Sqrt(square / sum));
        Accumulate(from, values.Length);
        return sum;
    }

    /// <summary>Probability of a level below a value, in standard deviations of its class, given the slope of a row.</summary>
    public double Below(int row, double value)
    {
        var (from, count, first, step, _, _) = rows[row];
        var place = (value - first) / step;
        if (!(place > 0))
        {
            return 0;
        }

        if (place >= count - 1)
        {
            return 1;
        }

        var cell = (int)place;
        return Math.Clamp(cumulative[from + cell] + Part(from + cell, place - cell), 0, 1);
    }

    /// <summary>The expectation of a smooth function of the level's number of standard deviations from its mean, given a row's slope.</summary>
    public double Expect(int row, Func<double, double> function)
    {
        var (from, count, first, step, mean, deviation) = rows[row];
        double sum = 0, total = 0;
        for (var i = 0; i < count; i++)
        {
            var weight = density[from + i];
            total += weight;
            sum += weight * function(deviation > 0 ? (first + (step * i) - mean) / deviation : 0);
        }

        return sum / total;
    }

    private void Accumulate(int from, int count)
    {
        var sum = 0.0;
        for (var i = 0; i < count; i++)
        {
            cumulative.Add(sum);
            if (i < count - 1)
            {
                sum += Part(from + i, 1);
            }
        }

        Scale(density.From(from), sum);
        Scale(slope.From(from), sum);
        Scale(curvature.From(from), sum);
        Scale(cumulative.From(from), sum);
    }

    private static void Scale(Span<double> values, double by)
    {
        foreach (ref var value in values)
        {
            value /= by;
        }
    }

    /// <summary>Integral over the first share s of the step that begins at a node.</summary>
    private double Part(int node, double s)
    {
        var cube = s * s * s;
        var fourth = cube * s;
        return (density[node] * (s + (fourth * (-2.5 + (s * (3 - s))))))
            + (density[node + 1] * fourth * (2.5 + (s * (-3 + s))))
            + (slope[node] * ((0.5 * s * s) + (fourth * (-1.5 + (s * (1.6 - (0.5 * s)))))))
            + (slope[node + 1] * fourth * (-1 + (s * (1.4 - (0.5 * s)))))
            + (curvature[node] * cube * ((1 / 6.0) + (s * (-0.375 + (s * (0.3 - (s / 12)))))))
            + (curvature[node + 1] * fourth * (0.125 + (s * (-0.2 + (s / 12)))));
    }
}
