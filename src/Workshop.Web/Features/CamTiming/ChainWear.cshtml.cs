using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.CamTiming;

/// <summary>How the chains of an engine model wear, all together and engine by engine.</summary>
public sealed class ChainWearModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    public string Name { get; private set; } = "";

    public ListChainWear.Answer Wear { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListChainWear.Request(Id), ListChainWear.Handle)).TryGet(out var wear, out var problem))
        {
            return Refused(problem);
        }

        Wear = wear;
        Name = await db.EngineModels.AsNoTracking().Where(m => m.Id == Id).Select(m => m.Maker + " " + m.Name).SingleAsync(HttpContext.RequestAborted);
        return Page();
    }
}
