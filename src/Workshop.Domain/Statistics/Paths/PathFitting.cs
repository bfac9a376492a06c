namespace Workshop.Domain.Statistics.Paths;

/// <summary>One fit: what is free, whether the data can tell it, the search, the information at its end.</summary>
internal sealed class PathFitting
{
    /// <summary>Sigma below this share of the typical bracket cannot be told from 0.</summary>
    private const double LeastSigmaOfWidth = 0.02;

    /// <summary>With exact readings: below this share of their range.</summary>
    private const double LeastSigmaOfRange = 1e-9;

    private const int MostStarts = 4;

    /// <summary>A long step, in units of the readings' own spread.</summary>
    private const double LongStep = 10;

    private readonly PathData data;
    private readonly PathOptions options;
    private readonly CancellationToken cancellation;
    private readonly ParameterLayout layout;
    private readonly int[] free;
    private readonly double leastSigma;
    private readonly double[] given;
    private readonly PathLikelihood likelihood;

    public PathFitting(PathData data, PathOptions options, CancellationToken cancellation)
    {
        this.data = data;
        this.options = options;
        this.cancellation = cancellation;
        layout = new ParameterLayout(data.LevelClasses, data.SlopeClasses);
        free = [.. Free().Order()];
        given = new double[layout.Count];
        given[ParameterLayout.Covariate] = options.CovariateCoefficient;
        leastSigma = LeastSigma();
        if (PathChecks.WhyNot(data, free.Length, !options.NoSlopes) is null && !SigmaIsTold())
        {
            given[ParameterLayout.LogSigma] = HeldLogSigma();
            free = [.. free.Where(i => i != ParameterLayout.LogSigma)];
        }

        likelihood = new PathLikelihood(data, layout, free, Quadrature.Of(options.Fine));
    }

    public Computed<PathFit> Run()
    {
        if (PathChecks.WhyNot(data, free.Length, slopes: !options.NoSlopes) is { } whyNot)
        {
            return whyNot;
        }

        if (options.Priors.Count == 0 && !data.Lower.Zip(data.Upper).Any(ends => double.IsFinite(ends.First) && double.IsFinite(ends.Second)))
        {
            return new NotComputable(
                NotComputableReason.NoFiniteMaximum,
                $"All {data.Readings} readings are open at one end, so that nothing tells how widely they scatter.");
        }

        var start = options.Start is { } from
            ? PathStart.Raise(data, layout, layout.Vector(from, data), free)
            : NearPriors(PathStart.Find(data, layout, given, free, Kinds));
        var kinds = Kinds(start);
        var evaluations = 0;
        SearchResult result;
        for (var attempt = 1; ; attempt++)
        {
            result = ScoreSearch.Run(Evaluate, kinds, [.. free.Select(i => start[i])], options.Precision);
            evaluations += result.Evaluations;
            if (attempt == MostStarts
                || (result.End == SearchEnd.Failed ? Elsewhere(result.At, kinds) : Off(result, kinds, ref evaluations)) is not { } other)
            {
                break;
            }

            start = PathStart.Whole(given, free, other);
        }

        if (data.Width > 0 && result.Value.LogLikelihood > -1e-6 * data.Readings && options.Priors.Count == 0)
        {
            return NoScatter();
        }

        return result.End switch
        {
            SearchEnd.ScaleAtLeast => NoScatter(),
            SearchEnd.Failed => new NotComputable(
                NotComputableReason.NoFiniteMaximum,
                $"The likelihood of {data.Readings} readings of {data.Groups} groups has no maximum that {evaluations} evaluations could find."),
            _ => Finish(result, kinds, evaluations),
        };
    }

    /// <summary>
    /// Where something is known of a deviation from elsewhere the search begins there: few readings, or readings all alike, would
    /// have it begin at next to nothing.
    /// </summary>
    private double[] NearPriors(double[] start)
    {
        foreach (var prior in options.Priors.Where(prior => prior.On is not (PriorOn.LevelMean or PriorOn.SlopeMean)))
        {
            start[Parameter(prior)] = prior.On == PriorOn.LogSigma ? prior.Centre : Math.Exp(prior.Centre);
        }

        return start;
    }

    private bool SigmaIsTold() => options.NoSpread || PathChecks.SigmaIsTold(data)
        || options.Priors.Any(prior => prior.On == PriorOn.LogSigma);

