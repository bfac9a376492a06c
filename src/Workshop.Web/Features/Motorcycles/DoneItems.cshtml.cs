using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Motorcycles;

public sealed class DoneItemsModel(WorkshopDbContext db, IClock clock) : MotorcyclePage(db, clock)
{
    [BindProperty]
    public RecordDoneItems.Request Input { get; set; } = new();

    /// <summary>Of the engine that is in now.</summary>
    public IReadOnlyList<ServiceItem> ServiceItems { get; private set; } = [];

    public Task<IActionResult> OnGet() => Show();

    public Task<IActionResult> OnPost() => Write(
        Input with { MotorcycleId = Id },
        RecordDoneItems.Handle,
        recorded =>
        {
            Done = recorded.Ids.Count == 1 ? "One item is recorded." : $"{recorded.Ids.Count} items are recorded.";
            return Redirect($"{Address}#done");
        },
        again: Show);

    protected override async Task Prepare()
    {
        var engine = await FittedEngine.On(Db, Id, Today, HttpContext.RequestAborted);
        ServiceItems = engine?.Specification.ServiceItems ?? [];
    }
}
