using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Estimates;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Features.Photos;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Records;

/// <summary>
/// What a link leads to: one record, and nothing else of the workshop. A wrong link, one that has expired and one that was revoked lead
/// to the same nothing, so that nobody learns which it is.
/// </summary>
internal sealed record LinkedRecord(Guid LinkId, Instant ExpiresAt, GetRecord.Answer Record)
{
    public const string Nothing = "This link leads to no record, or no longer. Ask your workshop for a new one.";

    public static async Task<LinkedRecord?> Find(WorkshopDbContext db, string secret, Instant now, CancellationToken ct)
    {
        var digest = LinkSecret.DigestOf(secret);
        var found = await (
            from link in db.RecordLinks.AsNoTracking()
            join record in db.IssuedRecords on link.JobCardNumber equals record.JobCardNumber
            where link.SecretDigest == digest
            select new { link, record }).SingleOrDefaultAsync(ct);
        return found is not null && found.link.StateAt(now) == RecordLinkState.Open
            ? new LinkedRecord(found.link.Id, found.link.ExpiresAt, GetRecord.Answer.Of(found.record))
            : null;
    }

    /// <summary>Somebody has opened the page or the PDF.</summary>
    public Task<int> CountOpening(WorkshopDbContext db, Instant now, CancellationToken ct) => db.RecordLinks.Where(l => l.Id == LinkId)
        .ExecuteUpdateAsync(set => set.SetProperty(l => l.Opened, l => l.Opened + 1).SetProperty(l => l.LastOpenedAt, now), ct);

    /// <summary>A photo of this record; nothing where it belongs to another card, or was taken out.</summary>
    public async Task<GetPhoto.Answer?> Photo(WorkshopDbContext db, Guid photo, bool small, CancellationToken ct) =>
        Record.Record.Findings.Any(f => f.Photos.Contains(photo))
            ? await db.Photos.AsNoTracking().Where(p => p.Id == photo && p.JobCardNumber == Record.JobCardNumber && p.RemovedAt == null)
                .Select(p => new GetPhoto.Answer(p.Id, small ? PictureKind.Jpeg.MediaType() : p.MediaType, small ? p.Thumbnail : p.Content)).SingleOrDefaultAsync(ct)
            : null;

    /// <summary>The address is the secret: nobody keeps the answer, lists it, or tells another site where the reader came from.</summary>
    public static void Conceal(HttpResponse response)
    {
        ArgumentNullException.ThrowIfNull(response);
        response.Headers.CacheControl = "no-store";
        response.Headers["X-Robots-Tag"] = "noindex, nofollow, noarchive";
        response.Headers["Referrer-Policy"] = "no-referrer";
    }
}
