using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

public sealed class IndexModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    public Slice<ListInstruments.Row> Instruments { get; private set; } = new([], null);

    public IReadOnlyList<ListSpecialTools.Tool> SpecialTools { get; private set; } = [];

    public bool MayManage { get; private set; }

    public WorkshopTime Time { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListInstruments.Request(After), ListInstruments.Handle)).TryGet(out var instruments, out var problem)
            || !(await Read(new ListSpecialTools.Request(), ListSpecialTools.Handle)).TryGet(out var tools, out problem))
        {
            return Refused(problem);
        }

        (Instruments, SpecialTools, MayManage) = (instruments, tools.Tools, await May(Policies.Manages));
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        return Page();
    }
}
