namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The readings of one group in units of their own standard deviation at given parameters, as one leg after the other needs
/// them. The arrays are used again for the next group.
/// </summary>
internal sealed class GroupReadings(Quadrature quadrature)
{
    private double[] atZeroLower = [];
    private double[] atZeroUpper = [];
    private double[] perSlope = [];
    private double[] lower = [];
    private double[] upper = [];
    private bool[] exact = [];
    private double[] perLevel = [];
    private double[] inverseScale = [];
    private double[] scaleShare = [];
    private double[] x = [];
    private double[] covariate = [];
    private LegAtParameters[] legs = [];
    private bool extras;

    /// <summary>How many legs.</summary>
    public int Legs { get; private set; }

    /// <summary>Information on the slope from the readings, the levels integrated out, were they exact.</summary>
    public double Information { get; private set; }

    /// <summary>The same times the slope that they point to.</summary>
    public double Pull { get; private set; }

    public ref readonly LegAtParameters Leg(int leg) => ref legs[leg];

    /// <summary>Takes a group at given parameters.</summary>
    /// <param name="data">All readings.</param>
    /// <param name="layout">Where the parameters stand.</param>
    /// <param name="at">The parameters.</param>
    /// <param name="group">Which group.</param>
    /// <param name="withExtras">Whether scores by curvature and covariate are wanted.</param>
    /// <param name="keptLeg">A leg, counted within the group, whose level is wanted even if it has one reading; none: -1.</param>
    public void Prepare(
        PathData data, ParameterLayout layout, ReadOnlySpan<double> at, int group, bool withExtras, int keptLeg = -1)
    {
        var (firstLeg, endLeg) = (data.GroupStart[group], data.GroupStart[group + 1]);
        var firstReading = data.LegStart[firstLeg];
        Legs = endLeg - firstLeg;
        extras = withExtras;
        Reserve(data.LegStart[endLeg] - firstReading, Legs);
        var curvature = withExtras ? at[layout.Curvature(data.SlopeClass[group])] : 0;
        var sigmaSquared = Math.Exp(2 * at[ParameterLayout.LogSigma]);
        (Information, Pull) = (0, 0);
        for (var leg = firstLeg; leg < endLeg; leg++)
        {
            var level = data.LevelClass[leg];
            var from = data.LegStart[leg] - firstReading;
            var end = data.LegStart[leg + 1] - firstReading;
            var deviation = at[layout.LevelDeviation(level)];

            // The level of a single reading is integrated in closed form: it only adds to the reading's own variance.
            var single = end - from == 1 && leg - firstLeg != keptLeg;
            double precision = 0, sumX = 0, sumXX = 0, sumY = 0, sumXY = 0, constant = 0;
            for (var k = from; k < end; k++)
            {
                var r = k + firstReading;
                var variance = sigmaSquared + data.Variance[r] + (single ? deviation * deviation : 0);
                var inverse = 1 / Math.Sqrt(variance);
                var offset = at[layout.LevelMean(level)];
                if (withExtras)
                {
                    offset += (curvature * data.X[r] * data.X[r]) + (at[ParameterLayout.Covariate] * data.Covariate[r]);
                }

                constant += Standardise(k, data.Lower[r] - offset, data.Upper[r] - offset, inverse);
                x[k] = data.X[r];
                covariate[k] = data.Covariate[r];
                perSlope[k] = inverse * x[k];
                perLevel[k] = single ? 0 : inverse * deviation;
                inverseScale[k] = inverse;
                scaleShare[k] = sigmaSquared / variance;

                var weight = 1 / variance;
                var y = data.Middle(r) - offset;
                precision += weight;
                sumX += weight * x[k];
                sumXX += weight * x[k] * x[k];
                sumY += weight * y;
                sumXY += weight * x[k] * y;
            }

            if (precision > 0)
            {
                var shrink = single ? 0 : deviation * deviation / (1 + (precision * deviation * deviation));
                Information += sumXX - (shrink * sumX * sumX);
                Pull += sumXY - (shrink * sumX * sumY);
            }

            legs[leg - firstLeg] = new LegAtParameters
            {
                From = from,
                Count = end - from,
                LevelClass = level,
                Deviation = deviation,
                Step = quadrature.StepShare / Math.Sqrt(1 + (precision * deviation * deviation)),
                GuessAtZero = deviation * sumY / (1 + (precision * deviation * deviation)),
                GuessPerSlope = deviation * sumX / (1 + (precision * deviation * deviation)),
                Constant = constant,
            };
        }
    }

    /// <summary>The readings of a leg at a slope.</summary>
    public StandardisedLeg At(int leg, double slope, bool secondDerivative = false)
    {
        ref readonly var there = ref legs[leg];
        var (from, count) = (there.From, there.Count);
        for (var k = from; k < from + count; k++)
        {
            lower[k] = atZeroLower[k] - (slope * perSlope[k]);
            upper[k] = atZeroUpper[k] - (slope * perSlope[k]);
        }

        return new StandardisedLeg
        {
            Lower = lower.AsSpan(from, count),
            Upper = upper.AsSpan(from, count),
            Exact = exact.AsSpan(from, count),
            PerLevel = perLevel.AsSpan(from, count),
            InverseScale = inverseScale.AsSpan(from, count),
            X = x.AsSpan(from, count),
            Covariate = covariate.AsSpan(from, count),
            ScaleShare = scaleShare.AsSpan(from, count),
            Extras = extras,
            SecondDerivative = secondDerivative,
        };
    }

    /// <summary>Stores the ends of a reading; returns the constant that belongs to its log probability.</summary>
    private double Standardise(int k, double from, double to, double inverse)
    {
        var width = (to - from) * inverse;
        exact[k] = width < BracketBlock.AsGoodAsExact;
        atZeroLower[k] = exact[k] ? inverse * (from + ((to - from) / 2)) : double.IsInfinity(from) ? -BracketBlock.Open : inverse * from;
        atZeroUpper[k] = double.IsInfinity(to) ? BracketBlock.Open : inverse * to;
        return -NormalTails.LogRootTwoPi + (!exact[k] ? 0 : width > 0 ? Math.Log(width) : Math.Log(inverse));
    }

    private void Reserve(int readings, int legCount)
    {
        if (x.Length < readings)
        {
            var size = Math.Max(16, 2 * readings);
            (atZeroLower, atZeroUpper, perSlope) = (new double[size], new double[size], new double[size]);
            (lower, upper, exact) = (new double[size], new double[size], new bool[size]);
            (perLevel, inverseScale, scaleShare) = (new double[size], new double[size], new double[size]);
            (x, covariate) = (new double[size], new double[size]);
        }

        if (legs.Length < legCount)
        {
            legs = new LegAtParameters[Math.Max(4, 2 * legCount)];
        }
    }
}

/// <summary>A leg of the group at hand.</summary>
internal struct LegAtParameters
{
    /// <summary>Its first reading, counted within the group.</summary>
    public int From;

    /// <summary>How many readings.</summary>
    public int Count;

    public int LevelClass;

    /// <summary>Standard deviation of the class of levels; may carry a sign during a search.</summary>
    public double Deviation;

    /// <summary>Distance of the nodes: the standard deviation of the level given exact readings, in units of its class.</summary>
    public double Step;

    /// <summary>Where the mode of the level is likely to be at slope 0, in units of its class.</summary>
    public double GuessAtZero;

    /// <summary>How much lower it is per unit of slope.</summary>
    public double GuessPerSlope;

    /// <summary>Constant part of the log probability of the readings.</summary>
    public double Constant;
}
