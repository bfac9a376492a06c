namespace Workshop.Domain.Statistics;

/// <summary>
/// The observed information from the differences of the score about a point, parameter by parameter. With many units the score
/// is so nearly straight over a small share of a standard error that one side serves as well as two.
/// </summary>
internal static class ObservedInformation
{
    /// <summary>Units from which on one side is enough.</summary>
    public const int ManyUnits = 1000;

    /// <summary>Share of a standard error by which a parameter is moved to either side.</summary>
    private const double Share = 0.02;

    private const int MostAttempts = 6;

    /// <summary>The information on the parameters named, in their order.</summary>
    /// <param name="evaluate">The log-likelihood and its score.</param>
    /// <param name="parameters">One for each coordinate.</param>
    /// <param name="at">The point.</param>
    /// <param name="value">The value there.</param>
    /// <param name="moving">Which parameters.</param>
    /// <param name="oneSided">Whether the score is taken on one side only.</param>
    public static double[,] At(
        Func<double[], ScoredValue> evaluate,
        SearchParameter[] parameters,
        double[] at,
        ScoredValue value,
        int[] moving,
        bool oneSided)
    {
        var information = new double[moving.Length, moving.Length];
        for (var m = 0; m < moving.Length; m++)
        {
            var differences = Differences(evaluate, parameters[moving[m]], at, value, moving[m], oneSided);
            for (var n = 0; n < moving.Length; n++)
            {
                information[m, n] = differences[moving[n]];
            }
        }

        for (var m = 0; m < moving.Length; m++)
        {
            for (var n = 0; n < m; n++)
            {
                information[m, n] = information[n, m] = (information[m, n] + information[n, m]) / 2;
            }
        }

        return information;
    }

    /// <summary>
    /// Fall of the score per unit of one parameter. The outer products say how far to go; where they mislead, as they do with
    /// few units, the fall itself says better.
    /// </summary>
    private static double[] Differences(
        Func<double[], ScoredValue> evaluate, SearchParameter parameter, double[] at, ScoredValue value, int place, bool oneSided)
    {
        var guess = value.OuterProducts[place, place] + (1 / (parameter.Reach * parameter.Reach));
        var step = Share / Math.Sqrt(guess);
        for (var attempt = 1; ; attempt++)
        {
            var above = evaluate(Moved(at, place, step));
            var below = oneSided ? value : evaluate(Moved(at, place, -step));
            var apart = oneSided ? step : 2 * step;
            var differences = above.Score.Zip(below.Score, (a, b) => (b - a) / apart).ToArray();
            var better = differences[place] > 0 ? Share / Math.Sqrt(differences[place]) : 0.1 * step;
            if (attempt == MostAttempts || (better > step / 3 && better < 3 * step))
            {
                return differences;
            }

            step = better;
        }
    }

    private static double[] Moved(double[] at, int parameter, double by)
    {
        var moved = (double[])at.Clone();
        moved[parameter] += by;
        return moved;
    }
}
