using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Hosting;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bays;

/// <summary>Who is late, whom that pushes, and proposals; each is a form, and only a person sends it.</summary>
public sealed class LateModel(WorkshopDbContext db, FloorNews news) : WorkshopPage
{
    /// <summary>The visit that is moved, as a proposal says.</summary>
    [BindProperty]
    public int Number { get; set; }

    [BindProperty]
    public MoveVisit.Request Input { get; set; } = new();

    public string Seen { get; private set; } = "";

    public LateView Late { get; private set; } = null!;

    public async Task<IActionResult> OnGet() => await Look() ?? Page();

    public async Task<IActionResult> OnGetPart() => await Look() ?? Partial("_Late", Late);

    public async Task<IActionResult> OnPost() => await May(Policies.Books)
        ? await Write(
            Input with { Number = Number },
            MoveVisit.Handle,
            moved =>
            {
                Done = $"Job card {moved.Number} is moved; tell its owner.";
                return Redirect("/bays/late");
            },
            again: async () => await Look() ?? Page())
        : Forbid();

    private async Task<IActionResult?> Look()
    {
        Seen = news.Current;
        if (!(await Read(new ListLate.Request(), ListLate.Handle)).TryGet(out var late, out var problem))
        {
            return Refused(problem);
        }

        Late = new LateView(late, new FloorWords(await WorkshopTimes.Read(db, HttpContext.RequestAborted), late.At), await May(Policies.Books));
        return null;
    }
}

/// <summary>Shown by <c>&lt;partial name="/Features/Bays/_Late.cshtml" model="view" /&gt;</c>.</summary>
public sealed record LateView(ListLate.Answer Late, FloorWords Words, bool MayMove);
