namespace Workshop.Domain.Statistics;

/// <summary>
/// A log-likelihood that is a sum over independent units, with the sum of their scores and of the scores' outer products,
/// which estimates the information (Berndt, Hall, Hall and Hausman, Annals of Economic and Social Measurement 3 (1974)
/// 653-665).
/// </summary>
internal sealed class ScoredValue(int parameters)
{
    public double LogLikelihood { get; private set; }

    public double[] Score { get; } = new double[parameters];

    public double[,] OuterProducts { get; } = new double[parameters, parameters];

    public bool IsFinite => double.IsFinite(LogLikelihood) && Array.TrueForAll(Score, double.IsFinite);

    public static ScoredValue Sum(ReadOnlySpan<ScoredValue> pieces, int parameters)
    {
        var sum = new ScoredValue(parameters);
        foreach (var piece in pieces)
        {
            sum.LogLikelihood += piece.LogLikelihood;
            for (var i = 0; i < parameters; i++)
            {
                sum.Score[i] += piece.Score[i];
                for (var j = 0; j < parameters; j++)
                {
                    sum.OuterProducts[i, j] += piece.OuterProducts[i, j];
                }
            }
        }

        return sum;
    }

    /// <summary>Adds an independent unit.</summary>
    public void Add(double logLikelihood, ReadOnlySpan<double> score)
    {
        LogLikelihood += logLikelihood;
        for (var i = 0; i < score.Length; i++)
        {
            Score[i] += score[i];
            for (var j = 0; j <= i; j++)
            {
                OuterProducts[i, j] += score[i] * score[j];
                OuterProducts[j, i] = OuterProducts[i, j];
            }
        }
    }

    /// <summary>Adds a penalty on one parameter: the logarithm of its prior density, its derivative and its information.</summary>
    public void AddPrior(int parameter, double logDensity, double derivative, double information)
    {
        LogLikelihood += logDensity;
        Score[parameter] += derivative;
        OuterProducts[parameter, parameter] += information;
    }
}
