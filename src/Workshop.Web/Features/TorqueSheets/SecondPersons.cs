using Microsoft.EntityFrameworkCore;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>Where the workshop asks for a second person on a card, and which of its ticks have one.</summary>
internal static class SecondPersons
{
    /// <summary>Codes of marked fasteners. A mark is the engine model's, so it holds for cards of every version at once.</summary>
    public static async Task<IReadOnlySet<string>> Marked(WorkshopDbContext db, OpenCard open, CancellationToken ct) => (await (
        from mark in db.SecondPersonMarks.AsNoTracking()
        join version in db.EngineModelVersions on mark.EngineModelId equals version.EngineModelId
        where version.Id == open.Card.EngineModelVersionId
        select mark.FastenerCode).ToListAsync(ct)).ToHashSet(StringComparer.Ordinal);

    public static async Task<IReadOnlySet<Guid>> Witnessed(WorkshopDbContext db, int number, CancellationToken ct) => (await (
        from witness in db.TickWitnesses.AsNoTracking()
        join tick in db.FastenerTicks on witness.TickId equals tick.Id
        where tick.JobCardNumber == number
        select witness.TickId).ToListAsync(ct)).ToHashSet();
}
