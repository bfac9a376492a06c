using System.Globalization;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Measures;
using Workshop.Web.Features.CamTiming;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>
/// Readings of a chain's wear over what the engine has done, with the fan of what is foretold and the limit. Pure geometry. Shown
/// by <c>&lt;partial name="Drawings/_ChainWearChart" model="chart" /&gt;</c>, a table beside it.
/// </summary>
public sealed record ChainWearChart
{
    public const double Width = 560;
    public const double Height = 240;

    private const double Left = 44;
    private const double Right = 12;
    private const double Top = 14;
    private const double Bottom = 30;
    private const double Thinnest = 5;
    private const int MostMarks = 6;
    private static readonly int[] Steps = [1_000, 2_000, 5_000, 10_000, 20_000, 50_000, 100_000];

    /// <summary>What it shows, for those who do not see it.</summary>
    public required string Words { get; init; }

    /// <summary>Uprights of the readings, one path.</summary>
    public required string Readings { get; init; }

    /// <summary>The area between 5 and 95 %, empty without a forecast.</summary>
    public required string Fan { get; init; }

    /// <summary>The line of 50 %, empty without a forecast.</summary>
    public required string Middle { get; init; }

    public required double LimitY { get; init; }

    public required string LimitText { get; init; }

    /// <summary>Marks of the axis below at round distances: where, and what is written there.</summary>
    public required IReadOnlyList<(double X, string Text)> Marks { get; init; }

    /// <summary>A chain that was read at least once; nothing without a reading.</summary>
    public static ChainWearChart? Of(ChainWearView.Chain chain, OdometerUnit unit)
    {
        ArgumentNullException.ThrowIfNull(chain);
        if (chain.Readings.Count == 0)
        {
            return null;
        }

        var fan = chain.Forecast?.Fan ?? [];
        var furthest = Math.Max(Km(chain.Readings.Max(r => r.EngineKm)), fan.Count > 0 ? Math.Min(Km(fan[^1].EngineKm), 3 * Km(chain.Readings[^1].EngineKm)) : 0) * 1.05;
        var lowest = Math.Min(0, chain.Readings.Min(r => (double)r.From));
        var highest = Math.Max((double)chain.Limit, chain.Readings.Max(r => (double)(r.To ?? r.From))) * 1.15;
        var shown = fan.Where(p => Km(p.EngineKm) <= furthest).ToList();

        double X(double km) => Left + (km / furthest * (Width - Left - Right));
        double Y(double value) => Height - Bottom - ((Math.Clamp(value, lowest, highest) - lowest) / (highest - lowest) * (Height - Top - Bottom));

        return new ChainWearChart
        {
            Words = chain.Words,
            Readings = string.Concat(chain.Readings.Select(r => Upright(X(Km(r.EngineKm)), Y((double)r.From), Y((double)(r.To ?? (decimal)highest))))),
            Fan = shown.Count < 2 ? "" : $"M{string.Join('L', shown.Select(p => At(X(Km(p.EngineKm)), Y((double)p.Low))).Concat(shown.Select(p => At(X(Km(p.EngineKm)), Y((double)p.High))).Reverse()))}Z",
            Middle = shown.Count < 2 ? "" : $"M{string.Join('L', shown.Select(p => At(X(Km(p.EngineKm)), Y((double)p.Middle))))}",
            LimitY = Y((double)chain.Limit),
            LimitText = $"limit {chain.Limit:0.##} {chain.Unit}",
            Marks = [.. Round(unit.CountOf(Distance.FromKilometres((decimal)furthest))).Select(count =>
                (X(Km(unit == OdometerUnit.Miles ? Distance.FromMiles(count) : Distance.FromKilometres(count))), $"{count:#,0}"))],
        };
    }

    /// <summary>A coordinate as SVG writes it.</summary>
    public static string Write(double coordinate) => coordinate.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Round counts up to the last, six at most; none so near to the edge that it would be cut off.</summary>
    private static IEnumerable<int> Round(int last)
    {
        var step = Steps.FirstOrDefault(step => last / step <= MostMarks, Steps[^1]);
        return Enumerable.Range(0, (int)(last * 0.97 / step) + 1).Select(i => i * step);
    }

    private static double Km(Distance distance) => (double)distance.Kilometres;

    private static string At(double x, double y) => $"{Write(x)} {Write(y)}";

    /// <summary>An exact reading is drawn as tall as it is wide.</summary>
    private static string Upright(double x, double low, double high) => low - high < Thinnest
        ? $"M{At(x, ((low + high) / 2) + (Thinnest / 2))}V{Write(((low + high) / 2) - (Thinnest / 2))}"
        : $"M{At(x, low)}V{Write(high)}";
}
