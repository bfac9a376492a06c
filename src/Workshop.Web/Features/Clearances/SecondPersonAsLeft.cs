using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Clearances;

/// <summary>Where the workshop asks for a second person for the readings as left, and who has confirmed them.</summary>
internal static class SecondPersonAsLeft
{
    /// <summary>Of all engine models or of the card's: marked at once for cards of every version.</summary>
    public static Task<bool> IsAsked(WorkshopDbContext db, OpenCard open, CancellationToken ct) => db.AsLeftMarks.AsNoTracking().AnyAsync(
        mark => mark.EngineModelId == null
            || db.EngineModelVersions.Any(v => v.Id == open.Card.EngineModelVersionId && v.EngineModelId == mark.EngineModelId), ct);

    public static Task<List<AsLeftWitness>> Witnesses(WorkshopDbContext db, int number, CancellationToken ct) =>
        db.AsLeftWitnesses.AsNoTracking().Where(w => w.JobCardNumber == number).ToListAsync(ct);
}
