using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Web.Features.Drift;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>What a drift chart shows upright.</summary>
public enum DriftView
{
    /// <summary>The clearance as the blades said: it jumps where a shim is changed, the limits stand still.</summary>
    AsMeasured,

    /// <summary>y*: the shims' part taken out, so that only drift is left; the limits move where a shim is changed.</summary>
    ShimsOut,
}

/// <summary>A figure beside an axis.</summary>
public sealed record ChartTick(double At, string Text);

/// <summary>A reading as a bar from go to no-go; an open end runs out in a point.</summary>
/// <param name="Class">How it is drawn: "found", "left" or "kept-out".</param>
public sealed record ChartBar(string Path, string Class);

/// <summary>Something done to the valve.</summary>
/// <param name="X">Where it stands.</param>
/// <param name="TextY">Neighbours are written at different heights.</param>
/// <param name="Cuts">It ended the leg, rather than swapping known shims.</param>
public sealed record ChartMark(double X, double TextY, string Text, bool Cuts);

/// <summary>A word behind the end of a line.</summary>
public sealed record ChartLabel(double Y, string Text);

/// <summary>
/// The history of one lobe as a picture: distance to the right, clearance upright. Where its parts lie, in the drawing's own
/// units; pure, so that it can be tested without a browser. Shown by
/// <c>&lt;partial name="Drawings/_DriftChart" model="chart" /&gt;</c>.
/// </summary>
public sealed partial record DriftChart
{
    public const double Width = 600;
    public const double Height = 216;
    public const double Left = 46;
    public const double Right = Width - 50;
    public const double Top = 36;
    public const double Bottom = Height - 36;

    public required string Id { get; init; }

    public required string Title { get; init; }

    public required string Description { get; init; }

    public required string AxisText { get; init; }

    public required IReadOnlyList<ChartTick> Across { get; init; }

    public required IReadOnlyList<ChartTick> Upright { get; init; }

    /// <summary>The two limits, each a line with steps.</summary>
    public required string Limits { get; init; }

    public required string SetTo { get; init; }

    public required IReadOnlyList<ChartBar> Bars { get; init; }

    public required IReadOnlyList<ChartMark> Marks { get; init; }

    /// <summary>Where the next check by the interval stands; absent where it is not in the picture.</summary>
    public required ChartMark? NextCheck { get; init; }

    /// <summary>What the level lines are.</summary>
    public required IReadOnlyList<ChartLabel> Labels { get; init; }

    /// <summary>The middle of what is known along the present leg; empty where nothing is foretold.</summary>
    public required string Estimate { get; init; }

    /// <summary>The same beyond where the forecast begins.</summary>
    public required string Ahead { get; init; }

    /// <summary>The fan from the 5 to the 95 % quantile.</summary>
    public required string Band { get; init; }

    /// <summary>The fan from the 25 to the 75 % quantile.</summary>
    public required string InnerBand { get; init; }

    /// <summary>Where it leaves its limits: from 10 to 90 % as a bar along the limit, 50 % as a tick across it.</summary>
    public required string Reach { get; init; }

    /// <summary>Draws one lobe; nothing where no reading was ever taken of it.</summary>
    /// <param name="id">Of the picture within its page.</param>
    /// <param name="lobe">What is known.</param>
    /// <param name="unit">The unit across.</param>
    /// <param name="view">What stands upright.</param>
    /// <param name="nextCheck">What the engine will have done at its next check; absent where there is none.</param>
    public static DriftChart? Of(string id, DriftOfLobe lobe, OdometerUnit unit, DriftView view, Distance? nextCheck = null)
    {
        ArgumentNullException.ThrowIfNull(lobe);
        return lobe.Legs.Count == 0 && lobe.LeftOut.Count == 0 && lobe.Forecast is null
            ? null
            : new Drawer(id, lobe, unit, view).Draw(nextCheck);
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(double coordinate) => coordinate.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Steps of 1, 2 or 5 times a power of ten, so that <paramref name="least"/> to <paramref name="most"/> has four to nine.</summary>
    private static double NiceStep(double least, double most)
    {
        var rough = (most - least) / 5;
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return power * ((rough / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 });
    }

    private static IEnumerable<double> Ticks(double least, double most)
    {
        var step = NiceStep(least, most);
        for (var k = Math.Ceiling(least / step); k * step <= most; k++)
        {
            yield return k * step;
        }
    }

    private static string Words(LegCut cut) => cut switch
    {
        LegCut.ScrewTurned => "screw turned",
        LegCut.ShimUnmeasured => "shim ?",
        LegCut.ChangeUnknown => "changed?",
        _ => "part changed",
    };
}
