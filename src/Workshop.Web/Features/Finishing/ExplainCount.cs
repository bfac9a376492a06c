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

/// <summary>
/// Somebody says where what did not come back is. It holds for the difference as it is now: when more is counted, it is explained
/// anew.
/// </summary>
public static class ExplainCount
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public string? Thing { get; init; }

        /// <summary>Where it is.</summary>
        public string? Words { get; init; }
    }

    public sealed record Answer(Guid Id, string Thing, int Difference);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Thing).IsGiven("the thing, by its code").IsAtMost(Limits.Code);
            RuleFor(r => r.Words).IsGiven("where it is").IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FinishingEntry.Begin(db, request.Number, null, actor, clock, ct)).TryGet(out var entry, out var problem))
        {
            return problem;
        }

        if (BayCount.Of(entry.Facts).FirstOrDefault(t => t.Thing.Code == request.Thing) is not { Difference: not 0 } thing)
        {
            return Problem.Conflict("nothing-missing", $"Of \"{request.Thing}\" as much came back as went in: there is nothing to explain.");
        }

        var explanation = new CountExplanation
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, ThingCode = thing.Thing.Code, Difference = thing.Difference,
            WordsRemarkId = entry.Words(request.Words)!.Value, ExplainedBy = actor.PersonId, ExplainedAt = entry.Now,
        };
        db.CountExplanations.Add(explanation);
        await db.SaveChangesAsync(ct);
        return new Answer(explanation.Id, explanation.ThingCode, explanation.Difference);
    }
}
