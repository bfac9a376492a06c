namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// Where each parameter stands in the vector that a search moves in: logarithm of sigma, standard deviation of the clusters'
/// common part, coefficient of the covariate, then means and standard deviations of levels and slopes, and curvatures.
/// </summary>
internal sealed class ParameterLayout(int levelClasses, int slopeClasses)
{
    public const int LogSigma = 0;

    public const int ClusterDeviation = 1;

    public const int Covariate = 2;

    public int Count => (2 * levelClasses) + (3 * slopeClasses) + 3;

    private int AfterLevels => 3 + (2 * levelClasses);

    public int LevelMean(int levelClass) => AfterLevels - (2 * levelClasses) + levelClass;

    public int LevelDeviation(int levelClass) => AfterLevels - levelClasses + levelClass;

    public int SlopeMean(int slopeClass) => AfterLevels + slopeClass;

    public int SlopeDeviation(int slopeClass) => AfterLevels + slopeClasses + slopeClass;

    public int Curvature(int slopeClass) => AfterLevels + (2 * slopeClasses) + slopeClass;

    /// <summary>The parameters as a vector, levels counted from the origins of the data.</summary>
    public double[] Vector(PathParameters parameters, PathData data)
    {
        var vector = new double[Count];
        for (var c = 0; c < levelClasses; c++)
        {
            vector[LevelMean(c)] = parameters.LevelMean[c] - data.LevelOrigin[c];
            vector[LevelDeviation(c)] = parameters.LevelDeviation[c];
        }

        for (var j = 0; j < slopeClasses; j++)
        {
            vector[SlopeMean(j)] = parameters.SlopeMean[j];
            vector[SlopeDeviation(j)] = parameters.SlopeDeviation[j];
            vector[Curvature(j)] = parameters.Curvature.Count == 0 ? 0 : parameters.Curvature[j];
        }

        vector[LogSigma] = Math.Log(parameters.Sigma);
        vector[ClusterDeviation] = parameters.ClusterDeviation;
        vector[Covariate] = parameters.CovariateCoefficient;
        return vector;
    }

    /// <summary>The way back; standard deviations have no sign.</summary>
    public PathParameters Parameters(ReadOnlySpan<double> vector, PathData data)
    {
        var levelMean = new double[levelClasses];
        var levelDeviation = new double[levelClasses];
        for (var c = 0; c < levelClasses; c++)
        {
            levelMean[c] = vector[LevelMean(c)] + data.LevelOrigin[c];
            levelDeviation[c] = Math.Abs(vector[LevelDeviation(c)]);
        }

        var slopeMean = new double[slopeClasses];
        var slopeDeviation = new double[slopeClasses];
        var curvature = new double[slopeClasses];
        for (var j = 0; j < slopeClasses; j++)
        {
            slopeMean[j] = vector[SlopeMean(j)];
            slopeDeviation[j] = Math.Abs(vector[SlopeDeviation(j)]);
            curvature[j] = vector[Curvature(j)];
        }

        return new PathParameters
        {
            LevelMean = levelMean,
            LevelDeviation = levelDeviation,
            SlopeMean = slopeMean,
            SlopeDeviation = slopeDeviation,
            Sigma = Math.Exp(vector[LogSigma]),
            ClusterDeviation = Math.Abs(vector[ClusterDeviation]),
            Curvature = curvature,
            CovariateCoefficient = vector[Covariate],
        };
    }
}
