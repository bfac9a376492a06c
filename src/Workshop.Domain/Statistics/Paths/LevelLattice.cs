using System.Runtime.Intrinsics;

namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The integral over one leg's level at a given slope, by the trapezoid rule: equally spaced nodes, walked out in blocks from
/// near the mode until the integrand has fallen far enough on either side. The integrand is log-concave, so what
/// lies beyond is smaller still. For an analytic integrand the rule converges exponentially with the step (Trefethen and
/// Weideman, SIAM Review 56 (2014) 385-458).
/// </summary>
internal sealed class LevelLattice(Quadrature quadrature)
{
    private int half = 64;
    private double[] log = new double[128];
    private double[] byLevel = new double[128];
    private double[] byLevelTwice = new double[128];
    private double[] bySlope = new double[128];
    private double[] byScale = new double[128];
    private double[] bySquare = new double[128];
    private double[] byCovariate = new double[128];

    /// <summary>Number of nodes of the last walk.</summary>
    public int Nodes { get; private set; }

    /// <summary>The level of the first node of the last walk, in standard deviations of its class about the mean.</summary>
    public double First { get; private set; }

    /// <summary>Expected scores of the last walk.</summary>
    public LevelScores Scores { get; private set; }

    /// <summary>
    /// Log of the integral over the level of the readings' probabilities times the density of the level, less what
    /// <see cref="BracketBlock"/> leaves out; the expected scores stay in <see cref="Scores"/>.
    /// </summary>
    /// <param name="leg">The readings at this slope.</param>
    /// <param name="step">Distance of the nodes in standard deviations of the class of levels.</param>
    /// <param name="guess">Where the mode is likely to be.</param>
    public double Integrate(in StandardisedLeg leg, double step, double guess)
    {
        var (first, last) = Walk(leg, step, guess, out var start, out var largest);
        Nodes = last - first;
        First = step * (start + first);

        var top = Vector256.Create(largest);
        Vector256<double> sum = default, level = default, spread = default, slope = default;
        Vector256<double> scale = default, square = default, covariate = default;
        var u = Vector256.Create(First) + (step * Ramp);
        var advance = Vector256.Create(BracketBlock.Lanes * step);
        for (var i = half + first; i < half + last; i += BracketBlock.Lanes)
        {
            var weight = Vector256.Exp(Vector256.Create<double>(log, i) - top);
            sum += weight;
            var score = weight * Vector256.Create<double>(byLevel, i);
            level += score;
            spread += score * u;
            slope += weight * Vector256.Create<double>(bySlope, i);
            scale += weight * Vector256.Create<double>(byScale, i);
            if (leg.Extras)
            {
                square += weight * Vector256.Create<double>(bySquare, i);
                covariate += weight * Vector256.Create<double>(byCovariate, i);
            }

            u += advance;
        }

        var total = Vector256.Sum(sum);
        var one = 1 / total;
        Scores = new LevelScores(
            one * Vector256.Sum(level),
            one * Vector256.Sum(spread),
            one * Vector256.Sum(slope),
            one * Vector256.Sum(scale),
            one * Vector256.Sum(square),
            one * Vector256.Sum(covariate));
        return largest + Math.Log(total * step) - NormalTails.LogRootTwoPi;
    }

    /// <summary>
    /// Integrates as <see cref="Integrate"/> does and keeps the density of the level at the nodes instead of the scores.
    /// </summary>
    /// <param name="leg">The readings at this slope, second derivatives asked for.</param>
    /// <param name="step">Distance of the nodes in standard deviations of the class of levels.</param>
    /// <param name="guess">Where the mode is likely to be.</param>
    /// <param name="deviation">Standard deviation of the class of levels.</param>
    /// <param name="densities">Where the density goes.</param>
    public double IntegrateKeeping(
        in StandardisedLeg leg, double step, double guess, double deviation, LevelDensities densities)
    {
        var (first, last) = Walk(leg, step, guess, out var start, out var largest);
        densities.Begin(start + first, step);
        for (var i = half + first; i < half + last; i++)
        {
            // The density in steps of the lattice: value, slope and curvature, all by the step.
            var u = step * (start + i - half);
            var by = step * ((deviation * byLevel[i]) - u);
            var byTwice = step * step * ((deviation * deviation * byLevelTwice[i]) - 1);
            var density = Math.Exp(log[i] - largest);
            densities.Add(density, density * by, density * ((by * by) + byTwice));
        }

        return largest + Math.Log(densities.Finish() * step) - NormalTails.LogRootTwoPi;
    }

    private static Vector256<double> Ramp => Vector256.Create(0.0, 1.0, 2.0, 3.0);

    /// <summary>Fills the nodes; returns the first and one past the last, counted from the block of the guess.</summary>
    private (int First, int Last) Walk(in StandardisedLeg leg, double step, double guess, out double start, out double largest)
    {
        const int Lanes = BracketBlock.Lanes;
        start = Math.Floor(guess / step) - 1;
        largest = double.NegativeInfinity;
        var (first, last) = (0, 0);
        while (last == 0 || log[half + last - 1] > largest - quadrature.Fall || log[half + last - 1] > log[half + last - 2])
        {
            largest = Math.Max(largest, Block(leg, step, start, last));
            last += Lanes;
        }

        while (log[half + first] > largest - quadrature.Fall || log[half + first] > log[half + first + 1])
        {
            first -= Lanes;
            largest = Math.Max(largest, Block(leg, step, start, first));
        }

        return (first, last);
    }

    private double Block(in StandardisedLeg leg, double step, double start, int offset)
    {
        if (half + offset < 0 || half + offset + BracketBlock.Lanes > 2 * half)
        {
            Grow();
        }

        var u = step * (Vector256.Create(start + offset) + Ramp);
        BracketBlock.Evaluate(leg, u, out var values);
        var i = half + offset;
        values.LogDensity.CopyTo(log, i);
        values.ByLevel.CopyTo(byLevel, i);
        values.BySlope.CopyTo(bySlope, i);
        values.ByScale.CopyTo(byScale, i);
        if (leg.SecondDerivative)
        {
            values.ByLevelTwice.CopyTo(byLevelTwice, i);
        }

        if (leg.Extras)
        {
            values.BySquare.CopyTo(bySquare, i);
            values.ByCovariate.CopyTo(byCovariate, i);
        }

        return Math.Max(Math.Max(log[i], log[i + 1]), Math.Max(log[i + 2], log[i + 3]));
    }

    private void Grow()
    {
        log = Wider(log);
        byLevel = Wider(byLevel);
        byLevelTwice = Wider(byLevelTwice);
        bySlope = Wider(bySlope);
        byScale = Wider(byScale);
        bySquare = Wider(bySquare);
        byCovariate = Wider(byCovariate);
        half *= 2;
    }

    private double[] Wider(double[] narrow)
    {
        var wide = new double[4 * half];
        narrow.CopyTo(wide, half);
        return wide;
    }
}

/// <summary>Expected scores of a leg given its readings and the slope.</summary>
/// <param name="ByMean">By the mean of the class of levels.</param>
/// <param name="ByDeviation">By its standard deviation.</param>
/// <param name="BySlope">By the slope.</param>
/// <param name="ByScale">By the logarithm of sigma.</param>
/// <param name="BySquare">By the coefficient of x squared.</param>
/// <param name="ByCovariate">By the coefficient of the covariate.</param>
internal readonly record struct LevelScores(
    double ByMean, double ByDeviation, double BySlope, double ByScale, double BySquare, double ByCovariate);
