using System.Globalization;
using System.Text;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>One fastener of a pattern as drawn: its number in the order, and what is cast beside it.</summary>
public sealed record PatternHead(int Number, decimal X, decimal Y, string? Mark);

/// <summary>
/// The alike fasteners of a cover seen from its stated side: hexagons with their number in the order of tightening, and the order
/// as a line that goes from one to the next with an arrow half way. Pure geometry in the drawing's own units. Shown by
/// <c>&lt;partial name="Drawings/_Pattern" model="drawing" /&gt;</c>, which has its table.
/// </summary>
public sealed record PatternDrawing
{
    private const decimal LargestWidth = 420;
    private const decimal LargestHeight = 200;
    private const decimal LargestHead = 15;
    private const decimal SmallestHead = 9;
    private const decimal Margin = 24;

    // So many heads lie between the nearest two where the drawing has the room.
    private const decimal HeadsApart = 2.6m;
    private const decimal ArrowLength = 7;
    private const decimal ArrowHalf = 3;

    public required string SeenFrom { get; init; }

    public required decimal Width { get; init; }

    public required decimal Height { get; init; }

    /// <summary>From the centre of a head to its corners.</summary>
    public required decimal Head { get; init; }

    public required IReadOnlyList<PatternHead> Heads { get; init; }

    /// <summary>The outlines of all heads, one path.</summary>
    public required string Hexagons { get; init; }

    /// <summary>From head to head in order, one path.</summary>
    public required string Order { get; init; }

    /// <summary>The arrows on it, one path.</summary>
    public required string Arrows { get; init; }

    /// <summary>What the drawing says, for those who do not see it.</summary>
    public string Words => FormattableString.Invariant($"{Heads.Count} fasteners seen from {SeenFrom}, numbered in the order of tightening");

    /// <param name="pattern">As the specification has it; its places in order.</param>
    public static PatternDrawing Of(FastenerPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        var places = pattern.Places;
        var (left, right) = (places.Min(p => p.Across), places.Max(p => p.Across));
        var (low, high) = (places.Min(p => p.Up), places.Max(p => p.Up));
        var scale = Math.Min(
            right > left ? (LargestWidth - (2 * Margin)) / (right - left) : decimal.MaxValue,
            high > low ? (LargestHeight - (2 * Margin)) / (high - low) : decimal.MaxValue);
        scale = scale == decimal.MaxValue ? 1 : scale;
        var heads = places
            .Select((p, i) => new PatternHead(i + 1, Margin + ((p.Across - left) * scale), Margin + ((high - p.Up) * scale), Blank(p.Mark)))
            .ToList();
        var head = Math.Clamp(Nearest(heads) / HeadsApart, SmallestHead, LargestHead);
        var steps = heads.Zip(heads.Skip(1)).ToList();
        return new PatternDrawing
        {
            SeenFrom = pattern.SeenFrom,
            Width = (2 * Margin) + ((right - left) * scale),
            Height = (2 * Margin) + ((high - low) * scale),
            Head = head,
            Heads = heads,
            Hexagons = Join(heads.Select(h => Hexagon(h, head))),
            Order = Join(steps.Select(s => FormattableString.Invariant($"M{Write(s.First.X)} {Write(s.First.Y)}L{Write(s.Second.X)} {Write(s.Second.Y)}"))),
            Arrows = Join(steps.Select(s => Arrow(s.First, s.Second))),
        };
    }

    /// <summary>Its place among all that lie side by side, from the left: "2 of 5".</summary>
    public string ColumnOf(PatternHead head) => PlaceOf(head, h => h.X);

    /// <summary>The same from the top.</summary>
    public string RowOf(PatternHead head) => PlaceOf(head, h => h.Y);

    private string PlaceOf(PatternHead head, Func<PatternHead, decimal> by)
    {
        var all = Heads.Select(by).Distinct().Order().ToList();
        return FormattableString.Invariant($"{all.IndexOf(by(head)) + 1} of {all.Count}");
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(decimal coordinate) => coordinate.ToString("0.#", CultureInfo.InvariantCulture);

    private static string? Blank(string? mark) => string.IsNullOrWhiteSpace(mark) ? null : mark;

    private static string Join(IEnumerable<string> parts) => string.Concat(parts);

    private static decimal Nearest(List<PatternHead> heads) => heads.Count < 2
        ? LargestHead * HeadsApart
        : heads.SelectMany((h, i) => heads.Skip(i + 1).Select(o => Length(h.X - o.X, h.Y - o.Y))).Min();

    private static decimal Length(decimal across, decimal up) => (decimal)Math.Sqrt((double)((across * across) + (up * up)));

    /// <summary>Flats above and below, as a spanner lies on it.</summary>
    private static string Hexagon(PatternHead head, decimal radius)
    {
        var (half, rise) = (radius / 2, radius * 0.866m);
        var path = new StringBuilder();
        path.Append(CultureInfo.InvariantCulture, $"M{Write(head.X - radius)} {Write(head.Y)}");
        foreach (var (x, y) in new[] { (-half, -rise), (half, -rise), (radius, 0m), (half, rise), (-half, rise) })
        {
            path.Append(CultureInfo.InvariantCulture, $"L{Write(head.X + x)} {Write(head.Y + y)}");
        }

        return path.Append('z').ToString();
    }

    /// <summary>Two thirds of the way, where lines that cross in the middle leave it clear.</summary>
    private static string Arrow(PatternHead from, PatternHead to)
    {
        var length = Length(to.X - from.X, to.Y - from.Y);
        var (x, y) = ((to.X - from.X) / length, (to.Y - from.Y) / length);
        var (tipX, tipY) = (from.X + (x * length * 2 / 3), from.Y + (y * length * 2 / 3));
        var (footX, footY) = (tipX - (x * ArrowLength), tipY - (y * ArrowLength));
        return FormattableString.Invariant(
            $"M{Write(tipX)} {Write(tipY)}L{Write(footX - (y * ArrowHalf))} {Write(footY + (x * ArrowHalf))}L{Write(footX + (y * ArrowHalf))} {Write(footY - (x * ArrowHalf))}z");
    }
}
