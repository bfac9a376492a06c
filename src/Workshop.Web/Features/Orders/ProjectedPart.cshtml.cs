using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Outcomes;
using Workshop.Web.Features.Shared.Drawings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>One part on the days to come, drawn and day by day.</summary>
public sealed class ProjectedPartModel : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public string PartCode { get; set; } = "";

    [BindProperty(SupportsGet = true, Name = "days")]
    public int? Ahead { get; set; }

    public GetProjectedStock.Answer Part { get; private set; } = null!;

    public StockSteps Steps { get; private set; } = null!;

    public async Task<IActionResult> OnGet()
    {
        var asked = new GetProjectedStock.Request(PartCode, ModelState.IsValid ? Ahead : null);
        var read = await Read(asked, GetProjectedStock.Handle);
        if (read.Problem is { Kind: ProblemKind.Malformed } wrong)
        {
            // What is wrong with the number of days is said above the usual ones.
            wrong.AddTo(ModelState, "");
            read = await Read(asked with { Days = null }, GetProjectedStock.Handle);
        }

        if (!read.TryGet(out var part, out var problem))
        {
            return Refused(problem);
        }

        Response.StatusCode = ModelState.IsValid ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest;
        Part = part;
        Steps = StockSteps.Of(part.Stock, part.Name, part.Unit, part.Today, part.Until);
        return Page();
    }
}
