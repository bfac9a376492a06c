using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Finishing;

/// <summary>
/// Writes the vacuum behind every throttle at one engine speed, engine hot, before anything was set or after. Read again, it is a
/// new attempt, and the last one counts.
/// </summary>
public static class RecordBalance
{
    /// <summary>No intake draws more than the air presses: the standard atmosphere is 101.325 kPa (ISO 2533).</summary>
    public const decimal LargestKpa = 101.33m;

    /// <summary>The same in millimetres of mercury.</summary>
    public const decimal LargestMmHg = 760;

    public const int FastestRpm = 8000;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>As found: before anything was set. As left: after.</summary>
        public Stage? Stage { get; init; }

        public int? SpeedRpm { get; init; }

        public decimal? HotAtC { get; init; }

        public HotPart? HotOf { get; init; }

        public Guid? GaugeId { get; init; }

        public IReadOnlyList<CylinderRow?>? Cylinders { get; init; }

        public Instant? MeasuredAt { get; init; }

        /// <summary>Why it is entered again.</summary>
        public string? Reason { get; init; }
    }

    /// <summary>How far below the air's the pressure is: in the one unit or the other.</summary>
    public sealed record CylinderRow
    {
        public int? Cylinder { get; init; }

        public decimal? VacuumKpa { get; init; }

        public decimal? VacuumMmHg { get; init; }
    }

    public sealed record Answer(Guid Id, Stage Stage, int Attempt, BalanceVerdict Verdict, string Sentence);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Stage).IsGiven("asFound or asLeft").IsInEnum();
            RuleFor(r => r.SpeedRpm).NotNull().WithMessage("{PropertyName} is empty: give the engine's speed at which the gauge was read.").IsWhole(1, FastestRpm);
            RuleFor(r => r.HotAtC).NotNull().WithMessage("{PropertyName} is empty: give how hot the engine was; it is balanced hot.").IsTemperature();
            RuleFor(r => r.HotOf).IsChosen("of what the temperature is", FinishingWords.Spoken).IsInEnum();
            RuleFor(r => r.GaugeId).IsGiven("the vacuum gauge of the tooling");
            RuleFor(r => r.Cylinders).Must(c => c?.OfType<CylinderRow>().Any() == true).WithMessage("{PropertyName} is empty: give the vacuum of every cylinder.");
            RuleForEach(r => r.Cylinders).SetValidator(new CylinderValidator()!);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
        }
    }

    private sealed class CylinderValidator : AbstractValidator<CylinderRow>
    {
        public CylinderValidator()
        {
            RuleFor(r => r.Cylinder).NotNull().WithMessage("{PropertyName} is empty: give the cylinder's number.");
            RuleFor(r => r.VacuumKpa).Must((r, kpa) => kpa is not null || r.VacuumMmHg is not null)
                .WithMessage("{PropertyName} is empty, and so is vacuumMmHg: give one of them.");
            RuleFor(r => r.VacuumKpa).Must((r, kpa) => kpa is null || r.VacuumMmHg is null)
                .WithMessage("{PropertyName} is given beside vacuumMmHg: give one of them.");
            RuleFor(r => r.VacuumKpa).IsWithin(0, LargestKpa, Pressure.DecimalsKpa, "kPa");
            RuleFor(r => r.VacuumMmHg).IsWithin(0, LargestMmHg, 1, "mmHg");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FinishingEntry.Begin(db, request.Number, request.Reason, actor, clock, ct)).TryGet(out var entry, out var problem)
            || !entry.When("measuredAt", request.MeasuredAt).TryGet(out var at, out problem))
        {
            return problem;
        }

        var figures = entry.Open.Specification.VisitChecks.FirstOrDefault(c => c.Kind == VisitCheckKind.Balance)?.Balance;
        var faults = FaultsOf(request, entry.Open.Specification, figures);
        if (await UsableInstrument.FaultOf(db, "gaugeId", request.GaugeId, InstrumentKind.VacuumGauge, entry.Time.DayOf(at), ct) is { } unusable)
        {
            faults.Add(unusable);
        }

        var stage = request.Stage!.Value;
        var before = Attempts.Last(entry.Facts.Finished.Balances.Where(b => b.Stage == stage));
        if (faults.Count > 0)
        {
            return Problem.Impossible("not-balanced-so", faults);
        }

        if (entry.AgainstAgain(($"the balance {stage.Spoken()}", before)) is { } again)
        {
            return again;
        }

        var id = NewId.At(clock);
        var run = new BalanceRun
        {
            Id = id, JobCardNumber = request.Number, Stage = stage, Attempt = Attempts.After(before), SpeedRpm = request.SpeedRpm!.Value,
            HotAt = Temperature.FromCelsius(request.HotAtC!.Value), HotOf = request.HotOf!.Value, GaugeId = request.GaugeId!.Value,
            Vacuums = [.. request.Cylinders!.OfType<CylinderRow>().OrderBy(c => c.Cylinder).Select(c => new BalanceVacuum { RunId = id, Cylinder = c.Cylinder!.Value, Vacuum = VacuumOf(c) })],
            MeasuredAt = at, MeasuredBy = actor.PersonId, EnteredAt = entry.Now, SupersedesId = before?.Id, ReasonRemarkId = entry.ReasonFor(before),
        };
        db.BalanceRuns.Add(run);
        entry.EngineRanUntil(at);
        await db.SaveChangesAsync(ct);
        var judged = BalanceJudgement.Of(figures, run.Vacuums);
        return new Answer(run.Id, stage, run.Attempt, judged.Verdict, judged.Sentence);
    }

    private static Pressure VacuumOf(CylinderRow row) => Pressure.FromKilopascals(
        row.VacuumKpa ?? decimal.Round(row.VacuumMmHg!.Value * Pressure.KilopascalsPerMillimetreOfMercury, Pressure.DecimalsKpa));

    private static List<FieldFault> FaultsOf(Request request, EngineSpecification specification, BalanceFigures? figures)
    {
        var faults = new List<FieldFault>();
        var numbers = specification.Layout.Cylinders.Select(c => c.Number).ToArray();
        if (numbers.Length < 2)
        {
            faults.Add(new FieldFault("cylinders", "cylinders are given, but an engine of one cylinder has nothing to balance."));
            return faults;
        }

        var given = request.Cylinders!.OfType<CylinderRow>().Select(c => c.Cylinder!.Value).ToArray();
        if (!given.Order().SequenceEqual(numbers.Order()))
        {
            faults.Add(new FieldFault("cylinders", $"cylinders are {string.Join(", ", given)}: each of {string.Join(", ", numbers)} once is wanted."));
        }

        if (figures is not null && Math.Abs(request.SpeedRpm!.Value - figures.SpeedRpm) > figures.SpeedToleranceRpm)
        {
            faults.Add(new FieldFault("speedRpm", $"speedRpm is {request.SpeedRpm}: {figures.SpeedRpm - figures.SpeedToleranceRpm} to {figures.SpeedRpm + figures.SpeedToleranceRpm} is stated for this engine model."));
        }

        if (figures?.HotFrom is { } hot && request.HotAtC < hot.Celsius)
        {
            faults.Add(new FieldFault("hotAtC", FormattableString.Invariant($"hotAtC is {request.HotAtC}: the engine is balanced hot, from {hot} on. Run it warm first.")));
        }

        return faults;
    }
}
