namespace Workshop.Domain.Statistics.Paths;

/// <summary>Works out posteriors given the parameters. One instance serves one thread.</summary>
internal sealed class PosteriorBuilder
{
    private readonly PathData data;
    private readonly ParameterLayout layout;
    private readonly double[] at;
    private readonly Quadrature quadrature;
    private readonly GroupReadings readings;
    private readonly LevelLattice lattice;

    public PosteriorBuilder(PathData data, PathParameters parameters, bool fine)
    {
        this.data = data;
        layout = new ParameterLayout(data.LevelClasses, data.SlopeClasses);
        at = layout.Vector(parameters, data);
        quadrature = Quadrature.Of(fine);
        readings = new GroupReadings(quadrature);
        lattice = new LevelLattice(quadrature);
    }

    /// <summary>A group's posterior over parameters with weights.</summary>
    public static GroupPosterior Of(
        PathData data, IReadOnlyList<PlausibleParameters> plausible, int group) =>
        new(plausible.Select(p => (p.Weight, new PosteriorBuilder(data, p.Parameters, fine: false).Group(group))).ToArray());

    /// <summary>A cluster's posterior over parameters with weights.</summary>
    public static ClusterPosterior OfCluster(
        PathData data, IReadOnlyList<PlausibleParameters> plausible, int cluster) =>
        new(plausible.Select(p => (p.Weight, new PosteriorBuilder(data, p.Parameters, fine: false).Cluster(cluster))).ToArray());

    /// <summary>All groups of a cluster with what they share.</summary>
    public ClusterGivenParameters Cluster(int cluster)
    {
        var (first, end) = (data.ClusterStart[cluster], data.ClusterStart[cluster + 1]);
        var groups = new GroupGivenParameters[end - first];
        if (at[ParameterLayout.ClusterDeviation] == 0)
        {
            for (var g = first; g < end; g++)
            {
                groups[g - first] = Group(g, Own(g));
            }

            return new ClusterGivenParameters(groups, [], []);
        }

        var integral = new ClusterIntegral(data, layout, quadrature);
        integral.Integrate(at, first, end, false);
        var common = new CommonPart(integral.Shared);
        var priors = new SlopePrior[groups.Length];
        for (var g = 0; g < groups.Length; g++)
        {
            var slopes = data.SlopeClass[first + g];
            var others = common.Order.Select((node, i) => common.LogWeights[i] - integral.LogGiven(node, g)).ToArray();
            priors[g] = SlopePrior.Mixture(common, others, at[layout.SlopeMean(slopes)], at[layout.SlopeDeviation(slopes)]);
            groups[g] = Group(first + g, priors[g]);
        }

        var parts = priors.Max(prior => common.PartsFor(prior.Deviation));
        var weights = common.Between(common.LogWeights, parts).Select(Math.Exp).ToArray();
        var total = weights.Sum();
        return new ClusterGivenParameters(
            groups,
            [.. weights.Select(w => w / total)],
            [.. priors.Select((prior, g) => new GivenCommon(
                groups[g], prior, at[layout.SlopeMean(data.SlopeClass[first + g])], common.Nodes(parts)))]);
    }

    /// <summary>One group, whose cluster is worked out where its groups share something.</summary>
    public GroupGivenParameters Group(int group)
    {
        if (at[ParameterLayout.ClusterDeviation] == 0)
        {
            return Group(group, Own(group));
        }

        var cluster = Array.FindLastIndex(data.ClusterStart, start => start <= group);
        return Cluster(cluster).Groups[group - data.ClusterStart[cluster]];
    }

    private SlopePrior Own(int group) => SlopePrior.Normal(
        at[layout.SlopeMean(data.SlopeClass[group])], at[layout.SlopeDeviation(data.SlopeClass[group])]);

    private GroupGivenParameters Group(int group, SlopePrior prior)
    {
        var kept = data.GroupStart[group + 1] - data.GroupStart[group] - 1;
        if (kept < 0)
        {
            throw new ArgumentException($"Group {group} has no leg whose level could be asked for.");
        }

        readings.Prepare(data, layout, at, group, Curved(group), kept);
        var precision = prior.Variance > 0 ? readings.Information + (1 / prior.Variance) : 0;
        var step = prior.Variance > 0 ? quadrature.StepShare / Math.Sqrt(precision) : 0;
        var centre = prior.Variance > 0
            ? prior.Mean + ((readings.Pull - (readings.Information * prior.Mean)) / precision)
            : prior.Mean;
        var levels = new LevelDensities();
        var up = Walk(prior, kept, centre, step, levels, double.NegativeInfinity);
        var down = step > 0 ? Walk(prior, kept, centre - step, -step, levels, up.Max()) : [];
        levels.Order(up.Count);
        down.Reverse();
        var leg = data.GroupStart[group] + kept;
        var level = data.LevelClass[leg];
        return new GroupGivenParameters(
            levels,
            down.Concat(up).ToArray(),
            centre - (step * down.Count),
            step,
            data.Target[leg] + data.LevelOrigin[level] + at[layout.LevelMean(level)],
            Math.Abs(at[layout.LevelDeviation(level)]),
            Math.Exp(at[ParameterLayout.LogSigma]));
    }

    private bool Curved(int group) =>
        at[ParameterLayout.Covariate] != 0 || at[layout.Curvature(data.SlopeClass[group])] != 0;

    /// <summary>Log posterior density of the slopes from a start on in one direction; their levels' densities are kept.</summary>
    private List<double> Walk(
        SlopePrior prior, int kept, double from, double step, LevelDensities levels, double largest)
    {
        var logs = new List<double>();
        var here = double.NegativeInfinity;
        for (var i = 0; ; i++)
        {
            var slope = from + (step * i);
            var log = prior.Log(slope);
            for (var leg = 0; leg < kept; leg++)
            {
                if (readings.Leg(leg).Count > 0)
                {
                    log += LegIntegral.Of(readings, leg, slope, lattice).LogLikelihood;
                }
            }

            ref readonly var there = ref readings.Leg(kept);
            log += there.Constant + lattice.IntegrateKeeping(
                readings.At(kept, slope, secondDerivative: true),
                there.Step,
                there.GuessAtZero - (slope * there.GuessPerSlope),
                there.Deviation,
                levels);
            logs.Add(log);
            largest = Math.Max(largest, log);
            if (step == 0 || !double.IsFinite(log) || (log <= largest - quadrature.Fall && log <= here))
            {
                return logs;
            }

            here = log;
        }
    }
}
