using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Paper;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Records;

/// <summary>The owner's record of a card, and the links under which it is read.</summary>
public sealed class RecordModel(WorkshopDbContext db, PaperAddress address, PdfFiles files) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public CreateRecordLink.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    /// <summary>Absent where there is no record yet.</summary>
    public PaperDocument? Paper { get; private set; }

    public string WhyNot { get; private set; } = "";

    /// <summary>The card was signed before records were kept.</summary>
    public bool MayBeWritten { get; private set; }

    public bool MayLink { get; private set; }

    public IReadOnlyList<ListRecordLinks.Link> Links { get; private set; } = [];

    public CreateRecordLink.Answer? Made { get; private set; }

    public string AddressOf(string path) => address.Of(path).AbsoluteUri;

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnGetPdf() =>
        (await Read(new DrawRecord.Request(Number, address.Of, ForPdf: true), DrawRecord.Handle)).Then(files.Of).TryGet(out var file, out var problem)
            ? File(file, PdfFiles.ContentType, $"service-record-{Number}.pdf")
            : Refused(problem);

    public Task<IActionResult> OnPostWrite() => Write(
        new WriteRecord.Request(Number), WriteRecord.Handle,
        _ =>
        {
            Done = "The record is written.";
            return Redirect($"/job-cards/{Number}/record");
        },
        Show, prefix: "");

    public async Task<IActionResult> OnPostLink()
    {
        if (!await May(Policies.Books))
        {
            return Forbid();
        }

        var answer = await Write(
            Input with { Number = Number }, CreateRecordLink.Handle,
            made =>
            {
                Made = made;
                return Page();
            },
            Show);
        return Made is null ? answer : await Show();
    }

    public async Task<IActionResult> OnPostRevoke(Guid link) => await May(Policies.Books)
        ? await Write(
            new RevokeRecordLink.Request(link), RevokeRecordLink.Handle,
            _ =>
            {
                Done = "The link is revoked: nobody reads the record by it any more.";
                return Redirect($"/job-cards/{Number}/record");
            },
            Show, prefix: "")
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem))
        {
            return Refused(problem);
        }

        Head = head;
        MayLink = await May(Policies.Books);
        if (!(await Read(new DrawRecord.Request(Number, address.Of), DrawRecord.Handle)).TryGet(out var paper, out problem))
        {
            (WhyNot, MayBeWritten) = (problem.Sentence, head.Card.State == JobCardState.SignedOff);
            return Page();
        }

        Paper = paper;
        Links = (await Read(new ListRecordLinks.Request(Number), ListRecordLinks.Handle)).Value.Links;
        return Page();
    }
}
