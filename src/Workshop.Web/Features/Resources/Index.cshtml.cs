using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

public sealed class IndexModel(WorkshopDbContext db, IClock clock) : WorkshopPage
{
    public IReadOnlyList<ListResources.Row> Resources { get; private set; } = [];

    /// <summary>In an absence now.</summary>
    public IReadOnlySet<Guid> Away { get; private set; } = new HashSet<Guid>();

    public bool MayManage { get; private set; }

    /// <summary>The heading of a kind, what its capabilities are called, and what it is for.</summary>
    public static (string Title, string Can, string Hint) Words(ResourceKind kind) => kind switch
    {
        ResourceKind.Bay => ("Bays", "Has", "Work is done in one."),
        ResourceKind.Technician => ("Technicians", "Skills", "Each is a person of the workshop."),
        ResourceKind.SpecialTool => ("Special tools", "Asked for as", "Copies of a tool are entered each by itself, with the same code."),
        ResourceKind.ParkingPlace => ("Parking places", "Has", "Engines cool there overnight; without one they stand in a bay."),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    public async Task<IActionResult> OnGet()
    {
        if (!(await Read(new ListResources.Request(Retired: true), ListResources.Handle)).TryGet(out var list, out var problem))
        {
            return Refused(problem);
        }

        var now = clock.GetCurrentInstant();
        Resources = list.Resources;
        Away = (await WorkingTimes.AbsencesDuring(db, new Interval(now, now.PlusNanoseconds(1000))).Select(a => a.ResourceId)
            .ToListAsync(HttpContext.RequestAborted)).ToHashSet();
        MayManage = await May(Policies.Manages);
        return Page();
    }
}
