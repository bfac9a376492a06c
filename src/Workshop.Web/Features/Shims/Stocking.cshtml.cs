using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>The manager's page: which shims to hold, what to order, and what finer steps would bring.</summary>
public sealed class StockingModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string? Box { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? Months { get; set; }

    /// <summary>In per cent, as people say it.</summary>
    [BindProperty(SupportsGet = true)]
    public decimal? Level { get; set; }

    /// <summary>In per cent.</summary>
    [BindProperty(SupportsGet = true)]
    public decimal? Come { get; set; }

    public IReadOnlyList<ListShimBoxes.Box> Boxes { get; private set; } = [];

    public GetStocking.Answer? Proposed { get; private set; }

    public IReadOnlyList<Domain.Shims.SizeToHold> Orders => [.. Proposed!.Sizes.Where(s => s.Order > 0)];

    public async Task<IActionResult> OnGet()
    {
        Boxes = (await Read(new ListShimBoxes.Request(), ListShimBoxes.Handle)).Value.Boxes;
        if (Boxes.Count == 0)
        {
            return Page();
        }

        var asked = await Read(
            new GetStocking.Request(string.IsNullOrEmpty(Box) ? Boxes[0].PartCode : Box, Months, Level / 100, null, null, Come / 100), GetStocking.Handle);
        if (asked.TryGet(out var proposed, out var problem))
        {
            (Proposed, Box) = (proposed, proposed.PartCode);
        }
        else
        {
            problem.AddTo(ModelState, "");
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return Page();
    }
}
