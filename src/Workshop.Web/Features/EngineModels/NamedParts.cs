using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Features.EngineModels;

/// <summary>What the stores know of the parts that a specification names by code; a code that they do not know is left out, one that was merged
/// into another means that one.</summary>
internal static class NamedParts
{
    public static Task<IReadOnlyDictionary<string, Part>> Read(
        WorkshopDbContext db, EngineSpecification specification, CancellationToken ct) =>
        PartsByCode.Read(db, [.. CodesOf(specification).Distinct()], ct);

    public static IEnumerable<string> CodesOf(EngineSpecification specification) =>
    [
        .. specification.Joints.SelectMany(j => j.Seals).Select(s => s.PartCode),
        .. specification.Joints.Where(j => j.Sealant is not null).Select(j => j.Sealant!.PartCode),
        .. specification.Fasteners.SelectMany(f => f.Seals).Select(s => s.PartCode),
        .. specification.ServiceItems.SelectMany(i => i.Parts).Select(p => p.PartCode),
        .. specification.SparkPlugs is { } plugs ? [plugs.PartCode] : Array.Empty<string>(),
        .. specification.Shims is { } shims ? [shims.PartCode] : Array.Empty<string>(),
    ];
}
