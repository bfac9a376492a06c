using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>A second person confirms the tick of a fastener that they looked at: somebody else than who ticked it.</summary>
public static class WitnessTick
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public string? FastenerCode { get; init; }

        /// <summary>The tick that was looked at; one made since is another.</summary>
        public Guid? TickId { get; init; }
    }

    public sealed record Answer(Guid TickId, string FastenerCode, Instant WitnessedAt);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.FastenerCode).IsGiven("the code of a fastener of the torque sheet").IsAtMost(Limits.Code);
            RuleFor(r => r.TickId).IsGiven("the tick that was looked at, as the torque sheet names it");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var sheet = await GetTorqueSheet.Read(db, open, ct);
        if (sheet.Lines.SingleOrDefault(l => l.Fastener.Code == request.FastenerCode) is not { } line)
        {
            return TickFastener.NotOpened(request.Number, request.FastenerCode!, sheet);
        }

        var witnessed = await SecondPersons.Witnessed(db, request.Number, ct);
        if (SecondPerson.Against(line, request.TickId!.Value, actor.PersonId, witnessed) is { } refusal)
        {
            return refusal;
        }

        var witness = new TickWitness { TickId = request.TickId.Value, WitnessedBy = actor.PersonId, WitnessedAt = clock.GetCurrentInstant() };
        db.TickWitnesses.Add(witness);
        await db.SaveChangesAsync(ct);
        return new Answer(witness.TickId, line.Fastener.Code, witness.WitnessedAt);
    }
}
