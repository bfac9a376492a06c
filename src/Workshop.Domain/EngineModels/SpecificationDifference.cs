using System.Text.Json.Nodes;

namespace Workshop.Domain.EngineModels;

public enum DifferenceKind
{
    /// <summary>A value that is another now; absent before or after where the document said nothing.</summary>
    Changed,

    /// <summary>An entry of a list that was not there.</summary>
    Added,

    /// <summary>An entry of a list that is no longer there.</summary>
    Removed,

    /// <summary>The entries of a list stand in another order; before and after are their keys.</summary>
    Reordered,
}

/// <summary>One place at which two specifications differ.</summary>
/// <param name="Path">
/// The place, entries of lists by what they are called instead of by their number: <c>fasteners[drain-plug].torqueNm</c>.
/// </param>
/// <param name="Before">What stood there, in the document's own units; absent for what was added.</param>
/// <param name="After">What stands there; absent for what was removed.</param>
public sealed record SpecificationDifference(DocumentPath Path, DifferenceKind Kind, JsonNode? Before, JsonNode? After);
