using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shims;

namespace Workshop.Web.Features.Clearances;

/// <summary>
/// Somebody turned the crankshaft two full turns by hand, met no hard stop, and found the marks right again. Refused while what
/// holds the shafts is not ticked: turned before, it proves nothing.
/// </summary>
public static class ConfirmHandTurns
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Two full turns in running direction, slowly, with nothing that stopped them.</summary>
        public bool NoHardStop { get; init; }

        /// <summary>Every timing mark is right again.</summary>
        public bool MarksRight { get; init; }
    }

    public sealed record Answer(int Number, Instant ConfirmedAt);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.NoHardStop).Equal(true)
                .WithMessage("{PropertyName} is false: with resistance that is not compression, stop; a valve may be on a piston. Only true is recorded.");
            RuleFor(r => r.MarksRight).Equal(true)
                .WithMessage("{PropertyName} is false: set the timing right first, then turn again. Only true is recorded.");
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
        var turn = new HandTurn { Id = NewId.At(now), JobCardNumber = request.Number, ConfirmedBy = actor.PersonId, ConfirmedAt = now };
        var measured = await CardMeasurements.Load(db, request.Number, ct);
        var against = await AsLeft.Against(db, open, measured, ct, turn);
        if (against.Count > 0)
        {
            return Problem.Conflict("not-closed", string.Join(" ", against));
        }

        db.HandTurns.Add(turn);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, now);
    }
}
