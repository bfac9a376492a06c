using Workshop.Domain.Bookings;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>What the pages of the stores share: the workshop's time, and several forms on one page.</summary>
public abstract class StoresPage(WorkshopDbContext db) : WorkshopPage
{
    protected WorkshopDbContext Db => db;

    public WorkshopTime Time { get; private set; } = null!;

    /// <summary>May take in, move, scrap and count.</summary>
    public bool MayWrite { get; private set; }

    /// <summary>May retire, merge and check.</summary>
    public bool MayManage { get; private set; }

    protected async Task Begin()
    {
        Time = await WorkshopTimes.Read(db, HttpContext.RequestAborted);
        (MayWrite, MayManage) = (await May(Policies.KeepsStores), await May(Policies.Manages));
    }

    /// <summary>A page with several forms binds the fields of all; only the faults of the one that was sent count.</summary>
    protected void OnlyFaultsOf(string form)
    {
        foreach (var key in ModelState.Keys.Where(k => k.Contains('.', StringComparison.Ordinal) && !k.StartsWith($"{form}.", StringComparison.Ordinal)).ToList())
        {
            ModelState.Remove(key);
        }
    }

    public static string AddressOf(string partCode) => $"/stores/parts/{Uri.EscapeDataString(partCode)}";
}
