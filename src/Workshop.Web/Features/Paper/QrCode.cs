using System.Globalization;
using System.Text;
using QRCoder;

namespace Workshop.Web.Features.Paper;

/// <summary>
/// The one place where addresses become codes of dark and light squares (ISO/IEC 18004), with the quiet zone of four squares that
/// readers want. Level M: a seventh of it may be dirty.
/// </summary>
public sealed class QrCode
{
    private readonly bool[,] dark;

    private QrCode(bool[,] dark) => this.dark = dark;

    /// <summary>Squares along one side, with the quiet zone.</summary>
    public int Size => dark.GetLength(0);

    public static QrCode Of(Uri address)
    {
        ArgumentNullException.ThrowIfNull(address);
        using var generator = new QRCodeGenerator();
        using var data = generator.CreateQrCode(address.AbsoluteUri, QRCodeGenerator.ECCLevel.M);
        var size = data.ModuleMatrix.Count;
        var squares = new bool[size, size];
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                squares[row, column] = data.ModuleMatrix[row][column];
            }
        }

        return new QrCode(squares);
    }

    /// <summary>Dark runs of each row: where they begin and how long they are, in squares.</summary>
    public IEnumerable<(int Row, int Column, int Length)> Runs()
    {
        for (var row = 0; row < Size; row++)
        {
            for (var column = 0; column < Size; column++)
            {
                var from = column;
                while (column < Size && dark[row, column])
                {
                    column++;
                }

                if (column > from)
                {
                    yield return (row, from, column - from);
                }
            }
        }
    }

    /// <summary>The same as the path of an SVG drawing whose unit is one square.</summary>
    public string Path()
    {
        var path = new StringBuilder();
        foreach (var (row, column, length) in Runs())
        {
            path.Append(CultureInfo.InvariantCulture, $"M{column} {row}h{length}v1h-{length}z");
        }

        return path.ToString();
    }
}
