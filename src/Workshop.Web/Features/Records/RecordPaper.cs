using System.Globalization;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Records;
using Workshop.Web.Features.Paper;

namespace Workshop.Web.Features.Records;

/// <summary>The owner's record as a paper: what the page, the PDF and the page behind a link draw.</summary>
internal static class RecordPaper
{
    /// <summary>Where the paper's code leads, and what lies there.</summary>
    public sealed record Way(Uri Back, string Words);

    /// <param name="issued">As it was written.</param>
    /// <param name="way">Of the code.</param>
    /// <param name="pictureOf">A photo with its words; nothing where it was taken out since.</param>
    public static PaperDocument Of(GetRecord.Answer issued, Way way, Func<Guid, string, PaperPicture?> pictureOf)
    {
        var record = issued.Record;
        var blocks = new List<PaperBlock>();
        blocks.AddRange(RecordPaperWork.Warnings(record));
        blocks.AddRange(RecordPaperChecks.Arrival(record, issued.Words));
        blocks.AddRange(RecordPaperWork.Done(record, issued.Words));
        blocks.AddRange(RecordPaperValves.Of(record));
        blocks.AddRange(RecordPaperChecks.Engine(record));
        blocks.AddRange(RecordPaperWork.Used(record));
        blocks.AddRange(RecordPaperWork.Fasteners(record));
        blocks.AddRange(RecordPaperChecks.After(record, issued.Words));
        blocks.AddRange(Findings(issued, pictureOf));
        blocks.AddRange(Ahead(record));
        blocks.Add(new PaperHeading("Where limits and torques come from"));
        blocks.AddRange(record.Specification.Sources.Select(s => new PaperText(
            $"Specification of the {record.Motorcycle.EngineModel}, version {record.Specification.Version}: {s}.")).DistinctBy(t => t.Text));
        blocks.Add(new PaperText(Cautions.Deference));
        return new PaperDocument("Service record", HeadOf(issued), way.Back, way.Words, blocks, RecordWords.Foot);
    }

    private static List<string> HeadOf(GetRecord.Answer issued)
    {
        var record = issued.Record;
        var machine = record.Motorcycle;
        var frame = machine.Vin is { } vin ? $", frame {vin}" : "";
        var arrived = record.ArrivedOn is { } day && record.OdometerIn is { } count
            ? $"Came on {RecordWords.Day(day)} at {Count(count, record.OdometerUnit)}; signed off" : "Signed off";
        List<string> lines =
        [
            $"{machine.Registration}: {machine.Maker} {machine.Model}, {machine.ModelYear}{frame}",
            $"Engine {machine.EngineModel}{(machine.Invented ? " (invented engine: never work by it)" : "")}, number {machine.EngineSerialNumber}",
            $"{arrived} on {RecordWords.Day(record.SignedOn)} at {Count(record.OdometerOut, record.OdometerUnit)} by {record.SignedBy}",
            $"{record.Workshop}{(record.Phone is { } phone ? $", {phone}" : "")}; job card {record.JobCardNumber}",
        ];
        if (record.ComebackOf is { } earlier)
        {
            lines.Add($"It comes back of job card {earlier}");
        }

        if (issued.IsLater)
        {
            lines.Add("Written after the sign-off, from what then stood: what is due and expected is that of the later day.");
        }

        return lines;
    }

    private static IEnumerable<PaperBlock> Findings(GetRecord.Answer issued, Func<Guid, string, PaperPicture?> pictureOf)
    {
        var record = issued.Record;
        if (record.Findings.Count > 0)
        {
            yield return new PaperHeading("What was found");
            yield return new PaperTable(
                "What was found", [new("Where", 18), new("What", 34), new("How much it matters", 16), new("What you said", 32)],
                [.. record.Findings.Select(f => Row(f, issued.Words))]);
            foreach (var finding in record.Findings)
            {
                var pictures = finding.Photos.Select(p => pictureOf(p, issued.Words.GetValueOrDefault(RecordWords.Caption(p), ""))).OfType<PaperPicture>().ToList();
                if (pictures.Count > 0)
                {
                    yield return new PaperText($"{finding.Place}:");
                    yield return new PaperPictures($"Photos: {finding.Place}", pictures);
                }
            }
        }

        if (record.Agreed is { } agreed)
        {
            yield return new PaperHeading("What was agreed");
            yield return new PaperText($"{Money.Say(agreed.Gross, agreed.Currency)} with tax, by the estimates that you agreed to. This is no bill.");
        }
    }

    private static IReadOnlyList<PaperCell> Row(RecordedFinding finding, IReadOnlyDictionary<string, string> words)
    {
        var price = finding.Price is { } p ? $"Estimate {Money.Say(p.Gross, p.Currency)} with tax." : null;
        var answer = finding.Answer is { } said ? $"{said}." : finding.State == FindingState.Watched ? "Nothing to answer: it is watched." : "Not answered.";
        var remark = words.GetValueOrDefault(RecordWords.AnswerTo(finding.Id));
        var done = finding.State == FindingState.Done ? "Done at this visit." : null;
        return
        [
            finding.Place, finding.Text, new PaperCell(finding.Gravity.Spoken(), Strong: finding.Gravity == FindingGravity.Unsafe),
            string.Join(" ", new[] { price, answer, remark, done }.Where(s => !string.IsNullOrEmpty(s))),
        ];
    }

    private static IEnumerable<PaperBlock> Ahead(ServiceRecord record)
    {
        yield return new PaperHeading("What is due next");
        yield return record.NextDue.Count == 0
            ? new PaperText("Nothing is due by the intervals that are on record.")
            : new PaperTable("What is due next", [new("What", 30), new("When", 70)], [.. record.NextDue.Select(d => (IReadOnlyList<PaperCell>)[d.Name, d.Sentence])]);
        if (record.Forecasts.Count > 0)
        {
            yield return new PaperHeading("What is expected of the valves");
            foreach (var forecast in record.Forecasts)
            {
                yield return new PaperText(forecast.Sentence);
            }

            if (record.Forecasts.Any(f => f.IsForetold))
            {
                yield return new PaperText(RecordWords.ForecastCaution, Strong: true);
            }
        }
    }

    private static string Count(int count, OdometerUnit unit) => string.Create(CultureInfo.InvariantCulture, $"{count:#,0} {unit.Symbol()}");
}
