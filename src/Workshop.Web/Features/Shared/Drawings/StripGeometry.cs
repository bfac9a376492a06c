using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>A span of clearance on a strip; an end that is not known is open.</summary>
/// <param name="Name">What it is, shown where a strip has more than one: "found", "then".</param>
/// <param name="Predicted">Computed, not measured: drawn as an outline.</param>
public sealed record StripSpan(string Name, decimal? FromMm, decimal? ToMm, bool Predicted = false)
{
    public static StripSpan Of(string name, Bracket bracket) => new(name, bracket.Go?.Millimetres, bracket.NoGo?.Millimetres);
}

/// <summary>One bar of a strip, as a path; an open end runs out in a point at the edge.</summary>
public sealed record StripBar(string Name, string Path, decimal TextY, bool Predicted);

/// <summary>
/// Where the parts of a clearance strip lie, in the drawing's own units: limits as end stops, each go/no-go span as a bar, the
/// set-to value as a tick. Pure, so that the picture can be tested without a browser. Shown by
/// <c>&lt;partial name="Drawings/_Strip" model="new Strip(geometry, words)" /&gt;</c>.
/// </summary>
public sealed record StripGeometry
{
    public const decimal Width = 260;

    private const decimal BarHeight = 10;
    private const decimal RowHeight = 18;
    private const decimal Top = 4;
    private const decimal TextHeight = 16;
    private const decimal TextWidth = 30;
    private const decimal Foot = 5;
    private const decimal NameWidth = 48;
    private const decimal Edge = 4;
    private const decimal Point = 7;
    private const decimal Thinnest = 3;

    // The strip shows half the width of the limits on either side of them, and up to twice that where a bar ends there.
    private const decimal UsualMargin = 0.5m;
    private const decimal LargestMargin = 1.25m;

    public required decimal Height { get; init; }

    public required decimal Left { get; init; }

    public required decimal AxisY { get; init; }

    public required decimal TextY { get; init; }

    public required decimal LowerX { get; init; }

    public required decimal UpperX { get; init; }

    public required decimal SetToX { get; init; }

    public required string LowerText { get; init; }

    public required string UpperText { get; init; }

    public required string SetToText { get; init; }

    public required IReadOnlyList<StripBar> Bars { get; init; }

    public bool Named => Bars.Count > 1;

    /// <summary>The set-to value is written where it does not run into a limit's.</summary>
    public bool SetToTextFits => decimal.Min(decimal.Abs(SetToX - LowerX), decimal.Abs(UpperX - SetToX)) >= TextWidth;

    /// <summary>The lower end stop, its feet towards the range.</summary>
    public string LowerStop => EndStop(LowerX, Foot);

    /// <summary>The upper end stop, its feet towards the range.</summary>
    public string UpperStop => EndStop(UpperX, -Foot);

    public static StripGeometry Of(ClearanceLimits limits, params IReadOnlyList<StripSpan> spans)
    {
        ArgumentNullException.ThrowIfNull(limits);
        return Of(limits.Lower, limits.Upper, limits.SetTo, spans);
    }

    public static StripGeometry Of(Clearance lowest, Clearance highest, Clearance aim, params IReadOnlyList<StripSpan> spans)
    {
        ArgumentNullException.ThrowIfNull(spans);
        var (lower, upper, setTo) = (lowest.Millimetres, highest.Millimetres, aim.Millimetres);
        var width = decimal.Max(upper - lower, 0.01m);
        var ends = spans.SelectMany(s => new[] { s.FromMm, s.ToMm }).OfType<decimal>().Append(setTo).ToList();
        var from = decimal.Max(
            decimal.Min(lower - (UsualMargin * width), ends.Min() - (0.1m * width)), lower - (LargestMargin * width));
        var to = decimal.Min(
            decimal.Max(upper + (UsualMargin * width), ends.Max() + (0.1m * width)), upper + (LargestMargin * width));

        var left = spans.Count > 1 ? NameWidth : Edge;
        decimal X(decimal mm) => left + ((mm - from) / (to - from) * (Width - Edge - left));
        var bottom = Top + (RowHeight * decimal.Max(spans.Count, 1));
        return new StripGeometry
        {
            Height = bottom + TextHeight,
            Left = left,
            AxisY = bottom,
            TextY = bottom + TextHeight - 3,
            LowerX = X(lower),
            UpperX = X(upper),
            SetToX = X(setTo),
            LowerText = $"{lower:0.00##}",
            UpperText = $"{upper:0.00##}",
            SetToText = $"{setTo:0.00##}",
            Bars = [.. spans.Select((span, row) => Bar(span, Top + (row * RowHeight), from, to, X))],
        };
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(decimal coordinate) => coordinate.ToString("0.##", CultureInfo.InvariantCulture);

    private static StripBar Bar(StripSpan span, decimal y, decimal from, decimal to, Func<decimal, decimal> x)
    {
        // An end outside the drawing looks as an open one does: it goes on beyond the edge.
        var openLeft = span.FromMm is not { } start || start < from;
        var openRight = span.ToMm is not { } end || end > to;
        var left = x(openLeft ? from : decimal.Min(span.FromMm!.Value, to));
        var right = x(openRight ? to : decimal.Max(span.ToMm!.Value, from));
        if (right - left < Thinnest)
        {
            (left, right) = (((left + right) / 2) - (Thinnest / 2), ((left + right) / 2) + (Thinnest / 2));
        }

        var (top, middle, bottom) = (y + 2, y + 2 + (BarHeight / 2), y + 2 + BarHeight);
        var tail = openLeft ? $"H{Write(left + Point)} L{Write(left)} {Write(middle)} L{Write(left + Point)} {Write(top)} Z" : $"H{Write(left)} Z";
        var nose = openRight
            ? $"H{Write(right - Point)} L{Write(right)} {Write(middle)} L{Write(right - Point)} {Write(bottom)}"
            : $"H{Write(right)} V{Write(bottom)}";
        return new StripBar(
            span.Name, $"M{Write(openLeft ? left + Point : left)} {Write(top)} {nose} {tail}", bottom, span.Predicted);
    }

    private string EndStop(decimal x, decimal foot) =>
        $"M{Write(x + foot)} {Write(Top - 2)} H{Write(x)} V{Write(AxisY)} H{Write(x + foot)}";
}

/// <summary>What the partial <c>Drawings/_Strip</c> shows.</summary>
/// <param name="Words">What the strip says, for those who do not see it; nothing where the text beside it says the same.</param>
public sealed record Strip(StripGeometry Geometry, string? Words = null);
