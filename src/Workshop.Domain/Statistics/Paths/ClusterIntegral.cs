namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The log-likelihood and the score of one cluster, or of one group where nothing is shared: the score is the expectation,
/// given the readings, of the score that known levels and slopes would give (Fisher's identity; Louis, J. Roy. Statist. Soc.
/// B 44 (1982) 226-233). One instance serves one thread.
/// </summary>
internal sealed class ClusterIntegral(PathData data, ParameterLayout layout, Quadrature quadrature)
{
    private readonly List<SlopeLattice> lattices = [];
    private readonly GrowingBuffer weights = new();
    private readonly GrowingBuffer givenLogs = new();
    private readonly List<(int First, int Count, int From)> spans = [];
    private readonly SharedNodes shared = new();
    private double[] marginal = [];
    private double[] shifted = [];

    /// <summary>How many groups were taken last.</summary>
    public int Groups { get; private set; }

    /// <summary>The common part's nodes with their posterior weights; one node at 0 where nothing is shared.</summary>
    public SharedNodes Shared => shared;

    /// <summary>The weights of a group's nodes given a node of the common part: their first node, where they are, how many.</summary>
    private (int First, int From, int Count) Given(int sharedNode, int group)
    {
        var (first, count, from) = spans[(sharedNode * Groups) + group];
        return (first, from, count);
    }

    /// <summary>Log-likelihood of a group given a node of the common part.</summary>
    public double LogGiven(int sharedNode, int group) => givenLogs[(sharedNode * Groups) + group];

    /// <summary>Integrates over everything; the score is added to what it holds.</summary>
    public double Evaluate(ReadOnlySpan<double> at, int firstGroup, int endGroup, bool extras, Span<double> score)
    {
        var logLikelihood = Integrate(at, firstGroup, endGroup, extras);
        if (double.IsFinite(logLikelihood))
        {
            AddScore(at, score);
        }

        return logLikelihood;
    }

    /// <summary>Integrates over everything: the common part, the slopes, the levels.</summary>
    public double Integrate(ReadOnlySpan<double> at, int firstGroup, int endGroup, bool extras)
    {
        Groups = endGroup - firstGroup;
        while (lattices.Count < Groups)
        {
            lattices.Add(new SlopeLattice(quadrature));
        }

        for (var g = 0; g < Groups; g++)
        {
            lattices[g].Prepare(data, layout, at, firstGroup + g, extras);
        }

        weights.Clear();
        givenLogs.Clear();
        spans.Clear();
        var common = at[ParameterLayout.ClusterDeviation];
        shared.Clear(common);
        if (common == 0)
        {
            var alone = Add(0, common);
            shared.FinishAlone();
            return alone;
        }

        var (guess, step) = Guess(common);
        return Walk(common, guess, step);
    }

    /// <summary>The Gaussian approximation of the common part, in units of its standard deviation: where and how wide.</summary>
    private (double Guess, double Step) Guess(double common)
    {
        double precision = 1, pull = 0;
        for (var g = 0; g < Groups; g++)
        {
            var lattice = lattices[g];
            var readings = lattice.Readings;
            var spread = 1 + (lattice.Deviation * lattice.Deviation * readings.Information);
            precision += common * common * readings.Information / spread;
            pull += common * lattice.Guess / lattice.Deviation;
        }

        return (pull / precision, quadrature.StepShare / Math.Sqrt(precision));
    }

    private double Walk(double common, double guess, double step)
    {
        var start = Math.Round(guess / step);
        var largest = double.NegativeInfinity;
        foreach (var direction in (ReadOnlySpan<int>)[1, -1])
        {
            var here = double.NegativeInfinity;
            for (var node = direction > 0 ? start : start - 1; ; node += direction)
            {
                var next = Add(node * step, common);
                largest = Math.Max(largest, next);
                if (!double.IsFinite(next) || (next < largest - quadrature.Fall && next <= here))
                {
                    break;
                }

                here = next;
            }
        }

        return shared.Finish(step);
    }

    /// <summary>Adds a node of the common part and every group's weights given it; returns the log of the integrand there.</summary>
    private double Add(double w, double common)
    {
        var log = -0.5 * w * w;
        for (var g = 0; g < Groups; g++)
        {
            var from = weights.Count;
            var (given, first, count) = lattices[g].Integrate(common * w / Unit(g), weights);
            spans.Add((first, count, from));
            givenLogs.Add(given);
            log += given;
        }

        shared.Add(w, log);
        return log;
    }

