using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Finishing;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Finishing;

/// <summary>What became of the service reminder on the instruments: reset, there is none, or not reset and why.</summary>
public static class RecordReminder
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public ReminderOutcome? Outcome { get; init; }

        /// <summary>Asked where it is not reset.</summary>
        public string? Words { get; init; }

        /// <summary>Why it is entered again.</summary>
        public string? Reason { get; init; }
    }

    public sealed record Answer(Guid Id, int Attempt, ReminderOutcome Outcome);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Outcome).IsChosen("what became of it", FinishingWords.Spoken).IsInEnum();
            RuleFor(r => r.Words).IsGiven("why it is not reset").When(r => r.Outcome == ReminderOutcome.NotReset);
            RuleFor(r => r.Words).IsAtMost(Limits.Remark);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FinishingEntry.Begin(db, request.Number, request.Reason, actor, clock, ct)).TryGet(out var entry, out var problem))
        {
            return problem;
        }

        var before = Attempts.Last(entry.Facts.Finished.Reminders);
        if (entry.AgainstAgain(("the service reminder", before)) is { } again)
        {
            return again;
        }

        var reset = new ReminderReset
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, Attempt = Attempts.After(before), Outcome = request.Outcome!.Value,
            WordsRemarkId = entry.Words(request.Words), EnteredBy = actor.PersonId, EnteredAt = entry.Now,
            SupersedesId = before?.Id, ReasonRemarkId = entry.ReasonFor(before),
        };
        db.ReminderResets.Add(reset);
        await db.SaveChangesAsync(ct);
        return new Answer(reset.Id, reset.Attempt, reset.Outcome);
    }
}
