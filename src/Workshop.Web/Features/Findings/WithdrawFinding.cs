using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

/// <summary>It was no finding after all: looked at again, or entered twice. It stays on the card, and stands in nobody's way.</summary>
public static class WithdrawFinding
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Reason { get; init; }
    }

    public sealed record Answer(Guid Id, int JobCardNumber, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Reason).IsGiven("why it was no finding").IsAtMost(Limits.Remark);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FindingRows.ForWork(db, request.Id, ct)).TryGet(out var found, out var problem))
        {
            return problem;
        }

        var finding = found.Finding;
        if (finding.WithdrawnAt is not null || finding.DoneAt is not null)
        {
            return Problem.Conflict("finding-over", $"{finding.Place}: the finding is {(finding.DoneAt is null ? "withdrawn" : "done")} already.");
        }

        (finding.WithdrawnAt, finding.WithdrawnBy, finding.WithdrawnRemarkId) =
            (clock.GetCurrentInstant(), actor.PersonId, Remarks.Add(db, request.Reason, actor, clock));
        var version = db.Entry(finding).Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(finding.Id, finding.JobCardNumber, version.CurrentValue);
    }
}
