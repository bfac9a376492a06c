using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Estimates;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Findings;

/// <summary>
/// The owner's yes or no to a finding: who, when, how. A yes is to its price, and begins its service item; of what is not safe a no
/// says that the owner was told. The last answer holds.
/// </summary>
public static class AnswerFinding
{
    public sealed record Request : IAnswer
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        public EstimateDecision? Decision { get; init; }

        public AnswerWay? Way { get; init; }

        public Instant? SaidAt { get; init; }

        public bool BySomebodyElse { get; init; }

        /// <summary>Of what is not safe, declined: whoever spoke was told not to ride like this.</summary>
        public bool ToldOfDanger { get; init; }

        public string? Remark { get; init; }

        public int? AnswersSeen { get; init; }
    }

    /// <param name="Begun">The service item that is begun now.</param>
    /// <param name="Warnings">Of its begin: a special tool is out.</param>
    public sealed record Answer(Guid Id, Guid FindingId, int JobCardNumber, EstimateDecision Decision, string? Begun, IReadOnlyList<string> Warnings);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => this.AddAnswerRules();
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FindingRows.ForWork(db, request.Id, ct)).TryGet(out var found, out var problem)
            || (problem = Refuse(found.Finding, request)) is not null)
        {
            return problem;
        }

        if (await AnswerEntry.Unseen(db, request, a => a.FindingId == request.Id, ct) is { } meanwhile)
        {
            return meanwhile;
        }

        if (!(await AnswerEntry.Said(db, found.Open, request, clock, ct)).TryGet(out var said, out problem))
        {
            return problem;
        }

        var (finding, agrees) = (found.Finding, request.Decision == EstimateDecision.Agreed);
        var estimate = await db.Estimates.AsNoTracking().Where(e => e.FindingId == finding.Id).OrderByDescending(e => e.Version).FirstOrDefaultAsync(ct);
        if (estimate is null && agrees)
        {
            return Problem.Conflict("not-priced", $"{finding.Place}: nobody has said yet what it costs; price it first, so that the owner knows what is agreed.");
        }

        if (estimate is not null
            && AnswerRules.Refuse(estimate, estimate.Version, request.Decision!.Value, said.At, await WorkshopTimes.Read(db, ct)) is { } refused)
        {
            return refused;
        }

        var row = AnswerEntry.Add(db, request, estimate?.Id, finding.Id, said, request.ToldOfDanger, actor, clock);
        await db.SaveChangesAsync(ct);
        if (!agrees || finding.ServiceItemCode is not { } code || found.Open.ItemsUnderWay.Any(i => i.Code == code))
        {
            return new Answer(row.Id, finding.Id, finding.JobCardNumber, row.Decision, null, []);
        }

        // The work is begun by the same use case as on the card.
        return (await StartItem.Handle(new StartItem.Request { Number = finding.JobCardNumber, Code = code }, db, actor, clock, ct))
            .Then<Answer>(begun => new Answer(row.Id, finding.Id, finding.JobCardNumber, row.Decision, begun.Name, begun.Warnings));
    }

    private static Problem? Refuse(Finding finding, Request request) =>
        finding.WithdrawnAt is not null ? Problem.Conflict("finding-withdrawn", $"{finding.Place}: the finding was withdrawn; nobody answers it any more.")
        : finding.DoneAt is not null ? Problem.Conflict("finding-done", $"{finding.Place}: the work is done already.")
        : request is { Decision: EstimateDecision.Declined, ToldOfDanger: false } && finding.Gravity == FindingGravity.Unsafe
            ? Problem.Impossible("danger-not-told", "toldOfDanger",
                $"toldOfDanger is false: {finding.Place} is not safe. Tell whoever declines that the motorcycle is not to be ridden like this, then say so.")
        : null;
}
