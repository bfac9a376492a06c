using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;
using Workshop.Domain.Estimates;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Photos;

internal static class PhotosApi
{
    /// <summary>Of a send as a whole: files, and what multipart writes between them.</summary>
    public const long LargestSend = 40_000_000;

    public static void Map(RouteGroupBuilder api)
    {
        var photos = api.MapGroup("").WithTags("Photos");
        photos.MapPost("/job-cards/{number:int}/photos", async (int number, HttpContext http) =>
            {
                var (files, form) = await Sent(http.Request);
                return await http.RequestServices.GetRequiredService<Api>().Post(
                    new AddPhotos.Request
                    {
                        Number = number, Files = files, Caption = form["caption"].FirstOrDefault(),
                        FindingId = form["findingId"].FirstOrDefault() is { Length: > 0 } finding
                            ? Guid.TryParse(finding, out var id) ? id : throw new BadHttpRequestException($"findingId is \"{finding}\": an id is allowed.")
                            : null,
                    }, AddPhotos.Handle);
            })
            .WithMetadata(new RequestSizeLimitAttribute(LargestSend))
            .Accepts<IFormFileCollection>("multipart/form-data")
            .RequireAuthorization(Policies.TellsProgress);
        photos.MapPut("/photos/{id:guid}/removal", (Guid id, RemovePhoto.Request body, Api run) =>
            run.Change(body with { Id = id, RowVersion = run.IfMatch }, RemovePhoto.Handle)).RequireAuthorization(Policies.Manages);
        photos.MapGet("/photos/{id:guid}/content", (Guid id, bool? small, WorkshopDbContext db, HttpContext http) => Serve(id, small ?? false, db, http));
    }

    /// <summary>The pictures for pages, whose images are fetched with the cookie.</summary>
    public static void MapPhotos(this IEndpointRouteBuilder app)
    {
        app.MapGet("/photos/{id:guid}", (Guid id, WorkshopDbContext db, HttpContext http) => Serve(id, small: false, db, http))
            .RequireAuthorization(Policies.Reads).ExcludeFromDescription();
        app.MapGet("/photos/{id:guid}/small", (Guid id, WorkshopDbContext db, HttpContext http) => Serve(id, small: true, db, http))
            .RequireAuthorization(Policies.Reads).ExcludeFromDescription();
    }

    /// <summary>The files of a form.</summary>
    public static async Task<IReadOnlyList<AddPhotos.File>> Read(IEnumerable<IFormFile> files, CancellationToken ct)
    {
        var read = new List<AddPhotos.File>();
        foreach (var file in files.Take(PictureRules.MostAtOnce + 1))
        {
            // A file that is too large is refused by its length; there is no need to read it.
            if (file.Length > PictureRules.LargestBytes)
            {
                throw new BadHttpRequestException($"{file.FileName} has {file.Length} bytes: at most {PictureRules.LargestBytes} are allowed.");
            }

            using var content = new MemoryStream((int)file.Length);
            await file.CopyToAsync(content, ct);
            read.Add(new AddPhotos.File(Path.GetFileName(file.FileName), content.ToArray()));
        }

        return read;
    }

    private static async Task<(IReadOnlyList<AddPhotos.File> Files, IFormCollection Form)> Sent(HttpRequest request)
    {
        if (!request.HasFormContentType)
        {
            throw new BadHttpRequestException($"The body is {request.ContentType ?? "of no stated type"}: multipart/form-data with files is allowed.");
        }

        try
        {
            var form = await request.ReadFormAsync(new FormOptions { MultipartBodyLengthLimit = LargestSend }, request.HttpContext.RequestAborted);
            return (await Read(form.Files, request.HttpContext.RequestAborted), form);
        }
        catch (InvalidDataException fault)
        {
            throw new BadHttpRequestException(fault.Message, fault);
        }
    }

    /// <summary>
    /// A picture and nothing else: of the type that it was made as, in no page of anybody else's, running nothing, kept by no cache.
    /// </summary>
    private static async Task<IResult> Serve(Guid id, bool small, WorkshopDbContext db, HttpContext http)
    {
        var photo = await db.Photos.AsNoTracking().Where(p => p.Id == id && p.RemovedAt == null)
            .Select(p => new { p.MediaType, Content = small ? p.Thumbnail : p.Content }).SingleOrDefaultAsync(http.RequestAborted);
        if (photo is null)
        {
            return TypedResults.NotFound();
        }

        var type = small ? PictureKind.Jpeg.MediaType() : photo.MediaType;
        var headers = http.Response.Headers;
        headers.ContentSecurityPolicy = "default-src 'none'; sandbox; frame-ancestors 'none'";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.ContentDisposition = new ContentDispositionHeaderValue("inline") { FileName = $"photo-{id}.{type[(type.IndexOf('/', StringComparison.Ordinal) + 1)..]}" }.ToString();
        return TypedResults.Bytes(photo.Content, type);
    }
}
