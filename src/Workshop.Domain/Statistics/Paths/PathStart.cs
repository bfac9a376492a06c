namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// First values for the interval search: moments of the brackets' middles, then the maximum likelihood fit of the middles.
/// </summary>
internal static class PathStart
{
    /// <summary>Precise enough for a start that another search goes on from.</summary>
    private const double Precision = 1e-4;

    /// <summary>A standard deviation that the middles put at 0 starts at this share of what could just be seen.</summary>
    private const double LeastShare = 0.3;

    /// <summary>The start, as a vector in which the free parameters are set and the others are as given.</summary>
    /// <param name="data">The readings.</param>
    /// <param name="layout">Where the parameters stand.</param>
    /// <param name="given">Values of the parameters that are not free.</param>
    /// <param name="free">The free parameters.</param>
    /// <param name="parameters">What each of the free ones is, at given values.</param>
    public static double[] Find(
        PathData data, ParameterLayout layout, double[] given, int[] free, Func<double[], SearchParameter[]> parameters)
    {
        var kept = Enumerable.Range(0, free.Length).Where(i => !IsExtra(layout, data, free[i])).ToArray();
        var chosen = kept.Select(i => free[i]).ToArray();
        var gaussian = new GaussianPaths(data, layout, chosen, given[ParameterLayout.Covariate]);
        var at = Moments(data, layout, given, free.ToHashSet(), gaussian);
        var kinds = parameters(at);
        var result = ScoreSearch.Run(
            moved => gaussian.Evaluate(Whole(at, chosen, moved)),
            [.. kept.Select(i => kinds[i])],
            [.. chosen.Select(i => at[i])],
            Precision);
        at = Whole(at, chosen, result.At);
        return Interval(data, layout, at, free, kinds);
    }

    /// <summary>A vector with some of its places filled from another.</summary>
    public static double[] Whole(double[] basis, int[] places, double[] values)
    {
        var whole = (double[])basis.Clone();
        for (var i = 0; i < places.Length; i++)
        {
            whole[places[i]] = values[i];
        }

        return whole;
    }

    private static bool IsExtra(ParameterLayout layout, PathData data, int parameter) =>
        parameter == ParameterLayout.Covariate
        || (parameter >= layout.Curvature(0) && parameter <= layout.Curvature(data.SlopeClasses - 1));

    /// <summary>
    /// The middles scatter by the brackets' widths as well, by width^2 / 12 where the width is not far above sigma.
    /// </summary>
    private static double[] Interval(
        PathData data, ParameterLayout layout, double[] at, int[] free, SearchParameter[] parameters)
    {
        var sigma = Math.Exp(at[ParameterLayout.LogSigma]);
        for (var i = 0; i < free.Length; i++)
        {
            if (free[i] == ParameterLayout.LogSigma)
            {
                var left = (sigma * sigma) - (data.Width * data.Width / 12);
                sigma = Math.Sqrt(Math.Max(left, Math.Pow(0.2 * data.Width, 2)));
                at[free[i]] = Math.Max(parameters[i].Least, left > 0 || data.Width > 0 ? Math.Log(sigma) : at[free[i]]);
            }
        }

        return Raise(data, layout, at, free);
    }

    /// <summary>
    /// A copy in which no deviation that is free is so near 0 that a search could not see which way is up.
    /// </summary>
    public static double[] Raise(PathData data, ParameterLayout layout, double[] at, int[] free)
    {
        var raised = (double[])at.Clone();
        var sigma = Math.Exp(at[ParameterLayout.LogSigma]);
        var least = LeastShare * sigma / Math.Sqrt(Math.Max(1e-300, SlopeInformation(data)));
        for (var c = 0; c < data.LevelClasses; c++)
        {
            To(layout.LevelDeviation(c), LeastShare * sigma);
        }

        for (var j = 0; j < data.SlopeClasses; j++)
        {
            To(layout.SlopeDeviation(j), least);
        }

        To(ParameterLayout.ClusterDeviation, least);
        return raised;

        void To(int parameter, double value)
        {
            if (free.Contains(parameter))
            {
                raised[parameter] = Math.Max(Math.Abs(at[parameter]), value);
            }
        }
    }

    /// <summary>Mean over the groups of the squares of x about the mean of their leg, at least of x about 0.</summary>
    private static double SlopeInformation(PathData data)
    {
        var within = 0.0;
        var about = 0.0;
        for (var leg = 0; leg < data.Legs; leg++)
        {
            var sums = LegSums.Of(data, leg, 0);
            within += sums.SquaresX;
            about += sums.SquaresX + (sums.Count * sums.MeanX * sums.MeanX);
        }

        return (within > 0 ? within : about) / data.Groups;
    }

