using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Utilisation;

/// <summary>The manager's page: what bays and technicians did with their hours.</summary>
public sealed class IndexModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? From { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Until { get; set; }

    public GetUtilisation.Answer? Used { get; private set; }

    public WorkshopTime Time { get; private set; } = null!;

    public BaysChart Chart => BaysChart.Of(Used!.BaysNeeded, Used.Bays.Count);

    public async Task<IActionResult> OnGet()
    {
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        var asked = await Read(new GetUtilisation.Request(From, Until), GetUtilisation.Handle);
        if (asked.TryGet(out var used, out var problem))
        {
            (Used, From, Until) = (used, Days.Write(used.From), Days.Write(used.Until));
        }
        else
        {
            problem.AddTo(ModelState, "");
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return Page();
    }
}
