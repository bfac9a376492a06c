using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Estimates;
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
        photos.MapGet("/photos/{id:guid}/content", (Guid id, bool? small, UseCases run, CancellationToken ct) => Serve(id, small ?? false, run, ct));
    }

    /// <summary>The pictures for pages, whose images are fetched with the cookie.</summary>
    public static void MapPhotos(this IEndpointRouteBuilder app)
    {
        app.MapGet("/photos/{id:guid}", (Guid id, UseCases run, CancellationToken ct) => Serve(id, small: false, run, ct))
            .RequireAuthorization(Policies.Reads).ExcludeFromDescription();
        app.MapGet("/photos/{id:guid}/small", (Guid id, UseCases run, CancellationToken ct) => Serve(id, small: true, run, ct))
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

    private static async Task<PictureResult> Serve(Guid id, bool small, UseCases run, CancellationToken ct) =>
        new(await run.Read(new GetPhoto.Request(id, small), GetPhoto.Handle, ct));
}
