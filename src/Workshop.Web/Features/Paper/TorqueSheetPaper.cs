using Workshop.Domain.JobCards;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.TorqueSheets;

namespace Workshop.Web.Features.Paper;

/// <summary>The torque sheet as a paper: in the order of closing, a box for each fastener, room for who and with which wrench.</summary>
internal static class TorqueSheetPaper
{
    private static readonly PaperColumn[] Columns =
    [
        new("Fastener", 20), new("Torque", 24), new("Thread, sequence, tool", 24), new("Seals, note", 20), new("Done", 12), new("Wrench, by", 20),
    ];

    public static PaperDocument Of(CardHead head, GetTorqueSheet.Answer sheet, Uri back)
    {
        var blocks = new List<PaperBlock>
        {
            new PaperText("In the order of closing. A torque holds for the thread as it is treated here; another lubricant, plating or seal needs another torque.", Strong: true),
        };
        if (sheet.Sections.Count == 0)
        {
            blocks.Add(new PaperText("The items under way open nothing."));
        }

        foreach (var section in sheet.Sections)
        {
            blocks.Add(new PaperHeading(section.Joint ?? "Other fasteners"));
            var seals = section.Seals.Select(SealWords).ToList();
            if (section.Sealant is { } sealant)
            {
                seals.Add($"sealant {sealant.Part ?? sealant.PartCode}, cures in {sealant.CureMinutes} min");
            }

            if (seals.Count > 0)
            {
                blocks.Add(new PaperText($"Seals of the joint: {string.Join("; ", seals)}."));
            }

            blocks.Add(new PaperTable(section.Joint ?? "Other fasteners", Columns, [.. section.Fasteners.Select(Row)]));
        }

        return new PaperDocument("Torque sheet", CardPaper.HeadOf(head), back, "Ticks on the page", blocks, Cautions.Deference);
    }

    private static IReadOnlyList<PaperCell> Row(GetTorqueSheet.Line line)
    {
        var done = line.State == TickState.Tightened && line.Tick is { } tick ? tick : null;
        return
        [
            $"{line.Name}\n{line.Count} × {line.Thread}",
            new PaperCell(Steps(line), Strong: true),
            string.Join("; ", new[]
            {
                $"{line.Treatment.Spoken()}{(line.ThreadCompound is { } compound ? $": {compound}" : "")}", line.Sequence, line.Tool,
            }.OfType<string>()),
            string.Join("; ", Notes(line)),
            done is null ? new PaperCell("", Boxes: line.Count) : new PaperCell("tightened"),
            done is null ? Offer(line) : $"{done.Wrench}, {done.TickedBy}{(done.WitnessedBy is { } second ? $" and {second}" : "")}",
        ];
    }

    /// <summary>The wrench that suits the final torque best, with what is dialled on it; who and a second person write beside it.</summary>
    private static string Offer(GetTorqueSheet.Line line)
    {
        var last = line.Steps[^1];
        var wrench = last.Wrenches is [var best, ..] ? $"{best.Name}{best.Between}: dial {best.Setting}" : last.Missing ?? "";
        return line.AskSecondPerson ? $"{wrench}\nsecond person:" : wrench;
    }

    private static IEnumerable<string> Notes(GetTorqueSheet.Line line)
    {
        if (line.UseOnce)
        {
            yield return "used once: fit a new one, never the old";
        }

        foreach (var seal in line.Seals)
        {
            yield return SealWords(seal);
        }

        foreach (var note in new[] { line.AccessNote, line.Note }.OfType<string>())
        {
            yield return note;
        }
    }

    private static string Steps(GetTorqueSheet.Line line)
    {
        var steps = line.Steps.Select(s => FormattableString.Invariant($"{s.TorqueNm:0.##} N.m ({s.TorqueLbfFt:0.0} lbf.ft, {s.TorqueLbfIn:0} lbf.in)"));
        var range = line.TorqueLowestNm is { } lowest && line.TorqueHighestNm is { } highest
            ? FormattableString.Invariant($"\n{lowest:0.##} to {highest:0.##} N.m is allowed")
            : "";
        var tolerance = line.AngleToleranceDegrees is { } more ? FormattableString.Invariant($" ± {more:0.#}°") : "";
        var angle = line.AngleDegrees is { } degrees ? FormattableString.Invariant($"\nthen {degrees:0.#}°{tolerance} further") : "";
        return string.Join("\nthen ", steps) + range + angle;
    }

    private static string SealWords(GetTorqueSheet.SealLine seal) =>
        FormattableString.Invariant($"{seal.Quantity:0.####} × {seal.Part ?? seal.PartCode}: {seal.Policy.Spoken()}");
}
