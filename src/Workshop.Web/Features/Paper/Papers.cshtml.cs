using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Paper;

public sealed class PapersModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    public CardHead Head { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem))
        {
            return Refused(problem);
        }

        Head = head;
        return Page();
    }
}
