using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Intervals;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

public sealed class DueModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    /// <summary>Motorcycles on a page, each with some lines: it stays below 100 kB.</summary>
    private const int MostVisits = 25;

    private const string OnlyOverdue = "overdue";

    public static IReadOnlyList<(string Value, string Words)> Choices { get; } =
    [
        ("", "Everything"), (OnlyOverdue, "Overdue"), ("2", "Within 2 weeks"), ("8", "Within 8 weeks"), ("26", "Within half a year"),
        ("52", "Within a year"),
    ];

    /// <summary>Overdue, or within so many weeks.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Show { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? WithinKm { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid? EngineModelId { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Tool { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    public Slice<ListDueVisits.Visit> Visits { get; private set; } = new([], null);

    public IReadOnlyList<ListEngineModels.Row> EngineModels { get; private set; } = [];

    /// <summary>Special tools of the workshop, by the words of the engine models.</summary>
    public IReadOnlyList<string> Tools { get; private set; } = [];

    /// <summary>The last request for the whole fleet, for those who may ask.</summary>
    public GetRecompute.Answer? Recompute { get; private set; }

    public WorkshopTime Time { get; private set; } = null!;

    public bool MayBook { get; private set; }

    public bool MayManage { get; private set; }

    /// <summary>The filter as it stands in an address, to go on with or to download by.</summary>
    public string Filter => string.Create(
        CultureInfo.InvariantCulture,
        $"show={Uri.EscapeDataString(Show ?? "")}&withinKm={WithinKm}&engineModelId={EngineModelId}&tool={Uri.EscapeDataString(Tool ?? "")}");

    public async Task<IActionResult> OnGet()
    {
        if (!ModelState.IsValid)
        {
            return await Refuse();
        }

        if (!(await Read(Asked(After, MostVisits), ListDueVisits.Handle)).TryGet(out var visits, out var problem))
        {
            problem.AddTo(ModelState, prefix: "");
            return await Refuse();
        }

        Visits = visits;
        return await Open();
    }

    /// <summary>All visits of the filter, whatever page of them is open.</summary>
    public async Task<IActionResult> OnGetCsv()
    {
        var visits = new List<ListDueVisits.Visit>();
        for (var after = ""; ModelState.IsValid && after is not null;)
        {
            if (!(await Read(Asked(after, Slice.Largest), ListDueVisits.Handle)).TryGet(out var slice, out var problem))
            {
                problem.AddTo(ModelState, prefix: "");
                break;
            }

            visits.AddRange(slice.Rows);
            after = slice.Next;
        }

        var time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        return ModelState.IsValid ? DueListFile.Of(visits, time.DayOf(clock.GetCurrentInstant())) : await Refuse();
    }

    public async Task<IActionResult> OnPostRecompute() => await May(Policies.Manages)
        ? await Write(
            new RequestRecompute.Request(),
            RequestRecompute.Handle,
            _ =>
            {
                Done = "What the whole fleet is due for is being reckoned anew.";
                return Redirect("/due");
            },
            again: Refuse)
        : Forbid();

    private ListDueVisits.Request Asked(string? after, int take) => new()
    {
        After = after,
        Take = take,
        Overdue = Show == OnlyOverdue,
        WithinWeeks = int.TryParse(Show, NumberStyles.None, CultureInfo.InvariantCulture, out var weeks) ? weeks : null,
        WithinKm = WithinKm,
        EngineModelId = EngineModelId,
        Tool = Tool,
    };

    private async Task<IActionResult> Refuse()
    {
        if (Response.StatusCode == StatusCodes.Status200OK)
        {
            Response.StatusCode = StatusCodes.Status400BadRequest;
        }

        return await Open();
    }

    private async Task<IActionResult> Open()
    {
        var ct = HttpContext.RequestAborted;
        (MayBook, MayManage) = (await May(Policies.Books), await May(Policies.Manages));
        Time = await WorkshopTimes.Read(db, ct);
        EngineModels = (await Read(new ListEngineModels.Request(Take: Slice.Largest), ListEngineModels.Handle)).Value.Rows;
        Tools = [.. (await db.Resources.AsNoTracking().Where(r => r.Kind == ResourceKind.SpecialTool).Select(r => r.Capabilities).ToListAsync(ct))
            .SelectMany(words => words).Distinct().Order(StringComparer.Ordinal)];
        Recompute = MayManage && (await Read(new GetRecompute.Request(), GetRecompute.Handle)).TryGet(out var last, out _) ? last : null;
        return Page();
    }
}
