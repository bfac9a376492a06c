using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>All cautions of a visit on one page; and where the cautions on every other page of it are sent to be acknowledged.</summary>
public sealed class CautionsModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public AcknowledgeCautions.Request Input { get; set; } = new();

    /// <summary>The page on which the cautions were read.</summary>
    [BindProperty(Name = "returnTo")]
    public string? ReturnTo { get; set; }

    public CardHead Head { get; private set; } = null!;

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input with { Number = Number },
            AcknowledgeCautions.Handle,
            _ => LocalRedirect(Url.IsLocalUrl(ReturnTo) ? ReturnTo : $"/job-cards/{Number}/cautions"),
            again: Show)
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem))
        {
            return Refused(problem);
        }

        Head = head;
        return Page();
    }
}
