using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Photos;

/// <summary>A photo beside what it shows; the picture itself has an address of its own.</summary>
/// <param name="Removed">The manager took the picture out; who, when and why stays.</param>
public sealed record PhotoView(
    Guid Id, Guid? FindingId, string MediaType, int WidthPx, int HeightPx, string? Caption, string AddedBy, Instant AddedAt,
    RemovedPhoto? Removed, uint RowVersion)
{
    /// <summary>Where the picture is served, to the signed-in.</summary>
    public string Address => $"/photos/{Id}";

    /// <summary>The same, small.</summary>
    public string SmallAddress => $"/photos/{Id}/small";
}

public sealed record RemovedPhoto(Instant At, string By, string? Because);

internal static class PhotoRows
{
    /// <summary>The photos of a visit, in order of time, without their content.</summary>
    public static async Task<IReadOnlyList<PhotoView>> Of(WorkshopDbContext db, int number, CancellationToken ct) => (await (
        from photo in db.Photos.AsNoTracking()
        join adder in db.People on photo.AddedBy equals adder.Id
        join caption in db.Remarks on photo.CaptionRemarkId equals caption.Id into captions
        from caption in captions.DefaultIfEmpty()
        join remover in db.People on photo.RemovedBy equals remover.Id into removers
        from remover in removers.DefaultIfEmpty()
        join because in db.Remarks on photo.RemovedRemarkId equals because.Id into reasons
        from because in reasons.DefaultIfEmpty()
        where photo.JobCardNumber == number
        orderby photo.AddedAt, photo.Id
        select new
        {
            photo.Id, photo.FindingId, photo.MediaType, photo.WidthPx, photo.HeightPx, Caption = caption.Text, Adder = adder.Name, photo.AddedAt, photo.RemovedAt,
            Remover = remover.Name, Because = because.Text, Version = EF.Property<uint>(photo, MappingExtensions.RowVersion),
        }).ToListAsync(ct))
        .ConvertAll(p => new PhotoView(
            p.Id, p.FindingId, p.MediaType, p.WidthPx, p.HeightPx, p.Caption, p.Adder, p.AddedAt,
            p.RemovedAt is { } at ? new RemovedPhoto(at, p.Remover, p.Because) : null, p.Version));
}
