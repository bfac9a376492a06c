using NodaTime;

namespace Workshop.Domain.Stores;

/// <summary>A file of goods in that was taken over, known by its content: the same file writes nothing twice.</summary>
public sealed class GoodsInImport
{
    public required Guid Id { get; init; }

    public required string FileName { get; init; }

    /// <summary>Lines below the column names.</summary>
    public required int Lines { get; init; }

    /// <summary>SHA-256 (FIPS 180-4) of the text.</summary>
    public required byte[] ContentHash { get; init; }

    public required Guid ImportedBy { get; init; }

    public required Instant ImportedAt { get; init; }
}
