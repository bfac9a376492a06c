using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

public sealed class SealsModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public InspectSeals.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetSeals.Answer State { get; private set; } = null!;

    public bool MayInspect { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input with { Number = Number },
            InspectSeals.Handle,
            state =>
            {
                Done = state.NotInspected == 0
                    ? "Every seal that must be inspected is."
                    : $"{state.NotInspected} still to be inspected.";
                return Redirect($"/job-cards/{Number}/seals");
            },
            again: Show)
        : Forbid();

    /// <summary>What is chosen in a row: as typed when the form comes back, else nothing, since what stands needs no word.</summary>
    public bool IsChosen(int index, SealVerdict verdict) => Input.Seals?.ElementAtOrDefault(index)?.Verdict == verdict;

    /// <summary>As typed, when the form comes back.</summary>
    public string? Typed(int index, string field) => ModelState[$"Input.Seals[{index}].{field}"]?.AttemptedValue;

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetSeals.Request(Number), GetSeals.Handle)).TryGet(out var state, out problem))
        {
            return Refused(problem);
        }

        (Head, State) = (head, state);
        MayInspect = head.Card.State == JobCardState.CheckedIn && state.Seals.Count > 0 && await May(Policies.Measures);
        return Page();
    }
}
