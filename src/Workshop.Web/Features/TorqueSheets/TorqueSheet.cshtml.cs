using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

public sealed class TorqueSheetModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public TickFastener.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetTorqueSheet.Answer Sheet { get; private set; } = null!;

    public bool MayTick { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input with { Number = Number },
            TickFastener.Handle,
            ticked =>
            {
                Done = ticked.NotTightened == 0
                    ? "Every fastener of the sheet is ticked."
                    : $"{ticked.NotTightened} of the sheet still to be tightened.";
                return Redirect($"/job-cards/{Number}/torque-sheet#{PlaceOf(ticked.FastenerCode)}");
            },
            again: Show)
        : Forbid();

    /// <summary>Where a fastener stands on the page, to come back to after its tick.</summary>
    public static string PlaceOf(string fastenerCode) => $"fastener-{fastenerCode}";

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetTorqueSheet.Request(Number), GetTorqueSheet.Handle)).TryGet(out var sheet, out problem))
        {
            return Refused(problem);
        }

        (Head, Sheet) = (head, sheet);
        MayTick = head.Card.State == JobCardState.CheckedIn && await May(Policies.Measures);
        return Page();
    }
}
