namespace Workshop.Domain.Statistics;

/// <summary>A line through the origin fitted by least squares.</summary>
public sealed record ProportionalLine
{
    private readonly double slope;

    internal ProportionalLine(int count, double squaresX, double slope, AnalysisOfVariance analysisOfVariance)
    {
        Count = count;
        SquaresX = squaresX;
        this.slope = slope;
        AnalysisOfVariance = analysisOfVariance;
    }

    /// <summary>How many points were fitted.</summary>
    public int Count { get; }

    /// <summary>Sum of the squares of x, about zero.</summary>
    public double SquaresX { get; }

    /// <summary>
    /// What the line explains and what it leaves over. Sums of squares are about zero, so R squared is the uncentred one
    /// and is not comparable with that of a line with an intercept.
    /// </summary>
    public AnalysisOfVariance AnalysisOfVariance { get; }

    /// <summary>Standard deviation of the points about the line, in the unit of y.</summary>
    public double ResidualStandardDeviation => AnalysisOfVariance.ResidualStandardDeviation;

    /// <summary>Points less the one coefficient.</summary>
    public int DegreesOfFreedom => AnalysisOfVariance.Residual.DegreesOfFreedom;

    /// <summary>Change of y per unit of x.</summary>
    public Coefficient Slope => new(slope, ResidualStandardDeviation / Math.Sqrt(SquaresX), DegreesOfFreedom);

    /// <summary>Height of the line at an x, without uncertainty: for drawing.</summary>
    public double At(double x) => slope * x;

    /// <summary>The height of the true line at an x, with its confidence limits.</summary>
    /// <param name="x">Any finite value.</param>
    /// <param name="confidence">Between 0 and 1, both limits together.</param>
    public IntervalEstimate MeanResponseAt(double x, double confidence)
    {
        Guard.Finite(x, nameof(x));
        return IntervalEstimate.FromStudentT(At(x), StandardErrorOfLineAt(x), DegreesOfFreedom, confidence);
    }

    /// <summary>Where one new observation at an x will lie.</summary>
    /// <param name="x">Any finite value.</param>
    /// <param name="confidence">Between 0 and 1, both limits together.</param>
    public IntervalEstimate PredictionAt(double x, double confidence)
    {
        Guard.Finite(x, nameof(x));
        return IntervalEstimate.FromStudentT(
            At(x), double.Hypot(StandardErrorOfLineAt(x), ResidualStandardDeviation), DegreesOfFreedom, confidence);
    }

    private double StandardErrorOfLineAt(double x) => ResidualStandardDeviation * Math.Abs(x) / Math.Sqrt(SquaresX);
}