    /// <summary>
    /// Where every leg has one reading only the sum of both variances is told. Sigma is then held at half the least of these
    /// deviations, so that no class of levels is left with less than it has.
    /// </summary>
    private double HeldLogSigma()
    {
        if (options.Start is { } from)
        {
            return Math.Log(from.Sigma);
        }

        var start = PathStart.Find(data, layout, given, free, Kinds);
        var total = Enumerable.Range(0, data.LevelClasses)
            .Min(c => double.Hypot(start[layout.LevelDeviation(c)], Math.Exp(start[ParameterLayout.LogSigma])));
        return Math.Log(Math.Max(leastSigma, total / 2));
    }

    /// <summary>The fit of the brackets' middles alone, which an interval search begins from.</summary>
    public Computed<PathParameters> Middles() => PathChecks.WhyNot(data, free.Length, slopes: !options.NoSlopes) is { } whyNot
        ? whyNot
        : layout.Parameters(PathStart.Find(data, layout, given, free, Kinds), data);

    private List<int> Free()
    {
        var spread = !options.NoSpread;
        var slopes = options.NoSlopes ? [] : Enumerable.Range(0, data.SlopeClasses).ToArray();
        var places = new List<int> { ParameterLayout.LogSigma };
        for (var c = 0; c < data.LevelClasses; c++)
        {
            places.Add(layout.LevelMean(c));
            Add(spread, layout.LevelDeviation(c));
        }

        foreach (var j in slopes)
        {
            places.Add(layout.SlopeMean(j));
            Add(spread, layout.SlopeDeviation(j));
            Add(options.CurvedSlopeClass == j, layout.Curvature(j));
        }

        Add(
            options.SharedSlopes && spread && slopes.Length > 0
                && (PathChecks.SharingIsTold(data) || options.Priors.Any(prior => prior.On == PriorOn.LogClusterDeviation)),
            ParameterLayout.ClusterDeviation);
        Add(options.EstimateCovariate, ParameterLayout.Covariate);
        return places;

        void Add(bool wanted, int place)
        {
            if (wanted)
            {
                places.Add(place);
            }
        }
    }

    private double LeastSigma()
    {
        var ends = data.Lower.Concat(data.Upper).Where(double.IsFinite).DefaultIfEmpty(0).ToList();
        var least = data.Width > 0 ? LeastSigmaOfWidth * data.Width : LeastSigmaOfRange * (ends.Max() - ends.Min());
        return Math.Max(least, 1e-100);
    }

    /// <summary>What each free parameter is, and what a long step is for it near the values given.</summary>
    private SearchParameter[] Kinds(double[] at)
    {
        var spread = data.Width + Math.Exp(at[ParameterLayout.LogSigma])
            + Enumerable.Range(0, data.LevelClasses).Max(c => at[layout.LevelDeviation(c)]);
        var x = Math.Max(1e-100, data.X.Max(Math.Abs));
        var z = Math.Max(1e-100, data.Covariate.Max(Math.Abs));
        var kinds = new SearchParameter[layout.Count];
        kinds[ParameterLayout.LogSigma] = new(ParameterKind.LogScale, LongStep, Math.Log(leastSigma));
        kinds[ParameterLayout.ClusterDeviation] = new(ParameterKind.Deviation, LongStep * spread / x);
        kinds[ParameterLayout.Covariate] = new(ParameterKind.Plain, LongStep * spread / z);
        for (var c = 0; c < data.LevelClasses; c++)
        {
            kinds[layout.LevelMean(c)] = new(ParameterKind.Plain, LongStep * spread);
            kinds[layout.LevelDeviation(c)] = new(ParameterKind.Deviation, LongStep * spread);
        }

        for (var j = 0; j < data.SlopeClasses; j++)
        {
            kinds[layout.SlopeMean(j)] = new(ParameterKind.Plain, LongStep * spread / x);
            kinds[layout.SlopeDeviation(j)] = new(ParameterKind.Deviation, LongStep * spread / x);
            kinds[layout.Curvature(j)] = new(ParameterKind.Plain, LongStep * spread / (x * x));
        }

        return [.. free.Select(i => kinds[i])];
    }

    private ScoredValue Evaluate(double[] moved)
    {
        var value = likelihood.Evaluate(PathStart.Whole(given, free, moved), cancellation);
        foreach (var prior in options.Priors)
        {
            var parameter = Parameter(prior);
            var place = Array.IndexOf(free, parameter);
            if (place >= 0)
            {
                AddPrior(value, place, prior, moved[place]);
            }
        }

        return value;
    }

