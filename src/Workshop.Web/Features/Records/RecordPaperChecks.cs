using System.Globalization;
using Workshop.Domain.Records;
using Workshop.Web.Features.Paper;

namespace Workshop.Web.Features.Records;

/// <summary>How it came, and what was looked at beside the valves, on the owner's record.</summary>
internal static class RecordPaperChecks
{
    public static IEnumerable<PaperBlock> Arrival(ServiceRecord record, IReadOnlyDictionary<string, string> words)
    {
        List<IReadOnlyList<PaperCell>> rows = [];
        if (words.TryGetValue(RecordWords.OwnersWords, out var said))
        {
            rows.Add(["What you told us", said]);
        }

        if (words.TryGetValue(RecordWords.SeenOnArrival, out var seen))
        {
            rows.Add(["Seen on arrival", seen]);
        }

        rows.AddRange(record.Arrival.Select(c => Row(c, words)));
        if (rows.Count > 0)
        {
            yield return new PaperHeading("How it came");
            yield return new PaperTable("How it came", [new("What", 30), new("How it was", 70)], rows);
        }
    }

    public static IEnumerable<PaperBlock> Engine(ServiceRecord record)
    {
        if (record.Cylinders.Count > 0)
        {
            yield return new PaperHeading("Compression");
            yield return new PaperTable("Compression", [new("Cylinder", 10, IsFigure: true), new("As found", 25), new("As left", 25), new("In words", 40)],
                [.. record.Cylinders.Select(c => (IReadOnlyList<PaperCell>)
                    [c.Cylinder.ToString(CultureInfo.InvariantCulture), c.Found ?? "", c.Left ?? "", c.Sentence])]);
        }

        if (record.Plugs.Count > 0)
        {
            yield return new PaperHeading("Spark plugs");
            yield return new PaperTable("Spark plugs", [new("Plug", 30), new("In words", 70)],
                [.. record.Plugs.Select(p => (IReadOnlyList<PaperCell>)[p.Name, p.Sentence])]);
        }
    }

    public static IEnumerable<PaperBlock> After(ServiceRecord record, IReadOnlyDictionary<string, string> words)
    {
        if (record.AfterWork.Count > 0)
        {
            yield return new PaperHeading("After the work");
            yield return new PaperTable("After the work", [new("What", 34), new("How it was", 66)], [.. record.AfterWork.Select(c => Row(c, words))]);
        }
    }

    private static IReadOnlyList<PaperCell> Row(RecordedCheck check, IReadOnlyDictionary<string, string> words) =>
        [check.What, check.RemarkId is { } id && words.TryGetValue(RecordWords.Said(id), out var said) ? $"{check.Sentence}: {said}" : $"{check.Sentence}."];
}
