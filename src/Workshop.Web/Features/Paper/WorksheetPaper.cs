using System.Globalization;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Paper;

/// <summary>
/// A blank worksheet for a bay without a screen: the valves in the order of measuring, room for what is found and left, for shims, and
/// a box for every fastener. What is written on it is entered on the card that the code leads to.
/// </summary>
internal static class WorksheetPaper
{
    private static readonly PaperColumn[] ValveColumns =
    [
        new("Valve", 17), new("Limits, set to, mm", 17, IsFigure: true), new("Found go", 10), new("Found no-go", 10), new("Shim out", 10),
        new("Shim in", 10), new("Left go", 10), new("Left no-go", 10), new("Remark", 16),
    ];

    private static readonly PaperColumn[] ScrewColumns = [.. ValveColumns.Where(c => !c.Name.StartsWith("Shim", StringComparison.Ordinal))];

    private static readonly PaperColumn[] FastenerColumns =
        [new("Fastener", 30), new("Torque", 30), new("Thread, sequence", 30), new("Done", 16), new("Wrench", 12), new("By", 8)];

    public static PaperDocument Of(CardHead head, OpenCard open, Uri back)
    {
        var specification = open.Specification;
        var cold = specification.Cold;
        var blocks = new List<PaperBlock>
        {
            new PaperFields(["Technician", "Day and time", "Odometer", "Engine stopped at", "Head temperature, °C", "Feeler set", "Micrometer", "Two turns by hand in running direction, no hard stop", "Parts, blades, rags and magnet counted in and out"]),
            new PaperText(string.Create(CultureInfo.InvariantCulture,
                $"Cold: {cold.SoakHours:0.#} h from the last stop, {cold.Lowest} to {cold.Highest} by {cold.Method}. Go: the thickest blade that enters with light drag; no-go: the thinnest tried that does not.")),
            new PaperText($"Turn {specification.Layout.Turning.Spoken()} seen from {specification.Layout.TurningSeenFrom}; overshot: round again, never back, unless the maker says so. {specification.Layout.TimingMarks}."),
        };
        var byScrew = specification.ValveTrain == ValveTrainKind.ScrewAndLocknut;
        foreach (var position in Positions(specification))
        {
            blocks.Add(new PaperTable(position.Caption, byScrew ? ScrewColumns : ValveColumns,
                [.. position.Lobes.Select(l => Row(specification, l, byScrew))]));
        }

        blocks.Add(new PaperHeading("Torques, in the order of closing"));
        foreach (var (caption, rows) in Fasteners(open))
        {
            blocks.Add(new PaperTable(caption, FastenerColumns, rows));
        }

        blocks.Add(new PaperFields(["Remarks", " ", "Signed"]));
        return new PaperDocument("Worksheet", CardPaper.HeadOf(head), back, "To the job card", blocks, Cautions.Deference);
    }

    /// <summary>In running direction; lobes that the specification puts at no position come last.</summary>
    private static IEnumerable<(string Caption, IReadOnlyList<LobeKey> Lobes)> Positions(EngineSpecification specification)
    {
        var lobes = specification.Valves.SelectMany(v => Enumerable.Range(1, v.Lobes).Select(lobe => new LobeKey(v.Key, lobe)));
        var placed = specification.MeasuringPositions.SelectMany(p => p.Lobes).ToHashSet();
        var others = lobes.Where(l => !placed.Contains(l)).ToList();
        return specification.MeasuringPositions
            .Select(p => (string.Create(CultureInfo.InvariantCulture, $"{p.Name}, {p.CrankDegrees:0.#}°: {p.Mark}"), p.Lobes))
            .Concat(others.Count == 0 ? [] : [("At no measuring position", (IReadOnlyList<LobeKey>)others)]);
    }

    private static IReadOnlyList<PaperCell> Row(EngineSpecification specification, LobeKey lobe, bool byScrew)
    {
        var limits = specification.Limits.SingleOrDefault(l => l.Side == lobe.Valve.Side && l.Lobe == lobe.Lobe);
        PaperCell allowed = limits is null
            ? "not stated"
            : new PaperCell(string.Create(CultureInfo.InvariantCulture,
                $"{limits.Lower.Millimetres:0.00#} to {limits.Upper.Millimetres:0.00#}\n({limits.SetTo.Millimetres:0.00#})"));
        return [lobe.Spoken, allowed, .. Enumerable.Repeat(PaperCell.Blank, byScrew ? 5 : 7)];
    }

    /// <summary>What the items under way open, then what an adjustment would open beyond it.</summary>
    private static IEnumerable<(string Caption, IReadOnlyList<IReadOnlyList<PaperCell>> Rows)> Fasteners(OpenCard open)
    {
        var certain = TorqueSheet.Of(open.Specification, open.UnderWay, []);
        var held = open.ItemsHeldReady.Select(i => new ItemUnderWay(i, null));
        var all = TorqueSheet.Of(open.Specification, open.UnderWay.Concat(held), []);
        var sure = certain.Lines.Select(l => l.Fastener.Code).ToHashSet(StringComparer.Ordinal);
        foreach (var section in all.Sections)
        {
            var name = section.Joint?.Name ?? "Other fasteners";
            var ifBegun = section.Lines.Any(l => !sure.Contains(l.Fastener.Code)) ? ", only if it was opened" : "";
            yield return ($"{name}{ifBegun}", [.. section.Lines.Select(l => Row(l.Fastener))]);
        }
    }

    private static IReadOnlyList<PaperCell> Row(Fastener fastener)
    {
        var steps = fastener.Stages.Append(fastener.Torque).Select(t => string.Create(CultureInfo.InvariantCulture, $"{t} ({t.PoundFeet:0.0} lbf.ft)"));
        var angle = fastener.AngleDegrees is { } degrees ? string.Create(CultureInfo.InvariantCulture, $", then {degrees:0.#}° further") : "";
        return
        [
            $"{fastener.Name}, {fastener.Count} × {fastener.Thread}{(fastener.UseOnce ? "; used once: a new one" : "")}",
            new PaperCell(string.Join(", then ", steps) + angle, Strong: true),
            string.Join("; ", new[] { $"{fastener.Treatment.Spoken()}{(fastener.ThreadCompound is { } c ? $": {c}" : "")}", fastener.Sequence }.OfType<string>()),
            new PaperCell("", Boxes: fastener.Count), PaperCell.Blank, PaperCell.Blank,
        ];
    }
}
