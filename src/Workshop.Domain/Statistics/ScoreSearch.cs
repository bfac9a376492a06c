namespace Workshop.Domain.Statistics;

/// <summary>What a search must know of a parameter.</summary>
internal enum ParameterKind
{
    /// <summary>Any value.</summary>
    Plain,

    /// <summary>
    /// A standard deviation, 0 or above, on which the likelihood depends by its square: 0 is an ordinary point, and the search
    /// comes to it by tenths and then at one step.
    /// </summary>
    Deviation,

    /// <summary>The logarithm of a scale, with a least value.</summary>
    LogScale,
}

/// <summary>A parameter that a search may move.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Reach">
/// A long step: where the outer products say next to nothing, one as long costs half a log unit by the search's reckoning.
/// </param>
/// <param name="Least">Least value of a <see cref="ParameterKind.LogScale"/>.</param>
internal readonly record struct SearchParameter(ParameterKind Kind, double Reach, double Least = double.NegativeInfinity);

/// <summary>How a search ended.</summary>
internal enum SearchEnd
{
    /// <summary>At a point where the score is 0 to the precision asked for.</summary>
    Converged,

    /// <summary>A scale stands at its least value and would go on falling.</summary>
    ScaleAtLeast,

    /// <summary>No step gained anything, or there were too many.</summary>
    Failed,
}

/// <summary>Where a search ended.</summary>
internal sealed record SearchResult(SearchEnd End, double[] At, ScoredValue Value, int Evaluations);

/// <summary>
/// Climbs a log-likelihood by its scores: the outer products of the units' scores estimate the information, which the changes
/// of the score along the steps taken correct (quasi-Newton updates after Broyden, Fletcher, Goldfarb and Shanno on a fresh
/// outer product at every step), so that it is fast with many units and still converges with few. A step that does not gain is
/// damped (Levenberg, Quart. Appl. Math. 2 (1944) 164-168; Marquardt, J. SIAM 11 (1963) 431-441). Where all that is slow the
/// observed information is worked out once near the end and takes the place of the outer products.
/// </summary>
internal sealed class ScoreSearch
{
    private const int MostEvaluations = 120;

    private const int PairsKept = 8;

    /// <summary>Evaluations after which a search that is near its end is worth the observed information.</summary>
    private const int SlowAfter = 12;

    /// <summary>Near the end: less than this is promised.</summary>
    private const double Near = 1;

    /// <summary>A step leaves at least this share of a standard deviation.</summary>
    private const double LeastLeft = 0.1;

    /// <summary>And makes it no larger than this many times itself.</summary>
    private const double MostGrowth = 4;

    private const double LongestLogStep = 1.5;

    /// <summary>A standard deviation whose removal costs less log-likelihood than this is taken to 0.</summary>
    private const double NoLoss = 1e-6;

    /// <summary>Steps in a row that gained less than the precision: what is promised beyond is rounding.</summary>
    private const int IdleSteps = 2;

    private const int MostTrials = 14;

    /// <summary>Below it the outer products say nothing of a combination of parameters, as with fewer units than parameters.</summary>
    private const double LeastPivot = 1e-9;

    /// <summary>A promise below this that no step keeps is rounding.</summary>
    private const double RoundingOnly = 1e-4;

    /// <summary>Square of a value in standard errors that nobody can tell from 0.</summary>
    private const double Invisible = 0.01;

    private readonly Func<double[], ScoredValue> evaluate;
    private readonly SearchParameter[] parameters;
    private readonly double precision;
    private readonly List<(double[] Step, double[] Change)> pairs = [];
    private double[] at;
    private ScoredValue value;
    private double[,]? observed;
    private double damping;
    private int evaluations;

    private ScoreSearch(Func<double[], ScoredValue> evaluate, SearchParameter[] parameters, double[] start, double precision)
    {
        this.evaluate = evaluate;
        this.parameters = parameters;
        this.precision = precision;
        at = start;
        value = evaluate(at);
        evaluations = 1;
    }

