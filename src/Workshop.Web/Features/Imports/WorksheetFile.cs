using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>Reads a file of old worksheets.</summary>
internal static class WorksheetFile
{
    private static readonly WorksheetRow.Validator Rules = new();

    private static readonly CsvColumns Form = new(WorksheetColumn.All, [WorksheetColumn.Optional]);

    /// <summary>The rows that could be read, with what is wrong in <paramref name="faults"/>.</summary>
    public static IReadOnlyList<WorksheetRow> Read(string text, FileFaults faults) =>
        [.. CsvLines.Read(text, Form, faults).Select(RowOf)];

    private static WorksheetRow RowOf(CsvLine line)
    {
        var row = new WorksheetRow(
            line.Number,
            line[WorksheetColumn.Motorcycle],
            line.Day(WorksheetColumn.Date),
            line.Count(WorksheetColumn.Odometer, "a whole number of the odometer's own unit, without separators"),
            line.Cell<LobeKey>(WorksheetColumn.Valve, TryLobe, $"{ValveKey.Form}, with /2 behind it for a second lobe"),
            line.Cell<Stage>(WorksheetColumn.Stage, TryStage, "\"as found\" or \"as left\""),
            line.Cell<decimal>(WorksheetColumn.Go, DecimalBinder.TryRead, "a number such as 0.15 or 0,15", mayBeEmpty: true),
            line.Cell<decimal>(WorksheetColumn.NoGo, DecimalBinder.TryRead, "a number such as 0.15 or 0,15", mayBeEmpty: true),
            line.Cell<decimal>(WorksheetColumn.Shim, DecimalBinder.TryRead, "a number such as 2.475 or 2,475, or nothing", mayBeEmpty: true));
        var unread = new[] { (WorksheetColumn.Go, row.GoMm), (WorksheetColumn.NoGo, row.NoGoMm) }
            .Any(end => end.Item2 is null && line[end.Item1].Length > 0);
        foreach (var fault in Rules.Validate(row).Errors)
        {
            // A cell that is no number has been said so; that its end is then missing is no second fault.
            if (!unread || fault.PropertyName is not (WorksheetColumn.Go or WorksheetColumn.NoGo))
            {
                line.Faults.Add(line.Number, fault.PropertyName, fault.ErrorMessage);
            }
        }

        return row;
    }

    private static bool TryLobe(string text, out LobeKey lobe)
    {
        lobe = default;
        var (valveText, lobeText) = text.Split('/') switch
        {
            [var v] => (v, "1"),
            [var v, var l] => (v, l),
            _ => ("", ""),
        };
        if (!ValveKey.TryParse(valveText, null, out var valve)
            || !int.TryParse(lobeText, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < 1)
        {
            return false;
        }

        lobe = new LobeKey(valve, number);
        return true;
    }

    private static bool TryStage(string text, out Stage stage)
    {
        var word = string.Concat(text.Where(char.IsLetter)).ToLowerInvariant();
        stage = word == "asleft" ? Stage.AsLeft : Stage.AsFound;
        return word is "asfound" or "asleft";
    }
}
