using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

public sealed class ChooseLabelsModel(PaperAddress address) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Of { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Box { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? Number { get; set; }

    public LabelOf What => Words.Read<LabelOf>(Of) ?? LabelOf.Places;

    /// <summary>Small for compartments, one by one for a kit.</summary>
    public string UsualStock => What switch
    {
        LabelOf.Compartments => "a4-5x13",
        LabelOf.Kit => "roll-100x50",
        _ => "a4-3x8",
    };

    public IReadOnlyList<Label> Labels { get; private set; } = [];

    public IReadOnlyList<Label> Boxes { get; private set; } = [];

    public async Task<IActionResult> OnGet()
    {
        Boxes = (await Read(Asked(LabelOf.ShimBoxes), GetLabels.Handle)).TryGet(out var boxes, out _) ? boxes.Labels : [];
        Labels = (await Ask(Asked(What), GetLabels.Handle))?.Labels ?? [];
        return Page();
    }

    private GetLabels.Request Asked(LabelOf of) =>
        new() { Of = Words.Write(of), Box = Box, Number = Number, Stock = UsualStock, AddressOf = address.Of };
}
