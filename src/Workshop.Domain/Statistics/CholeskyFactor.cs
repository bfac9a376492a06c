namespace Workshop.Domain.Statistics;

/// <summary>
/// The lower triangular factor of a small symmetric positive definite matrix, of a matrix scaled to a unit diagonal first, so
/// that units of the unknowns do not decide what counts as singular.
/// </summary>
internal sealed class CholeskyFactor
{
    private readonly double[,] factor;
    private readonly double[] scale;

    private CholeskyFactor(double[,] factor, double[] scale)
    {
        this.factor = factor;
        this.scale = scale;
    }

    private int Size => scale.Length;

    /// <summary>
    /// The factor, or null where a pivot of the scaled matrix is not above <paramref name="leastPivot"/>: then some
    /// combination of the unknowns is not determined.
    /// </summary>
    public static CholeskyFactor? Of(double[,] matrix, double leastPivot = 1e-13)
    {
        var size = matrix.GetLength(0);
        var scale = new double[size];
        for (var i = 0; i < size; i++)
        {
            if (!(matrix[i, i] > 0 && double.IsFinite(matrix[i, i])))
            {
                return null;
            }

            scale[i] = 1 / Math.Sqrt(matrix[i, i]);
        }

        var factor = new double[size, size];
        for (var j = 0; j < size; j++)
        {
            for (var i = j; i < size; i++)
            {
                var sum = matrix[i, j] * scale[i] * scale[j];
                for (var k = 0; k < j; k++)
                {
                    sum -= factor[i, k] * factor[j, k];
                }

                if (i > j)
                {
                    factor[i, j] = sum / factor[j, j];
                }
                else if (sum > leastPivot)
                {
                    factor[j, j] = Math.Sqrt(sum);
                }
                else
                {
                    return null;
                }
            }
        }

        return new CholeskyFactor(factor, scale);
    }

    /// <summary>Solves for one right-hand side.</summary>
    public double[] Solve(ReadOnlySpan<double> right)
    {
        var x = new double[Size];
        for (var i = 0; i < Size; i++)
        {
            var sum = right[i] * scale[i];
            for (var k = 0; k < i; k++)
            {
                sum -= factor[i, k] * x[k];
            }

            x[i] = sum / factor[i, i];
        }

        for (var i = Size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < Size; k++)
            {
                x[i] -= factor[k, i] * x[k];
            }

            x[i] /= factor[i, i];
        }

        for (var i = 0; i < Size; i++)
        {
            x[i] *= scale[i];
        }

        return x;
    }

    /// <summary>The inverse of the matrix.</summary>
    public double[,] Inverse()
    {
        var inverse = new double[Size, Size];
        var unit = new double[Size];
        for (var j = 0; j < Size; j++)
        {
            Array.Clear(unit);
            unit[j] = 1;
            var column = Solve(unit);
            for (var i = 0; i < Size; i++)
            {
                inverse[i, j] = column[i];
            }
        }

        return inverse;
    }
}
