using MathNet.Numerics.LinearAlgebra;

namespace Workshop.Domain.Statistics.Paths;

/// <summary>What a fit leaves open: the inverse of the observed information at its end.</summary>
internal sealed class PathUncertainty
{
    /// <summary>A pivot below this is no more than the rounding of differences.</summary>
    private const double LeastPivot = 1e-4;

    /// <summary>Combinations whose standard deviation is below this share of the spread are as good as known.</summary>
    private const double KnownWell = 0.1;

    /// <summary>
    /// Standard deviation of the logarithm of a deviation beyond which it is taken for no larger: of one that is told so badly
    /// the normal approximation says little, while that of a mean holds however far.
    /// </summary>
    private const double Furthest = 0.5;

    private static readonly double ToEitherSide = Math.Sqrt(3);

    private const int MostCombinations = 3;

    private readonly int[] told;
    private readonly double[,] covariance;
    private readonly int parameters;

    private PathUncertainty(int[] told, double[,] covariance, int parameters)
    {
        this.told = told;
        this.covariance = covariance;
        this.parameters = parameters;
    }

    /// <summary>The parameters that the readings tell, given those that they do not.</summary>
    public IReadOnlyList<int> Told => told;

    /// <summary>One for each parameter; 0 for a deviation at its bound of 0, and for what is not told.</summary>
    public double[] StandardErrors
    {
        get
        {
            var errors = new double[parameters];
            for (var m = 0; m < told.Length; m++)
            {
                errors[told[m]] = Math.Sqrt(covariance[m, m]);
            }

            return errors;
        }
    }

    /// <summary>The uncertainty at the end of a search.</summary>
    /// <param name="evaluate">The log-likelihood and its score.</param>
    /// <param name="parameters">What each parameter is.</param>
    /// <param name="result">Where the search ended.</param>
    /// <param name="order">
    /// All parameters, those first that matter most: of a combination that is not told the last one counts as not told.
    /// </param>
    /// <param name="units">How many independent units there are.</param>
    public static PathUncertainty Of(
        Func<double[], ScoredValue> evaluate, SearchParameter[] parameters, SearchResult result, int[] order, int units)
    {
        var moving = order.Where(i => !(parameters[i].Kind == ParameterKind.Deviation && result.At[i] == 0)).ToArray();
        var information = ObservedInformation.At(
            evaluate, parameters, result.At, result.Value, moving, units >= ObservedInformation.ManyUnits);
        var kept = new List<int>();
        for (var m = 0; m < moving.Length; m++)
        {
            kept.Add(m);
            var reach = parameters[moving[m]].Reach;
            if (information[m, m] < 1 / (reach * reach) || CholeskyFactor.Of(Part(information, kept), LeastPivot) is null)
            {
                kept.RemoveAt(kept.Count - 1);
            }
        }

        return new PathUncertainty(
            kept.Select(m => moving[m]).ToArray(),
            kept.Count == 0 ? new double[0, 0] : CholeskyFactor.Of(Part(information, kept), LeastPivot)!.Inverse(),
            parameters.Length);
    }

    private static double[,] Part(double[,] matrix, List<int> kept)
    {
        var part = new double[kept.Count, kept.Count];
        for (var m = 0; m < kept.Count; m++)
        {
            for (var n = 0; n < kept.Count; n++)
            {
                part[m, n] = matrix[kept[m], kept[n]];
            }
        }

        return part;
    }

    /// <summary>See <see cref="PathFit.Plausible"/>.</summary>
    /// <param name="at">The estimates.</param>
    /// <param name="kinds">What each parameter is.</param>
    /// <param name="spread">What an error of each is to be compared with.</param>
    public List<(double Weight, double[] At)> Plausible(double[] at, SearchParameter[] kinds, double[] spread)
    {
        var decomposition = Matrix<double>.Build
            .Dense(told.Length, told.Length, (m, n) => covariance[m, n] / (spread[told[m]] * spread[told[n]]))
            .Evd(Symmetricity.Symmetric);
        var points = new List<(double, double[])>();
        for (var e = told.Length - 1; e >= 0 && points.Count < 2 * MostCombinations; e--)
        {
            var deviation = Math.Sqrt(Math.Max(0, decomposition.EigenValues[e].Real));
            if (deviation < KnownWell)
            {
                break;
            }

            foreach (var sign in (ReadOnlySpan<int>)[-1, 1])
            {
                var moved = (double[])at.Clone();
                for (var m = 0; m < told.Length; m++)
                {
                    var i = told[m];
                    if (double.IsInfinity(spread[i]))
                    {
                        continue;
                    }

                    var by = sign * ToEitherSide * deviation * decomposition.EigenVectors[m, e] * spread[i];
                    moved[i] = kinds[i].Kind switch
                    {
                        ParameterKind.Deviation => at[i] * Math.Exp(Near(by / at[i])),
                        ParameterKind.LogScale => at[i] + Near(by),
                        _ => at[i] + by,
                    };
                }

                points.Add((1 / 6.0, moved));
            }
        }

        if (points.Count < 2 * MostCombinations)
        {
            points.Insert(0, (1 - (points.Count / 6.0), at));
        }

        return points;
    }

    private static double Near(double by) => Math.Clamp(by, -ToEitherSide * Furthest, ToEitherSide * Furthest);
}
