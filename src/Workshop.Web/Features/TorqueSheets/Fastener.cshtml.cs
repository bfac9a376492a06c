using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>Every way to tighten one fastener, and one that is not offered: another angle, an extension bar, another wrench.</summary>
public sealed class FastenerModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty(SupportsGet = true)]
    public string Code { get; set; } = "";

    // As they stand in the address, so that one that is no id is said beside the form instead of losing what was chosen.
    [BindProperty(SupportsGet = true)]
    public string? Wrench { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Adapter { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Angle { get; set; }

    [BindProperty]
    public TickFastener.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetWrenches.Answer Found { get; private set; } = null!;

    public Guid? AdapterId => Guid.TryParse(Adapter, out var id) ? id : null;

    public bool MayTick { get; private set; }

    public IEnumerable<SelectListItem> Wrenches => Found.Wrenches.Select(w => new SelectListItem(w.Name, w.Id.ToString()));

    public IEnumerable<SelectListItem> Adapters => Found.Adapters.Select(a => new SelectListItem(a.Name, a.Id.ToString()));

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input with { Number = Number, FastenerCode = Code },
            TickFastener.Handle,
            ticked =>
            {
                Done = TorqueSheetModel.SayTicked(ticked);
                return Redirect($"/job-cards/{Number}/torque-sheet#{TorqueSheetModel.PlaceOf(ticked.FastenerCode)}");
            },
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetWrenches.Request(Number, Code), GetWrenches.Handle)).TryGet(out var found, out problem))
        {
            return Refused(problem);
        }

        (Head, Found) = (head, found);
        MayTick = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        if (Input.WrenchId is { } sent)
        {
            (Wrench, Adapter, Angle) = (sent.ToString(), Input.AdapterId?.ToString(), Input.AdapterAngleDegrees?.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        if (!string.IsNullOrEmpty(Wrench))
        {
            await Ask();
        }

        return Page();
    }

    /// <summary>Answers what is to be dialled in the way that the address names; what is wrong with it stands above the form.</summary>
    private async Task Ask()
    {
        var typed = 0m;
        if (!string.IsNullOrWhiteSpace(Angle) && !DecimalBinder.TryRead(Angle, out typed))
        {
            ModelState.AddModelError("angle", $"angle is \"{Angle}\": degrees such as 90 are allowed.");
            return;
        }

        var asked = new GetWrenches.Request(Number, Code, Guid.TryParse(Wrench, out var id) ? id : Guid.Empty, AdapterId, AdapterId is null ? null : typed);
        if ((await Read(asked, GetWrenches.Handle)).TryGet(out var found, out var problem))
        {
            Found = found;
        }
        else
        {
            problem.AddTo(ModelState, "");
        }
    }
}