    private int Parameter(PathPrior prior) => prior.On switch
    {
        PriorOn.LevelMean => layout.LevelMean(prior.Class),
        PriorOn.LogLevelDeviation => layout.LevelDeviation(prior.Class),
        PriorOn.SlopeMean => layout.SlopeMean(prior.Class),
        PriorOn.LogSlopeDeviation => layout.SlopeDeviation(prior.Class),
        PriorOn.LogSigma => ParameterLayout.LogSigma,
        _ => ParameterLayout.ClusterDeviation,
    };

    private void AddPrior(ScoredValue value, int place, PathPrior prior, double at)
    {
        var logged = prior.On is PriorOn.LogLevelDeviation or PriorOn.LogSlopeDeviation or PriorOn.LogClusterDeviation;
        var centre = prior.Centre - (prior.On == PriorOn.LevelMean ? data.LevelOrigin[prior.Class] : 0);
        var z = ((logged ? Math.Log(Math.Abs(at)) : at) - centre) / prior.Deviation;
        var chain = (logged ? 1 / at : 1) / prior.Deviation;
        value.AddPrior(place, -0.5 * z * z, -z * chain, chain * chain);
    }

    /// <summary>
    /// Another start after a failure: wider spreads and errors than where the last search came to a stand.
    /// </summary>
    private static double[] Elsewhere(double[] at, SearchParameter[] kinds) => [.. at.Select((value, i) => kinds[i].Kind switch
    {
        ParameterKind.Deviation => 2 * value,
        ParameterKind.LogScale => value + 0.5,
        _ => value,
    })];

    /// <summary>
    /// A deviation of 0 is level ground whether or not it is the top: where the likelihood is higher a little off it, the
    /// search goes on from there. Null where it is not.
    /// </summary>
    private double[]? Off(SearchResult result, SearchParameter[] kinds, ref int evaluations)
    {
        var raised = PathStart.Raise(data, layout, PathStart.Whole(given, free, result.At), free);
        double[]? off = null;
        for (var i = 0; i < free.Length; i++)
        {
            if (kinds[i].Kind == ParameterKind.Deviation && result.At[i] == 0)
            {
                var moved = (double[])result.At.Clone();
                moved[i] = 0.1 * raised[free[i]];
                evaluations++;
                if (Evaluate(moved).Score[i] > 0)
                {
                    off ??= (double[])result.At.Clone();
                    off[i] = raised[free[i]];
                }
            }
        }

        return off;
    }

    private NotComputable NoScatter() => data.Width > 0
        ? new NotComputable(
            NotComputableReason.BracketsTooCoarse,
            $"Brackets of {data.Width:G3} are too coarse: {data.Readings} readings fit inside them without any error.")
        : new NotComputable(
            NotComputableReason.NoResidualVariation,
            $"All {data.Readings} readings lie on the lines, which leaves no scatter to fit.");

    private Computed<PathFit> Finish(SearchResult result, SearchParameter[] kinds, int evaluations)
    {
        var whole = PathStart.Whole(given, free, result.At);
        var parameters = layout.Parameters(whole, data);
        Computed<PathParameters> standardErrors = new NotComputable(
            NotComputableReason.TooFewPoints, "No standard errors were asked for.");
        IReadOnlyList<PlausibleParameters> plausible = [new PlausibleParameters(1, parameters)];
        var sigmaTold = free.Contains(ParameterLayout.LogSigma);
        var levelsTold = true;
        if (options.StandardErrors)
        {
            var uncertainty = PathUncertainty.Of(Evaluate, kinds, result, Importance(), data.Groups);
            var told = uncertainty.Told.Select(i => free[i]).ToHashSet();
            if (!Told(told))
            {
                return parameters.Sigma < 0.1 * data.Width ? NoScatter() : new NotComputable(
                    NotComputableReason.NoFiniteMaximum,
                    $"The {data.Readings} readings leave some combination of the {free.Length} parameters undetermined.");
            }

            standardErrors = Errors(PathStart.Whole(new double[layout.Count], free, uncertainty.StandardErrors), parameters.Sigma);
            plausible = uncertainty.Plausible(result.At, kinds, Spread(whole)).Select(point =>
                new PlausibleParameters(point.Weight, layout.Parameters(PathStart.Whole(given, free, point.At), data))).ToArray();
            sigmaTold &= told.Contains(ParameterLayout.LogSigma);
            levelsTold = free.All(i => told.Contains(i) || whole[i] == 0 || i == ParameterLayout.LogSigma);
        }

        return new PathFit
        {
            Parameters = parameters,
            StandardErrors = standardErrors,
            Plausible = plausible,
            LogLikelihood = options.Priors.Count == 0
                ? result.Value.LogLikelihood
                : likelihood.Evaluate(whole, cancellation).LogLikelihood,
            Readings = data.Readings,
            Groups = data.Groups,
            Evaluations = evaluations,
            Remarks = Remarks(parameters, sigmaTold, levelsTold),
        };
    }

