namespace Workshop.Domain.Statistics.Paths;

/// <summary>
/// The marginal log-likelihood of all clusters with its gradient and the sum of outer products of the clusters' scores.
/// Clusters are taken in pieces of a fixed size, by as many threads as there are; the pieces are added up in order, so that the
/// sum does not depend on the number of threads.
/// </summary>
internal sealed class PathLikelihood
{
    /// <summary>Independent units in a piece.</summary>
    private const int PieceSize = 32;

    private readonly PathData data;
    private readonly ParameterLayout layout;
    private readonly int[] free;
    private readonly Quadrature quadrature;

    /// <summary>Prepares for a search in the parameters named.</summary>
    public PathLikelihood(PathData data, ParameterLayout layout, int[] free, Quadrature quadrature)
    {
        this.quadrature = quadrature;
        this.data = data;
        this.layout = layout;
        this.free = free;
    }

    /// <summary>Evaluates at a whole vector of parameters; gradient and products are of the free ones.</summary>
    public ScoredValue Evaluate(double[] at, CancellationToken cancellation)
    {
        // Groups are independent where clusters share nothing.
        var starts = at[ParameterLayout.ClusterDeviation] == 0 ? null : data.ClusterStart;
        var units = starts is null ? data.Groups : data.Clusters;
        var pieces = new ScoredValue[(units + PieceSize - 1) / PieceSize];
        var extras = at[ParameterLayout.Covariate] != 0 || free.Contains(ParameterLayout.Covariate)
            || Enumerable.Range(0, data.SlopeClasses).Any(j => at[layout.Curvature(j)] != 0 || free.Contains(layout.Curvature(j)));
        Parallel.For(
            0,
            pieces.Length,
            new ParallelOptions { CancellationToken = cancellation },
            () => new ClusterIntegral(data, layout, quadrature),
            (piece, _, integral) =>
            {
                pieces[piece] = Piece(integral, at, piece * PieceSize, Math.Min(units, (piece + 1) * PieceSize), starts, extras);
                return integral;
            },
            _ => { });
        return ScoredValue.Sum(pieces, free.Length);
    }

    private ScoredValue Piece(ClusterIntegral integral, double[] at, int first, int end, int[]? starts, bool extras)
    {
        var sum = new ScoredValue(free.Length);
        Span<double> score = stackalloc double[layout.Count];
        Span<double> chosen = stackalloc double[free.Length];
        for (var unit = first; unit < end; unit++)
        {
            score.Clear();
            var (from, to) = starts is null ? (unit, unit + 1) : (starts[unit], starts[unit + 1]);
            var log = integral.Evaluate(at, from, to, extras, score);
            for (var i = 0; i < free.Length; i++)
            {
                chosen[i] = score[free[i]];
            }

            sum.Add(log, chosen);
        }

        return sum;
    }
}
