using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.People;

public sealed class IndexModel : WorkshopPage
{
    public IReadOnlyList<ListPeople.Row> People { get; private set; } = [];

    public bool MayManage { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListPeople.Request(), ListPeople.Handle)).TryGet(out var list, out var problem))
        {
            return Refused(problem);
        }

        People = list.People;
        MayManage = await May(Policies.Manages);
        return Page();
    }
}