    /// <summary>Searches from a start.</summary>
    /// <param name="evaluate">The log-likelihood at a point; what is not finite is taken as a step too far.</param>
    /// <param name="parameters">One for each coordinate.</param>
    /// <param name="start">Where to begin.</param>
    /// <param name="precision">Twice the log-likelihood still to be gained, by the search's own estimate, at which it ends.</param>
    public static SearchResult Run(
        Func<double[], ScoredValue> evaluate, SearchParameter[] parameters, double[] start, double precision) =>
        new ScoreSearch(evaluate, parameters, (double[])start.Clone(), precision).Run();

    private SearchResult Run()
    {
        if (!value.IsFinite)
        {
            return End(SearchEnd.Failed);
        }

        var idle = 0;
        while (evaluations < MostEvaluations)
        {
            var moving = Moving();
            var promised = Promise(Direction(moving, 0));
            if ((promised < precision || idle >= IdleSteps) && !NearZero().Any())
            {
                return End(Enumerable.Range(0, at.Length).Any(AtLeast) ? SearchEnd.ScaleAtLeast : SearchEnd.Converged);
            }

            if (observed is null && evaluations >= SlowAfter && promised < Near)
            {
                Observe(moving);
                continue;
            }

            var before = value.LogLikelihood;
            if (Climb(moving))
            {
                idle = value.LogLikelihood - before < precision ? idle + 1 : 0;
            }
            else if (pairs.Count > 0)
            {
                // What the pairs say may be out of date; without them the direction is uphill by construction.
                pairs.Clear();
                damping = 0;
            }
            else
            {
                return End(promised < RoundingOnly ? SearchEnd.Converged : SearchEnd.Failed);
            }
        }

        return End(SearchEnd.Failed);
    }

    private SearchResult End(SearchEnd end) => new(end, at, value, evaluations);

    /// <summary>Parameters that are free to move: not a standard deviation at 0, not a scale at its least that would fall.</summary>
    private int[] Moving() =>
        [.. Enumerable.Range(0, at.Length).Where(i => !(parameters[i].Kind == ParameterKind.Deviation && at[i] == 0) && !AtLeast(i))];

    private bool AtLeast(int i) =>
        parameters[i].Kind == ParameterKind.LogScale && at[i] <= parameters[i].Least && value.Score[i] <= 0;

    /// <summary>
    /// Standard deviations that are as good as 0: small beside what the outer products can tell, where the likelihood is
    /// parabolic, so that the loss is half score times value.
    /// </summary>
    private IEnumerable<int> NearZero() => Enumerable.Range(0, at.Length).Where(i =>
        parameters[i].Kind == ParameterKind.Deviation
        && at[i] > 0
        && value.Score[i] < 0
        && -0.5 * value.Score[i] * at[i] < NoLoss
        && at[i] * at[i] * value.OuterProducts[i, i] < Invisible);

    private double[] Direction(int[] moving, double damped)
    {
        var direction = new double[at.Length];
        if (moving.Length == 0)
        {
            return direction;
        }

        var information = Information(moving);
        var score = moving.Select(i => value.Score[i]).ToArray();
        for (var m = 0; m < moving.Length; m++)
        {
            information[m, m] *= 1 + damped;
        }

        var ridge = 0.0;
        while (true)
        {
            if (CholeskyFactor.Of(information, LeastPivot) is { } factor)
            {
                var solved = factor.Solve(score);
                for (var m = 0; m < moving.Length; m++)
                {
                    direction[moving[m]] = solved[m];
                }

                return direction;
            }

            ridge = ridge == 0 ? 1e-8 : 10 * ridge;
            for (var m = 0; m < moving.Length; m++)
            {
                information[m, m] = (information[m, m] * (1 + ridge)) + double.Epsilon;
            }
        }
    }

    /// <summary>
    /// Works out the observed information, with a share of the outer products where it is not positive definite; where that does
    /// not help they stay, under an empty matrix that says that it was tried.
    /// </summary>
    private void Observe(int[] moving)
    {
        var information = ObservedInformation.At(
            point =>
            {
                evaluations++;
                return evaluate(point);
            },
            parameters,
            at,
            value,
            moving,
            oneSided: true);
        observed = new double[0, 0];
        foreach (var ridge in (ReadOnlySpan<double>)[0, 0.003, 0.03, 0.3])
        {
            for (var m = 0; m < moving.Length; m++)
            {
                information[m, m] += ridge * value.OuterProducts[moving[m], moving[m]];
            }

            if (CholeskyFactor.Of(information, LeastPivot) is not null)
            {
                Take(information, moving);
                return;
            }
        }
    }

