using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Estimates;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Photos;

/// <summary>What pages with photos do alike: take files in, and take a picture out.</summary>
public abstract class PhotoPage : WorkshopPage
{
    [BindProperty]
    public IReadOnlyList<IFormFile>? Files { get; set; }

    [BindProperty]
    public string? Caption { get; set; }

    [BindProperty]
    public RemovePhoto.Request Removal { get; set; } = new();

    /// <summary>Whether a file is refused, said beside the field; so that what is recorded with it is not written first.</summary>
    protected async Task<bool> Refuse(IReadOnlyList<IFormFile>? files)
    {
        var sent = files ?? [];
        if (sent.Count > PictureRules.MostAtOnce)
        {
            ModelState.AddModelError(nameof(Files), $"files holds {sent.Count}: up to {PictureRules.MostAtOnce} pictures are allowed at once.");
        }

        foreach (var file in sent.Where(f => f.Length is 0 or > PictureRules.LargestBytes))
        {
            ModelState.AddModelError(nameof(Files), $"{Path.GetFileName(file.FileName)} has {file.Length} bytes: 1 to {PictureRules.LargestBytes} are allowed.");
        }

        if (ModelState.IsValid)
        {
            foreach (var file in await PhotosApi.Read(sent, HttpContext.RequestAborted))
            {
                if ((await PictureCleaner.Clean(file.Name, file.Content, HttpContext.RequestAborted)).Problem is { } wrong)
                {
                    ModelState.AddModelError(nameof(Files), wrong.Sentence);
                }
            }
        }

        if (ModelState.ErrorCount > 0)
        {
            Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        }

        return ModelState.ErrorCount > 0;
    }

    protected async Task<IActionResult> Add(int number, Guid? finding, Func<IActionResult> done, Func<Task<IActionResult>> again)
    {
        ArgumentNullException.ThrowIfNull(done);
        ArgumentNullException.ThrowIfNull(again);
        if (!await May(Policies.TellsProgress))
        {
            return Forbid();
        }

        return await Refuse(Files)
            ? await again()
            : await Write(
                new AddPhotos.Request { Number = number, FindingId = finding, Caption = Caption, Files = await PhotosApi.Read(Files ?? [], HttpContext.RequestAborted) },
                AddPhotos.Handle,
                added =>
                {
                    Done = $"{Done} {(added.Photos.Count == 1 ? "The photo is" : $"{added.Photos.Count} photos are")} kept.".TrimStart();
                    return done();
                },
                again,
                prefix: "");
    }

    protected async Task<IActionResult> Remove(Guid photo, uint? version, Func<IActionResult> done, Func<Task<IActionResult>> again) => await May(Policies.Manages)
        ? await Write(
            Removal with { Id = photo, RowVersion = version },
            RemovePhoto.Handle,
            _ =>
            {
                Done = "The picture is taken out.";
                return done();
            },
            again,
            prefix: nameof(Removal))
        : Forbid();
}
