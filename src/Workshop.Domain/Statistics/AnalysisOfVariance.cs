using MathNet.Numerics;

namespace Workshop.Domain.Statistics;

/// <summary>A sum of squares and the degrees of freedom behind it.</summary>
/// <param name="SumOfSquares">In the square of the unit of y; not negative.</param>
/// <param name="DegreesOfFreedom">Above 0.</param>
public sealed record SourceOfVariation(double SumOfSquares, int DegreesOfFreedom)
{
    /// <summary>Sum of squares over degrees of freedom.</summary>
    public double MeanSquare => SumOfSquares / DegreesOfFreedom;
}

/// <summary>What a fit explains of the variation of y, beside what it leaves over.</summary>
/// <param name="Explained">Variation taken up by the line, or between groups.</param>
/// <param name="Residual">Variation left about the line, or within groups.</param>
public sealed record AnalysisOfVariance(SourceOfVariation Explained, SourceOfVariation Residual)
{
    /// <summary>Square root of the residual mean square, in the unit of y.</summary>
    public double ResidualStandardDeviation => Math.Sqrt(Residual.MeanSquare);

    /// <summary>
    /// Explained over total sum of squares, 0 to 1. The total is about the mean of y, or about zero where the fit has
    /// no constant. A reason instead where y has no variation.
    /// </summary>
    public Computed<double> RSquared
    {
        get
        {
            var total = Explained.SumOfSquares + Residual.SumOfSquares;
            return total > 0
                ? Explained.SumOfSquares / total
                : new NotComputable(
                    NotComputableReason.NoSpreadInY, "All y are equal: there is no variation of which a share could be explained.");
        }
    }

    /// <summary>Explained over residual mean square; a reason instead where nothing is left over.</summary>
    public Computed<double> F => Residual.SumOfSquares > 0
        ? Explained.MeanSquare / Residual.MeanSquare
        : new NotComputable(
            NotComputableReason.NoResidualVariation, "The fit leaves nothing over, so there is nothing to compare its effect with.");

    /// <summary>The probability of so large an F by chance alone; a reason instead where there is no F.</summary>
    /// <remarks>Abramowitz and Stegun, Handbook of Mathematical Functions, 26.6.2.</remarks>
    public Computed<double> PValue => F.Then<double>(f =>
    {
        double above = Explained.DegreesOfFreedom;
        double below = Residual.DegreesOfFreedom;
        return SpecialFunctions.BetaRegularized(below / 2, above / 2, below / (below + (above * f)));
    });
}
