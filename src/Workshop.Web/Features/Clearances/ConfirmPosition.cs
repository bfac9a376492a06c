using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Clearances;

/// <summary>The crankshaft stands at a measuring position: somebody has looked at the mark and at the lobes.</summary>
public static class ConfirmPosition
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public Stage? Stage { get; init; }

        /// <summary>As the specification names it.</summary>
        public string? Position { get; init; }

        /// <summary>The mark is where the specification says, and the lobes of the valves measured there point away.</summary>
        public bool MarkAndLobes { get; init; }
    }

    public sealed record Answer(int Number, Stage Stage, string Position, Instant ConfirmedAt);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Stage).IsGiven("asFound or asLeft").IsInEnum();
            RuleFor(r => r.Position).IsGiven("the measuring position").IsAtMost(Limits.Name);
            RuleFor(r => r.MarkAndLobes).Equal(true)
                .WithMessage("{PropertyName} is false: turn on in running direction until the mark is right and the lobes point away. Only true is recorded.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var stops = MeasuringOrder.Of(open.Specification);
        if (stops.All(s => s.Name != request.Position))
        {
            return Problem.Impossible("position-unknown", "position",
                $"position is \"{request.Position}\": the engine is measured at {string.Join("; ", stops.Select(s => s.Name))}.");
        }

        var now = clock.GetCurrentInstant();
        db.PositionConfirmations.Add(new PositionConfirmation
        {
            Id = NewId.At(now), JobCardNumber = request.Number, Stage = request.Stage!.Value, Position = request.Position!,
            ConfirmedBy = actor.PersonId, ConfirmedAt = now,
        });
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, request.Stage.Value, request.Position!, now);
    }
}
