using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Stores;

/// <summary>Whether two parts can be found to be one.</summary>
public static class MergeRules
{
    /// <summary>Nothing where <paramref name="part"/> may go into <paramref name="other"/>.</summary>
    public static Problem? Refuse(Part part, Part other)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(other);
        string? why = (part, other) switch
        {
            _ when part.Id == other.Id => "which is the part itself; name the other one.",
            _ when part.MergedIntoId is not null => $"but {part.Code} was merged into another already.",
            _ when part.Kind == PartKind.Shim || other.Kind == PartKind.Shim =>
                "and shims are one part for each diameter and form, told apart by thickness; they are never merged.",
            _ when part.Unit != other.Unit => $"kept by the {other.Unit.Spoken()}, but {part.Code} is kept by the {part.Unit.Spoken()}.",
            _ when part.Kind != other.Kind => $"a {other.Kind.Spoken()}, but {part.Code} is a {part.Kind.Spoken()}.",
            _ when other.Discontinued => "which is discontinued; merge the other way round, or bring it back first.",
            _ => null,
        };
        return why is null ? null : Problem.Impossible("merge-unfit", "into", $"into is \"{other.Code}\", {why}");
    }
}
