using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The innermost loop: the log probability of the readings of one leg, and its derivatives, at four neighbouring levels at
/// once. Four lanes on every machine, and fused products only where they are asked for, so that all machines agree.
/// </summary>
/// <remarks>
/// A reading with standardised ends l and h has probability Phi(h) - Phi(l). Both tails are phi(z) times Mills' ratio, a
/// quotient of two polynomials fitted for this project (relative error below 2e-13 from 0 to 40, coefficients all positive);
/// the interval is mirrored first so that its middle is not below 0 and nothing cancels. Products of eight probabilities
/// share one logarithm. Where a probability falls below <see cref="LeastProbability"/>, <see cref="NormalTails"/> takes over.
/// </remarks>
internal static class BracketBlock
{
    /// <summary>Nodes in a block.</summary>
    public const int Lanes = 4;

    /// <summary>Stands for an open end: far beyond every standardised end, small enough that its square is finite.</summary>
    public const double Open = 1e30;

    /// <summary>Below this standardised width a bracket is its density times its width.</summary>
    public const double AsGoodAsExact = 1e-4;

    private const double LeastProbability = 1e-30;

    /// <summary>Beyond it exp(-z^2/2) is nothing beside the smallest probability that is kept.</summary>
    private const double FurthestTail = 37;

    private const int SharedLogarithm = 8;

    private const double RootTwoPi = 2.50662827463100050242;

    /// <summary>Log density of the level (less constants) and the readings' scores at four levels.</summary>
    public struct Values
    {
        /// <summary>Log probability of the readings less u^2 / 2, of a bracket times the root of 2 pi.</summary>
        public Vector256<double> LogDensity;

        /// <summary>Derivative by the level.</summary>
        public Vector256<double> ByLevel;

        /// <summary>Second derivative by the level, where it is asked for.</summary>
        public Vector256<double> ByLevelTwice;

        /// <summary>Derivative by the slope.</summary>
        public Vector256<double> BySlope;

        /// <summary>Derivative by the logarithm of sigma.</summary>
        public Vector256<double> ByScale;

        /// <summary>Derivative by the coefficient of x squared.</summary>
        public Vector256<double> BySquare;

        /// <summary>Derivative by the coefficient of the covariate.</summary>
        public Vector256<double> ByCovariate;
    }

    /// <summary>Evaluates a leg at the four levels u (in units of the levels' standard deviation about their mean).</summary>
    /// <param name="leg">The leg's readings, standardised at the present parameters and slope.</param>
    /// <param name="u">Four levels.</param>
    /// <param name="values">What comes out.</param>
    public static void Evaluate(in StandardisedLeg leg, Vector256<double> u, out Values values)
    {
        var zero = Vector256<double>.Zero;
        Vector256<double> byLevel = zero, bySlope = zero, byScale = zero, bySquare = zero, byCovariate = zero;
        var byLevelTwice = zero;
        var log = -0.5 * u * u;
        var product = Vector256<double>.One;
        var largest = Vector256<double>.One;
        var inProduct = 0;
        var lower = leg.Lower;
        for (var k = 0; k < lower.Length; k++)
        {
            var shift = leg.PerLevel[k] * u;
            Vector256<double> score, scale;
            if (leg.Exact[k])
            {
                score = Vector256.Create(lower[k]) - shift;
                log -= 0.5 * score * score;
                scale = (score * score) - Vector256<double>.One;
            }
            else
            {
                var inverse = Bracket(
                    Vector256.Create(lower[k]) - shift, Vector256.Create(leg.Upper[k]) - shift, out score, out scale);
                largest = Vector256.Max(largest, inverse);
                product *= inverse;
                if (++inProduct == SharedLogarithm)
                {
                    log -= Vector256.Log(product);
                    product = Vector256<double>.One;
                    inProduct = 0;
                }
            }

            if (leg.SecondDerivative)
            {
                byLevelTwice += (scale - (score * score)) * (leg.InverseScale[k] * leg.InverseScale[k]);
            }

            score *= leg.InverseScale[k];
            byLevel += score;
            bySlope = Vector256.FusedMultiplyAdd(score, Vector256.Create(leg.X[k]), bySlope);
            byScale = Vector256.FusedMultiplyAdd(scale, Vector256.Create(leg.ScaleShare[k]), byScale);
            if (leg.Extras)
            {
                bySquare += score * (leg.X[k] * leg.X[k]);
                byCovariate += score * leg.Covariate[k];
            }
        }

        if (inProduct > 0)
        {
            log -= Vector256.Log(product);
        }

        // Written so that a probability that came out as no number fails it too.
        if (!Vector256.LessThanAll(largest, Vector256.Create(1 / (LeastProbability * RootTwoPi))))
        {
            OneByOne(leg, u, out values);
            return;
        }

        values.LogDensity = log;
        values.ByLevel = byLevel;
        values.ByLevelTwice = byLevelTwice;
        values.BySlope = bySlope;
        values.ByScale = byScale;
        values.BySquare = bySquare;
        values.ByCovariate = byCovariate;
    }

