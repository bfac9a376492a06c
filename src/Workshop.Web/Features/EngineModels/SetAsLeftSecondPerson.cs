using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.EngineModels;

/// <summary>
/// The manager asks for a second person for the readings as left, of one engine model or of all, or asks for none any more. It holds
/// at once, for cards that are open too. Said twice, it changes nothing.
/// </summary>
public static class SetAsLeftSecondPerson
{
    /// <param name="Id">The engine model; absent: all.</param>
    public sealed record Request(Guid? Id, bool Asked);

    public sealed record Answer(Guid? EngineModelId, bool Asked);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (request.Id is { } id && !await db.EngineModels.AnyAsync(m => m.Id == id, ct))
        {
            return Problem.NotFound($"Engine model {id}");
        }

        var mark = await db.AsLeftMarks.SingleOrDefaultAsync(m => m.EngineModelId == request.Id, ct);
        if (request.Asked && mark is null)
        {
            db.AsLeftMarks.Add(new AsLeftMark { Id = NewId.At(clock), EngineModelId = request.Id, MarkedBy = actor.PersonId, MarkedAt = clock.GetCurrentInstant() });
        }
        else if (!request.Asked && mark is not null)
        {
            db.AsLeftMarks.Remove(mark);
        }

        await db.SaveChangesAsync(ct);
        return new Answer(request.Id, request.Asked);
    }
}
