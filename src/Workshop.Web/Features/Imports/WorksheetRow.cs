using FluentValidation;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Imports;

/// <summary>The columns of a file of old worksheets, by the names that its first line must bear.</summary>
internal static class WorksheetColumn
{
    public const string Motorcycle = "motorcycle";
    public const string Date = FileOdometers.Date;
    public const string Odometer = FileOdometers.Odometer;
    public const string Valve = "valve";
    public const string Stage = "stage";
    public const string Go = "go";
    public const string NoGo = "no-go";
    public const string Shim = "shim";

    /// <summary>In the order in which they are documented; the file may have them in any.</summary>
    public static readonly IReadOnlyList<string> All = [Motorcycle, Date, Odometer, Valve, Stage, Go, NoGo, Shim];

    /// <summary>A file of readings without shims may leave this one out.</summary>
    public const string Optional = Shim;
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
