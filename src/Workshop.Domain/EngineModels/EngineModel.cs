using NodaTime;

namespace Workshop.Domain.EngineModels;

public sealed class EngineModel
{
    public required Guid Id { get; init; }

    public required string Maker { get; set; }

    public required string Name { get; set; }

    /// <summary>Belongs to no real engine; every page that shows it says so.</summary>
    public bool Invented { get; init; }

    /// <summary>The number of the version that new job cards are booked with.</summary>
    public required int CurrentVersion { get; set; }
}

/// <summary>One edition of a specification; never changed. A job card keeps the version that it was booked with.</summary>
public sealed class EngineModelVersion
{
    public required Guid Id { get; init; }

    public required Guid EngineModelId { get; init; }

    public required int Version { get; init; }

    public required EngineSpecification Specification { get; init; }

    public required Guid CreatedBy { get; init; }

    public required Instant CreatedAt { get; init; }

    /// <summary>What changed and why, in the words of whoever published it.</summary>
    public string? Note { get; init; }
}
