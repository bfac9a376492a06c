namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// One group's log-likelihood and expected scores at equally spaced slopes, its levels integrated out; a node is computed when
/// it is first asked for. The table serves every value of the clusters' common part: only the weights of the nodes change.
/// </summary>
internal sealed class SlopeLattice(Quadrature quadrature)
{
    /// <summary>
    /// With a common part the spread about it is kept above this share of what the group itself tells of its slope, so that
    /// the nodes stay finite in number; the log-likelihood of a group changes by less than 1e-6.
    /// </summary>
    private const double LeastShare = 1e-3;

    private const double FurthestNode = 1e7;

    private readonly GroupReadings readings = new(quadrature);
    private readonly LevelLattice levels = new(quadrature);
    private int half = 64;
    private int legCapacity = 4;
    private bool[] done = new bool[128];
    private double[] log = new double[128];
    private double[] bySlope = new double[128];
    private double[] byScale = new double[128];
    private double[] bySquare = new double[128];
    private double[] byCovariate = new double[128];
    private double[] byLeg = new double[2 * 128 * 4];
    private int centre;
    private int least;
    private int most;
    private double mean;

    public GroupReadings Readings => readings;

    public int SlopeClass { get; private set; }

    /// <summary>Unit of the nodes: the standard deviation of the slopes about their common part.</summary>
    public double Deviation { get; private set; }

    /// <summary>Derivative of <see cref="Deviation"/> by the parameter behind it.</summary>
    public double DeviationByParameter { get; private set; }

    /// <summary>Distance of the nodes in that unit.</summary>
    public double Step { get; private set; }

    /// <summary>Where the mode given a common part of 0 is likely to be, in that unit.</summary>
    public double Guess { get; private set; }

    /// <summary>How far it moves per unit of the common part.</summary>
    public double GuessPerShift { get; private set; }

    /// <summary>Takes a group at given parameters.</summary>
    public void Prepare(PathData data, ParameterLayout layout, ReadOnlySpan<double> at, int group, bool extras)
    {
        readings.Prepare(data, layout, at, group, extras);
        SlopeClass = data.SlopeClass[group];
        mean = at[layout.SlopeMean(SlopeClass)];
        var deviation = at[layout.SlopeDeviation(SlopeClass)];
        var common = at[ParameterLayout.ClusterDeviation];
        (Deviation, DeviationByParameter) = (deviation, 1);
        if (common != 0)
        {
            var floor = LeastShare / Math.Sqrt(readings.Information + (1 / (common * common)));
            Deviation = double.Hypot(deviation, floor);
            DeviationByParameter = deviation / Deviation;
        }

        var precision = 1 + (Deviation * Deviation * readings.Information);
        Step = quadrature.StepShare / Math.Sqrt(precision);
        Guess = Deviation * (readings.Pull - (readings.Information * mean)) / precision;
        GuessPerShift = 1 / precision;
        Restart();
    }

    /// <summary>The slope of a node, in units of <see cref="Deviation"/> about the mean of its class.</summary>
    public double Position(int node) => Step * node;

    public double Slope(int node) => mean + (Deviation * Position(node));

    /// <summary>Log-likelihood of the group at the slope of a node.</summary>
    public double Log(int node)
    {
        var place = Place(node);
        return log[place];
    }

    public double BySlope(int node)
    {
        var place = Place(node);
        return bySlope[place];
    }

    public double ByScale(int node)
    {
        var place = Place(node);
        return byScale[place];
    }

    public double BySquare(int node)
    {
        var place = Place(node);
        return bySquare[place];
    }

    public double ByCovariate(int node)
    {
        var place = Place(node);
        return byCovariate[place];
    }

    /// <summary>Expected score by the mean of a leg's class of levels.</summary>
    public double ByLevelMean(int node, int leg)
    {
        var place = Place(node);
        return byLeg[2 * ((place * legCapacity) + leg)];
    }

    /// <summary>Expected score by the standard deviation of a leg's class of levels.</summary>
    public double ByLevelDeviation(int node, int leg)
    {
        var place = Place(node);
        return byLeg[(2 * ((place * legCapacity) + leg)) + 1];
    }

