using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.EngineModels;

/// <summary>What the stores know of the parts that a specification names by code; a code that they do not know is left out.</summary>
internal static class NamedParts
{
    public static async Task<IReadOnlyDictionary<string, Part>> Read(
        WorkshopDbContext db, EngineSpecification specification, CancellationToken ct)
    {
        string[] codes =
        [
            .. specification.Joints.SelectMany(j => j.Seals).Select(s => s.PartCode),
            .. specification.Joints.Where(j => j.Sealant is not null).Select(j => j.Sealant!.PartCode),
            .. specification.Fasteners.SelectMany(f => f.Seals).Select(s => s.PartCode),
            .. specification.ServiceItems.SelectMany(i => i.Parts).Select(p => p.PartCode),
            .. specification.Shims is { } shims ? [shims.PartCode] : Array.Empty<string>(),
        ];
        return await db.Parts.AsNoTracking().Where(p => codes.Contains(p.Code)).ToDictionaryAsync(p => p.Code, ct);
    }
}
