using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Resources;

/// <summary>The words by which the engine models ask for skills, tools and what a bay has, so that both sides say the same.</summary>
internal static class AskedFor
{
    public static async Task<IReadOnlyList<string>> Read(WorkshopDbContext db, ResourceKind kind, CancellationToken ct)
    {
        var items = (await (
            from model in db.EngineModels.AsNoTracking()
            join version in db.EngineModelVersions.AsNoTracking()
                on new { Id = model.Id, Version = model.CurrentVersion } equals new { Id = version.EngineModelId, version.Version }
            select version).ToListAsync(ct)).SelectMany(v => v.Specification.ServiceItems);
        var words = kind switch
        {
            ResourceKind.Technician => items.SelectMany(i => i.Skills),
            ResourceKind.SpecialTool => items.SelectMany(i => i.SpecialTools),
            ResourceKind.Bay => items.SelectMany(i => i.BayCapabilities),
            _ => [],
        };
        return [.. words.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }
}
