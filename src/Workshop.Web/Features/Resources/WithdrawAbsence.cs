using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>An absence does not take place, or ended early and the rest is entered anew: it takes nothing any more, and is kept.</summary>
public static class WithdrawAbsence
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid ResourceId { get; init; }

        [JsonIgnore]
        public Guid AbsenceId { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    public sealed record Answer(Guid Id, Instant WithdrawnAt, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ResourceLock.Take(db, request.ResourceId, ct)).TryGet(out _, out var problem))
        {
            return problem;
        }

        var absence = await db.Absences.SingleOrDefaultAsync(a => a.Id == request.AbsenceId && a.ResourceId == request.ResourceId, ct);
        if (absence is null)
        {
            return Problem.NotFound($"Absence {request.AbsenceId}");
        }

        if (absence.WithdrawnAt is not null)
        {
            return Problem.Conflict("withdrawn", "The absence is withdrawn already.");
        }

        absence.WithdrawnAt = clock.GetCurrentInstant();
        var version = db.Entry(absence).Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(absence.Id, absence.WithdrawnAt.Value, version.CurrentValue);
    }
}
