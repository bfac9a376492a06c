using FluentValidation;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>The columns of a file of old worksheets, by the names that its first line must bear.</summary>
internal static class WorksheetColumn
{
    public const string Motorcycle = "motorcycle";
    public const string Date = "date";
    public const string Odometer = "odometer";
    public const string Valve = "valve";
    public const string Stage = "stage";
    public const string Go = "go";
    public const string NoGo = "no-go";
    public const string Shim = "shim";

    /// <summary>In the order in which they are documented; the file may have them in any.</summary>
    public static readonly IReadOnlyList<string> All = [Motorcycle, Date, Odometer, Valve, Stage, Go, NoGo, Shim];

    /// <summary>A file of readings without shims may leave this one out.</summary>
    public const string Optional = Shim;

    /// <summary>How a fault names a place: "line 7, no-go".</summary>
    public static string At(int line, string column) => $"line {line}, {column}";
}

/// <summary>One line of a file of old worksheets, as far as it could be read.</summary>
/// <param name="Line">Its number in the file, the header being 1.</param>
/// <param name="Odometer">Whole units of the motorcycle's own odometer.</param>
/// <param name="GoMm">Empty where no blade entered.</param>
/// <param name="NoGoMm">Empty where the next blade was not tried.</param>
/// <param name="ShimMm">As found the one that came out, as left the one that went in; empty where nobody measured it.</param>
internal sealed record WorksheetRow(
    int Line, string Motorcycle, LocalDate? Date, int? Odometer, LobeKey? Lobe, Stage? Stage, decimal? GoMm, decimal? NoGoMm,
    decimal? ShimMm)
{
    /// <summary>An empty end says what the blades did: none entered, or the next was not tried.</summary>
    public BracketKind Kind => (GoMm, NoGoMm) switch
    {
        (null, not null) => BracketKind.NoneEnters,
        (not null, null) => BracketKind.NextNotTried,
        _ => BracketKind.GoAndNoGo,
    };

    /// <summary>What the value types and the bracket's own rule allow, in their words, named by the file's columns.</summary>
    public sealed class Validator : AbstractValidator<WorksheetRow>
    {
        public Validator()
        {
            RuleFor(r => r.Motorcycle).Cascade(CascadeMode.Stop).IsGiven("the registration of a motorcycle")
                .IsAtMost(Limits.Registration).OverridePropertyName(WorksheetColumn.Motorcycle).WithName(WorksheetColumn.Motorcycle);
            RuleFor(r => r.Odometer).IsOdometerCount()
                .OverridePropertyName(WorksheetColumn.Odometer).WithName(WorksheetColumn.Odometer);
            RuleFor(r => r.GoMm).IsClearance().OverridePropertyName(WorksheetColumn.Go).WithName(WorksheetColumn.Go);
            RuleFor(r => r.NoGoMm).IsClearance().OverridePropertyName(WorksheetColumn.NoGo).WithName(WorksheetColumn.NoGo);
            RuleFor(r => r.ShimMm).IsShimThickness().OverridePropertyName(WorksheetColumn.Shim).WithName(WorksheetColumn.Shim);
            RuleFor(r => r).Custom((row, context) =>
            {
                if (Bracket.FaultOf(row.Kind, row.GoMm, row.NoGoMm) is { } fault)
                {
                    context.AddFailure(fault.Field == "go" ? WorksheetColumn.Go : WorksheetColumn.NoGo, fault.Sentence);
                }
            });
        }
    }
}

/// <summary>The faults of a file, each with its line and column; nothing is written while there is one.</summary>
internal sealed class WorksheetFaults
{
    private readonly List<(int Line, int Column, FieldFault Fault)> faults = [];

    public bool None => faults.Count == 0;

    public void Add(int line, string column, string sentence)
    {
        var place = WorksheetColumn.At(line, column);
        var order = WorksheetColumn.All.ToList().IndexOf(column);
        faults.Add((line, order, new FieldFault(place, $"Line {line}, {column}: {sentence}")));
    }

    /// <summary>All of them in order of the file.</summary>
    public Problem ToProblem()
    {
        var inOrder = faults.OrderBy(f => f.Line).ThenBy(f => f.Column).Select(f => f.Fault).ToList();
        var lines = faults.Select(f => f.Line).Distinct().Count();
        return new Problem(ProblemKind.Impossible, "worksheets-at-fault",
            $"{Count(inOrder.Count, "fault")} in {Count(lines, "line")}; nothing was written. {inOrder[0].Sentence}")
        {
            Faults = inOrder,
        };
    }

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";
}
