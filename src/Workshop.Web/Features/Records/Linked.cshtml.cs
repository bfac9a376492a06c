using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using NodaTime;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Paper;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Records;

/// <summary>
/// One record for whoever has its link: no sign-in, nothing else of the workshop, no script, no form. What is opened is counted, by
/// a reader and not by a program that only asks for the head.
/// </summary>
[EnableRateLimiting(Guards.RecordLimit)]
public sealed class LinkedModel(WorkshopDbContext db, IClock clock, PaperAddress address, PdfFiles files) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string Secret { get; set; } = "";

    /// <summary>Absent where the link leads to nothing.</summary>
    public PaperDocument? Paper { get; private set; }

    /// <summary>By the workshop's clock.</summary>
    public string Until { get; private set; } = "";

    private CancellationToken Aborted => HttpContext.RequestAborted;

    public async Task<IActionResult> OnGet()
    {
        if (await Open() is not { } linked)
        {
            return Nothing();
        }

        var record = linked.Record.Record;
        Paper = Draw(linked, await RecordPictures.ForPage(
            db, record, id => $"{RecordAddress.OfPhoto(Secret, id)}/small", id => RecordAddress.OfPhoto(Secret, id), Aborted));
        return Page();
    }

    public async Task<IActionResult> OnGetPdf()
    {
        if (await Open() is not { } linked)
        {
            return Nothing();
        }

        var paper = Draw(linked, await RecordPictures.ForPdf(db, linked.Record.Record, Aborted));
        return files.Of(paper).TryGet(out var file, out var problem)
            ? File(file, PdfFiles.ContentType, $"service-record-{linked.Record.Record.SignedOn.ToString("uuuu-MM-dd", null)}.pdf")
            : StatusCode(ProblemAnswers.StatusOf(problem.Kind));
    }

    private async Task<LinkedRecord?> Open()
    {
        LinkedRecord.Conceal(Response);
        var now = clock.GetCurrentInstant();
        if (await LinkedRecord.Find(db, Secret, now, Aborted) is not { } linked)
        {
            return null;
        }

        if (HttpMethods.IsGet(Request.Method))
        {
            await linked.CountOpening(db, now, Aborted);
        }

        Until = (await WorkshopTimes.Read(db, Aborted)).Say(linked.ExpiresAt);
        return linked;
    }

    private PaperDocument Draw(LinkedRecord linked, Func<Guid, string, PaperPicture?> pictureOf) => RecordPaper.Of(
        linked.Record, new RecordPaper.Way(address.Of(RecordAddress.Of(Secret)), $"Online until {Until}"), pictureOf);

    private PageResult Nothing()
    {
        Response.StatusCode = StatusCodes.Status404NotFound;
        return Page();
    }
}
