namespace Workshop.Domain.Statistics;

/// <summary>
/// Columns of a regression made orthonormal by Gram and Schmidt's method, carried out twice so that rounding leaves no trace
/// (Giraud, Langou, Rozloznik and van den Eshof, Numer. Math. 101 (2005) 87-100).
/// </summary>
/// <param name="Columns">Orthonormal, in the order given.</param>
/// <param name="Triangle">The columns given are these times this upper triangle.</param>
internal sealed record OrthonormalColumns(double[][] Columns, double[,] Triangle)
{
    /// <summary>A column that keeps less than this share of its length is a combination of those before it.</summary>
    private const double LeastShare = 1e-11;

    /// <summary>The columns, or null where one is a combination of those before it.</summary>
    public static OrthonormalColumns? Of(double[][] columns)
    {
        var done = new double[columns.Length][];
        var triangle = new double[columns.Length, columns.Length];
        for (var j = 0; j < columns.Length; j++)
        {
            var column = (double[])columns[j].Clone();
            var length = Math.Sqrt(Product(column, column));
            for (var pass = 0; pass < 2; pass++)
            {
                for (var k = 0; k < j; k++)
                {
                    var part = Product(done[k], column);
                    triangle[k, j] += part;
                    for (var i = 0; i < column.Length; i++)
                    {
                        column[i] -= part * done[k][i];
                    }
                }
            }

            var left = Math.Sqrt(Product(column, column));
            if (!(left > LeastShare * length))
            {
                return null;
            }

            triangle[j, j] = left;
            done[j] = [.. column.Select(value => value / left)];
        }

        return new OrthonormalColumns(done, triangle);
    }

    /// <summary>Parts of a vector along the columns: the coefficients of its least squares fit.</summary>
    public double[] PartsOf(ReadOnlySpan<double> vector)
    {
        var parts = new double[Columns.Length];
        for (var j = 0; j < parts.Length; j++)
        {
            parts[j] = Product(Columns[j], vector);
        }

        return parts;
    }

    /// <summary>Turns coefficients of these columns into coefficients of the columns given.</summary>
    public double[] Back(ReadOnlySpan<double> coefficients)
    {
        var back = coefficients.ToArray();
        for (var j = back.Length - 1; j >= 0; j--)
        {
            for (var k = j + 1; k < back.Length; k++)
            {
                back[j] -= Triangle[j, k] * back[k];
            }

            back[j] /= Triangle[j, j];
        }

        return back;
    }

    private static double Product(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            sum += x[i] * y[i];
        }

        return sum;
    }
}
