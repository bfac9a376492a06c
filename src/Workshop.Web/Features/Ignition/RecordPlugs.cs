using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Ignition;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Stores;
using Workshop.Web.Features.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Ignition;

/// <summary>
/// Writes what spark plugs look like, their gap, and what goes back in: all of a send or none. What was written before gets a new
/// attempt, which supersedes with a reason.
/// </summary>
public static class RecordPlugs
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>With what the gaps were measured.</summary>
        public GapGauge? Gauge { get; init; }

        /// <summary>The plug gauge or feeler set; absent where its number does not matter.</summary>
        public Guid? InstrumentId { get; init; }

        public Instant? MeasuredAt { get; init; }

        public Guid? MeasuredBy { get; init; }

        public string? Reason { get; init; }

        public IReadOnlyList<Row?>? Plugs { get; init; }
    }

    public sealed record Row
    {
        public int? Cylinder { get; init; }

        /// <summary>1 where it is left out; 2 for the second of a cylinder.</summary>
        public int? Plug { get; init; }

        public PlugCondition? Condition { get; init; }

        /// <summary>As it came out.</summary>
        public decimal? GapFoundMm { get; init; }

        /// <summary>A new one goes in; else the old one goes back.</summary>
        public bool Renewed { get; init; }

        /// <summary>The stores' code of the new one; the one that the engine model names where it is left out.</summary>
        public string? PartCode { get; init; }

        /// <summary>Of what goes in.</summary>
        public decimal? GapLeftMm { get; init; }
    }

    /// <param name="Plugs">Every plug of the engine as it stands now.</param>
    public sealed record Answer(int Number, int Written, IReadOnlyList<PlugView> Plugs);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Gauge).IsGiven("blade or wire: with what the gap was measured");
            RuleFor(r => r.Plugs).Must(rows => (rows ?? []).Any(r => r is not null)).WithMessage("Nothing was entered: give at least one plug.");
            RuleForEach(r => r.Plugs).SetValidator(new RowValidator()!);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var now = clock.GetCurrentInstant();
        var at = request.MeasuredAt ?? now;
        var time = await WorkshopTimes.Read(db, ct);
        var before = await db.PlugChecks.AsNoTracking().Where(c => c.JobCardNumber == request.Number).ToListAsync(ct);
        var faults = new List<FieldFault>(await WhoAndWhen.FaultsOf(db, open, time, at, request.MeasuredBy, now, ct));
        faults.AddRange(await FaultsOfInstrument(request.InstrumentId, time.DayOf(at), db, ct));
        var codes = (request.Plugs ?? []).Select(r => CodeOf(r, open)).OfType<string>().Distinct().ToList();
        var parts = await PartsByCode.Read(db, codes, ct);
        var added = new List<PlugCheck>();
        Guid? reason = null;
        foreach (var (row, path) in (request.Plugs ?? []).Select((row, index) => (row, $"plugs[{index}]")).Where(r => r.row is not null))
        {
            var key = new PlugKey(row!.Cylinder!.Value, row.Plug ?? 1);
            var code = CodeOf(row, open);
            var standing = PlugRules.Standing(before, key);
            FieldFault?[] found =
            [
                PlugRules.FaultOfPlug($"{path}.cylinder", key, open.Specification),
                PlugRules.FaultOfRefitting($"{path}.renewed", row.Condition!.Value, row.Renewed),
                added.Exists(c => c.Key == key) ? new FieldFault($"{path}.cylinder", $"{path}.cylinder is {key} for the second time in one send: once.") : null,
                code is not null && !parts.ContainsKey(code)
                    ? new FieldFault($"{path}.partCode", $"{path}.partCode is \"{code}\": the stores have no such part; give the code of one that they have.") : null,
                Attempts.FaultOfReason(
                    request.Reason, standing is null ? [] : [$"the {key.SpokenIn(open.Specification).Replace("Plug", "plug", StringComparison.Ordinal)}"]),
            ];
            faults.AddRange(found.OfType<FieldFault>());
            added.Add(new PlugCheck
            {
                Id = NewId.At(clock), EngineId = open.Card.EngineId, JobCardNumber = request.Number, Cylinder = key.Cylinder, Plug = key.Plug,
                Attempt = Attempts.After(standing), Condition = row.Condition.Value, GapFoundMm = row.GapFoundMm, Renewed = row.Renewed,
                PartCode = code is null ? null : parts.GetValueOrDefault(code)?.Code, GapLeftMm = row.GapLeftMm!.Value, Gauge = request.Gauge!.Value,
                InstrumentId = request.InstrumentId, OdometerReadingId = open.CheckIn!.OdometerReadingId, CheckedAt = at,
                CheckedBy = request.MeasuredBy ?? actor.PersonId, EnteredBy = actor.PersonId, EnteredAt = now, SupersedesId = standing?.Id,
                ReasonRemarkId = standing is null ? null : reason ??= Remarks.Add(db, request.Reason, actor, clock),
            });
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("not-possible", faults);
        }

        db.PlugChecks.AddRange(added);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, added.Count, PlugView.Of(open.Specification, [.. before, .. added]));
    }

    private static string? CodeOf(Row? row, OpenCard open) => row is not { Renewed: true } ? null
        : string.IsNullOrWhiteSpace(row.PartCode) ? open.Specification.SparkPlugs?.PartCode : row.PartCode.Trim();

    /// <summary>A wire gauge of plugs, or a feeler set: blades measure a gap as well.</summary>
    private static async Task<IEnumerable<FieldFault>> FaultsOfInstrument(Guid? id, LocalDate day, WorkshopDbContext db, CancellationToken ct)
    {
        var kind = await db.Instruments.Where(i => i.Id == id).Select(i => (InstrumentKind?)i.Kind).SingleOrDefaultAsync(ct) == InstrumentKind.FeelerSet
            ? InstrumentKind.FeelerSet
            : InstrumentKind.PlugGauge;
        return await UsableInstrument.FaultOf(db, "instrumentId", id, kind, day, ct) is { } fault ? [fault] : [];
    }

    private sealed class RowValidator : AbstractValidator<Row>
    {
        public RowValidator()
        {
            RuleFor(r => r.Cylinder).NotNull().WithMessage("{PropertyName} is empty: give the cylinder's number.");
            RuleFor(r => r.Condition).IsChosen("how the plug looks", PlugWords.Spoken);
            RuleFor(r => r.GapFoundMm).IsWithin(PlugRules.SmallestGapMm, PlugRules.LargestGapMm, PlugRules.GapDecimals, "mm");
            RuleFor(r => r.GapLeftMm).NotNull().WithMessage("{PropertyName} is empty: give the gap of the plug that goes in.");
            RuleFor(r => r.GapLeftMm).IsWithin(PlugRules.SmallestGapMm, PlugRules.LargestGapMm, PlugRules.GapDecimals, "mm");
            RuleFor(r => r.PartCode).IsAtMost(Limits.Code);
            RuleFor(r => r.PartCode).Empty().When(r => !r.Renewed).WithMessage("{PropertyName} is given, but the old plug goes back: leave it out, or say that it is renewed.");
        }
    }
}
