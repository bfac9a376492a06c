using FluentValidation;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>The columns of a file of older history, by the names that its first line must bear.</summary>
internal static class HistoryColumn
{
    public const string Motorcycle = "motorcycle";
    public const string Item = "item";
    public const string Date = FileOdometers.Date;
    public const string Odometer = FileOdometers.Odometer;
    public const string Unit = "unit";
    public const string Note = "note";

    /// <summary>In the order in which they are documented; the file may have them in any.</summary>
    public static readonly IReadOnlyList<string> All = [Motorcycle, Item, Date, Odometer, Unit, Note];
}

/// <summary>One line of a file of older history, as far as it could be read.</summary>
/// <param name="Line">Its number in the file, the header being 1.</param>
/// <param name="Motorcycle">Its registration, or its VIN.</param>
/// <param name="Item">The code of a service item of its engine model.</param>
/// <param name="Odometer">Whole units of its own odometer.</param>
/// <param name="Unit">In which that odometer counts.</param>
internal sealed record HistoryRow(
    int Line, string Motorcycle, string Item, LocalDate? Date, int? Odometer, OdometerUnit? Unit, string Note)
{
    private static readonly Validator Rules = new();

    private static readonly CsvColumns Form = new(HistoryColumn.All, [HistoryColumn.Note]);

    /// <summary>The rows that could be read, with what is wrong in <paramref name="faults"/>.</summary>
    public static IReadOnlyList<HistoryRow> Read(string text, FileFaults faults) => [.. CsvLines.Read(text, Form, faults).Select(RowOf)];

    private static HistoryRow RowOf(CsvLine line)
    {
        var row = new HistoryRow(
            line.Number,
            line[HistoryColumn.Motorcycle],
            line[HistoryColumn.Item],
            line.Day(HistoryColumn.Date),
            line.Count(HistoryColumn.Odometer, "a whole number, without separators"),
            line.Cell<OdometerUnit>(HistoryColumn.Unit, TryUnit, "km or mi"),
            line[HistoryColumn.Note]);
        foreach (var fault in Rules.Validate(row).Errors)
        {
            line.Faults.Add(line.Number, fault.PropertyName, fault.ErrorMessage);
        }

        return row;
    }

    private static bool TryUnit(string text, out OdometerUnit unit)
    {
        unit = text is "mi" or "miles" ? OdometerUnit.Miles : OdometerUnit.Kilometres;
        return text is "km" or "mi" or "kilometres" or "miles";
    }

    private sealed class Validator : AbstractValidator<HistoryRow>
    {
        public Validator()
        {
            RuleFor(r => r.Motorcycle).IsGiven("the registration or the VIN of a motorcycle")
                .OverridePropertyName(HistoryColumn.Motorcycle).WithName(HistoryColumn.Motorcycle);
            RuleFor(r => r.Item).IsGiven("the code of a service item")
                .OverridePropertyName(HistoryColumn.Item).WithName(HistoryColumn.Item);
            RuleFor(r => r.Odometer).IsOdometerCount()
                .OverridePropertyName(HistoryColumn.Odometer).WithName(HistoryColumn.Odometer);
            RuleFor(r => r.Note).IsAtMost(Limits.Remark).OverridePropertyName(HistoryColumn.Note).WithName(HistoryColumn.Note);
        }
    }
}
