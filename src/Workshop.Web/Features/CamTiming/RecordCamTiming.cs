using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.CamTiming;

/// <summary>
/// Writes what was checked of the camshafts' timing at one stage of a visit: alignment, degree wheel, tensioner and chain, and
/// what of a drive was renewed. A send may hold any part of it and is all or nothing. What was checked before gets a new
/// attempt, which supersedes with a reason.
/// </summary>
public static class RecordCamTiming
{
    public const int MostRepeats = 10;
    public const decimal LargestLiftMm = 20;
    public const decimal LargestExtensionMm = 200;
    public const decimal LargestChainMm = 3000;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public Stage? Stage { get; init; }

        /// <summary>The crankshaft was turned in running direction only; overshot: round again, never back.</summary>
        public bool InRunningDirection { get; init; }

        public Guid? JigId { get; init; }

        public Guid? DegreeWheelId { get; init; }

        public Guid? DialGaugeId { get; init; }

        public Guid? CaliperId { get; init; }

        public DeadCentreMethod? DeadCentre { get; init; }

        /// <summary>The wheel's reading before top dead centre at which stop or gauge stood.</summary>
        public decimal? StopBeforeDegrees { get; init; }

        /// <summary>The same after top dead centre.</summary>
        public decimal? StopAfterDegrees { get; init; }

        public decimal? LiftMm { get; init; }

        public LiftStation? Station { get; init; }

        public Instant? MeasuredAt { get; init; }

        public Guid? MeasuredBy { get; init; }

        public string? Reason { get; init; }

        public IReadOnlyList<AlignmentRow?>? Alignments { get; init; }

        public IReadOnlyList<LobeRow?>? Lobes { get; init; }

        public IReadOnlyList<ChainRow?>? Chains { get; init; }

