using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;

namespace Workshop.Web.Features.EngineModels;

/// <summary>
/// The manager asks for a second person at a fastener of an engine model, or asks for none any more. It holds at once, for cards that
/// are open too. Said twice, it changes nothing.
/// </summary>
public static class SetSecondPerson
{
    public sealed record Request(Guid Id, string FastenerCode, bool Asked);

    public sealed record Answer(string FastenerCode, bool Asked);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var specification = await (
            from model in db.EngineModels
            join version in db.EngineModelVersions on model.Id equals version.EngineModelId
            where model.Id == request.Id && version.Version == model.CurrentVersion
            select version.Specification).AsNoTracking().SingleOrDefaultAsync(ct);
        if (specification is null)
        {
            return Problem.NotFound($"Engine model {request.Id}");
        }

        var mark = await db.SecondPersonMarks.FindAsync([request.Id, request.FastenerCode], ct);
        if (request.Asked && mark is null)
        {
            if (specification.Fasteners.All(f => f.Code != request.FastenerCode))
            {
                return Problem.NotFound($"Fastener {request.FastenerCode} of engine model {request.Id}");
            }

            db.SecondPersonMarks.Add(new SecondPersonMark
            {
                EngineModelId = request.Id, FastenerCode = request.FastenerCode, MarkedBy = actor.PersonId, MarkedAt = clock.GetCurrentInstant(),
            });
        }
        else if (!request.Asked && mark is not null)
        {
            db.SecondPersonMarks.Remove(mark);
        }

        await db.SaveChangesAsync(ct);
        return new Answer(request.FastenerCode, request.Asked);
    }
}
