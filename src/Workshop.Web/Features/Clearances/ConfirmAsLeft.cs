using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Clearances;

/// <summary>
/// A second person confirms the readings as left as they stand: somebody else than who measured or entered one of them. Any later
/// reading as left voids it.
/// </summary>
public static class ConfirmAsLeft
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>How many readings as left the card had when the person looked, superseded ones among them.</summary>
        public int? Readings { get; init; }
    }

    public sealed record Answer(int Number, int Readings, Instant WitnessedAt);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Readings).NotNull()
            .WithMessage("{PropertyName} is empty: give how many readings as left were looked at, as the card names it.").IsWhole(0, int.MaxValue);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out _, out var problem))
        {
            return problem;
        }

        var set = AsLeftSet.Of(await db.ClearanceReadings.AsNoTracking().Where(r => r.JobCardNumber == request.Number && r.Stage == Stage.AsLeft).ToListAsync(ct));
        var witnesses = await SecondPersonAsLeft.Witnesses(db, request.Number, ct);
        if (set.Against(request.Readings!.Value, actor.PersonId, witnesses) is { } refusal)
        {
            return refusal;
        }

        var witness = new AsLeftWitness
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, ReadingsSeen = set.Count, WitnessedBy = actor.PersonId, WitnessedAt = clock.GetCurrentInstant(),
        };
        db.AsLeftWitnesses.Add(witness);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, set.Count, witness.WitnessedAt);
    }
}
