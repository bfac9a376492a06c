using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Web.Data;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

public sealed class PutOffModel(WorkshopDbContext db, IClock clock) : MotorcyclePage(db, clock)
{
    [BindProperty]
    public PutOffItem.Request Input { get; set; } = new();

    /// <summary>The item that the link names.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Item { get; set; }

    /// <summary>What can be put off.</summary>
    public IReadOnlyList<DueLine> Items { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { MotorcycleId = Id },
        PutOffItem.Handle,
        decided =>
        {
            Done = decided.Until is { } until ? $"It is put off until {Days.Write(until)}." : "It is no longer put off.";
            return Redirect($"{Address}#due");
        },
        again: Show);

    protected override async Task Prepare()
    {
        var due = (await Read(new ListDue.Request { MotorcycleId = Id, Take = Slice.Largest }, ListDue.Handle)).Value.Rows;
        Items = [.. due.Where(line => line.IncludedIn is null)];
        if (HttpMethods.IsGet(Request.Method))
        {
            Input = new PutOffItem.Request { Item = Item };
        }
    }
}
