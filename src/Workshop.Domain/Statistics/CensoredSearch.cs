namespace Workshop.Domain.Statistics;

/// <summary>
/// Newton's method for a censored regression, in coefficients over scale and one over scale. Coefficients count from a least
/// squares start and the columns are orthonormal, so that neither offsets nor units of the data cost digits.
/// </summary>
internal sealed class CensoredSearch
{
    private const int MostSteps = 200;

    /// <summary>Newton's estimate of twice the gain still to be had, at which the search ends.</summary>
    private const double Converged = 1e-18;

    /// <summary>Information on some combination below this share of what exact values would give: the likelihood has no top.</summary>
    private const double NoInformation = 1e-7;

    /// <summary>A scale below this share of the largest value is rounding.</summary>
    private const double LeastScale = 1e-13;

    /// <summary>A scale that falls below this share of the widest bracket on a likelihood without a top goes to 0.</summary>
    private const double ScaleOfNone = 0.1;

    private readonly StandardLaw law;
    private readonly OrthonormalColumns columns;
    private readonly double[] position;
    private readonly double[] width;
    private readonly double[] lower;
    private readonly double[] upper;
    private readonly double[] start;
    private readonly double unit;
    private readonly double largest;
    private readonly int last;

    private double logLikelihood;
    private double[] gradient;
    private double[,] information;