    private static double[] Moments(
        PathData data, ParameterLayout layout, double[] given, HashSet<int> free, GaussianPaths gaussian)
    {
        var at = (double[])given.Clone();
        var legs = gaussian.Legs;
        var slopes = Slopes(data, legs);
        var (levels, spread) = Levels(data, legs, slopes);
        double scatter = 0;
        var freedom = 0;
        for (var leg = 0; leg < legs.Length; leg++)
        {
            var slope = slopes[data.SlopeClass[data.GroupOfLeg[leg]]];
            scatter += legs[leg].SquaresY - (2 * slope * legs[leg].ProductXY) + (slope * slope * legs[leg].SquaresX);
            freedom += Math.Max(0, legs[leg].Count - 1);
        }

        // Legs of one reading tell only the sum of both variances.
        var largest = spread.Max();
        var sigma = freedom > 0 && scatter > 0 ? Math.Sqrt(scatter / freedom) : largest / Math.Sqrt(2);
        sigma = sigma > 0 ? sigma : data.Width > 0 ? data.Width / 4 : 1e-6;
        Set(ParameterLayout.LogSigma, Math.Log(sigma));
        for (var c = 0; c < data.LevelClasses; c++)
        {
            Set(layout.LevelMean(c), levels[c]);
            Set(layout.LevelDeviation(c), Math.Max(0.3 * sigma, spread[c]));
        }

        var least = sigma / Math.Sqrt(Math.Max(1e-300, SlopeInformation(data)));
        for (var j = 0; j < data.SlopeClasses; j++)
        {
            Set(layout.SlopeMean(j), slopes[j]);
            Set(layout.SlopeDeviation(j), least);
        }

        Set(ParameterLayout.ClusterDeviation, 0.5 * least);
        return at;

        void Set(int parameter, double value)
        {
            if (free.Contains(parameter))
            {
                at[parameter] = value;
            }
        }
    }

    /// <summary>Pooled slope of each class: within legs, or where no leg has two distances, within classes of levels.</summary>
    private static double[] Slopes(PathData data, ReadOnlySpan<LegSums> legs)
    {
        var squares = new double[data.SlopeClasses];
        var products = new double[data.SlopeClasses];
        for (var leg = 0; leg < legs.Length; leg++)
        {
            var slopeClass = data.SlopeClass[data.GroupOfLeg[leg]];
            squares[slopeClass] += legs[leg].SquaresX;
            products[slopeClass] += legs[leg].ProductXY;
        }

        var within = squares.Select(square => square > 0).ToArray();
        var means = new (double Count, double X, double Y)[data.SlopeClasses, data.LevelClasses];
        for (var pass = 0; pass < 2; pass++)
        {
            for (var leg = 0; leg < legs.Length; leg++)
            {
                var slopeClass = data.SlopeClass[data.GroupOfLeg[leg]];
                ref var mean = ref means[slopeClass, data.LevelClass[leg]];
                if (pass == 0)
                {
                    mean = (mean.Count + legs[leg].Count, mean.X + (legs[leg].Count * legs[leg].MeanX), mean.Y + (legs[leg].Count * legs[leg].MeanY));
                }
                else if (!within[slopeClass] && legs[leg].Count > 0)
                {
                    var dx = legs[leg].MeanX - (mean.X / mean.Count);
                    squares[slopeClass] += legs[leg].Count * dx * dx;
                    products[slopeClass] += legs[leg].Count * dx * (legs[leg].MeanY - (mean.Y / mean.Count));
                }
            }
        }

        return [.. products.Zip(squares, (product, square) => square > 0 ? product / square : 0)];
    }

    /// <summary>Mean and standard deviation of the legs' levels by class.</summary>
    private static (double[] Mean, double[] Deviation) Levels(PathData data, ReadOnlySpan<LegSums> legs, double[] slopes)
    {
        var count = new int[data.LevelClasses];
        var mean = new double[data.LevelClasses];
        var squares = new double[data.LevelClasses];
        for (var leg = 0; leg < legs.Length; leg++)
        {
            if (legs[leg].Count == 0)
            {
                continue;
            }

            var level = data.LevelClass[leg];
            var value = legs[leg].MeanY - (slopes[data.SlopeClass[data.GroupOfLeg[leg]]] * legs[leg].MeanX);
            count[level]++;
            var apart = value - mean[level];
            mean[level] += apart / count[level];
            squares[level] += apart * (value - mean[level]);
        }

        return (mean, [.. squares.Select((square, c) => count[c] > 1 ? Math.Sqrt(square / (count[c] - 1)) : 0)]);
    }
}