    private void Take(double[,] information, int[] moving)
    {
        observed = new double[at.Length, at.Length];
        for (var m = 0; m < moving.Length; m++)
        {
            for (var n = 0; n < moving.Length; n++)
            {
                observed[moving[m], moving[n]] = information[m, n];
            }
        }

        pairs.Clear();
        damping = 0;
    }

    /// <summary>Outer products, or the observed information, with the pairs worked in, oldest first.</summary>
    private double[,] Information(int[] moving)
    {
        var size = moving.Length;
        var information = new double[size, size];
        var basis = observed is { Length: > 0 } ? observed : value.OuterProducts;
        for (var m = 0; m < size; m++)
        {
            for (var n = 0; n < size; n++)
            {
                information[m, n] = basis[moving[m], moving[n]];
            }

            information[m, m] += 1 / (parameters[moving[m]].Reach * parameters[moving[m]].Reach);
        }

        foreach (var (step, change) in pairs)
        {
            var s = moving.Select(i => step[i]).ToArray();
            var y = moving.Select(i => change[i]).ToArray();
            Update(information, s, y);
        }

        return information;
    }

    private static void Update(double[,] information, double[] step, double[] change)
    {
        var size = step.Length;
        var product = new double[size];
        double inner = 0, along = 0;
        for (var m = 0; m < size; m++)
        {
            for (var n = 0; n < size; n++)
            {
                product[m] += information[m, n] * step[n];
            }

            inner += step[m] * product[m];
            along += step[m] * change[m];
        }

        if (!(inner > 0 && along > 1e-3 * inner))
        {
            return;
        }

        for (var m = 0; m < size; m++)
        {
            for (var n = 0; n < size; n++)
            {
                information[m, n] += (change[m] * change[n] / along) - (product[m] * product[n] / inner);
            }
        }
    }

    private double Promise(double[] direction)
    {
        var sum = 0.0;
        for (var i = 0; i < direction.Length; i++)
        {
            sum += direction[i] * value.Score[i];
        }

        return sum;
    }

    /// <summary>Keeps a step within what each kind of parameter allows.</summary>
    private double[] Clip(double[] direction)
    {
        var clipped = (double[])direction.Clone();
        for (var i = 0; i < clipped.Length; i++)
        {
            clipped[i] = parameters[i].Kind switch
            {
                ParameterKind.Deviation => Math.Clamp(clipped[i], (LeastLeft - 1) * at[i], MostGrowth * at[i]),
                ParameterKind.LogScale => Math.Max(
                    parameters[i].Least - at[i], Math.Clamp(clipped[i], -LongestLogStep, LongestLogStep)),
                _ => clipped[i],
            };
        }

        foreach (var i in NearZero())
        {
            clipped[i] = -at[i];
        }

        return clipped;
    }

    /// <summary>Takes a step that gains, damped as far as it takes; false where none does.</summary>
    private bool Climb(int[] moving)
    {
        var noise = 1e-12 * (1 + Math.Abs(value.LogLikelihood));
        for (var trial = 0; trial < MostTrials && evaluations < MostEvaluations; trial++)
        {
            var step = Clip(Direction(moving, damping));
            var slope = Promise(step);
            if (slope > -noise)
            {
                var next = at.Zip(step, (a, s) => a + s).ToArray();
                var there = evaluate(next);
                evaluations++;
                var gain = there.LogLikelihood - value.LogLikelihood;
                if (there.IsFinite && gain >= (1e-4 * slope) - noise)
                {
                    damping = gain < 0.25 * slope ? damping : damping < 0.02 ? 0 : damping / 10;
                    Keep(next, there);
                    return true;
                }
            }

            damping = Math.Max(0.1, 6 * damping);
        }

        return false;
    }

    private void Keep(double[] next, ScoredValue there)
    {
        pairs.Add((
            [.. next.Zip(at, (to, from) => to - from)],
            [.. value.Score.Zip(there.Score, (from, to) => from - to)]));
        if (pairs.Count > PairsKept)
        {
            pairs.RemoveAt(0);
        }

        at = next;
        value = there;
    }
}
