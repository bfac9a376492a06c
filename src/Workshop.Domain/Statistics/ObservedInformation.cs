namespace Workshop.Domain.Statistics;

/// <summary>
/// Standard errors from the observed information: the differences of the score about the maximum, parameter by parameter.
/// </summary>
internal static class ObservedInformation
{
    /// <summary>Share of a standard error by which a parameter is moved to either side.</summary>
    private const double Share = 0.02;

    private const int MostAttempts = 6;

    /// <summary>
    /// One standard error a parameter, 0 for a standard deviation at its bound of 0; null where the information is not
    /// positive definite, so that some combination of the parameters is not determined.
    /// </summary>
    public static double[]? Of(Func<double[], ScoredValue> evaluate, SearchParameter[] parameters, SearchResult result)
    {
        var moving = Enumerable.Range(0, parameters.Length)
            .Where(i => !(parameters[i].Kind == ParameterKind.Deviation && result.At[i] == 0))
            .ToArray();
        var information = new double[moving.Length, moving.Length];
        for (var m = 0; m < moving.Length; m++)
        {
            var differences = Differences(evaluate, parameters[moving[m]], result, moving[m]);
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

        if (CholeskyFactor.Of(information) is not { } factor)
        {
            return null;
        }

        var inverse = factor.Inverse();
        var errors = new double[parameters.Length];
        for (var m = 0; m < moving.Length; m++)
        {
            errors[moving[m]] = Math.Sqrt(inverse[m, m]);
        }

        return errors;
    }

    /// <summary>
    /// Fall of the score per unit of one parameter. The outer products say how far to go; where they mislead, as they do with
    /// few units, the fall itself says better.
    /// </summary>
    private static double[] Differences(
        Func<double[], ScoredValue> evaluate, SearchParameter parameter, SearchResult result, int place)
    {
        var guess = result.Value.OuterProducts[place, place] + (1 / (parameter.Reach * parameter.Reach));
        var step = Share / Math.Sqrt(guess);
        for (var attempt = 1; ; attempt++)
        {
            var above = evaluate(Moved(result.At, place, step));
            var below = evaluate(Moved(result.At, place, -step));
            var differences = above.Score.Zip(below.Score, (a, b) => (b - a) / (2 * step)).ToArray();
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
