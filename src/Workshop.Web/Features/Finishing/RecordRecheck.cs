using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Finishing;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Finishing;

/// <summary>
/// Something was looked at once more: the cooled engine, the oil level after the run, the torque of a fastener that settles. What
/// was not in order holds the sign-off until it was put right and looked at again.
/// </summary>
public static class RecordRecheck
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public RecheckPoint? Point { get; init; }

        /// <summary>Of a torque: the fastener, by its code.</summary>
        public string? Fastener { get; init; }

        public bool? InOrder { get; init; }

        /// <summary>What was found; asked where it was not in order.</summary>
        public string? Words { get; init; }

        /// <summary>Of a torque: the wrench.</summary>
        public Guid? WrenchId { get; init; }

        /// <summary>Of the cooled engine, where it has not cooled for as long as is asked: why not.</summary>
        public string? EarlyBecause { get; init; }

        public Instant? RecheckedAt { get; init; }

        /// <summary>Why it is entered again.</summary>
        public string? Reason { get; init; }
    }

    public sealed record Answer(Guid Id, RecheckPoint Point, string? Fastener, int Attempt, bool InOrder);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Point).IsGiven("cooled, oilAfterRun or torque").IsInEnum();
            RuleFor(r => r.InOrder).NotNull().WithMessage("{PropertyName} is empty: say whether it is in order.");
            RuleFor(r => r.Words).IsGiven("what was found").When(r => r.InOrder == false);
            RuleFor(r => r.Words).IsAtMost(Limits.Remark);
            RuleFor(r => r.EarlyBecause).IsAtMost(Limits.Remark);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            RuleFor(r => r.Fastener).IsAtMost(Limits.Code);
            When(r => r.Point == RecheckPoint.Torque, () =>
            {
                RuleFor(r => r.Fastener).IsGiven("the fastener, by its code");
                RuleFor(r => r.WrenchId).IsGiven("the torque wrench");
            }).Otherwise(() =>
            {
                RuleFor(r => r.Fastener).Null().WithMessage("{PropertyName} is given: only a torque has one.");
                RuleFor(r => r.WrenchId).Null().WithMessage("{PropertyName} is given: only a torque has one.");
            });
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FinishingEntry.Begin(db, request.Number, request.Reason, actor, clock, ct)).TryGet(out var entry, out var problem)
            || !entry.When("recheckedAt", request.RecheckedAt).TryGet(out var at, out problem))
        {
            return problem;
        }

        var point = request.Point!.Value;
        var before = Attempts.Last(entry.Facts.Finished.Rechecks.Where(r => r.Point == point && r.FastenerCode == request.Fastener));
        if (AgainstFastener(request, entry) is { } loose)
        {
            return loose;
        }

        if (await UsableInstrument.FaultOf(db, "wrenchId", request.WrenchId, InstrumentKind.TorqueWrench, entry.Time.DayOf(at), ct) is { } unusable)
        {
            return Problem.Impossible("wrench-unusable", unusable.Field, unusable.Sentence);
        }

        var early = IsEarly(entry, point, at);
        if (early is not null && string.IsNullOrWhiteSpace(request.EarlyBecause))
        {
            return early;
        }

        if (entry.AgainstAgain(("the re-check", before)) is { } again)
        {
            return again;
        }

        var recheck = new VisitRecheck
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, Point = point, FastenerCode = request.Fastener, Attempt = Attempts.After(before),
            InOrder = request.InOrder!.Value, WordsRemarkId = entry.Words(request.Words), EarlyRemarkId = early is null ? null : entry.Words(request.EarlyBecause),
            WrenchId = request.WrenchId, RecheckedAt = at, RecheckedBy = actor.PersonId, EnteredAt = entry.Now,
            SupersedesId = before?.Id, ReasonRemarkId = entry.ReasonFor(before),
        };
        db.VisitRechecks.Add(recheck);
        await db.SaveChangesAsync(ct);
        return new Answer(recheck.Id, point, recheck.FastenerCode, recheck.Attempt, recheck.InOrder);
    }

    private static Problem? AgainstFastener(Request request, FinishingEntry entry)
    {
        if (request.Point != RecheckPoint.Torque)
        {
            return null;
        }

        var lines = entry.Facts.ToBeTight;
        return lines.FirstOrDefault(l => l.Fastener.Code == request.Fastener) switch
        {
            null => Problem.Impossible("fastener-unknown", "fastener",
                $"fastener is \"{request.Fastener}\": the visit opens {string.Join(", ", lines.Select(l => l.Fastener.Code))}."),
            { IsTightened: false } line => Problem.Conflict("no-tick", $"{line.Fastener.Name} is not tightened yet: tick it on the torque sheet first."),
            _ => null,
        };
    }

    /// <summary>The engine has not cooled for as long as is asked; nothing where it has.</summary>
    private static Problem? IsEarly(FinishingEntry entry, RecheckPoint point, Instant at)
    {
        var asked = Rechecks.Of(entry.Facts).FirstOrDefault(r => r.Point == point)?.CoolHours;
        if (asked is not { } hours || entry.Open.EngineStoppedAt is not { } stopped)
        {
            return null;
        }

        var from = Rechecks.CooledFrom(stopped, hours);
        return at >= from ? null : Problem.Impossible("not-cooled", "earlyBecause", FormattableString.Invariant(
            $"earlyBecause is empty: the engine cools for {hours:0.##} hours first, until {entry.Time.Say(from)}. Wait, or give the reason why not."));
    }
}
