using NodaTime;

namespace Workshop.Domain.EngineModels;

/// <summary>
/// What one person is changing of one engine model's specification, before it becomes a version: several sections are collected
/// and published together. Of the right form, but it need not hold together yet.
/// </summary>
public sealed class SpecificationDraft
{
    /// <summary>That of the engine model; of one that is not in the books yet, the id that it will have.</summary>
    public required Guid EngineModelId { get; init; }

    public required Guid PersonId { get; init; }

    /// <summary>The version that the draft was made from; 0 for an engine model that is not in the books yet.</summary>
    public required int BasedOnVersion { get; set; }

    /// <summary>Of an engine model that is not in the books yet.</summary>
    public string? Maker { get; init; }

    public string? Name { get; init; }

    public bool Invented { get; init; }

    public required EngineSpecification Specification { get; set; }

    public required Instant StartedAt { get; init; }

    public required Instant ChangedAt { get; set; }
}
