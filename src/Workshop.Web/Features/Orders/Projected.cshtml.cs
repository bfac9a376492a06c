using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.Stores;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Orders;

/// <summary>Which parts will not be enough for the visits that are booked.</summary>
public sealed class ProjectedModel : WorkshopPage
{
    /// <summary>Named in one cell; the part's own page has all.</summary>
    public const int MostVisits = 5;

    [BindProperty(SupportsGet = true, Name = "days")]
    public int? Ahead { get; set; }

    public ListProjectedStock.Answer? Projected { get; private set; }

    public IReadOnlyList<ListProjectedStock.Row> ShortParts => [.. Projected!.Rows.Where(r => r.IsShort)];

    public IReadOnlyList<ListProjectedStock.Row> Enough => [.. Projected!.Rows.Where(r => !r.IsShort)];

    /// <summary>"12, of which 4 expire unused, and 2 expired".</summary>
    public static string Say(ListProjectedStock.Row row) => row.Unit.Say(row.OnHand)
        + (row.ExpiresUnused > 0 ? $", of which {row.Unit.Say(row.ExpiresUnused)} expire unused" : "")
        + (row.Expired > 0 ? $", and {row.Unit.Say(row.Expired)} expired" : "");

    public string AddressOf(ListProjectedStock.Row row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return $"/stores/projected/{Uri.EscapeDataString(row.PartCode)}{(Ahead is { } days ? $"?days={days}" : "")}";
    }

    public async Task<IActionResult> OnGet()
    {
        if (!ModelState.IsValid)
        {
            Response.StatusCode = StatusCodes.Status400BadRequest;
            return Page();
        }

        if ((await Read(new ListProjectedStock.Request(Ahead), ListProjectedStock.Handle)).TryGet(out var projected, out var problem))
        {
            Projected = projected;
        }
        else
        {
            problem.AddTo(ModelState, "");
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return Page();
    }
}
