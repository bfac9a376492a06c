using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

public sealed class CountModel(WorkshopDbContext db) : StoresPage(db)
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    /// <summary>Of the count as it was shown.</summary>
    [BindProperty]
    public uint? Version { get; set; }

    [BindProperty]
    public CountParts.Request Input { get; set; } = new();

    [BindProperty]
    public ExplainDifference.Request Why { get; set; } = new();

    public GetCount.Answer Count { get; private set; } = null!;

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost()
    {
        OnlyFaultsOf("Input");
        return await Write(Input with { CountId = Id }, CountParts.Handle, line => Again(line.Counted == line.Expected
            ? $"{line.Name}: {line.Unit.Say(line.Counted)}, as in the books."
            : $"{line.Name}: {line.Unit.Say(line.Counted)} counted, {line.Unit.Say(line.Expected)} in the books. Count it again, or explain it."), Show);
    }

    public async Task<IActionResult> OnPostExplain()
    {
        OnlyFaultsOf("Why");
        return await Write(Why with { CountId = Id }, ExplainDifference.Handle, explained => Again(explained.Sentence), Show, "Why");
    }

    public async Task<IActionResult> OnPostRest()
    {
        ModelState.Clear();
        return await Write(new CountRestAsNone.Request { CountId = Id }, CountRestAsNone.Handle, rest => Again($"{rest.Lines} more lines, of which nothing is there."), Show, "");
    }

    public Task<IActionResult> OnPostClose() => End(giveUp: false);

    public Task<IActionResult> OnPostGiveUp() => End(giveUp: true);

    private async Task<IActionResult> End(bool giveUp)
    {
        OnlyFaultsOf("");
        return await Write(
            new CloseCount.Request { CountId = Id, RowVersion = Version, GiveUp = giveUp },
            CloseCount.Handle,
            ended => Again(giveUp
                ? "The count is given up; nothing was booked."
                : $"{ended.Lines} counted, {ended.Differences} differed and are booked.{string.Concat(ended.CardsThatLost.Select(l => $" {l.Name}:{CardThatLost.Say([l.Card], l.Unit)}"))}"),
            Show,
            "");
    }

    private RedirectResult Again(string done)
    {
        Done = done;
        return Redirect($"/stores/counts/{Id}");
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetCount.Request(Id), GetCount.Handle)).TryGet(out var count, out var problem))
        {
            return Refused(problem);
        }

        await Begin();
        Count = count;
        return Page();
    }
}
