using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>What every page about one motorcycle shows: the motorcycle as it stands, at the workshop's own time.</summary>
public abstract class MotorcyclePage(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    [FromRoute]
    public Guid Id { get; set; }

    public GetMotorcycle.Answer Motorcycle { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public LocalDate Today => Time.DayOf(clock.GetCurrentInstant());

    protected WorkshopDbContext Db => db;

    /// <summary>The address of the motorcycle's own page.</summary>
    public string Address => $"/motorcycles/{Id}";

    protected async Task<IActionResult> Show()
    {
        if (!(await Read(new GetMotorcycle.Request(Id), GetMotorcycle.Handle)).TryGet(out var motorcycle, out var problem))
        {
            return Refused(problem);
        }

        Motorcycle = motorcycle;
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        await Prepare();
        return Page();
    }

    /// <summary>What a page shows beside the motorcycle itself.</summary>
    protected virtual Task Prepare() => Task.CompletedTask;

    /// <summary>Choices of a form by the word that the API takes, said as a person says them.</summary>
    protected static IReadOnlyList<SelectListItem> Choices<T>(Func<T, string> spoken)
        where T : struct, Enum =>
        [.. Enum.GetValues<T>().Select(value => new SelectListItem(spoken(value), value.ToString()))];
}
