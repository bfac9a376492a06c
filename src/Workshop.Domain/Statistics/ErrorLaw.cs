namespace Workshop.Domain.Statistics;

/// <summary>The law that the standardised error of a censored regression follows, and the scale on which it is additive.</summary>
public enum ErrorLaw
{
    /// <summary>Normal errors on the scale observed.</summary>
    Normal,

    /// <summary>Normal errors of the logarithm; what is observed is above 0.</summary>
    Lognormal,

    /// <summary>Errors of the logarithm follow the smallest extreme value law; what is observed is above 0.</summary>
    Weibull,
}

/// <summary>
/// A standardised law with a log-concave density: the log probability of an interval with its first and second derivatives
/// by position (both ends moved alike) and by width.
/// </summary>
internal abstract class StandardLaw
{
    /// <summary>Below this width an interval is its density times its width to a relative 1e-11.</summary>
    private const double AsGoodAsExact = 1e-5;

    public static StandardLaw Of(ErrorLaw law) => law == ErrorLaw.Weibull ? new SmallestExtremeValueLaw() : new NormalLaw();

    public abstract double LogDensity(double z);

    /// <summary>Derivative of the log density.</summary>
    public abstract double Slope(double z);

    /// <summary>Second derivative of the log density, below 0.</summary>
    public abstract double Curvature(double z);

    /// <summary>An interval of standardised ends; of width 0 its density; with an end at infinity its tail.</summary>
    public IntervalDerivatives At(double lower, double upper)
    {
        var width = upper - lower;
        if (width < AsGoodAsExact)
        {
            var z = lower + (width / 2);
            return width == 0
                ? new(LogDensity(z), Slope(z), 0, Curvature(z), 0, 0)
                : new(LogDensity(z) + Math.Log(width), Slope(z), 1 / width, Curvature(z), 0, -1 / (width * width));
        }

        var log = LogProbability(lower, upper);
        if (double.IsInfinity(width))
        {
            var (end, sign) = double.IsInfinity(lower) ? (upper, 1) : (lower, -1);
            var only = sign * Math.Exp(LogDensity(end) - log);
            return new(log, only, 0, only * (Slope(end) - only), 0, 0);
        }

        var byLower = -Math.Exp(LogDensity(lower) - log);
        var byUpper = Math.Exp(LogDensity(upper) - log);
        var byLowerTwice = byLower * (Slope(lower) - byLower);
        var byUpperTwice = byUpper * (Slope(upper) - byUpper);
        var byBoth = -byLower * byUpper;
        return new(
            log,
            byLower + byUpper,
            (byUpper - byLower) / 2,
            byLowerTwice + (2 * byBoth) + byUpperTwice,
            (byUpperTwice - byLowerTwice) / 2,
            (byLowerTwice - (2 * byBoth) + byUpperTwice) / 4);
    }

    protected abstract double LogProbability(double lower, double upper);

    private sealed class NormalLaw : StandardLaw
    {
        public override double LogDensity(double z) => NormalTails.LogDensity(z);

        public override double Slope(double z) => -z;

        public override double Curvature(double z) => -1;

        protected override double LogProbability(double lower, double upper) => NormalTails.LogDifference(lower, upper);
    }

    private sealed class SmallestExtremeValueLaw : StandardLaw
    {
        public override double LogDensity(double z) => z - Math.Exp(z);

        public override double Slope(double z) => 1 - Math.Exp(z);

        public override double Curvature(double z) => -Math.Exp(z);

        protected override double LogProbability(double lower, double upper)
        {
            // Survival is exp(-exp(z)); the difference of two is the larger one times 1 - exp(-(difference of exponents)).
            var start = double.IsNegativeInfinity(lower) ? 0 : Math.Exp(lower);
            var rise = double.IsPositiveInfinity(upper) ? double.PositiveInfinity
                : double.IsNegativeInfinity(lower) ? Math.Exp(upper)
                : start * NormalTails.ExpM1(upper - lower);
            return -start + Math.Log(-NormalTails.ExpM1(-rise));
        }
    }
}

/// <summary>A log probability with its derivatives by position and width; by width they are 0 where an end is open.</summary>
internal readonly record struct IntervalDerivatives(
    double LogProbability,
    double ByPosition,
    double ByWidth,
    double ByPositionTwice,
    double ByPositionAndWidth,
    double ByWidthTwice);
