using System.Globalization;
using System.Text;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>So many valves drift by this much: from, inclusive, to, exclusive, in mm per 10,000 km.</summary>
public sealed record SlopeBin(decimal From, decimal To, int Valves);

/// <summary>
/// How the drifts of one side's valves lie: to the right the drift, upright the valves, each a block while there are few; below
/// them the fitted mean and where nine of ten lie by the fit. Pure geometry. Shown by
/// <c>&lt;partial name="Drawings/_Slopes" model="chart" /&gt;</c>, a table beside it.
/// </summary>
public sealed record SlopeChart
{
    public const double Width = 600;
    public const double Height = 202;
    public const double Left = 30;
    public const double Right = Width - 30;
    public const double Top = 34;
    public const double Floor = 134;
    public const double SpreadY = Floor + 8;
    public const double SpreadHeight = 12;
    public const double AxisY = 164;

    private const double TallestBlock = 10;
    private const double LeastBlock = 4;
    private const int MostBins = 24;

    public required string Id { get; init; }

    public required string Title { get; init; }

    public required string Description { get; init; }

    public required IReadOnlyList<SlopeBin> Bins { get; init; }

    /// <summary>The valves, one path.</summary>
    public required string Valves { get; init; }

    /// <summary>How many the tallest column stands for, where it ends.</summary>
    public required (double X, double Y, string Text)? Tallest { get; init; }

    /// <summary>Where nine of ten lie by the fit.</summary>
    public required string Spread { get; init; }

    public required double MeanX { get; init; }

    public required string MeanText { get; init; }

    /// <summary>Where nothing changes; absent where that is not in the picture.</summary>
    public required double? NoneX { get; init; }

    public required IReadOnlyList<ChartTick> Ticks { get; init; }

    /// <param name="id">Of the picture within its page.</param>
    /// <param name="title">Of whose valves.</param>
    /// <param name="slopes">The drift of each, in mm per 10,000 km.</param>
    /// <param name="mean">Fitted.</param>
    /// <param name="spread">Where nine of ten lie by the fit.</param>
    /// <param name="scale">What the picture reaches from and to, so that two sides compare.</param>
    public static SlopeChart Of(
        string id, string title, IReadOnlyList<decimal> slopes, double mean, (double From, double To) spread, SlopeScale scale)
    {
        ArgumentNullException.ThrowIfNull(slopes);
        ArgumentNullException.ThrowIfNull(scale);
        var bins = Enumerable.Range(0, scale.Bins).Select(b =>
        {
            var from = scale.From + (b * scale.Step);
            return new SlopeBin(from, from + scale.Step, slopes.Count(s => s >= from && s < from + scale.Step));
        }).ToList();
        var most = bins.Max(b => b.Valves);
        var block = most == 0 ? TallestBlock : Math.Min(TallestBlock, (Floor - Top) / most);
        var tallest = bins.MaxBy(b => b.Valves)!;
        return new SlopeChart
        {
            Id = id,
            Title = title,
            Description = string.Create(
                CultureInfo.InvariantCulture,
                $"{slopes.Count} valves; by the fit {mean:+0.0000;-0.0000;0} on average, nine of ten from {spread.From:+0.0000;-0.0000;0} to {spread.To:+0.0000;-0.0000;0} mm per 10,000 km."),
            Bins = bins,
            Valves = string.Concat(bins.Where(b => b.Valves > 0).Select(b => Column(b, block, scale))),
            Tallest = most == 0
                ? null
                : ((X(tallest.From, scale) + X(tallest.To, scale)) / 2, Floor - (most * block) - 4, most.ToString(CultureInfo.InvariantCulture)),
            Spread = Box(X(spread.From, scale), X(spread.To, scale), SpreadY, SpreadHeight),
            MeanX = X(mean, scale),
            MeanText = string.Create(CultureInfo.InvariantCulture, $"fitted mean {mean:+0.0000;-0.0000;0}"),
            NoneX = scale.From <= 0 && scale.To >= 0 ? X(0m, scale) : null,
            Ticks = [.. TicksOf(scale)],
        };
    }

    private static IEnumerable<ChartTick> TicksOf(SlopeScale scale)
    {
        var every = Math.Max(1, (int)Math.Ceiling(scale.Bins / 8.0));
        for (var b = 0; b <= scale.Bins; b += every)
        {
            var at = scale.From + (b * scale.Step);
            yield return new ChartTick(X(at, scale), at.ToString("+0.000#;-0.000#;0", CultureInfo.InvariantCulture));
        }
    }

    private static string Column(SlopeBin bin, double block, SlopeScale scale)
    {
        var (left, right) = (X(bin.From, scale) + 1, X(bin.To, scale) - 1);
        if (block < LeastBlock)
        {
            return Box(left, right, Floor - (bin.Valves * block), bin.Valves * block);
        }

        var path = new StringBuilder();
        for (var valve = 1; valve <= bin.Valves; valve++)
        {
            path.Append(Box(left, right, Floor - (valve * block), block - 1));
        }

        return path.ToString();
    }

    private static string Box(double left, double right, double top, double height) =>
        $"M{DriftChart.Write(left)} {DriftChart.Write(top)}H{DriftChart.Write(right)}v{DriftChart.Write(height)}H{DriftChart.Write(left)}z";

    private static double X(decimal slope, SlopeScale scale) => X((double)slope, scale);

    private static double X(double slope, SlopeScale scale) => Math.Clamp(
        Left + ((slope - (double)scale.From) / (double)(scale.To - scale.From) * (Right - Left)), Left, Right);

    /// <summary>A scale that holds all valves and what the fit says of both sides.</summary>
    public static SlopeScale ScaleOf(IEnumerable<decimal> slopes, IEnumerable<(double From, double To)> spreads)
    {
        var ends = slopes.Concat(spreads.SelectMany(s => new[] { (decimal)s.From, (decimal)s.To })).ToList();
        var (least, most) = (ends.Min(), ends.Max());
        var step = new[] { 0.0001m, 0.0002m, 0.0005m, 0.001m, 0.002m, 0.005m, 0.01m, 0.02m, 0.05m, 0.1m }
            .FirstOrDefault(s => (most - least) / s <= MostBins - 2, 1m);
        var from = Math.Floor(least / step) * step;
        return new SlopeScale(from, step, (int)Math.Floor((most - from) / step) + 1);
    }
}

/// <summary>From where, in which steps and how many of them.</summary>
public sealed record SlopeScale(decimal From, decimal Step, int Bins)
{
    public decimal To => From + (Bins * Step);
}
