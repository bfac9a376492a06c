using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

public sealed class LabelSheetModel(PaperAddress address, PdfFiles files) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Of { get; set; }

    [BindProperty(SupportsGet = true, Name = "code")]
    public IReadOnlyList<string> Codes { get; set; } = [];

    [BindProperty(SupportsGet = true)]
    public string? Box { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? Number { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Stock { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? First { get; set; }

    public LabelSheets? Made { get; private set; }

    private GetLabels.Request Asked => new()
    {
        Of = Of, Codes = Codes, Box = Box, Number = Number, Stock = Stock, First = First, AddressOf = address.Of,
    };

    public async Task<IActionResult> OnGet()
    {
        Made = await Ask(Asked, GetLabels.Handle);
        return Page();
    }

    public async Task<IActionResult> OnGetPdf()
    {
        if (await Ask(Asked, GetLabels.Handle) is not { } made)
        {
            return Page();
        }

        return files.Of(made).TryGet(out var file, out var problem) ? File(file, PdfFiles.ContentType, "labels.pdf") : Refused(problem);
    }
}
