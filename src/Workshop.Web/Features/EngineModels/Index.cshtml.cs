using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

public sealed class IndexModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid? After { get; set; }

    public Slice<ListEngineModels.Row> List { get; private set; } = new([], null);

    public bool MayManage { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        MayManage = await May(Policies.Manages);
        if ((await Read(new ListEngineModels.Request(After), ListEngineModels.Handle)).TryGet(out var list, out var problem))
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
