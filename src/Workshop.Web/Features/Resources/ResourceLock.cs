using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Resources;

/// <summary>
/// Holds a resource until the transaction ends, as bookings do: whoever books it waits, and then sees the change.
/// </summary>
internal static class ResourceLock
{
    public static async Task<Outcome<Resource>> Take(WorkshopDbContext db, Guid id, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from resources where id = {id} for update", ct);
        return await db.Resources.SingleOrDefaultAsync(r => r.Id == id, ct) is { } resource ? resource : Problem.NotFound($"Resource {id}");
    }

    /// <summary>The row is written in any case, so that its version covers hours and breaks, which are rows of their own.</summary>
    public static async Task<uint> Save(WorkshopDbContext db, Resource resource, uint version, CancellationToken ct)
    {
        var row = db.Entry(resource);
        row.State = EntityState.Modified;
        var property = row.Property<uint>(MappingExtensions.RowVersion);
        property.OriginalValue = version;
        await db.SaveChangesAsync(ct);
        return property.CurrentValue;
    }

    /// <summary>The refusal where another of that kind has the name.</summary>
    public static async Task<Problem?> NameTaken(
        WorkshopDbContext db, ResourceKind kind, string name, Guid? except, CancellationToken ct)
    {
        var other = await db.Resources.AsNoTracking().SingleOrDefaultAsync(r => r.Kind == kind && r.Name == name && r.Id != except, ct);
        var sentence = $"name is \"{name}\": another {kind.Spoken()} is called that{(other?.Retired == true ? ", a retired one; restore it, or choose another name" : "; choose another name")}.";
        return other is null ? null : Problem.Conflict("name-taken", sentence) with { Faults = [new FieldFault("name", sentence)] };
    }
}
