namespace Workshop.Domain.Statistics;

/// <summary>The x that belongs to a y on a fitted straight line.</summary>
/// <param name="Estimate">Where the fitted line reaches the y.</param>
/// <param name="StandardError">By propagation of error (the delta method); right when <paramref name="G"/> is small.</param>
/// <param name="Lower">Fieller's lower limit.</param>
/// <param name="Upper">Fieller's upper limit; the two are not symmetrical about the estimate.</param>
/// <param name="G">
/// The squared ratio of t times the slope's standard error to the slope, 0 to below 1. At 1 the limits would be infinite.
/// </param>
/// <param name="Confidence">Of the two limits together.</param>
/// <param name="DegreesOfFreedom">Of the residual variance.</param>
public sealed record InversePrediction(
    double Estimate,
    double StandardError,
    double Lower,
    double Upper,
    double G,
    double Confidence,
    double DegreesOfFreedom)
{
    /// <summary>
    /// Estimate plus and minus t times the standard error: the symmetrical limits that many handbooks print.
    /// Too narrow where <see cref="G"/> is not small.
    /// </summary>
    public IntervalEstimate Symmetrical =>
        IntervalEstimate.FromStudentT(Estimate, StandardError, DegreesOfFreedom, Confidence);

    /// <summary>
    /// Fieller's theorem (J. Roy. Statist. Soc. B 16 (1954) 175-185; Draper and Smith, Applied Regression Analysis,
    /// section 3.2).
    /// </summary>
    /// <param name="line">The fitted line.</param>
    /// <param name="y">The height looked for.</param>
    /// <param name="perObservation">Variance of y in residual variances: 0 when known, 1/m for a mean of m.</param>
    /// <param name="confidence">Two-sided.</param>
    internal static Computed<InversePrediction> OnLine(
        StraightLine line, double y, double perObservation, double confidence)
    {
        Guard.Finite(y, nameof(y));
        Guard.Confidence(confidence);
        var slope = line.Slope;
        var t = StudentT.TwoSidedQuantile(confidence, line.DegreesOfFreedom);
        if (t * slope.StandardError >= Math.Abs(slope.Value))
        {
            return new NotComputable(
                NotComputableReason.SlopeNotDistinguishableFromZero,
                $"The slope {slope.Value:G4} (standard error {slope.StandardError:G3}) is not distinguishable from zero "
                + $"at {100 * confidence:0.##} % confidence, so the x at which the line reaches {y} has no finite limits.");
        }

        var g = Math.Pow(t * slope.StandardError / slope.Value, 2);
        var s = line.ResidualStandardDeviation;
        var distance = (y - line.At(line.MeanX)) / slope.Value;
        var ofPoint = (1.0 / line.Count) + perObservation;
        var ofDistance = distance * distance / line.SquaresX;
        var centre = line.MeanX + (distance / (1 - g));
        var half = t * s / Math.Abs(slope.Value) / (1 - g) * Math.Sqrt(((1 - g) * ofPoint) + ofDistance);
        return new InversePrediction(
            line.MeanX + distance,
            s / Math.Abs(slope.Value) * Math.Sqrt(ofPoint + ofDistance),
            centre - half,
            centre + half,
            g,
            confidence,
            line.DegreesOfFreedom);
    }
}
