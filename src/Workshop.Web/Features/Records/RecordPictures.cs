using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Features.Paper;

namespace Workshop.Web.Features.Records;

/// <summary>The photos of a record that are still there: by address for a page, as pictures for a PDF.</summary>
internal static class RecordPictures
{
    /// <param name="addressOf">Where the page fetches one, small.</param>
    /// <param name="largeAddressOf">Where it is found large.</param>
    public static async Task<Func<Guid, string, PaperPicture?>> ForPage(
        WorkshopDbContext db, ServiceRecord record, Func<Guid, string> addressOf, Func<Guid, string> largeAddressOf, CancellationToken ct)
    {
        var ids = Ids(record);
        var there = ids.Count == 0 ? [] : (await Standing(db, record, ids).Select(p => p.Id).ToListAsync(ct)).ToHashSet();
        return (id, words) => there.Contains(id) ? new PaperPicture(addressOf(id), largeAddressOf(id), words) : null;
    }

    public static async Task<Func<Guid, string, PaperPicture?>> ForPdf(WorkshopDbContext db, ServiceRecord record, CancellationToken ct)
    {
        var ids = Ids(record);
        var pictures = ids.Count == 0 ? [] : await Standing(db, record, ids).Select(p => new { p.Id, p.Thumbnail }).ToDictionaryAsync(p => p.Id, p => p.Thumbnail, ct);
        return (id, words) => pictures.TryGetValue(id, out var jpeg) ? new PaperPicture("", "", words, jpeg) : null;
    }

    private static List<Guid> Ids(ServiceRecord record) => [.. record.Findings.SelectMany(f => f.Photos)];

    private static IQueryable<Domain.Estimates.Photo> Standing(WorkshopDbContext db, ServiceRecord record, List<Guid> ids) =>
        db.Photos.AsNoTracking().Where(p => ids.Contains(p.Id) && p.JobCardNumber == record.JobCardNumber && p.RemovedAt == null);
}
