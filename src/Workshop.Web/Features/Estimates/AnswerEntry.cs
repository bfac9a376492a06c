using System.Linq.Expressions;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>What an owner said, as it is typed: to an estimate of a visit, or to a finding.</summary>
public interface IAnswer
{
    EstimateDecision? Decision { get; }

    AnswerWay? Way { get; }

    /// <summary>When it was said; now, where it is left out.</summary>
    Instant? SaidAt { get; }

    /// <summary>Somebody else spoke for the owner; the remark says who.</summary>
    bool BySomebodyElse { get; }

    string? Remark { get; }

    /// <summary>How many answers stood when this one was written, so that none that came meanwhile is overtaken unseen; absent: not looked at.</summary>
    int? AnswersSeen { get; }
}

/// <summary>Writes what an owner said. The use cases decide whether it may be said.</summary>
internal static class AnswerEntry
{
    public static void AddAnswerRules<T>(this AbstractValidator<T> rules)
        where T : IAnswer
    {
        rules.RuleFor(a => a.Decision).IsGiven("agreed or declined");
        rules.RuleFor(a => a.Way).IsGiven("how it was said: inPerson, telephone, email or letter");
        rules.RuleFor(a => a.AnswersSeen).GreaterThanOrEqualTo(0).WithMessage("{PropertyName} is {PropertyValue}: a number of answers, 0 or more, is allowed.");
        rules.RuleFor(a => a.Remark).IsAtMost(Limits.Remark);
        rules.RuleFor(a => a.Remark).IsGiven("who spoke for the owner").When(a => a.BySomebodyElse);
    }

    /// <summary>When it was said, and by whom of the books.</summary>
    public static async Task<Outcome<(Instant At, Guid? By)>> Said(
        WorkshopDbContext db, OpenCard open, IAnswer answer, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        if (answer.SaidAt > now)
        {
            var time = await Bookings.WorkshopTimes.Read(db, ct);
            return Problem.Impossible("said-later", "saidAt", $"saidAt is {time.Say(answer.SaidAt.Value)}: a time not after now, {time.Say(now)}, is allowed.");
        }

        var owner = await db.Motorcycles.Where(m => m.Id == open.Card.MotorcycleId).Select(m => m.OwnerId).SingleAsync(ct);
        return owner is null && !answer.BySomebodyElse
            ? Problem.Impossible("no-owner", "bySomebodyElse", "bySomebodyElse is false, but no owner of the motorcycle is on record: say in the remark who spoke.")
            : (answer.SaidAt ?? now, answer.BySomebodyElse ? null : owner);
    }

    /// <summary>Nothing where every answer that stands was seen by whoever answers now.</summary>
    /// <param name="which">The answers of the matter; its card is locked.</param>
    public static async Task<Problem?> Unseen(
        WorkshopDbContext db, IAnswer answer, Expression<Func<EstimateAnswer, bool>> which, CancellationToken ct)
    {
        if (answer.AnswersSeen is not { } seen)
        {
            return null;
        }

        var standing = await db.EstimateAnswers.AsNoTracking().Where(which).OrderByDescending(a => a.RecordedAt).ThenByDescending(a => a.Id).ToListAsync(ct);
        return AnswerRules.RefuseUnseen(seen, standing, await Bookings.WorkshopTimes.Read(db, ct));
    }

    public static EstimateAnswer Add(
        WorkshopDbContext db, IAnswer answer, Guid? estimate, Guid? finding, (Instant At, Guid? By) said, bool toldOfDanger, Actor actor, IClock clock)
    {
        var row = new EstimateAnswer
        {
            Id = NewId.At(clock), EstimateId = estimate, FindingId = finding, Decision = answer.Decision!.Value, PersonId = said.By, Way = answer.Way!.Value,
            SaidAt = said.At, ToldOfDanger = toldOfDanger, RemarkId = Remarks.Add(db, answer.Remark, actor, clock), RecordedBy = actor.PersonId,
            RecordedAt = clock.GetCurrentInstant(),
        };
        db.EstimateAnswers.Add(row);
        return row;
    }
}
