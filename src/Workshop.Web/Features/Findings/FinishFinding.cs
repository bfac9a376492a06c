using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

/// <summary>The work that the owner agreed to is done. What a service item puts right is done with that item.</summary>
public static class FinishFinding
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    public sealed record Answer(Guid Id, int JobCardNumber, Instant DoneAt, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FindingRows.ForWork(db, request.Id, ct)).TryGet(out var found, out var problem))
        {
            return problem;
        }

        var finding = found.Finding;
        var state = (await FindingRows.Facts(db, db.Findings.Where(f => f.Id == finding.Id), ct)).Single().State;
        if (state != FindingState.Agreed)
        {
            return Problem.Conflict("not-agreed", $"{finding.Place} is {state.Spoken()}; only what the owner agreed to is done.");
        }

        if (finding.ServiceItemCode is { } code)
        {
            return Problem.Conflict("by-service-item", $"{finding.Place} is put right by the service item \"{code}\"; the sign-off says whether that was done.");
        }

        (finding.DoneAt, finding.DoneBy) = (clock.GetCurrentInstant(), actor.PersonId);
        var version = db.Entry(finding).Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(finding.Id, finding.JobCardNumber, finding.DoneAt.Value, version.CurrentValue);
    }
}