    private CensoredSearch(CensoredSample sample, OrthonormalColumns columns, StandardLaw law)
    {
        this.columns = columns;
        this.law = law;
        last = columns.Columns.Length;
        var count = sample.Count;
        position = new double[count];
        width = new double[count];
        for (var i = 0; i < count; i++)
        {
            var (from, to) = (sample.Lower[i], sample.Upper[i]);
            position[i] = double.IsInfinity(from) ? to : double.IsInfinity(to) ? from : from + ((to - from) / 2);
            width[i] = to - from;
        }

        largest = position.Max(Math.Abs);
        start = columns.PartsOf(position);
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < last; j++)
            {
                position[i] -= start[j] * columns.Columns[j][i];
            }
        }

        // The unit of the response is the first guess at the scale, so that the unknowns start at 0 and 1.
        var finite = width.Where(double.IsFinite).DefaultIfEmpty(0).Average();
        unit = Math.Sqrt(position.Average(left => left * left)) + (finite / 3);
        unit = unit > 0 ? unit : 1;
        lower = new double[count];
        upper = new double[count];
        for (var i = 0; i < count; i++)
        {
            position[i] /= unit;
            width[i] /= unit;
            lower[i] = double.IsInfinity(sample.Lower[i]) ? double.NegativeInfinity
                : double.IsInfinity(sample.Upper[i]) ? position[i] : position[i] - (width[i] / 2);
            upper[i] = double.IsInfinity(sample.Upper[i]) ? double.PositiveInfinity
                : double.IsInfinity(sample.Lower[i]) ? position[i] : position[i] + (width[i] / 2);
        }

        gradient = [];
        information = new double[0, 0];
    }

    /// <summary>Fits; <paramref name="constant"/> is added to the log-likelihood.</summary>
    public static Computed<CensoredRegressionFit> Run(CensoredSample sample, StandardLaw law, double constant)
    {
        var (count, coefficients) = (sample.Count, sample.Coefficients);
        if (count <= coefficients)
        {
            return new NotComputable(
                NotComputableReason.TooFewPoints,
                $"{coefficients} coefficients and a scale need more than {coefficients} observations; there are {count}.");
        }

        return OrthonormalColumns.Of(sample.Columns) is { } columns
            ? new CensoredSearch(sample, columns, law).Run(constant)
            : new NotComputable(
                NotComputableReason.CollinearCovariates,
                $"One of the {coefficients} covariates is 0 or a combination of the others in these {count} observations.");
    }

    private Computed<CensoredRegressionFit> Run(double constant)
    {
        var at = new double[last + 1];
        at[last] = 1;
        Evaluate(at);
        for (var step = 1; step <= MostSteps; step++)
        {
            if (CholeskyFactor.Of(information) is not { } factor)
            {
                return NoTop(unit / at[last]);
            }

            var move = factor.Solve(gradient);
            var promised = Dot(gradient, move);
            var length = Math.Min(1, at[last] + move[last] > 0 ? 1 : 0.5 * at[last] / -move[last]);
            if (promised < Converged || !Climb(at, move, length, promised))
            {
                return At(at, step, constant);
            }
        }

        return NoTop(unit / at[last]);
    }

    /// <summary>Moves along a direction by as much as gains something; false where nothing does: rounding is all that is left.</summary>
    private bool Climb(double[] at, double[] move, double length, double promised)
    {
        var (before, from) = (logLikelihood, (double[])at.Clone());
        for (var halving = 0; halving < 40; halving++)
        {
            for (var j = 0; j <= last; j++)
            {
                at[j] = from[j] + (length * move[j]);
            }

            Evaluate(at);
            if (logLikelihood >= before + (1e-4 * length * promised))
            {
                return true;
            }

            length /= 2;
        }

        from.CopyTo(at, 0);
        Evaluate(at);
        return false;
    }

    /// <summary>The log-likelihood, in units of the response, with its gradient and observed information.</summary>
    private void Evaluate(double[] at)
    {
        logLikelihood = 0;
        gradient = new double[last + 1];
        information = new double[last + 1, last + 1];
        var inverseScale = at[last];
        var by = new double[last + 1];
        for (var i = 0; i < position.Length; i++)
        {
            var shift = 0.0;
            for (var j = 0; j < last; j++)
            {
                by[j] = -columns.Columns[j][i];
                shift += by[j] * at[j];
            }

            by[last] = position[i];
            var interval = law.At((lower[i] * inverseScale) + shift, (upper[i] * inverseScale) + shift);
            logLikelihood += interval.LogProbability;
            for (var j = 0; j <= last; j++)
            {
                gradient[j] += interval.ByPosition * by[j];
                for (var k = 0; k <= j; k++)
                {
                    information[j, k] -= interval.ByPositionTwice * by[j] * by[k];
                }
            }

            if (width[i] == 0)
            {
                logLikelihood += Math.Log(inverseScale / unit);
                gradient[last] += 1 / inverseScale;
                information[last, last] += 1 / (inverseScale * inverseScale);
            }
            else if (double.IsFinite(width[i]))
            {
                gradient[last] += interval.ByWidth * width[i];
                information[last, last] -= interval.ByPositionAndWidth * width[i] * by[last];
                for (var j = 0; j <= last; j++)
                {
                    information[last, j] -= interval.ByPositionAndWidth * width[i] * by[j];
                }

                information[last, last] -= interval.ByWidthTwice * width[i] * width[i];
            }
        }

        for (var j = 0; j <= last; j++)
        {
            for (var k = 0; k < j; k++)
            {
                information[k, j] = information[j, k];
            }
        }
    }

    /// <summary>The result at the top, in coefficients and logarithm of the scale.</summary>
    private Computed<CensoredRegressionFit> At(double[] at, int steps, double constant)
    {
        var inverseScale = at[last];
        var scale = unit / inverseScale;
        if (scale <= LeastScale * largest || Flat(at))
        {
            return NoTop(scale);
        }

        var transform = Transform(at);
        var inverse = CholeskyFactor.Of(information)!.Inverse();
        var coefficients = columns.Back([.. start.Select((s, j) => s + (at[j] * scale))]);
        var estimates = coefficients.Select((c, j) => new LikelihoodEstimate(c, StandardError(transform, inverse, j)));
        return new CensoredRegressionFit(
            position.Length, [.. estimates], scale, StandardError(transform, inverse, last), logLikelihood + constant, steps);
    }

    /// <summary>
    /// Derivatives of coefficients and log scale by the unknowns of the search: coefficient = start + unknown x unit / inverse
    /// scale, turned back from the orthonormal columns; log scale = -log(inverse scale).
    /// </summary>
    private double[,] Transform(double[] at)
    {
        var scale = unit / at[last];
        var transform = new double[last + 1, last + 1];
        for (var j = 0; j < last; j++)
        {
            var direction = new double[last];
            direction[j] = scale;
            var back = columns.Back(direction);
            for (var i = 0; i < last; i++)
            {
                transform[i, j] = back[i];
                transform[i, last] -= back[i] * at[j] / at[last];
            }
        }

        transform[last, last] = -1 / at[last];
        return transform;
    }

    private static double StandardError(double[,] transform, double[,] inverse, int row)
    {
        var variance = 0.0;
        for (var j = 0; j < inverse.GetLength(0); j++)
        {
            for (var k = 0; k < inverse.GetLength(0); k++)
            {
                variance += transform[row, j] * inverse[j, k] * transform[row, k];
            }
        }

        return Math.Sqrt(variance);
    }

    /// <summary>
    /// True where the search came to rest because the likelihood has gone level, not because it has a top: the columns being
    /// orthonormal, exact values would give information 1 on each coefficient and their number on the scale.
    /// </summary>
    private bool Flat(double[] at)
    {
        var floor = (double[,])information.Clone();
        for (var j = 0; j < last; j++)
        {
            floor[j, j] -= NoInformation;
        }

        floor[last, last] -= NoInformation * position.Length / (at[last] * at[last]);
        return CholeskyFactor.Of(floor, 0) is null;
    }

    private NotComputable NoTop(double scale)
    {
        var closed = width.All(double.IsFinite);
        return scale <= LeastScale * largest && width.Any(w => w == 0)
            ? new NotComputable(
                NotComputableReason.NoResidualVariation, "The exact points lie on one line, which leaves no scatter to fit.")
            : closed && (logLikelihood > -1e-3 || scale < ScaleOfNone * unit * width.Max())
            ? new NotComputable(
                NotComputableReason.BracketsTooCoarse,
                $"A line runs through all {width.Length} brackets, so that they tell no scatter.")
            : new NotComputable(
                NotComputableReason.NoFiniteMaximum,
                $"The likelihood of these {width.Length} observations goes on rising as a coefficient or one over the scale grows.");
    }

    private static double Dot(double[] x, double[] y)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            sum += x[i] * y[i];
        }

        return sum;
    }
}
