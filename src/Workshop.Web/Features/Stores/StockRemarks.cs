using NodaTime;
using Workshop.Domain;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>Words beside a movement.</summary>
internal static class StockRemarks
{
    /// <summary>The remark's id, saved before the rows that point at it; nothing where nothing was said.</summary>
    public static async Task<Guid?> Add(WorkshopDbContext db, string? text, Actor actor, Instant now, CancellationToken ct)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var remark = new Remark { Id = NewId.At(now), Text = text.Trim(), WrittenBy = actor.PersonId, WrittenAt = now };
        db.Remarks.Add(remark);
        await db.SaveChangesAsync(ct);
        return remark.Id;
    }
}
