using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

public sealed class BladesModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true, Name = "setId")]
    public Guid Id { get; set; }

    /// <summary>The blade that is checked now.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Blade { get; set; }

    [BindProperty]
    public CheckBlade.Request Input { get; set; } = new();

    [BindProperty]
    public AddBlade.Request Added { get; set; } = new();

    public GetBlades.Answer Set { get; private set; } = null!;

    public GetBlades.Blade? Chosen => Set.Blades.SingleOrDefault(b => b.Id == Blade);

    public IReadOnlyList<SelectListItem> Micrometers { get; private set; } = [];

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayCheck { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost()
    {
        Keep("Input.");
        return await May(Policies.Measures)
            ? await Write(
                Input with { BladeId = Blade ?? Guid.Empty },
                CheckBlade.Handle,
                written =>
                {
                    Done = $"The check is written; the blade is {(written.Withdrawn ? "withdrawn" : "in the set")}.";
                    return Redirect($"/tooling/{Id}/blades");
                },
                again: Show)
            : Forbid();
    }

    public async Task<IActionResult> OnPostAdd()
    {
        Keep("Added.");
        return await May(Policies.Measures)
            ? await Write(
                Added with { InstrumentId = Id },
                AddBlade.Handle,
                added =>
                {
                    Done = "The blade is in the set.";
                    return Redirect($"/tooling/{Id}/blades");
                },
                again: Show,
                prefix: "Added")
            : Forbid();
    }

    /// <summary>A page with two forms binds the fields of both; only the faults of the one that was sent count.</summary>
    private void Keep(string form)
    {
        foreach (var key in ModelState.Keys.Where(k => !k.StartsWith(form, StringComparison.Ordinal)).ToList())
        {
            ModelState.Remove(key);
        }
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetBlades.Request(Id), GetBlades.Handle)).TryGet(out var set, out var problem))
        {
            return Refused(problem);
        }

        var aborted = HttpContext.RequestAborted;
        Set = set;
        Time = await WorkshopTimes.Read(db, aborted);
        MayCheck = await May(Policies.Measures);
        Micrometers = await db.Instruments.AsNoTracking().Where(i => i.Kind == InstrumentKind.Micrometer && i.State == InstrumentState.InUse)
            .OrderBy(i => i.Name).Select(i => new SelectListItem($"{i.Name} ({i.SerialNumber})", i.Id.ToString())).ToListAsync(aborted);
        return Page();
    }
}
