using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

public sealed class KitModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public SubstitutePart.Request Other { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public KitOnShelf Kit { get; private set; } = new([], []);

    /// <summary>What this card lacks, counted together with all visits to come.</summary>
    public ListShortages.Answer Lacking { get; private set; } = new([], []);

    /// <summary>Lines for which something may stand in, or does.</summary>
    public IReadOnlyList<KitOnShelf.Line> Substitutable { get; private set; } = [];

    public bool MayReserve => Kit.IsShort && IsOpen;

    private bool IsOpen => Head.Card.State is JobCardState.Booked or JobCardState.CheckedIn;

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        new ReserveKit.Request { Number = Number },
        ReserveKit.Handle,
        reserved =>
        {
            Done = reserved.Lines.Any(l => l.ShortBy > 0)
                ? "Reserved what was free; the kit is still short."
                : "The whole kit is reserved.";
            return Redirect($"/job-cards/{Number}/kit");
        },
        again: Show);

    public async Task<IActionResult> OnPostInstead() => await May(Policies.KeepsStores)
        ? await Write(
            Other with { Number = Number },
            SubstitutePart.Handle,
            kit =>
            {
                Done = kit.Lines.FirstOrDefault(l => l.PartCode == Other.PartCode)?.Instead is { } instead
                    ? $"{instead.Name} stands in for {Other.PartCode} on this card."
                    : $"{Other.PartCode} itself is taken again.";
                return Redirect($"/job-cards/{Number}/kit");
            },
            again: Show,
            prefix: "Other")
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await Read(new GetKit.Request(Number), GetKit.Handle)).TryGet(out var kit, out problem))
        {
            return Refused(problem);
        }

        (Head, Kit) = (head, new KitOnShelf(kit.Lines, kit.Compounds));
        if (IsOpen)
        {
            // A substitution is offered where something is short or made no more, and where one was made.
            Substitutable = await May(Policies.KeepsStores)
                ? [.. Kit.Lines.Where(l => l.Instead is not null || ((l.ShortBy > 0 || l.Discontinued) && l.Alternatives.Count > 0))]
                : [];
            Lacking = (await Read(new ListShortages.Request(Number), ListShortages.Handle)).TryGet(out var lacking, out _) ? lacking : Lacking;
        }

        return Page();
    }
}
