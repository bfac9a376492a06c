using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>What happens to one part: taken in, moved, scrapped, returned.</summary>
public sealed class BookModel(WorkshopDbContext db) : StoresPage(db)
{
    [BindProperty(SupportsGet = true)]
    public string Code { get; set; } = "";

    [BindProperty]
    public ReceiveGoods.Request Input { get; set; } = new();

    [BindProperty]
    public MoveStock.Request Move { get; set; } = new();

    [BindProperty]
    public ScrapStock.Request Scrap { get; set; } = new();

    [BindProperty]
    public ReturnToStock.Request Return { get; set; } = new();

    public GetPart.Answer Part { get; private set; } = null!;

    public IReadOnlyList<ListPlaces.Place> Places { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost()
    {
        OnlyFaultsOf("Input");
        return await Write(Input with { PartCode = Code }, ReceiveGoods.Handle, taken => Booked(
            $"Took in {taken.Unit.Say(taken.Quantity)} to {taken.Place}; {taken.Unit.Say(taken.OnHand)} there now."), Show);
    }

    public async Task<IActionResult> OnPostMove()
    {
        OnlyFaultsOf("Move");
        return await Write(Move with { PartCode = Code }, MoveStock.Handle, moved => Booked(
            $"{moved.Unit.Say(moved.Quantity)} went from {moved.From} to {moved.To}.{string.Concat(moved.CardsThatFollow.Select(c => $" {moved.Unit.Say(c.Quantity)} for job card {c.JobCardNumber} lie there now."))}"), Show, "Move");
    }

    public async Task<IActionResult> OnPostScrap()
    {
        OnlyFaultsOf("Scrap");
        return await Write(Scrap with { PartCode = Code }, ScrapStock.Handle, gone => Booked(
            $"{gone.Unit.Say(gone.Quantity)} scrapped; {gone.Unit.Say(gone.OnHand)} left at {gone.Place}.{CardThatLost.Say(gone.CardsThatLost, gone.Unit)}"), Show, "Scrap");
    }

    public async Task<IActionResult> OnPostReturn()
    {
        OnlyFaultsOf("Return");
        return await Write(Return with { PartCode = Code }, ReturnToStock.Handle, back => Booked(
            $"{back.Unit.Say(back.Quantity)} back at {back.Place}; {back.Unit.Say(back.OnHand)} there now."), Show, "Return");
    }

    private RedirectResult Booked(string done)
    {
        Done = done;
        return Redirect(AddressOf(Code));
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetPart.Request(Code), GetPart.Handle)).TryGet(out var part, out var problem))
        {
            return Refused(problem);
        }

        await Begin();
        Part = part;
        Places = (await Read(new ListPlaces.Request(), ListPlaces.Handle)).Value.Places;
        return Page();
    }
}
