using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

public sealed class IndexModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int? Within { get; set; }

    [BindProperty(SupportsGet = true, Name = "model")]
    public Guid? EngineModelId { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Side { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    public Slice<ListDrift.Row> List { get; private set; } = new([], null);

    public async Task<IActionResult> OnGet()
    {
        if (!ModelState.IsValid)
        {
            return Page();
        }

        var outcome = await Read(new ListDrift.Request(Within, EngineModelId, Side, After), ListDrift.Handle);
        if (outcome.TryGet(out var list, out var problem))
        {
            List = list;
        }
        else
        {
            problem.AddTo(ModelState);
        }

        return Page();
    }
}
