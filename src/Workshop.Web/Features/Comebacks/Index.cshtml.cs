using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Comebacks;

/// <summary>Which visits came back of which.</summary>
public sealed class IndexModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    public ListComebacks.Answer List { get; private set; } = new([], null);

    public WorkshopTime Time { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListComebacks.Request { After = After }, ListComebacks.Handle)).TryGet(out var list, out var problem))
        {
            return Refused(problem);
        }

        (List, Time) = (list, await WorkshopTimes.Read(db, HttpContext.RequestAborted));
        return Page();
    }
}
