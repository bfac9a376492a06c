using NodaTime;
using Workshop.Domain;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>Free text that a row points at.</summary>
internal static class Remarks
{
    /// <summary>The id of the remark; nothing where nothing was written.</summary>
    public static Guid? Add(WorkshopDbContext db, string? text, Actor actor, IClock clock)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var remark = new Remark { Id = NewId.At(clock), Text = text.Trim(), WrittenBy = actor.PersonId, WrittenAt = clock.GetCurrentInstant() };
        db.Remarks.Add(remark);
        return remark.Id;
    }
}
