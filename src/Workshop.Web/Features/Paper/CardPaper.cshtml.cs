using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

public sealed class CardPaperModel(PaperAddress address, PdfFiles files) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty(SupportsGet = true)]
    public string Paper { get; set; } = "";

    public PaperDocument Document { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new CardPaper.Request(Number, Paper, address.Of), CardPaper.Handle)).TryGet(out var document, out var problem))
        {
            return Refused(problem);
        }

        Document = document;
        return Page();
    }

    public async Task<IActionResult> OnGetPdf() =>
        (await Read(new CardPaper.Request(Number, Paper, address.Of), CardPaper.Handle)).Then(files.Of).TryGet(out var file, out var problem)
            ? File(file, PdfFiles.ContentType, $"{Paper}-{Number}.pdf")
            : Refused(problem);
}
