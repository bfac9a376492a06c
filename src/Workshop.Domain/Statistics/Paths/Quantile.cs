namespace Workshop.Domain.Statistics.Paths;

/// <summary>Where a cumulative probability reaches a given one.</summary>
internal static class Quantile
{
    private const int MostSteps = 80;

    /// <summary>
    /// A bracket walked out from the mean, then Illinois false position on the normal score, on which a cumulative probability is
    /// nearly straight.
    /// </summary>
    public static double Find(Func<double, double> below, double mean, double spread, double probability)
    {
        var wanted = Score(probability);
        var guess = mean + (wanted * spread);
        var (low, high) = (guess - (0.1 * spread), guess + (0.1 * spread));
        var (scoreLow, scoreHigh) = (Score(below(low)) - wanted, Score(below(high)) - wanted);
        for (var step = 0.2 * spread; scoreLow > 0 && step < 1e6 * spread; step *= 2)
        {
            (high, scoreHigh, low) = (low, scoreLow, low - step);
            scoreLow = Score(below(low)) - wanted;
        }

        for (var step = 0.2 * spread; scoreHigh < 0 && step < 1e6 * spread; step *= 2)
        {
            (low, scoreLow, high) = (high, scoreHigh, high + step);
            scoreHigh = Score(below(high)) - wanted;
        }

        for (var step = 0; step < MostSteps && high - low > 1e-9 * spread; step++)
        {
            var share = scoreLow / (scoreLow - scoreHigh);
            var middle = share is > 0.001 and < 0.999 ? low + (share * (high - low)) : low + ((high - low) / 2);
            var score = Score(below(middle)) - wanted;
            if (Math.Abs(score) < 1e-9)
            {
                return middle;
            }

            (low, high, scoreLow, scoreHigh) = score < 0
                ? (middle, high, score, scoreHigh / 2)
                : (low, middle, scoreLow / 2, score);
        }

        return low + ((high - low) / 2);
    }

    /// <summary>The normal deviate of a probability, finite at either end.</summary>
    public static double Score(double probability) => NormalTails.Deviate(Math.Clamp(probability, 1e-15, 1 - 1e-15));
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
        for (var i = 0; i < found.Length; i++)
        {
            Guard.Confidence(probabilities[i]);
            if (Ahead(leftBy, low, atLow, from + reach, probabilities[i], Precision * reach) is not { } there)
            {
                break;
            }

            (low, atLow) = there;
            found[i] = low;
        }

        return found;
    }

    /// <summary>The first place at which the probability reaches a given one, not late by more than a precision; null where not within reach.</summary>
    public static double? First(Func<double, double> leftBy, double from, double probability, double reach, double precision)
    {
        Guard.Confidence(probability);
        return Ahead(leftBy, from, leftBy(from), from + reach, probability, precision)?.X;
    }

    /// <summary>
    /// Steps outward from near, where most are found: what is far away asks for finer sums, which would then be those of every step.
    /// </summary>
    private static (double X, double P)? Ahead(
        Func<double, double> leftBy, double low, double atLow, double furthest, double probability, double precision)
    {
        if (atLow >= probability)
        {
            return (low, atLow);
        }

        for (var step = (furthest - low) / 64; low < furthest; step *= 2)
        {
            var high = Math.Min(low + step, furthest);
            var atHigh = leftBy(high);
            if (atHigh >= probability)
            {
                return Between(leftBy, low, atLow, high, atHigh, probability, precision);
            }

            (low, atLow) = (high, atHigh);
        }

        return null;
    }

    /// <summary>Illinois false position on the normal score, on which a straight drift is nearly straight.</summary>
    private static (double X, double P) Between(
        Func<double, double> leftBy, double low, double atLow, double high, double atHigh, double probability, double precision)
    {
        var (scoreLow, scoreHigh) = (Quantile.Score(atLow) - Quantile.Score(probability), Quantile.Score(atHigh) - Quantile.Score(probability));
        for (var step = 0; step < 60 && high - low > precision; step++)
        {
            var share = scoreLow / (scoreLow - scoreHigh);
            var middle = share is > 0.001 and < 0.999 ? low + (share * (high - low)) : low + ((high - low) / 2);
            var p = leftBy(middle);
            var score = Quantile.Score(p) - Quantile.Score(probability);
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
}
