using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Shims;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Clearances;

/// <summary>
/// Writes what was measured at the valves of a visit: clearances, shims, what was done to a valve. A send may hold any part of
/// it and is all or nothing. A lobe and stage that was read before gets a new attempt, which supersedes with a reason.
/// </summary>
public static class RecordReadings
{
    public sealed record Request : IMeasuredEntry
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>The feeler set.</summary>
        public Guid? InstrumentId { get; init; }

        public Guid? MicrometerId { get; init; }

        public decimal? HeadTemperatureC { get; init; }

        public string? TemperatureMethod { get; init; }

        /// <summary>The reason to keep readings of an engine outside its cold range; they are left out of fits.</summary>
        public string? KeptWhyNotCold { get; init; }

        public Instant? MeasuredAt { get; init; }

        public Guid? MeasuredBy { get; init; }

        public string? Reason { get; init; }

        public IReadOnlyList<ReadingRow?>? Readings { get; init; }

        public IReadOnlyList<ShimRow?>? Shims { get; init; }

        public IReadOnlyList<EventRow?>? Events { get; init; }
    }

    public sealed record ReadingRow
    {
        public string? Valve { get; init; }

        /// <summary>1 where it is not given.</summary>
        public int? Lobe { get; init; }

        public Stage? Stage { get; init; }

        /// <summary>Go and no-go where it is not given.</summary>
        public BracketKind? Kind { get; init; }

        public decimal? GoMm { get; init; }

        public decimal? NoGoMm { get; init; }

        /// <summary>Two blades together made one of the ends.</summary>
        public bool Stacked { get; init; }

        /// <summary>
        /// Which attempt at this lobe and stage it is, as far as the caller knows: 1 for the first. Where somebody else has read it
        /// meanwhile the send is refused, so that nobody's reading is replaced unseen. Absent: whichever is next.
        /// </summary>
        public int? Attempt { get; init; }
    }

    public sealed record ShimRow
    {
        public string? Valve { get; init; }

        public Stage? Stage { get; init; }

        /// <summary>Empty where nobody measured it.</summary>
        public decimal? ThicknessMm { get; init; }

        /// <summary>Taken from the shim box; only as left.</summary>
        public bool FromBox { get; init; }

        /// <summary>The valve that it came out of at this visit, where it is moved across; only as left.</summary>
        public string? FromValve { get; init; }

        /// <summary>What it replaces is cleaned, dried, measured with a zeroed micrometer, and went into the shim box; only as left.</summary>
        public bool OldIntoBox { get; init; }

        /// <summary>Of the form only, where an empty field is one that was left alone.</summary>
        [JsonIgnore]
        public bool NotMeasured { get; init; }
    }

    public sealed record EventRow
    {
        public string? Valve { get; init; }

        public ValveEventKind? Kind { get; init; }
    }

    /// <param name="Words">The verdict in a sentence.</param>
    /// <param name="Expected">What its history let expect; of a reading as found, where something is known.</param>
    public sealed record Recorded(
        Guid Id, ValveKey Valve, int Lobe, Stage Stage, int Attempt, Verdict Verdict, Clearance? TryBladeMm, string Words,
        Expectation? Expected);

    /// <param name="FromMm">Lower end of the 90 % span in which the clearance was expected.</param>
    /// <param name="P">How improbable the reading is, two-sided.</param>
    /// <param name="MeasureAgain">It disagrees: measure once more; the same again is accepted.</param>
    /// <param name="Words">Where it disagrees, with what.</param>
    public sealed record Expectation(decimal FromMm, decimal ToMm, double P, bool MeasureAgain, string? Words);

    /// <param name="Checks">What is to be measured once more and why, and what is odd about a cylinder or the whole engine.</param>
    public sealed record Answer(
        int Number, IReadOnlyList<Recorded> Readings, int Shims, int Events, IReadOnlyList<string> Warnings, IReadOnlyList<string> Checks);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Readings).Must((r, _) => Rows(r.Readings).Any() || Rows(r.Shims).Any() || Rows(r.Events).Any())
                .WithMessage("{PropertyName} is empty: give at least one reading, shim or event.");
            When(r => Rows(r.Readings).Any(), () =>
            {
                RuleFor(r => r.InstrumentId).IsGiven("the feeler set");
                RuleFor(r => r.HeadTemperatureC).IsGiven("the temperature of the cylinder head in °C");
                RuleFor(r => r.TemperatureMethod).IsGiven("how the temperature was taken");
            });
            RuleFor(r => r.HeadTemperatureC).IsTemperature();
            RuleFor(r => r.TemperatureMethod).IsAtMost(Limits.Name);
            RuleFor(r => r.KeptWhyNotCold).IsAtMost(Limits.Remark);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            RuleForEach(r => r.Readings).SetValidator(new ReadingRowValidator()!);
            RuleForEach(r => r.Shims).SetValidator(new ShimRowValidator()!);
            RuleForEach(r => r.Events).SetValidator(new EventRowValidator()!);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await VisitEntry.Begin(db, request.Number, request, actor, clock, ct)).TryGet(out var entry, out var refused))
        {
            return refused;
        }

        await entry.CheckInstrument("instrumentId", request.InstrumentId, InstrumentKind.FeelerSet, ct);
        var shims = Numbered(request.Shims, "shims").Select(s => new SeenShim(
            s.Path, ValveKey.Parse(s.Row.Valve!), s.Row.Stage!.Value, s.Row.ThicknessMm, request.MicrometerId,
            s.Row.FromBox, s.Row.OldIntoBox) { FromValve = s.Row.FromValve is { Length: > 0 } from ? ValveKey.Parse(from) : null }).ToList();

        await RefuseEarlyAsLeft(entry, request, shims.Exists(s => s.Stage == Stage.AsLeft), ct);

        // In the order of the work: what came out, what went in, what was done, and the readings around it.
        var readings = ReadingEntry.Add(entry, request, Numbered(request.Readings, "readings"));
        await ShimEntry.Add(entry, shims, ct);
        var events = ValveEventEntry.Add(entry, Numbered(request.Events, "events"));

        await SayDoubts(entry, readings, ct);
        if (await entry.Finish(clock, ct) is { } problem)
        {
            return problem;
        }

        var check = await EntryCheck.Of(entry, readings, ct);
        return new Answer(
            request.Number,
            [.. readings.Select(r => Say(entry, r, check?.Readings.FirstOrDefault(c => c.Lobe == r.Key)))],
            shims.Count,
            events,
            entry.Warnings,
            check is null ? [] : [.. check.Readings.Select(c => c.Sentence).OfType<string>(), .. check.Sentences]);
    }

    /// <summary>As left opens once the shafts are held and the engine was turned by hand; what a send fits is not held yet.</summary>
    private static async Task RefuseEarlyAsLeft(VisitEntry entry, Request request, bool fitsShims, CancellationToken ct)
    {
        var rows = Numbered(request.Readings, "readings").Where(r => r.Row.Stage == Stage.AsLeft).ToList();
        if (rows.Count == 0)
        {
            return;
        }

        var turnsScrews = Rows(request.Events).Any(e => e.Kind == ValveEventKind.ScrewTurned);
        IReadOnlyList<string> against = fitsShims || turnsScrews
            ? [$"{(fitsShims ? "Shims are fitted" : "Screws are turned")} in the same send: send that first, tick what was opened, then turn the crankshaft two full turns by hand and confirm it."]
            : await AsLeft.Against(entry.Db, entry.Open, entry.Known, ct);
        entry.Add(against.Count == 0 ? null : new FieldFault($"{rows[0].Path}.stage",
            $"{rows[0].Path}.stage is asLeft, which is not open yet. {string.Join(" ", against)}"));
    }

    /// <summary>Found, left and shims that do not agree are said at once, while the engine is still open.</summary>
    private static async Task SayDoubts(VisitEntry entry, IReadOnlyList<ClearanceReading> readings, CancellationToken ct)
    {
        var left = readings.Where(r => r.Stage == Stage.AsLeft).Select(r => r.Key).ToHashSet();
        if (left.Count > 0)
        {
            entry.Warnings.AddRange((await Fitted.Doubts(entry.Db, entry.Open, entry.Known, ct))
                .Where(d => left.Contains(d.Lobe)).Select(d => d.Sentence));
        }
    }

    private static Recorded Say(VisitEntry entry, ClearanceReading reading, ReadingCheck? check)
    {
        var verdict = ClearanceVerdict.Of(reading.Bracket, ReadingRules.LimitsOf(entry.Specification, reading.Key));
        return new Recorded(
            reading.Id, reading.Valve, reading.Lobe, reading.Stage, reading.Attempt, verdict.Verdict, verdict.TryBlade, verdict.Sentence,
            check is null || reading.Stage != Stage.AsFound ? null : new Expectation(
                DriftFigures.Mm(check.ExpectedFromMm)!.Value,
                DriftFigures.Mm(check.ExpectedToMm)!.Value,
                DriftFigures.Probability(check.P)!.Value,
                check.MeasureAgain,
                check.Sentence));
    }

    private static IEnumerable<T> Rows<T>(IReadOnlyList<T?>? rows)
        where T : class => (rows ?? []).OfType<T>();

    /// <summary>The rows that are there, each with its path as the caller wrote it.</summary>
    private static List<(string Path, T Row)> Numbered<T>(IReadOnlyList<T?>? rows, string name)
        where T : class =>
        [.. (rows ?? []).Select((row, index) => (Path: $"{name}[{index}]", Row: row)).Where(r => r.Row is not null).Select(r => (r.Path, r.Row!))];

    private sealed class ReadingRowValidator : AbstractValidator<ReadingRow>
    {
        public ReadingRowValidator()
        {
            RuleFor(r => r.Valve).IsValve();
            RuleFor(r => r.Stage).IsGiven("asFound or asLeft");
            RuleFor(r => r.Attempt).GreaterThanOrEqualTo(1).WithMessage("{PropertyName} is {PropertyValue}: 1 is the first attempt.");
            RuleFor(r => r.GoMm).IsClearance().WithName(r => $"goMm of {Where(r)}");
            RuleFor(r => r.NoGoMm).IsClearance().WithName(r => $"noGoMm of {Where(r)}");
            RuleFor(r => r).Custom((row, context) =>
            {
                if (Bracket.FaultOf(row.Kind ?? BracketKind.GoAndNoGo, row.GoMm, row.NoGoMm) is { } fault)
                {
                    context.AddFailure($"{fault.Field}Mm", $"{Where(row)}: {fault.Sentence}");
                }
            });
        }

        private static string Where(ReadingRow row)
        {
            var valve = ValveKey.TryParse(row.Valve, null, out var key) ? new LobeKey(key, row.Lobe ?? 1).Spoken : row.Valve;
            return row.Stage is { } stage ? $"{valve}, {stage.Spoken()}" : $"{valve}";
        }
    }

    private sealed class ShimRowValidator : AbstractValidator<ShimRow>
    {
        public ShimRowValidator()
        {
            RuleFor(r => r.Valve).IsValve();
            RuleFor(r => r.Stage).IsGiven("asFound or asLeft");
            RuleFor(r => r.FromValve).IsValve().When(r => r.FromValve is { Length: > 0 });
            RuleFor(r => r.ThicknessMm).IsShimThickness().WithName(r => $"thicknessMm of the shim of {r.Valve}");
            RuleFor(r => r.ThicknessMm).Must((r, mm) => !(r.NotMeasured && mm is not null))
                .WithMessage((r, mm) => $"thicknessMm of the shim of {r.Valve} is {mm} mm and marked as not measured: leave one of them out.");
        }
    }

    private sealed class EventRowValidator : AbstractValidator<EventRow>
    {
        public EventRowValidator()
        {
            RuleFor(r => r.Valve).IsValve();
            RuleFor(r => r.Kind).IsGiven("screwTurned, notDisturbed or changeUnknown");
        }
    }
}
