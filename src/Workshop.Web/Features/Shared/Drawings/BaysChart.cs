using System.Globalization;
using Workshop.Domain.Bookings;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>One number of bays where it lies in the drawing.</summary>
/// <param name="Column">A path: the share of time in which so many were taken.</param>
/// <param name="WaitsY">The height of the probability of waiting with so many.</param>
public sealed record BaysColumn(double X, string Text, string Column, string ShareText, double ShareY, double WaitsY);

/// <summary>
/// To the right the number of bays; solid, for which share of the opening hours so many were taken; a line of rings, how probable it
/// is by Erlang's formula that a visit has to wait with so many. Pure geometry. Shown by
/// <c>&lt;partial name="Drawings/_Bays" model="chart" /&gt;</c>, a table beside it.
/// </summary>
public sealed record BaysChart
{
    public const double Width = 600;
    public const double Height = 250;
    public const double Left = 46;
    public const double Right = Width - 12;
    public const double Top = 22;
    public const double Floor = 196;

    private const double MostColumnWidth = 40;

    public required IReadOnlyList<BaysColumn> Columns { get; init; }

    /// <summary>Through the rings.</summary>
    public required string Line { get; init; }

    /// <summary>Where the bays are as many as there are.</summary>
    public required double HereX { get; init; }

    public required string Words { get; init; }

    public static IReadOnlyList<(double Y, string Text)> Ticks =>
        [.. Enumerable.Range(0, 5).Select(i => (Y(i / 4.0), string.Create(CultureInfo.InvariantCulture, $"{i * 25} %")))];

    /// <param name="needed">What was counted.</param>
    /// <param name="bays">How many there are.</param>
    public static BaysChart Of(BaysNeeded needed, int bays)
    {
        ArgumentNullException.ThrowIfNull(needed);
        var step = (Right - Left) / needed.Counts.Count;
        var half = Math.Min(MostColumnWidth, step * 0.6) / 2;
        double X(int n) => Left + ((n + 0.5) * step);
        var columns = needed.Counts.Select(c => new BaysColumn(
            X(c.Bays),
            c.Bays.ToString(CultureInfo.InvariantCulture),
            string.Create(CultureInfo.InvariantCulture, $"M{X(c.Bays) - half:0.##} {Floor:0.##}V{Y(c.Share):0.##}H{X(c.Bays) + half:0.##}V{Floor:0.##}z"),
            c.Share >= 0.005 ? string.Create(CultureInfo.InvariantCulture, $"{c.Share * 100:0} %") : "",
            Y(c.Share) - 5,
            Y(c.Waits))).ToList();
        return new BaysChart
        {
            Columns = columns,
            Line = string.Concat(columns.Select((c, i) =>
                string.Create(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{c.X:0.##} {c.WaitsY:0.##}"))),
            HereX = X(Math.Min(bays, needed.Counts.Count - 1)),
            Words = $"For which share of the opening hours how many of {bays} bays were taken, and by Erlang's formula how probable waiting is with how many bays; the same in the table below.",
        };
    }

    private static double Y(double share) => Floor - ((Floor - Top) * share);
}
