using System.Globalization;
using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Web.Features.CamTiming;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>An arc of the circle: how long the valves of one side are open, or how far a lobe centre may be off.</summary>
/// <param name="Kind">For the style sheet: "stated" or "measured".</param>
/// <param name="Path">In the drawing's own units.</param>
public sealed record TimingArc(Side Side, string Kind, string Path);

/// <param name="Path">A line across the ring.</param>
public sealed record TimingTick(Side Side, string Kind, string Path);

/// <summary>
/// The crankshaft's circle with dead centres above and below, turning as the engine does: on four rings, from outside, intake as
/// stated and as measured, exhaust as stated and as measured. Pure geometry. Shown by
/// <c>&lt;partial name="Drawings/_TimingCircle" model="circle" /&gt;</c>, a table beside it.
/// </summary>
public sealed record TimingCircle
{
    public const double Size = 380;
    public const double Centre = Size / 2;
    public const double Outer = 150;

    private static readonly double[] Rings = [138, 124, 104, 90];

    public required IReadOnlyList<TimingArc> Arcs { get; init; }

    public required IReadOnlyList<TimingTick> Ticks { get; init; }

    /// <summary>The arrow of the running direction, one path.</summary>
    public required string Arrow { get; init; }

    /// <summary>What it shows, for those who do not see it.</summary>
    public required string Words { get; init; }

    /// <summary>A drive as it is stated, and as one stage of a visit showed it.</summary>
    /// <param name="drive">As stated.</param>
    /// <param name="turning">Running direction; seen from where it is stated.</param>
    /// <param name="state">As measured; absent where only what is stated is shown.</param>
    public static TimingCircle Of(CamDrive drive, TurningDirection turning, CamTimingView.DriveState? state)
    {
        ArgumentNullException.ThrowIfNull(drive);
        var hand = turning == TurningDirection.Clockwise ? 1 : -1;
        var measured = (state?.Cams ?? []).SelectMany(c => c.Lobes).GroupBy(l => l.Side).Select(g => g.First()).ToList();
        var stated = drive.Lobes.GroupBy(l => l.Side).Select(g => g.First()).ToList();
        var arcs = stated.Select(l => Stated(l, hand))
            .Concat(measured.Select(l => new TimingArc(l.Side, "measured", Arc(Ring(l.Side, true), Open(l.Side, l.OpensDegrees, l.ClosesDegrees), hand))));
        var ticks = stated.Where(l => CamTimingView.StatedCentre(drive, l.Side) is not null)
            .Select(l => new TimingTick(l.Side, "stated", Tick(Ring(l.Side, false), At(l.Side, CamTimingView.StatedCentre(drive, l.Side)!.Value.Degrees), hand)))
            .Concat(measured.Select(l => new TimingTick(l.Side, "measured", Tick(Ring(l.Side, true), At(l.Side, l.LobeCentreDegrees), hand))));
        return new TimingCircle
        {
            Arcs = [.. arcs],
            Ticks = [.. ticks],
            Arrow = ArrowOf(hand),
            Words = $"Timing of the {drive.Name} on the crankshaft's circle, turning {turning.Spoken()}: {(measured.Count == 0 ? "as stated" : string.Join("; ", measured.Select(l => $"{l.Side.Spoken()} {l.Words}")))}.",
        };
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(double coordinate) => coordinate.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Where a point of the circle lies: degrees after top dead centre, at a radius.</summary>
    public static (double X, double Y) Point(double degrees, double radius, int hand)
    {
        var radians = degrees * Math.PI / 180;
        return (Centre + (hand * radius * Math.Sin(radians)), Centre - (radius * Math.Cos(radians)));
    }

    /// <summary>The events where they are stated; else how far the lobe centre may be off.</summary>
    private static TimingArc Stated(LobeTiming lobe, int hand)
    {
        var permitted = (double)lobe.PermittedDeviation.Degrees;
        var span = CamEvents.Of(lobe) is { } events
            ? Open(lobe.Side, events.Opens.Degrees, events.Closes.Degrees)
            : (At(lobe.Side, lobe.LobeCentre!.Value.Degrees) - permitted, At(lobe.Side, lobe.LobeCentre!.Value.Degrees) + permitted);
        return new TimingArc(lobe.Side, "stated", Arc(Ring(lobe.Side, false), span, hand));
    }

    private static double Ring(Side side, bool measured) => Rings[(side == Side.Intake ? 0 : 2) + (measured ? 1 : 0)];

    /// <summary>Degrees after top dead centre at which it opens and closes; the exhaust opens half a turn earlier.</summary>
    private static (double From, double To) Open(Side side, decimal opens, decimal closes) => side == Side.Intake
        ? (-(double)opens, 180 + (double)closes)
        : (-180 - (double)opens, (double)closes);

    private static double At(Side side, decimal centre) => side == Side.Intake ? (double)centre : -(double)centre;

    private static string Arc(double radius, (double From, double To) span, int hand)
    {
        var (from, to) = (Point(span.From, radius, hand), Point(span.To, radius, hand));
        var large = span.To - span.From > 180 ? 1 : 0;
        return $"M{Write(from.X)} {Write(from.Y)}A{Write(radius)} {Write(radius)} 0 {large} {(hand > 0 ? 1 : 0)} {Write(to.X)} {Write(to.Y)}";
    }

    private static string Tick(double radius, double degrees, int hand)
    {
        var (inner, outer) = (Point(degrees, radius - 8, hand), Point(degrees, radius + 8, hand));
        return $"M{Write(inner.X)} {Write(inner.Y)}L{Write(outer.X)} {Write(outer.Y)}";
    }

    private static string ArrowOf(int hand)
    {
        const double radius = 168;
        var (end, left, right) = (Point(52, radius, hand), Point(48, radius + 5, hand), Point(48, radius - 5, hand));
        return $"{Arc(radius, (30, 52), hand)}M{Write(left.X)} {Write(left.Y)}L{Write(end.X)} {Write(end.Y)}L{Write(right.X)} {Write(right.Y)}";
    }
}