        public IReadOnlyList<ChangeRow?>? Changes { get; init; }
    }

    public sealed record AlignmentRow
    {
        public string? Camshaft { get; init; }

        public bool? Passes { get; init; }
    }

    public sealed record LobeRow
    {
        public string? Camshaft { get; init; }

        public Side? Side { get; init; }

        /// <summary>One for each turn of the crankshaft, as the wheel showed them.</summary>
        public IReadOnlyList<ReadingRow?>? Readings { get; init; }
    }

    public sealed record ReadingRow
    {
        /// <summary>Intake before top, exhaust before bottom dead centre; negative on the other side.</summary>
        public decimal? OpensDegrees { get; init; }

        /// <summary>Intake after bottom, exhaust after top dead centre; negative on the other side.</summary>
        public decimal? ClosesDegrees { get; init; }
    }

    public sealed record ChainRow
    {
        public string? Drive { get; init; }

        public decimal? ExtensionMm { get; init; }

        /// <summary>The tensioner stands as far out as it goes; then no extension is given.</summary>
        public bool AtStop { get; init; }

        /// <summary>Of as many links as the specification names, pulled straight.</summary>
        public decimal? LengthMm { get; init; }
    }

    public sealed record ChangeRow
    {
        public string? Drive { get; init; }

        public ChainChangeKind? Kind { get; init; }
    }

    /// <param name="Drives">What each drive that the send touched shows at that stage, with what else stands there.</param>
    /// <param name="Checks">What asks to be measured once more.</param>
    public sealed record Answer(int Number, Stage Stage, int Written, IReadOnlyList<CamTimingView.DriveState> Drives, IReadOnlyList<string> Checks);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Stage).IsGiven("asFound or asLeft");
            RuleFor(r => r.Lobes).Must((r, _) => Rows(r.Alignments).Any() || Rows(r.Lobes).Any() || Rows(r.Chains).Any() || Rows(r.Changes).Any())
                .WithMessage("Nothing was entered: give at least one alignment check, lobe, chain or change.");
            RuleFor(r => r.InRunningDirection).Equal(true).When(r => Rows(r.Alignments).Any() || Rows(r.Lobes).Any())
                .WithMessage("{PropertyName} is false: turned back, the drive's play lies on the other side and the reading is of no use. Go round again in running direction; only true is recorded.");
            When(r => Rows(r.Lobes).Any(), () =>
            {
                RuleFor(r => r.DegreeWheelId).IsGiven("the degree wheel");
                RuleFor(r => r.DialGaugeId).IsGiven("the dial gauge that showed lift");
                RuleFor(r => r.DeadCentre).IsChosen("how dead centre was found", CamTimingWords.Spoken);
                RuleFor(r => r.LiftMm).NotNull().WithMessage("{PropertyName} is empty: give the one lift at which the wheel was read.");
                RuleFor(r => r.Station).IsChosen("where lift was measured", CamTimingWords.Spoken);
                RuleFor(r => r.StopBeforeDegrees).NotNull().When(r => r.DeadCentre is DeadCentreMethod.PositiveStop or DeadCentreMethod.DialGauge)
                    .WithMessage("{PropertyName} is empty: give the wheel's reading on either side of dead centre; the middle is dead centre.");
                RuleFor(r => r.StopAfterDegrees).NotNull().When(r => r.DeadCentre is DeadCentreMethod.PositiveStop or DeadCentreMethod.DialGauge)
                    .WithMessage("{PropertyName} is empty: give the wheel's reading on either side of dead centre; the middle is dead centre.");
            });
            RuleFor(r => r.StopBeforeDegrees).IsWithin(0, CrankAngle.LargestDegrees, CrankAngle.DecimalsDegrees, "degrees");
            RuleFor(r => r.StopAfterDegrees).IsWithin(0, CrankAngle.LargestDegrees, CrankAngle.DecimalsDegrees, "degrees");
            RuleFor(r => r.LiftMm).IsWithin(0, LargestLiftMm, 3, "mm");
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            RuleForEach(r => r.Alignments).ChildRules(row => row.RuleFor(r => r!.Passes).NotNull()
                .WithMessage("{PropertyName} is empty: say whether the alignment check passes.")).When(r => Rows(r.Alignments).Any());
            RuleForEach(r => r.Lobes).SetValidator(new LobeValidator()!);
            RuleForEach(r => r.Chains).SetValidator(new ChainValidator()!);
            RuleForEach(r => r.Changes).ChildRules(row => row.RuleFor(r => r!.Kind)
                .NotNull().WithMessage("{PropertyName} is empty: give chainRenewed, guideRenewed or tensionerRenewed.")).When(r => Rows(r.Changes).Any());
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await TimingEntry.Begin(db, request, actor, clock, ct)).TryGet(out var entry, out var refused))
        {
            return refused;
        }

        entry.AddAlignments();
        entry.AddLobes();
        entry.AddChains();
        entry.AddChanges();
        if (await entry.Finish(ct) is { } problem)
        {
            return problem;
        }

        var drives = entry.Touched();
        return new Answer(
            request.Number, request.Stage!.Value, entry.Written, drives,
            [.. drives.SelectMany(d => d.Cams).SelectMany(c => c.Lobes).Where(l => l.AsksForRepeat is not null).Select(l => $"{l.Name}: {l.AsksForRepeat}")]);
    }

    internal static IEnumerable<T> Rows<T>(IReadOnlyList<T?>? rows)
        where T : class => (rows ?? []).OfType<T>();

    private sealed class LobeValidator : AbstractValidator<LobeRow>
    {
        public LobeValidator()
        {
            RuleFor(r => r.Side).IsGiven("intake or exhaust");
            RuleFor(r => r.Readings).Must(r => Rows(r).Count() is >= 1 and <= MostRepeats)
                .WithMessage((_, r) => $"{{PropertyName}} has {Rows(r).Count()}: 1 to {MostRepeats} turns of the crankshaft are allowed.");
            RuleForEach(r => r.Readings).SetValidator(new ReadingValidator()!);
        }
    }

    private sealed class ReadingValidator : AbstractValidator<ReadingRow>
    {
        public ReadingValidator()
        {
            RuleFor(r => r.OpensDegrees).NotNull().WithMessage("{PropertyName} is empty: give where the wheel stood as the lift was reached.");
            RuleFor(r => r.ClosesDegrees).NotNull().WithMessage("{PropertyName} is empty: give where the wheel stood as the lift was left.");
            RuleFor(r => r.OpensDegrees).IsWithin(CrankAngle.SmallestDegrees, CrankAngle.LargestDegrees, CrankAngle.DecimalsDegrees, "degrees");
            RuleFor(r => r.ClosesDegrees).IsWithin(CrankAngle.SmallestDegrees, CrankAngle.LargestDegrees, CrankAngle.DecimalsDegrees, "degrees");
            RuleFor(r => r.ClosesDegrees).Must((r, closes) => closes is null || r.OpensDegrees is null || r.OpensDegrees + closes > -180)
                .WithMessage((r, closes) => $"closesDegrees is {closes} with opensDegrees {r.OpensDegrees}: together with the half turn between they must be above 0; it closes after it opens.");
        }
    }

    private sealed class ChainValidator : AbstractValidator<ChainRow>
    {
        public ChainValidator()
        {
            RuleFor(r => r.ExtensionMm).IsWithin(0, LargestExtensionMm, 2, "mm");
            RuleFor(r => r.LengthMm).IsWithin(0.1m, LargestChainMm, 2, "mm");
            RuleFor(r => r.ExtensionMm).Must((r, mm) => mm is not null || r.LengthMm is not null || r.AtStop)
                .WithMessage("{PropertyName} is empty, and so is lengthMm: give one of them, or say that the tensioner stands at its stop.");
            RuleFor(r => r.ExtensionMm).Must((r, mm) => !(r.AtStop && mm is not null))
                .WithMessage((_, mm) => $"{{PropertyName}} is {mm} mm and the tensioner is said to stand at its stop: leave one of them out.");
        }
    }
}
