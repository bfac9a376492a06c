namespace Workshop.Domain.Statistics;

/// <summary>
/// Straight lines of one slope, each with a level of its own, fitted together by least squares: what a linear model with
/// one factor and one covariate gives (in R: <c>lm(y ~ x + group)</c>). With one group it is the ordinary straight line.
/// </summary>
public sealed record ParallelLines
{
    private readonly IReadOnlyDictionary<int, StraightLine> byGroup;

    private ParallelLines(IReadOnlyDictionary<int, StraightLine> byGroup, double squaresX, double slope, AnalysisOfVariance analysis)
    {
        this.byGroup = byGroup;
        SquaresX = squaresX;
        AnalysisOfVariance = analysis;
        Slope = new Coefficient(
            slope, analysis.ResidualStandardDeviation / Math.Sqrt(squaresX), analysis.Residual.DegreesOfFreedom);
    }

    /// <summary>Change of y per unit of x, the same in every group.</summary>
    public Coefficient Slope { get; }

    /// <summary>Sum of squared deviations of x from the mean of its own group.</summary>
    public double SquaresX { get; }

    /// <summary>Within the groups: what the slope explains and what it leaves over.</summary>
    public AnalysisOfVariance AnalysisOfVariance { get; }

    /// <summary>
    /// The line of one group. Its level comes from the points of that group alone, slope and scatter from all of them, so
    /// that every limit it states, Fieller's too, is exact: a group's mean is independent of the common slope.
    /// </summary>
    /// <exception cref="KeyNotFoundException">The group has no points.</exception>
    public StraightLine LineOf(int group) => byGroup[group];

    /// <summary>The line of one group; nothing where it has no points.</summary>
    public StraightLine? Find(int group) => byGroup.GetValueOrDefault(group);

    /// <summary>
    /// Fits the lines, or says why they cannot be fitted: no group with two different x
    /// (<see cref="NotComputableReason.NoSpreadInX"/>), or no degree of freedom left after one level a group and the slope
    /// (<see cref="NotComputableReason.TooFewPoints"/>).
    /// </summary>
    /// <param name="x">Where each y was observed; each group may count from an origin of its own.</param>
    /// <param name="y">What was observed.</param>
    /// <param name="group">The group of each point, by any number.</param>
    /// <param name="leastResidualVariance">
    /// What the variance of y about the lines cannot be below, in squared units of y: the rounding of the readings
    /// themselves. It takes effect where points happen to lie closer to the lines than they were read.
    /// </param>
    /// <exception cref="ArgumentException">A value is not finite, or the three differ in number.</exception>
    public static Computed<ParallelLines> Fit(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<int> group, double leastResidualVariance = 0)
    {
        var groups = Group(x, y, group);
        var freedom = x.Length - groups.Count - 1;
        var sums = Within(groups);
        if (!sums.HasValue)
        {
            return sums.WhyNot;
        }

        if (freedom < 1)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"{x.Length} points in {groups.Count} groups leave no degree of freedom beside the levels and the slope.");
        }

        var (squaresX, slope) = sums.Value;
        var residual = Math.Max(groups.Sum(g => g.ResidualSquares(slope)), freedom * leastResidualVariance);
        var analysis = new AnalysisOfVariance(new(slope * slope * squaresX, 1), new(residual, freedom));
        return new ParallelLines(
            groups.ToDictionary(
                g => g.Key, g => new StraightLine(g.X.Length, g.MeanX, g.MeanY, squaresX, slope, analysis)),
            squaresX,
            slope,
            analysis);
    }

    /// <summary>
    /// The common slope alone, which needs no degree of freedom for its uncertainty; the reason
    /// <see cref="NotComputableReason.NoSpreadInX"/> where no group has two different x.
    /// </summary>
    /// <inheritdoc cref="Fit"/>
    public static Computed<double> CommonSlope(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<int> group) =>
        Within(Group(x, y, group)).Then<double>(sums => sums.Slope);

    private static Computed<(double SquaresX, double Slope)> Within(IReadOnlyList<Points> groups)
    {
        var spread = groups.Where(g => CentredSums.HaveSpread(g.X)).ToList();
        if (spread.Count == 0)
        {
            return new NotComputable(
                NotComputableReason.NoSpreadInX, "No group has points at two different x, so no slope can be told.");
        }

        var squaresX = spread.Sum(g => CentredSums.Squares(g.X, g.MeanX));

        // Equal y may miss their own mean by a rounding; that is not a slope.
        var products = spread.Where(g => CentredSums.HaveSpread(g.Y)).Sum(g => CentredSums.Products(g.X, g.MeanX, g.Y, g.MeanY));
        return (squaresX, products / squaresX);
    }

    private static List<Points> Group(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<int> group)
    {
        Guard.SameLength(x, y);
        Guard.Finite(x, nameof(x));
        Guard.Finite(y, nameof(y));
        if (group.Length != x.Length)
        {
            throw new ArgumentException($"There are {x.Length} x and {group.Length} groups; they must be as many.", nameof(group));
        }

        var points = new List<(int Group, double X, double Y)>(x.Length);
        for (var i = 0; i < x.Length; i++)
        {
            points.Add((group[i], x[i], y[i]));
        }

        return [.. points.GroupBy(p => p.Group).OrderBy(g => g.Key)
            .Select(g => new Points(g.Key, [.. g.Select(p => p.X)], [.. g.Select(p => p.Y)]))];
    }

    private sealed class Points(int key, double[] x, double[] y)
    {
        public int Key => key;

        public double[] X => x;

        public double[] Y => y;

        public double MeanX { get; } = CentredSums.Mean(x);

        public double MeanY { get; } = CentredSums.Mean(y);

        public double ResidualSquares(double slope)
        {
            var sum = 0.0;
            for (var i = 0; i < x.Length; i++)
            {
                var residual = y[i] - MeanY - (slope * (x[i] - MeanX));
                sum += residual * residual;
            }

            return sum;
        }
    }
}