    /// <summary>
    /// Integrates over the slope given a common part, in units of <see cref="Deviation"/>: walks out from the mode, adds the
    /// weights of the nodes (their sum is 1) to a buffer.
    /// </summary>
    /// <returns>
    /// The log-likelihood of the group given the common part, and which nodes the weights belong to; no number where a search
    /// tries parameters so far off that the slope cannot be placed.
    /// </returns>
    public (double Log, int First, int Count) Integrate(double shift, GrowingBuffer weights)
    {
        var mode = (Guess + (GuessPerShift * shift)) / Step;
        if (!(Math.Abs(mode) < FurthestNode))
        {
            return (double.NaN, 0, 0);
        }

        var start = (int)Math.Round(mode);
        var largest = Integrand(start, shift);
        var (first, last) = (start, start);
        for (double here = largest, next; ; here = next)
        {
            next = Integrand(last + 1, shift);
            if (!GoesOn(next, here, largest))
            {
                break;
            }

            largest = Math.Max(largest, next);
            last++;
        }

        for (double here = Integrand(start, shift), next; ; here = next)
        {
            next = Integrand(first - 1, shift);
            if (!GoesOn(next, here, largest))
            {
                break;
            }

            largest = Math.Max(largest, next);
            first--;
        }

        return (largest + Weigh(shift, largest, first, last, weights), first, last - first + 1);
    }

    /// <summary>Whether a walk has not yet come to its end: the integrand still matters, or still rises.</summary>
    private bool GoesOn(double next, double here, double largest) =>
        double.IsFinite(next) && (next > largest - quadrature.Fall || next > here);

    private double Weigh(double shift, double largest, int first, int last, GrowingBuffer weights)
    {
        var from = weights.Count;
        var sum = 0.0;
        for (var node = first; node <= last; node++)
        {
            var weight = Math.Exp(Integrand(node, shift) - largest);
            weights.Add(weight);
            sum += weight;
        }

        foreach (ref var weight in weights.From(from))
        {
            weight /= sum;
        }

        return Math.Log(sum * Step) - NormalTails.LogRootTwoPi;
    }

    private double Integrand(int node, double shift)
    {
        var u = Position(node) - shift;
        return Log(node) - (0.5 * u * u);
    }

    private void Restart()
    {
        if (readings.Legs > legCapacity)
        {
            legCapacity = 2 * readings.Legs;
            byLeg = new double[4 * half * legCapacity];
        }

        if (most >= least)
        {
            Array.Clear(done, least, most - least + 1);
        }

        centre = Math.Abs(Guess / Step) < FurthestNode ? (int)Math.Round(Guess / Step) : 0;
        (least, most) = (int.MaxValue, int.MinValue);
    }

    private int Place(int node)
    {
        var place = half + node - centre;
        while (place < 0 || place >= 2 * half)
        {
            Grow();
            place = half + node - centre;
        }

        if (!done[place])
        {
            Compute(node, place);
        }

        return place;
    }

    private void Compute(int node, int place)
    {
        done[place] = true;
        least = Math.Min(least, place);
        most = Math.Max(most, place);
        var slope = Slope(node);
        double sum = 0, slopes = 0, scales = 0, squares = 0, covariates = 0;
        for (var leg = 0; leg < readings.Legs; leg++)
        {
            ref readonly var there = ref readings.Leg(leg);
            if (there.Count == 0)
            {
                byLeg[2 * ((place * legCapacity) + leg)] = byLeg[(2 * ((place * legCapacity) + leg)) + 1] = 0;
                continue;
            }

            var (logLikelihood, scores) = LegIntegral.Of(readings, leg, slope, levels);
            sum += logLikelihood;
            slopes += scores.BySlope;
            scales += scores.ByScale;
            squares += scores.BySquare;
            covariates += scores.ByCovariate;
            byLeg[2 * ((place * legCapacity) + leg)] = scores.ByMean;
            byLeg[(2 * ((place * legCapacity) + leg)) + 1] = scores.ByDeviation;
        }

        log[place] = sum;
        bySlope[place] = slopes;
        byScale[place] = scales;
        bySquare[place] = squares;
        byCovariate[place] = covariates;
    }

    private void Grow()
    {
        var wideLegs = new double[8 * half * legCapacity];
        byLeg.CopyTo(wideLegs, 2 * half * legCapacity);
        byLeg = wideLegs;
        var wideDone = new bool[4 * half];
        done.CopyTo(wideDone, half);
        done = wideDone;
        log = Wider(log);
        bySlope = Wider(bySlope);
        byScale = Wider(byScale);
        bySquare = Wider(bySquare);
        byCovariate = Wider(byCovariate);
        if (most >= least)
        {
            least += half;
            most += half;
        }

        half *= 2;
    }

    private double[] Wider(double[] narrow)
    {
        var wide = new double[4 * half];
        narrow.CopyTo(wide, half);
        return wide;
    }
}
