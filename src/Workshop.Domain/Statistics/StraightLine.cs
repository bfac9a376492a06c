namespace Workshop.Domain.Statistics;

/// <summary>A straight line fitted by least squares, with all that is needed to say how far to trust it.</summary>
public sealed record StraightLine
{
    private readonly double meanY;
    private readonly double slope;

    internal StraightLine(
        int count, double meanX, double meanY, double squaresX, double slope, AnalysisOfVariance analysisOfVariance)
    {
        Count = count;
        MeanX = meanX;
        SquaresX = squaresX;
        this.meanY = meanY;
        this.slope = slope;
        AnalysisOfVariance = analysisOfVariance;
    }

    /// <summary>How many points stand behind its level: all that were fitted, or those of its own group of parallel lines.</summary>
    public int Count { get; }

    /// <summary>Mean of x of those points, where the line is known best.</summary>
    public double MeanX { get; }

    /// <summary>Sum of squared deviations of x from its mean, or from the mean of each group, behind the slope.</summary>
    public double SquaresX { get; }

    /// <summary>What the line explains and what it leaves over, with F and R squared.</summary>
    public AnalysisOfVariance AnalysisOfVariance { get; }

    /// <summary>Standard deviation of the points about the line, in the unit of y.</summary>
    public double ResidualStandardDeviation => AnalysisOfVariance.ResidualStandardDeviation;

    /// <summary>Points less the coefficients: two, or the slope and one level for each group.</summary>
    public int DegreesOfFreedom => AnalysisOfVariance.Residual.DegreesOfFreedom;

    /// <summary>Height of the line at x = 0.</summary>
    public Coefficient Intercept => new(At(0), StandardErrorOfLineAt(0), DegreesOfFreedom);

    /// <summary>Change of y per unit of x.</summary>
    public Coefficient Slope => new(slope, ResidualStandardDeviation / Math.Sqrt(SquaresX), DegreesOfFreedom);

    /// <summary>Height of the line at an x, without uncertainty: for drawing.</summary>
    public double At(double x) => meanY + (slope * (x - MeanX));

    /// <summary>The height of the true line at an x, with its confidence limits.</summary>
    /// <param name="x">Any finite value; far outside the fitted x the limits widen, but the line stays an assumption.</param>
    /// <param name="confidence">Between 0 and 1, both limits together.</param>
    public IntervalEstimate MeanResponseAt(double x, double confidence)
    {
        Guard.Finite(x, nameof(x));
        return IntervalEstimate.FromStudentT(At(x), StandardErrorOfLineAt(x), DegreesOfFreedom, confidence);
    }

    /// <summary>Where a new observation at an x, or the mean of several there, will lie.</summary>
    /// <param name="x">Any finite value.</param>
    /// <param name="confidence">Between 0 and 1, both limits together.</param>
    /// <param name="observations">How many new observations are averaged, 1 or more.</param>
    public IntervalEstimate PredictionAt(double x, double confidence, int observations = 1)
    {
        Guard.Finite(x, nameof(x));
        ArgumentOutOfRangeException.ThrowIfLessThan(observations, 1);
        var ofObservations = ResidualStandardDeviation / Math.Sqrt(observations);
        return IntervalEstimate.FromStudentT(
            At(x), double.Hypot(StandardErrorOfLineAt(x), ofObservations), DegreesOfFreedom, confidence);
    }

    /// <summary>
    /// The x at which the true line reaches a y that is known without error, such as a limit, with Fieller's limits;
    /// a reason instead where the slope is not distinguishable from zero at this confidence.
    /// </summary>
    /// <param name="y">The height to be reached, any finite value.</param>
    /// <param name="confidence">Between 0 and 1, both limits together.</param>
    public Computed<InversePrediction> InverseOfMeanResponse(double y, double confidence) =>
        InversePrediction.OnLine(this, y, 0, confidence);

    /// <summary>
    /// The x that belongs to a newly observed y, or to the mean of several observed at the same unknown x, with
    /// Fieller's limits; a reason instead where the slope is not distinguishable from zero at this confidence.
    /// </summary>
    /// <param name="y">The y observed, any finite value.</param>
    /// <param name="confidence">Between 0 and 1, both limits together.</param>
    /// <param name="observations">How many observations y is the mean of, 1 or more.</param>
    public Computed<InversePrediction> InverseOfObservation(double y, double confidence, int observations = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(observations, 1);
        return InversePrediction.OnLine(this, y, 1.0 / observations, confidence);
    }

    private double StandardErrorOfLineAt(double x) =>
        ResidualStandardDeviation * double.Hypot(1 / Math.Sqrt(Count), (x - MeanX) / Math.Sqrt(SquaresX));
}
