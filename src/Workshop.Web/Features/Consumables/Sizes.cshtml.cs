using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Consumables;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Consumables;

public sealed class SizesModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Size { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool Groove { get; set; }

    [BindProperty(SupportsGet = true)]
    public decimal? ToleranceMm { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Material { get; set; }

    /// <summary>A kind of part to be listed whole.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    public SearchSizes.Answer? Found { get; private set; }

    public Slice<ListConsumables.Row>? List { get; private set; }

    public string KindName => Words.Read<PartKind>(Kind) is { } kind ? char.ToUpperInvariant(kind.Several()[0]) + kind.Several()[1..] : "";

    public string? TypedTolerance => Request.Query["toleranceMm"];

    public async Task<IActionResult> OnGet()
    {
        if (!string.IsNullOrWhiteSpace(Size))
        {
            Found = await Ask(
                new SearchSizes.Request { Size = Size, Groove = Groove, ToleranceMm = ToleranceMm, Material = Material }, SearchSizes.Handle);
        }

        if (!string.IsNullOrEmpty(Kind))
        {
            List = await Ask(new ListConsumables.Request(Kind, Material, After), ListConsumables.Handle);
        }

        return Page();
    }
}