    /// <summary>Slopes and what was asked for beside them come first, deviations later, sigma last.</summary>
    private int[] Importance() => Enumerable.Range(0, free.Length).OrderBy(i =>
        free[i] == ParameterLayout.LogSigma ? 3 : IsSought(free[i]) ? 0 : IsLevelMean(free[i]) ? 1 : 2).ToArray();

    /// <summary>Whether the readings tell all slopes, what was asked for beside them, and the mean of some levels.</summary>
    private bool Told(HashSet<int> told) =>
        free.All(i => !IsSought(i) || told.Contains(i)) && free.Any(i => IsLevelMean(i) && told.Contains(i));

    private bool IsSought(int parameter) => parameter == ParameterLayout.Covariate
        || Enumerable.Range(0, data.SlopeClasses).Any(j => parameter == layout.SlopeMean(j) || parameter == layout.Curvature(j));

    private bool IsLevelMean(int parameter) => Enumerable.Range(0, data.LevelClasses).Any(c => parameter == layout.LevelMean(c));

    private PathParameters Errors(double[] errors, double sigma)
    {
        var error = layout.Parameters(errors, data);
        return error with
        {
            LevelMean = error.LevelMean.Zip(data.LevelOrigin, (value, origin) => value - origin).ToArray(),
            Sigma = errors[ParameterLayout.LogSigma] * sigma,
        };
    }

    /// <summary>
    /// What an error of each free parameter is to be compared with: of a mean, how far levels or slopes of one class lie apart;
    /// of a deviation, itself.
    /// </summary>
    private double[] Spread(double[] at)
    {
        var sigma = Math.Exp(at[ParameterLayout.LogSigma]);
        var x = Math.Max(1e-100, data.X.Max(Math.Abs));
        var spread = new double[layout.Count];
        Array.Fill(spread, double.PositiveInfinity);
        spread[ParameterLayout.LogSigma] = 1;
        spread[ParameterLayout.ClusterDeviation] = at[ParameterLayout.ClusterDeviation];
        for (var c = 0; c < data.LevelClasses; c++)
        {
            spread[layout.LevelMean(c)] = double.Hypot(at[layout.LevelDeviation(c)], sigma);
            spread[layout.LevelDeviation(c)] = at[layout.LevelDeviation(c)];
        }

        for (var j = 0; j < data.SlopeClasses; j++)
        {
            spread[layout.SlopeMean(j)] =
                Math.Max(double.Hypot(at[layout.SlopeDeviation(j)], at[ParameterLayout.ClusterDeviation]), 0.1 * sigma / x);
            spread[layout.SlopeDeviation(j)] = at[layout.SlopeDeviation(j)];
        }

        return free.Select(i => spread[i]).ToArray();
    }

    private List<PathRemark> Remarks(PathParameters parameters, bool sigmaTold, bool levelsTold)
    {
        var shared = free.Contains(ParameterLayout.ClusterDeviation);
        var remarks = new (bool Holds, PathRemark Remark)[]
        {
            (!options.NoSpread && parameters.LevelDeviation.Contains(0), PathRemark.NoLevelSpread),
            (!options.NoSpread && !options.NoSlopes && parameters.SlopeDeviation.Contains(0), PathRemark.NoSlopeSpread),
            (options.SharedSlopes && !shared, PathRemark.SharingNotTold),
            (shared && parameters.ClusterDeviation == 0, PathRemark.NothingShared),
            (!sigmaTold, PathRemark.SigmaNotTold),
            (!levelsTold, PathRemark.SpreadNotTold),
            (options.Priors.Count > 0, PathRemark.Borrowed),
        };
        return remarks.Where(r => r.Holds).Select(r => r.Remark).ToList();
    }
}
