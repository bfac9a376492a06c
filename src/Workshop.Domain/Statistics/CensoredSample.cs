namespace Workshop.Domain.Statistics;

/// <summary>
/// What is known of a response: of each observation a lower and an upper end between which it lies, and its covariates. Both
/// ends the same: seen exactly; the lower minus infinity: censored on the left; the upper infinity: on the right.
/// </summary>
public sealed class CensoredSample
{
    private CensoredSample(double[] lower, double[] upper, double[][] columns)
    {
        Lower = lower;
        Upper = upper;
        Columns = columns;
    }

    /// <summary>How many observations.</summary>
    public int Count => Lower.Length;

    /// <summary>How many coefficients, the constant included where there is one.</summary>
    public int Coefficients => Columns.Length;

    internal double[] Lower { get; }

    internal double[] Upper { get; }

    /// <summary>One array for each coefficient, as long as there are observations.</summary>
    internal double[][] Columns { get; }

    /// <summary>A sample whose first coefficient is a constant.</summary>
    /// <param name="lower">Lower end of each observation, minus infinity where there is none.</param>
    /// <param name="upper">Upper end of each, infinity where there is none; not below the lower.</param>
    /// <param name="covariates">Each as long as there are observations; their coefficients follow the constant in this order.</param>
    /// <exception cref="ArgumentException">Lengths differ, an upper end is below its lower one, or a value is no number.</exception>
    public static CensoredSample WithConstant(
        ReadOnlySpan<double> lower, ReadOnlySpan<double> upper, params ReadOnlySpan<double[]> covariates)
    {
        var ones = new double[lower.Length];
        Array.Fill(ones, 1);
        return ThroughOrigin(lower, upper, [ones, .. covariates]);
    }

    /// <summary>A sample without a constant, for what is zero where the covariates are.</summary>
    /// <inheritdoc cref="WithConstant"/>
    public static CensoredSample ThroughOrigin(
        ReadOnlySpan<double> lower, ReadOnlySpan<double> upper, params ReadOnlySpan<double[]> covariates)
    {
        Guard.SameLength(lower, upper);
        for (var i = 0; i < lower.Length; i++)
        {
            var there = lower[i] <= upper[i] && lower[i] < double.PositiveInfinity && upper[i] > double.NegativeInfinity;
            if (!there)
            {
                throw new ArgumentException(
                    $"Observation {i} runs from {lower[i]} to {upper[i]}; it must run upwards, with at most one end at each infinity.");
            }
        }

        foreach (var covariate in covariates)
        {
            Guard.SameLength(lower, covariate);
            Guard.Finite(covariate, nameof(covariates));
        }

        return new CensoredSample(lower.ToArray(), upper.ToArray(), covariates.ToArray());
    }

    /// <summary>
    /// Differences between a first and a second bracketed reading of the same thing, proportional to a known change made in
    /// between: the difference lies between first lower less second upper and first upper less second lower end. With exact
    /// readings its fit is plain regression through the origin.
    /// </summary>
    /// <remarks>
    /// As in any regression, the changes must not have been chosen from the first reading's error. Where they were, the estimate
    /// is too large, and the readings belong into a model of the whole history, in which the choice can be left out.
    /// </remarks>
    /// <param name="firstLower">Lower ends of the first readings.</param>
    /// <param name="firstUpper">Upper ends of the first readings.</param>
    /// <param name="secondLower">Lower ends of the second readings.</param>
    /// <param name="secondUpper">Upper ends of the second readings.</param>
    /// <param name="changes">What was changed in between.</param>
    public static CensoredSample OfDifferences(
        ReadOnlySpan<double> firstLower,
        ReadOnlySpan<double> firstUpper,
        ReadOnlySpan<double> secondLower,
        ReadOnlySpan<double> secondUpper,
        double[] changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        Guard.SameLength(firstLower, secondUpper);
        Guard.SameLength(firstUpper, secondLower);
        var lower = new double[firstLower.Length];
        var upper = new double[firstUpper.Length];
        for (var i = 0; i < lower.Length; i++)
        {
            lower[i] = firstLower[i] - secondUpper[i];
            upper[i] = firstUpper[i] - secondLower[i];
        }

        return ThroughOrigin(lower, upper, changes);
    }

    /// <summary>The same observations with one coefficient held: its part is taken off both ends, its column left out.</summary>
    internal CensoredSample Holding(int coefficient, double value)
    {
        var column = Columns[coefficient];
        return new CensoredSample(
            [.. Lower.Select((end, i) => end - (value * column[i]))],
            [.. Upper.Select((end, i) => end - (value * column[i]))],
            [.. Columns.Where((_, j) => j != coefficient)]);
    }

    /// <summary>The same on the scale of logarithms; a lower end at or below 0 becomes open.</summary>
    internal CensoredSample Logarithms() =>
        new([.. Lower.Select(end => end <= 0 ? double.NegativeInfinity : Math.Log(end))], [.. Upper.Select(end => Math.Log(end))], Columns);
}
