using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;
using Workshop.Web.Features.Compression;

namespace Workshop.Web.Features.Shared.Drawings;

/// <summary>An earlier visit on a strip.</summary>
/// <param name="Newest">Of the earlier visits the last: its tick is longer.</param>
public sealed record CylinderTick(decimal X, decimal Top, bool Newest);

/// <summary>One cylinder: its bar from zero, with the earlier visits as ticks across it.</summary>
/// <param name="BarTo">Where the bar of this visit ends; absent where it was not measured.</param>
/// <param name="Compared">Measured as the limit wants it; else it is drawn as an outline.</param>
public sealed record CylinderStrip(
    string Name, string Value, decimal BarY, decimal BaseY, decimal TextY, decimal? BarTo, bool Compared, IReadOnlyList<CylinderTick> Earlier);

/// <summary>
/// The cylinders of one engine under each other, each as a strip from zero: this visit as a bar, earlier visits that were measured like it
/// as ticks, the limit as an end stop. Pure geometry in the drawing's own units. Shown by
/// <c>&lt;partial name="_CylinderStrips" model="(answer, stage)" /&gt;</c>, a table beside it.
/// </summary>
public sealed record CylinderStrips
{
    public const decimal Width = 520;
    public const decimal Left = 80;
    public const decimal Right = Width - 76;
    public const decimal BarHeight = 10;

    private const decimal Top = 10;
    private const decimal RowHeight = 32;
    private const decimal TextHeight = 18;
    private const decimal Foot = 5;

    /// <summary>What the longest of all leaves free at the right, so that an end stop keeps its foot.</summary>
    private const decimal Headroom = 1.08m;

    public required IReadOnlyList<CylinderStrip> Rows { get; init; }

    public required string Caption { get; init; }

    /// <summary>All that the drawing says, for those who do not see it.</summary>
    public required string Words { get; init; }

    /// <summary>Absent where the engine model states none.</summary>
    public decimal? LimitX { get; init; }

    public string LimitText { get; init; } = "";

    /// <summary>The feet point to the side that is allowed: to the right of the least, to the left of the most.</summary>
    public bool AllowedAbove { get; init; }

    public decimal Height => Top + (Rows.Count * RowHeight) + TextHeight;

    /// <summary>Compression, dry; nothing where no cylinder was ever measured so.</summary>
    public static CylinderStrips? OfPressure(GetCompression.Answer answer, Stage stage)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var limits = answer.Limits;
        return Of(answer, stage, limits?.Least.Kilopascals, new Figure("Compression, dry", "kPa", "least", true,
            c => c.Dry?.Kpa,
            c => limits is null || limits.HoldsFor(c.Dry!.Warmth, c.Dry.ThrottleOpen),
            (one, other) => (one.Dry!.Warmth, one.Dry.ThrottleOpen) == (other.Dry!.Warmth, other.Dry.ThrottleOpen)));
    }

    /// <summary>Leakage; nothing where no cylinder was ever measured so.</summary>
    public static CylinderStrips? OfLeakage(GetCompression.Answer answer, Stage stage)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var limits = answer.Limits;
        return Of(answer, stage, limits?.LargestLeakDownPercent, new Figure("Leakage", "%", "most", false,
            c => c.LeakDown?.LossPercent,
            c => limits is null || limits.HoldsAt(Pressure.FromKilopascals(c.LeakDown!.AtKpa)),
            (one, other) => one.LeakDown!.AtKpa == other.LeakDown!.AtKpa));
    }

    /// <summary>The end stop of a strip, its feet to the side that is allowed.</summary>
    public string StopOf(CylinderStrip row)
    {
        ArgumentNullException.ThrowIfNull(row);
        var x = LimitX ?? throw new InvalidOperationException("No limit is stated.");
        var foot = StripGeometry.Write(x + (AllowedAbove ? Foot : -Foot));
        return $"M{foot} {StripGeometry.Write(row.BarY - 4)}H{StripGeometry.Write(x)}V{StripGeometry.Write(row.BaseY)}H{foot}";
    }

    private static CylinderStrips? Of(GetCompression.Answer answer, Stage stage, decimal? limit, Figure figure)
    {
        var cylinders = (stage == Stage.AsFound ? answer.AsFound : answer.AsLeft).Select(now =>
        {
            var earlier = answer.Earlier.Select(v => v.Cylinders.FirstOrDefault(c => c.Cylinder == now.Cylinder)).OfType<CylinderView>()
                .Where(then => figure.Of(then) is not null && (figure.Of(now) is null ? figure.AsTheLimitWants(then) : figure.Alike(now, then)))
                .Select(then => figure.Of(then)!.Value).ToList();
            return (now.Cylinder, Value: figure.Of(now), Compared: figure.Of(now) is null || figure.AsTheLimitWants(now), Earlier: earlier);
        }).ToList();
        var all = cylinders.SelectMany(c => c.Earlier).Concat(cylinders.Select(c => c.Value).OfType<decimal>()).ToList();
        if (all.Count == 0)
        {
            return null;
        }

        var most = decimal.Max(decimal.Max(all.Max(), limit ?? 0), 1) * Headroom;
        decimal X(decimal value) => Left + ((Right - Left) * value / most);
        string Say(decimal? value) => value is { } v ? string.Create(CultureInfo.InvariantCulture, $"{v:0.#} {figure.Unit}") : "not measured";
        return new CylinderStrips
        {
            Rows = [.. cylinders.Select((c, row) =>
            {
                var bar = Top + (row * RowHeight);
                var foot = bar + BarHeight + 4;
                return new CylinderStrip(
                    $"Cylinder {c.Cylinder}", Say(c.Value), bar, foot, bar + BarHeight, c.Value is { } value ? X(value) : null, c.Compared,
                    [.. c.Earlier.Select((e, age) => new CylinderTick(X(e), age == 0 ? bar - 4 : bar + 4, age == 0))]);
            })],
            Caption = $"{figure.Name}, {stage.Spoken()}: bar this visit{(cylinders.Exists(c => c is { Value: not null, Compared: false }) ? ", an outline where it was not measured as the limit wants" : "")}{(cylinders.Exists(c => c.Earlier.Count > 0) ? "; ticks earlier visits measured alike, the longest the last one" : "")}{(limit is null ? "" : $"; end stop the {figure.LimitWord} that is stated")}.",
            Words = $"{figure.Name} {stage.Spoken()}{(limit is null ? "" : $", {figure.LimitWord} {Say(limit)}")}. "
                + string.Join(" ", cylinders.Select(c => $"Cylinder {c.Cylinder}: {Say(c.Value)}{(c.Earlier.Count == 0 ? "" : $", before {string.Join(", ", c.Earlier.Select(e => Say(e)))}")}.")),
            LimitX = limit is { } stated ? X(stated) : null,
            LimitText = limit is null ? "" : $"{figure.LimitWord} {Say(limit)}",
            AllowedAbove = figure.AllowedAbove,
        };
    }

    /// <summary>What is drawn of a cylinder.</summary>
    /// <param name="Of">Nothing where it was not measured so.</param>
    /// <param name="AsTheLimitWants">Whether the limit holds for it.</param>
    /// <param name="Alike">Figures are only put side by side where they were measured alike.</param>
    private sealed record Figure(
        string Name, string Unit, string LimitWord, bool AllowedAbove, Func<CylinderView, decimal?> Of, Func<CylinderView, bool> AsTheLimitWants,
        Func<CylinderView, CylinderView, bool> Alike);
}
