using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Estimates;

/// <summary>What the owner said to the estimate of a visit: who, when, how. The last answer holds.</summary>
public static class AnswerEstimate
{
    public sealed record Request : IAnswer
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        public EstimateDecision? Decision { get; init; }

        public AnswerWay? Way { get; init; }

        public Instant? SaidAt { get; init; }

        public bool BySomebodyElse { get; init; }

        public string? Remark { get; init; }

        public int? AnswersSeen { get; init; }
    }

    public sealed record Answer(Guid Id, int JobCardNumber, int Version, EstimateDecision Decision);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => this.AddAnswerRules();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var estimate = await db.Estimates.AsNoTracking().SingleOrDefaultAsync(e => e.Id == request.Id, ct);
        if (estimate is null)
        {
            return Problem.NotFound($"Estimate {request.Id}");
        }

        if (estimate.FindingId is { } finding)
        {
            return Problem.Conflict("answer-finding", $"Estimate {estimate.Version} is that of a finding: answer finding {finding}, so that its work is begun.");
        }

        if (!(await OpenCard.Lock(db, estimate.JobCardNumber, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (AnswerRules.RefuseChange(open.Card) is { } closed)
        {
            return closed;
        }

        if (await AnswerEntry.Unseen(db, request, a => a.EstimateId == estimate.Id, ct) is { } meanwhile)
        {
            return meanwhile;
        }

        if (!(await AnswerEntry.Said(db, open, request, clock, ct)).TryGet(out var said, out problem))
        {
            return problem;
        }

        var newest = await db.Estimates.Where(e => e.JobCardNumber == estimate.JobCardNumber && e.FindingId == null).MaxAsync(e => e.Version, ct);
        if (AnswerRules.Refuse(estimate, newest, request.Decision!.Value, said.At, await WorkshopTimes.Read(db, ct)) is { } refused)
        {
            return refused;
        }

        var row = AnswerEntry.Add(db, request, estimate.Id, null, said, toldOfDanger: false, actor, clock);
        await db.SaveChangesAsync(ct);
        return new Answer(row.Id, estimate.JobCardNumber, estimate.Version, row.Decision);
    }
}
