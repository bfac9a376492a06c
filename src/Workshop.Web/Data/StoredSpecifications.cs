using System.Collections.Concurrent;
using System.Text.Json;
using Workshop.Domain.EngineModels;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>
/// Specifications as they stand in their column. Every stage of a visit reads one, and a version never changes: the same text
/// is the same document, so that those read lately are parsed once.
/// </summary>
internal static class StoredSpecifications
{
    // As many engine models as a workshop sees in a day; beyond that the memory starts afresh.
    private const int Kept = 64;

    private static readonly ConcurrentDictionary<string, EngineSpecification> Read = new(StringComparer.Ordinal);

    public static string ToColumn(EngineSpecification specification) =>
        JsonSerializer.Serialize(specification, WorkshopJson.Options);

    public static EngineSpecification FromColumn(string text)
    {
        if (Read.TryGetValue(text, out var known))
        {
            return known;
        }

        if (Read.Count >= Kept)
        {
            Read.Clear();
        }

        return Read.GetOrAdd(text, t => JsonSerializer.Deserialize<EngineSpecification>(t, WorkshopJson.Options)!);
    }
}
