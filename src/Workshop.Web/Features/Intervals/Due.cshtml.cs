using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

public sealed class DueModel(IAuthorizationService authorization) : WorkshopPage
{
    private const string Overdue = "overdue";

    public static IReadOnlyList<(string Value, string Words)> Choices { get; } =
    [
        ("", "Everything"), (Overdue, "Overdue"), ("14", "Within 2 weeks"), ("60", "Within 2 months"), ("365", "Within a year"),
    ];

    [BindProperty(SupportsGet = true)]
    public string? Show { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    /// <summary>The items of this page by motorcycle, the one with the soonest first.</summary>
    public IReadOnlyList<IGrouping<Guid, ListDue.Row>> Motorcycles { get; private set; } = [];

    public string? Next { get; private set; }

    public bool MayBook { get; private set; }

    public async Task<IActionResult> OnGet()
    {
        MayBook = (await authorization.AuthorizeAsync(User, Policies.Books)).Succeeded;
        var request = new ListDue.Request
        {
            After = After,
            Overdue = Show == Overdue,
            WithinDays = int.TryParse(Show, NumberStyles.None, CultureInfo.InvariantCulture, out var days) ? days : null,
        };
        if ((await Read(request, ListDue.Handle)).TryGet(out var due, out var problem))
        {
            Motorcycles = [.. due.Rows.GroupBy(row => row.MotorcycleId)];
            Next = due.Next;
        }
        else
        {
            problem.AddTo(ModelState);
            Response.StatusCode = ProblemAnswers.StatusOf(problem.Kind);
        }

        return Page();
    }
}
