using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>
/// A technician is away, a bay under repair, a tool lent out. It is entered over visits that are booked already: the answer names
/// them, and they stand out until a person moves them. Whoever books the resource at the same moment waits for this, or this for them.
/// </summary>
public static class AddAbsence
{
    private static readonly Duration Longest = Duration.FromDays(3 * 366);

    public sealed record Request
    {
        [JsonIgnore]
        public Guid ResourceId { get; init; }

        public AbsenceReason? Reason { get; init; }

        /// <summary>As instants; or else by the workshop's calendar below.</summary>
        public Instant? StartsAt { get; init; }

        public Instant? EndsAt { get; init; }

        public LocalDate? FirstDay { get; init; }

        /// <summary>The first day, where absent.</summary>
        public LocalDate? LastDay { get; init; }

        /// <summary>Of the first day; from its beginning, where absent.</summary>
        public LocalTime? FromTime { get; init; }

        /// <summary>Of the last day; until its end, where absent.</summary>
        public LocalTime? UntilTime { get; init; }
    }

    /// <param name="Standing">Booked visits that it hits; each is moved by a person.</param>
    public sealed record Answer(Guid Id, Instant StartsAt, Instant EndsAt, IReadOnlyList<StandingVisit> Standing);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Reason).IsGiven("why it is away");
            RuleFor(r => r.FirstDay).IsGiven("the first day away").When(r => r.StartsAt is null && r.EndsAt is null);
            RuleFor(r => r.StartsAt).IsGiven("when it begins").When(r => r.EndsAt is not null);
            RuleFor(r => r.EndsAt).IsGiven("when it ends").When(r => r.StartsAt is not null);
            RuleFor(r => r.FirstDay).Null().When(r => r.StartsAt is not null)
                .WithMessage("firstDay is given beside startsAt: give instants, or days and times, not both.");
            RuleFor(r => r.EndsAt).Must((r, end) => end is null || r.StartsAt is null || end > r.StartsAt)
                .WithMessage("endsAt is not after startsAt; a later instant is allowed.");
            RuleFor(r => r.LastDay).Must((r, last) => last is null || r.FirstDay is null || last >= r.FirstDay)
                .WithMessage((r, last) => $"lastDay is {Days.Write(last!.Value)}, before firstDay, {Days.Write(r.FirstDay!.Value)}; the same or a later day is allowed.");
            RuleFor(r => r.UntilTime).Must((r, until) => until is null || r.FromTime is null || (r.LastDay ?? r.FirstDay) != r.FirstDay || until > r.FromTime)
                .WithMessage((r, until) => $"untilTime is {WorkingWeek.Say(until!.Value)}, not after fromTime, {WorkingWeek.Say(r.FromTime!.Value)}, of the same day; a later time is allowed.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        if (!(await ResourceLock.Take(db, request.ResourceId, ct)).TryGet(out var resource, out var problem)
            || !SpanOf(request, time).TryGet(out var span, out problem))
        {
            return problem;
        }

        if (await Refuse(db, resource, request.Reason!.Value, span, time, ct) is { } refused)
        {
            return refused;
        }

        var now = clock.GetCurrentInstant();
        var absence = new Absence
        {
            Id = NewId.At(clock), ResourceId = resource.Id, Span = span, Reason = request.Reason.Value, EnteredBy = actor.PersonId, EnteredAt = now,
        };
        db.Absences.Add(absence);
        await db.SaveChangesAsync(ct);
        var standing = (await StandingVisits.Read(db, resource.Id, now, ct))
            .Where(s => s.Why == Misplacement.Absent && s.From < span.End && span.Start < s.Until);
        return new Answer(absence.Id, span.Start, span.End, [.. standing]);
    }

    private static Outcome<Interval> SpanOf(Request request, WorkshopTime time)
    {
        if (request.StartsAt is { } startsAt)
        {
            return Within(new Interval(startsAt, request.EndsAt!.Value), "endsAt");
        }

        var (first, last) = (request.FirstDay!.Value, request.LastDay ?? request.FirstDay.Value);
        var (from, until) = (time.WholeDay(first).Start, time.WholeDay(last).End);
        if (request.FromTime is { } fromTime)
        {
            if (!time.InstantOf("fromTime", first, fromTime).TryGet(out from, out var problem))
            {
                return problem;
            }
        }

        if (request.UntilTime is { } untilTime)
        {
            if (!time.InstantOf("untilTime", last, untilTime).TryGet(out until, out var problem))
            {
                return problem;
            }
        }

        return until > from
            ? Within(new Interval(from, until), "lastDay")
            : Problem.Impossible("absence-empty", "untilTime", "untilTime is not after the beginning of the absence; a later time is allowed.");
    }

    private static Outcome<Interval> Within(Interval span, string field) => span.Duration <= Longest
        ? span
        : Problem.Impossible("absence-too-long", field,
            $"{field} makes the absence {(int)span.Duration.TotalDays} days long; at most {(int)Longest.TotalDays} are allowed. Retire what is gone for good.");

    private static async Task<Problem?> Refuse(
        WorkshopDbContext db, Resource resource, AbsenceReason reason, Interval span, WorkshopTime time, CancellationToken ct)
    {
        var allowed = ResourceRules.Reasons(resource.Kind);
        if (!allowed.Contains(reason))
        {
            return Problem.Impossible("reason-unfit", [new FieldFault("reason",
                $"reason is {Words.Write(reason)}: of a {resource.Kind.Spoken()} {string.Join(", ", allowed.Select(Words.Write))} are allowed.")
            {
                OnPage = $"reason is {reason.Spoken()}: of a {resource.Kind.Spoken()} {string.Join(", ", allowed.Select(r => r.Spoken()))} are allowed.",
            }]);
        }

        var other = await WorkingTimes.AbsencesDuring(db, span).Where(a => a.ResourceId == resource.Id).OrderBy(a => a.EnteredAt).FirstOrDefaultAsync(ct);
        return other is null
            ? null
            : Problem.Conflict("absent-already",
                $"{resource.Name} is away already from {time.Say(other.Span.Start)} until {time.Say(other.Span.End)} ({other.Reason.Spoken()}); withdraw that one, or give a span beside it.");
    }
}
