using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

public sealed class PickListModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public PickParts.Request Input { get; set; } = new();

    [BindProperty]
    public ReturnParts.Request Back { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public GetPickList.Answer List { get; private set; } = null!;

    public bool MayPick { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.KeepsStores)
        ? await Write(Input with { Number = Number }, PickParts.Handle, Picked, again: Show)
        : Forbid();

    public async Task<IActionResult> OnPostReturn() => await May(Policies.KeepsStores)
        ? await Write(
            Back with { Number = Number },
            ReturnParts.Handle,
            _ =>
            {
                Done = $"{Back.PartCode} is back in its place.";
                return Redirect($"/job-cards/{Number}/pick-list#bench");
            },
            again: Show,
            prefix: "Back")
        : Forbid();

    private RedirectResult Picked(GetPickList.Answer list)
    {
        Done = (list.ToPick.Count, list.Missing.Count) switch
        {
            (0, 0) => "The whole kit is on the bench.",
            (0, var missing) => $"All that is there is on the bench; of {missing} {(missing == 1 ? "part" : "parts")} something is missing.",
            (var lines, _) => $"On the bench; {lines} {(lines == 1 ? "line" : "lines")} still to pick.",
        };
        return Redirect($"/job-cards/{Number}/pick-list");
    }

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetPickList.Request(Number), GetPickList.Handle)).TryGet(out var list, out problem))
        {
            return Refused(problem);
        }

        (Head, List) = (head, list);
        MayPick = head.Card.State is (JobCardState.Booked or JobCardState.CheckedIn) && await May(Policies.KeepsStores);
        return Page();
    }
}
