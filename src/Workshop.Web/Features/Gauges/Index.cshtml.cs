using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

public sealed class IndexModel(WorkshopDbContext db) : WorkshopPage
{
    public sealed record Member(Guid Id, string Name);

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    [BindProperty]
    public StartGaugeTrial.Request Input { get; set; } = new();

    public Slice<ListGaugeTrials.Row> Studies { get; private set; } = new([], null);

    public IReadOnlyList<Member> People { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Instruments { get; private set; } = [];

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayMeasure { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input,
            StartGaugeTrial.Handle,
            made =>
            {
                Done = "The study is begun. Each person reads what the page asks for, one part after the other.";
                return Redirect($"/tooling/gauge-studies/{made.Id}");
            },
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new ListGaugeTrials.Request(After), ListGaugeTrials.Handle)).TryGet(out var studies, out var problem))
        {
            return Refused(problem);
        }

        var aborted = HttpContext.RequestAborted;
        Studies = studies;
        Time = await WorkshopTimes.Read(db, aborted);
        MayMeasure = await May(Policies.Measures);
        People = await db.People.AsNoTracking().Where(p => p.IsStaff).OrderBy(p => p.Name).Select(p => new Member(p.Id, p.Name)).ToListAsync(aborted);
        Instruments = await db.Instruments.AsNoTracking().OrderBy(i => i.Name).ThenBy(i => i.SerialNumber)
            .Select(i => new SelectListItem($"{i.Name} ({i.SerialNumber}), {i.Unit}", i.Id.ToString())).ToListAsync(aborted);
        return Page();
    }
}
