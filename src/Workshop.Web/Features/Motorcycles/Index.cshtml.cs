using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

public sealed class IndexModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    public Slice<ListMotorcycles.Row> List { get; private set; } = new([], null);

    public bool MayManage { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        MayManage = await May(Policies.Manages);
        var outcome = await Read(new ListMotorcycles.Request(After, Search), ListMotorcycles.Handle);
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
