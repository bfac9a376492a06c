using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

public sealed class PartChangesModel(WorkshopDbContext db, IClock clock) : MotorcyclePage(db, clock)
{
    public static IReadOnlyList<SelectListItem> Parts => Choices<ValvePart>(part => part.Spoken());

    public static IReadOnlyList<SelectListItem> Kinds => Choices<PartChangeKind>(kind => kind.Spoken());

    [BindProperty]
    public RecordPartChange.Request Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Valves { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { MotorcycleId = Id },
        RecordPartChange.Handle,
        _ =>
        {
            Done = "The part is recorded; the drift of its valves begins anew from there.";
            return Redirect($"{Address}#part-changes");
        },
        again: Show);

    protected override async Task Prepare()
    {
        var engine = await FittedEngine.On(Db, Id, Today, HttpContext.RequestAborted);
        Valves = [.. (engine?.Specification.Valves ?? []).Select(v => new SelectListItem(v.Key.Spoken, v.Key.ToString()))];
    }
}