    /// <summary>
    /// One over the root of 2 pi times the probability of a bracket; the score by the position of its middle's mean, and by the
    /// logarithm of the scale.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Bracket(
        Vector256<double> lower, Vector256<double> upper, out Vector256<double> score, out Vector256<double> scale)
    {
        var mirrored = Vector256.LessThan(lower + upper, Vector256<double>.Zero);
        var near = Vector256.ConditionalSelect(mirrored, -upper, lower);
        var far = Vector256.ConditionalSelect(mirrored, -lower, upper);

        var furthest = Vector256.Create(FurthestTail);
        var nearTail = Vector256.Min(Vector256.Abs(near), furthest);
        var farTail = Vector256.Min(far, furthest);
        var nearDensity = Vector256.Exp(-0.5 * nearTail * nearTail);
        var farDensity = Vector256.Exp(-0.5 * farTail * farTail);
        var nearBelow = Denominator(nearTail);
        var farBelow = Denominator(farTail);
        var below = nearBelow * farBelow;

        // The tail beyond the near end, or all but the tail beyond its mirror image where the bracket straddles the mean.
        var nearPart = nearDensity * Numerator(nearTail) * farBelow;
        var straddles = Vector256.LessThan(near, Vector256<double>.Zero);
        var head = Vector256.ConditionalSelect(straddles, (RootTwoPi * below) - nearPart, nearPart);
        var inverse = below / (head - (farDensity * Numerator(farTail) * nearBelow));

        score = (nearDensity - farDensity) * inverse;
        score = Vector256.ConditionalSelect(mirrored, -score, score);
        scale = ((near * nearDensity) - (far * farDensity)) * inverse;
        return inverse;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Numerator(Vector256<double> z)
    {
        var value = Vector256.Create(0.00011339745366265246);
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.0021630215594860315));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.020029144278565565));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.1143343339981191));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.43121707714096524));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(1.0750887619866107));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(1.6565429049836025));
        return Vector256.FusedMultiplyAdd(value, z, Vector256.Create(1.2533141373153054));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Denominator(Vector256<double> z)
    {
        var value = Vector256.Create(0.00011339745371848619);
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.0021630215505495046));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.020142542354032657));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.11649733045284465));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(0.451020090666976));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(1.1850847071724222));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(2.049004464597026));
        value = Vector256.FusedMultiplyAdd(value, z, Vector256.Create(2.119614568975348));
        return Vector256.FusedMultiplyAdd(value, z, Vector256.Create(1.0));
    }

    /// <summary>The same with every probability on a log scale: for readings far from where they are expected.</summary>
    private static void OneByOne(in StandardisedLeg leg, Vector256<double> u, out Values values)
    {
        values = default;
        for (var lane = 0; lane < Lanes; lane++)
        {
            var level = u[lane];
            double log = -0.5 * level * level, byLevel = 0, byLevelTwice = 0, bySlope = 0, byScale = 0, bySquare = 0, byCovariate = 0;
            for (var k = 0; k < leg.Lower.Length; k++)
            {
                var shift = leg.PerLevel[k] * level;
                var reading = ReadingScore.At(leg.Lower[k] - shift, leg.Upper[k] - shift, leg.Exact[k]);
                log += reading.LogProbability + NormalTails.LogRootTwoPi;
                var score = reading.Score * leg.InverseScale[k];
                byLevel += score;
                byLevelTwice += (reading.Scale * leg.InverseScale[k] * leg.InverseScale[k]) - (score * score);
                bySlope += score * leg.X[k];
                byScale += reading.Scale * leg.ScaleShare[k];
                if (leg.Extras)
                {
                    bySquare += score * leg.X[k] * leg.X[k];
                    byCovariate += score * leg.Covariate[k];
                }
            }

            values.LogDensity = values.LogDensity.WithElement(lane, log);
            values.ByLevel = values.ByLevel.WithElement(lane, byLevel);
            values.ByLevelTwice = values.ByLevelTwice.WithElement(lane, byLevelTwice);
            values.BySlope = values.BySlope.WithElement(lane, bySlope);
            values.ByScale = values.ByScale.WithElement(lane, byScale);
            values.BySquare = values.BySquare.WithElement(lane, bySquare);
            values.ByCovariate = values.ByCovariate.WithElement(lane, byCovariate);
        }
    }
}
