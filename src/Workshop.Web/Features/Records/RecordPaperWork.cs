using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.Records;
using Workshop.Domain.Stores;
using Workshop.Web.Features.Paper;

namespace Workshop.Web.Features.Records;

/// <summary>What was done and used, and what must not be missed, on the owner's record.</summary>
internal static class RecordPaperWork
{
    private const decimal MillilitresPerLitre = 1000;

    /// <summary>On top: what is not safe, and what was left outside its limits.</summary>
    public static IEnumerable<PaperBlock> Warnings(ServiceRecord record)
    {
        foreach (var finding in record.Findings.Where(f => f.StaysUnsafe))
        {
            yield return new PaperText($"Not to be ridden like this: {finding.Place}. {finding.Text} You were told, and declined the repair.", Strong: true);
        }

        var outside = RecordedLobes.LeftOutside(record.Clearances);
        if (outside.Count > 0)
        {
            yield return new PaperText($"Valve clearances left outside their limits: {string.Join("; ", outside)}.", Strong: true);
        }
    }

    public static IEnumerable<PaperBlock> Done(ServiceRecord record, IReadOnlyDictionary<string, string> words)
    {
        yield return new PaperHeading("What was done");
        yield return record.Items.Count == 0
            ? new PaperText("Nothing was booked.")
            : new PaperTable("What was done", [new("What", 40), new("Done", 60)], [.. record.Items.Select(i => (IReadOnlyList<PaperCell>)
                [i.Name, i.Done ? "done" : words.TryGetValue(RecordWords.NotDone(i.Code), out var why) ? $"not done: {why}" : "not done"])]);
        if (words.TryGetValue(RecordWords.Remark, out var remark))
        {
            yield return new PaperText($"Remark: {remark}");
        }
    }

    public static IEnumerable<PaperBlock> Used(ServiceRecord record)
    {
        var (pieces, fluids) = (record.Parts.Where(p => p.Unit == PartUnit.Piece).ToList(), record.Parts.Where(p => p.Unit == PartUnit.Millilitre).ToList());
        if (pieces.Count > 0)
        {
            yield return new PaperHeading("Parts");
            yield return new PaperTable("Parts", [new("Part", 50), new("Designation", 34), new("Pieces", 16, IsFigure: true)],
                [.. pieces.Select(p => (IReadOnlyList<PaperCell>)[p.Name, p.Designation ?? "", Figure(p.Quantity)])]);
        }

        if (fluids.Count > 0)
        {
            yield return new PaperHeading("Fluids and sealants");
            yield return new PaperTable("Fluids and sealants", [new("Fluid or sealant", 50), new("Grade", 34), new("Volume", 16, IsFigure: true)],
                [.. fluids.Select(p => (IReadOnlyList<PaperCell>)[p.Name, p.Designation ?? "", Volume(p.Quantity)])]);
        }
    }

    public static IEnumerable<PaperBlock> Fasteners(ServiceRecord record)
    {
        if (record.Fasteners.Count == 0)
        {
            yield break;
        }

        yield return new PaperHeading("What was opened and tightened again");
        yield return new PaperTable("What was opened and tightened again",
            [new("Fastener", 30), new("Torque as the specification states it", 30), new("Tightened", 14), new("Wrench", 26)],
            [.. record.Fasteners.Select(f => (IReadOnlyList<PaperCell>)
            [
                $"{f.Name}, {f.Count.ToString(CultureInfo.InvariantCulture)} × {f.Thread}{(f.Joint is { } joint ? $"\n{joint}" : "")}", f.Torque,
                $"{RecordWords.Day(f.TightenedOn)}{(f.ConfirmedBySecond ? ", confirmed by a second person" : "")}",
                f.Wrench ?? "",
            ])]);
    }

    /// <summary>"3.6 l", "250 ml".</summary>
    public static string Volume(decimal millilitres) => millilitres >= MillilitresPerLitre
        ? $"{Figure(millilitres / MillilitresPerLitre)} l"
        : $"{Figure(millilitres)} ml";

    private static string Figure(decimal quantity) => quantity.ToString("#,0.###", CultureInfo.InvariantCulture);
}
