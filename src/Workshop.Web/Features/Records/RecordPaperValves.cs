using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;
using Workshop.Domain.Records;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Paper;
using Workshop.Web.Features.Shared.Drawings;

namespace Workshop.Web.Features.Records;

/// <summary>Clearances as strips with their figures beside, shims, and the camshafts' timing, on the owner's record.</summary>
internal static class RecordPaperValves
{
    private static readonly PaperColumn[] Columns =
    [
        new("Valve", 14), new("Limits, set to, mm", 13, IsFigure: true), new("As found, mm", 11, IsFigure: true), new("As left, mm", 11, IsFigure: true),
        new("Drawn", 33), new("In words", 18),
    ];

    public static IEnumerable<PaperBlock> Of(ServiceRecord record)
    {
        if (record.Clearances.Count > 0)
        {
            yield return new PaperHeading("Valve clearances");
            yield return new PaperTable("Valve clearances", Columns, [.. record.Clearances.Select(Row)]);
            yield return new PaperText(
                "A feeler blade brackets a clearance: the first figure is the blade that went, the second the next one, which did not. Drawn: the limits as end stops, the clearance to set to as a dashed line, what was read as a bar.");
        }

        foreach (var sentence in record.Measuring)
        {
            yield return new PaperText(sentence);
        }

        if (record.Shims.Count > 0)
        {
            yield return new PaperHeading("Shims");
            yield return new PaperTable("Shims", [new("Valve", 30), new("Out, mm", 14, IsFigure: true), new("In, mm", 14, IsFigure: true), new("In words", 42)],
                [.. record.Shims.Select(s => (IReadOnlyList<PaperCell>)[s.Name, Thickness(s.OutMm), Thickness(s.InMm), s.Sentence])]);
        }

        foreach (var drive in record.CamTiming)
        {
            yield return new PaperHeading($"Camshaft timing: {drive.Name}");
            if (drive.Cams.Count > 0)
            {
                yield return new PaperTable($"Camshaft timing: {drive.Name}", [new("Camshaft", 24), new("As found", 38), new("As left", 38)],
                    [.. drive.Cams.Select(c => (IReadOnlyList<PaperCell>)[c.Name, c.Found ?? "", c.Left ?? "not disturbed"])]);
            }

            if (drive.Chain is { } chain)
            {
                yield return new PaperText($"Chain as found: {chain}.");
            }

            if (drive.ChainLeft is { } left)
            {
                yield return new PaperText($"Chain as left: {left}.");
            }
        }
    }

    private static IReadOnlyList<PaperCell> Row(RecordedLobe lobe)
    {
        List<StripSpan> spans = [];
        if (lobe.Found is { } found)
        {
            spans.Add(StripSpan.Of("found", BracketOf(found)));
        }

        if (lobe.Left is { Carried: false } left)
        {
            spans.Add(StripSpan.Of("left", BracketOf(left)));
        }

        return
        [
            lobe.Name,
            string.Create(CultureInfo.InvariantCulture, $"{lobe.LowerMm.Millimetres:0.00#} to {lobe.UpperMm.Millimetres:0.00#}\n({lobe.SetToMm.Millimetres:0.00#})"),
            Said(lobe.Found), lobe.Left is { Carried: true } ? "the same" : Said(lobe.Left),
            new PaperCell("", Strip: StripGeometry.Of(lobe.LowerMm, lobe.UpperMm, lobe.SetToMm, spans)), lobe.Sentence,
        ];
    }

    private static string Said(RecordedReading? reading) => reading is null ? "" : DriftWords.Bracket(reading.GoMm, reading.NoGoMm);

    private static Bracket BracketOf(RecordedReading reading) => Bracket.Of(reading.Kind, reading.GoMm, reading.NoGoMm);

    private static string Thickness(ShimThickness? thickness) => thickness is { } mm ? mm.Millimetres.ToString("0.000", CultureInfo.InvariantCulture) : "";
}