    /// <summary>The unit of a group's nodes; where its slopes have no spread nothing is shared either, and any unit will do.</summary>
    private double Unit(int group) => lattices[group].Deviation == 0 ? 1 : lattices[group].Deviation;

    private void AddScore(ReadOnlySpan<double> at, Span<double> score)
    {
        var common = at[ParameterLayout.ClusterDeviation];
        for (var g = 0; g < Groups; g++)
        {
            var lattice = lattices[g];
            var (first, count) = Gather(g);
            double slope = 0, spread = 0, scale = 0, square = 0, covariate = 0;
            for (var i = 0; i < count; i++)
            {
                var node = first + i;
                var weight = marginal[i];
                if (weight == 0)
                {
                    // Between the nodes that two values of the common part ask for; never computed.
                    continue;
                }

                var bySlope = lattice.BySlope(node);
                slope += weight * bySlope;
                spread += ((weight * lattice.Position(node)) - shifted[i]) * bySlope;
                scale += weight * lattice.ByScale(node);
                square += weight * lattice.BySquare(node);
                covariate += weight * lattice.ByCovariate(node);
            }

            score[layout.SlopeMean(lattice.SlopeClass)] += slope;
            score[layout.SlopeDeviation(lattice.SlopeClass)] += spread * lattice.DeviationByParameter;
            score[ParameterLayout.LogSigma] += scale;
            score[layout.Curvature(lattice.SlopeClass)] += square;
            score[ParameterLayout.Covariate] += covariate;
            AddLevelScores(lattice, first, count, score);
            if (common != 0)
            {
                score[ParameterLayout.ClusterDeviation] += CommonScore(lattice, g);
            }
        }
    }

    private void AddLevelScores(SlopeLattice lattice, int first, int count, Span<double> score)
    {
        for (var leg = 0; leg < lattice.Readings.Legs; leg++)
        {
            double mean = 0, deviation = 0;
            for (var i = 0; i < count; i++)
            {
                if (marginal[i] == 0)
                {
                    continue;
                }

                mean += marginal[i] * lattice.ByLevelMean(first + i, leg);
                deviation += marginal[i] * lattice.ByLevelDeviation(first + i, leg);
            }

            var level = lattice.Readings.Leg(leg).LevelClass;
            score[layout.LevelMean(level)] += mean;
            score[layout.LevelDeviation(level)] += deviation;
        }
    }

    private double CommonScore(SlopeLattice lattice, int group)
    {
        var sum = 0.0;
        for (var i = 0; i < shared.Count; i++)
        {
            var (first, from, count) = Given(i, group);
            var bySlope = 0.0;
            for (var k = 0; k < count; k++)
            {
                bySlope += weights[from + k] * lattice.BySlope(first + k);
            }

            sum += shared.Weight(i) * shared.Node(i) * bySlope;
        }

        return sum;
    }

    /// <summary>
    /// Fills <see cref="marginal"/> with a group's posterior weights over all nodes of the common part, and
    /// <see cref="shifted"/> with the same times the common part in units of the group's nodes.
    /// </summary>
    private (int First, int Count) Gather(int group)
    {
        var (first, last) = (int.MaxValue, int.MinValue);
        for (var i = 0; i < shared.Count; i++)
        {
            var (from, _, count) = Given(i, group);
            first = Math.Min(first, from);
            last = Math.Max(last, from + count - 1);
        }

        var width = last - first + 1;
        if (marginal.Length < width)
        {
            marginal = new double[2 * width];
            shifted = new double[2 * width];
        }

        Array.Clear(marginal, 0, width);
        Array.Clear(shifted, 0, width);
        var unit = Unit(group);
        for (var i = 0; i < shared.Count; i++)
        {
            var (start, from, count) = Given(i, group);
            var weight = shared.Weight(i);
            var shift = shared.Common(i) / unit;
            for (var k = 0; k < count; k++)
            {
                var part = weight * weights[from + k];
                marginal[start - first + k] += part;
                shifted[start - first + k] += part * shift;
            }
        }

        return (first, width);
    }
}
