using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>The manager's list, its file, the threshold, and what is known of each engine model.</summary>
public sealed class IndexModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public int? Within { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid? EngineModelId { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Side { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? After { get; set; }

    [BindProperty]
    public SetDriftThreshold.Request Threshold { get; set; } = new(null);

    public Slice<ListDrift.Row> List { get; private set; } = new([], null);

    public ListDriftFits.Answer Fits { get; private set; } = new(0, []);

    public WorkshopTime Time { get; private set; } = null!;

    public bool Filtered => Within is not null || EngineModelId is not null || !string.IsNullOrEmpty(Side);

    /// <summary>The filter as it stands in an address, to go on with or to download by.</summary>
    public string Filter => string.Create(
        CultureInfo.InvariantCulture, $"within={Within}&engineModelId={EngineModelId}&side={Uri.EscapeDataString(Side ?? "")}");

    public async Task<IActionResult> OnGet()
    {
        if (!ModelState.IsValid)
        {
            return await Show();
        }

        if ((await Read(Asked(After, null), ListDrift.Handle)).TryGet(out var list, out var problem))
        {
            return await Show(list);
        }

        problem.AddTo(ModelState, prefix: "");
        return await Show();
    }

    /// <summary>All rows of the filter, whatever page of them is open.</summary>
    public async Task<IActionResult> OnGetCsv()
    {
        var rows = new List<ListDrift.Row>();
        for (var after = ""; ModelState.IsValid && after is not null;)
        {
            if (!(await Read(Asked(after, Slice.Largest), ListDrift.Handle)).TryGet(out var slice, out var problem))
            {
                problem.AddTo(ModelState, prefix: "");
                break;
            }

            rows.AddRange(slice.Rows);
            after = slice.Next;
        }

        var time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        return ModelState.IsValid ? DriftListFile.Of(rows, time.DayOf(clock.GetCurrentInstant())) : await Show();
    }

    public async Task<IActionResult> OnPostThreshold() => await Write(
        Threshold,
        SetDriftThreshold.Handle,
        set =>
        {
            Done = string.Create(
                CultureInfo.InvariantCulture, $"An engine is to be checked at {set.ThresholdPercent:0.#} %. All forecasts are being written anew.");
            return Redirect("/drift");
        },
        again: async () => (await Read(Asked(null, null), ListDrift.Handle)).TryGet(out var list, out _) ? await Show(list) : await Show(),
        prefix: nameof(Threshold));

    private ListDrift.Request Asked(string? after, int? take) => new(Within, EngineModelId, Side, after, take);

    private async Task<IActionResult> Show(Slice<ListDrift.Row>? list = null)
    {
        List = list ?? List;
        Fits = (await Read(new ListDriftFits.Request(), ListDriftFits.Handle)).Value;
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        Threshold = Threshold with { ThresholdPercent = Threshold.ThresholdPercent ?? Fits.ThresholdPercent };
        if (!ModelState.IsValid && Response.StatusCode == StatusCodes.Status200OK)
        {
            Response.StatusCode = StatusCodes.Status400BadRequest;
        }

        return Page();
    }
}
