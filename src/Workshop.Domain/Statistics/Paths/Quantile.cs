namespace Workshop.Domain.Statistics.Paths;

/// <summary>Where a cumulative probability reaches a given one.</summary>
internal static class Quantile
{
    private const int MostSteps = 80;

    /// <summary>By bisection from a bracket walked out from the mean.</summary>
    public static double Find(Func<double, double> below, double mean, double spread, double probability)
    {
        var (low, high) = (mean - spread, mean + spread);
        for (var step = spread; below(low) > probability && step < 1e6 * spread; step *= 2)
        {
            (high, low) = (low, low - step);
        }

        for (var step = spread; below(high) < probability && step < 1e6 * spread; step *= 2)
        {
            (low, high) = (high, high + step);
        }

        for (var step = 0; step < MostSteps && high - low > 1e-9 * spread; step++)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = below(middle) < probability ? (middle, high) : (low, middle);
        }

        return low + ((high - low) / 2);
    }
}

/// <summary>Where a rising probability reaches given ones, looking ahead from a start.</summary>
internal static class LeavingDistance
{
    private const double Precision = 1e-6;

    public static double?[] Find(
        Func<double, double> leftBy, double from, ReadOnlySpan<double> probabilities, double reach)
    {
        var found = new double?[probabilities.Length];
        var (low, atLow) = (from, leftBy(from));
        var furthest = from + reach;
        var atFurthest = leftBy(furthest);
        for (var i = 0; i < found.Length; i++)
        {
            var probability = probabilities[i];
            Guard.Confidence(probability);
            if (atLow >= probability)
            {
                found[i] = low;
            }
            else if (atFurthest >= probability)
            {
                (low, atLow) = Between(leftBy, low, atLow, furthest, atFurthest, probability, Precision * reach);
                found[i] = low;
            }
        }

        return found;
    }

    /// <summary>Steps out to a bracket, then Illinois false position on the normal score, on which a straight drift is nearly straight.</summary>
    private static (double X, double P) Between(
        Func<double, double> leftBy, double low, double atLow, double high, double atHigh, double probability, double precision)
    {
        // From near, where most are found, outward.
        for (var step = (high - low) / 64; low + step < high; step *= 2)
        {
            var p = leftBy(low + step);
            if (p >= probability)
            {
                (high, atHigh) = (low + step, p);
                break;
            }

            (low, atLow) = (low + step, p);
        }

        var (scoreLow, scoreHigh) = (Score(atLow) - Score(probability), Score(atHigh) - Score(probability));
        for (var step = 0; step < 60 && high - low > precision; step++)
        {
            var share = scoreLow / (scoreLow - scoreHigh);
            var middle = share is > 0.001 and < 0.999 ? low + (share * (high - low)) : low + ((high - low) / 2);
            var p = leftBy(middle);
            var score = Score(p) - Score(probability);
            if (Math.Abs(score) < 1e-9)
            {
                return (middle, p);
            }

            if (p >= probability)
            {
                (high, atHigh, scoreHigh, scoreLow) = (middle, p, score, scoreLow / 2);
            }
            else
            {
                (low, scoreLow, scoreHigh) = (middle, score, scoreHigh / 2);
            }
        }

        return (high, atHigh);
    }

    private static double Score(double probability) =>
        MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Math.Clamp(probability, 1e-12, 1 - 1e-12));
}
