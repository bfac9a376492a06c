using NodaTime;

namespace Workshop.Domain.Estimates;

/// <summary>How much a finding matters.</summary>
public enum FindingGravity
{
    /// <summary>To be watched.</summary>
    Watch,

    /// <summary>To be done before long.</summary>
    Soon,

    /// <summary>Not to be ridden like this.</summary>
    Unsafe,
}

/// <summary>Something that was found during a visit. Only its answer decides whether it is put right.</summary>
public sealed class Finding
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    /// <summary>What was found, in a remark.</summary>
    public required Guid TextRemarkId { get; init; }

    /// <summary>Where: "front wheel bearing", "valve 2 exhaust".</summary>
    public required string Place { get; init; }

    public required FindingGravity Gravity { get; init; }

    public required Guid FoundBy { get; init; }

    public required Instant FoundAt { get; init; }

    /// <summary>The work itself was done, after the owner agreed.</summary>
    public Instant? DoneAt { get; set; }

    public Guid? DoneBy { get; set; }
}

/// <summary>A picture, as it was cleaned: nothing but the picture is left of what was sent.</summary>
public sealed class Photo
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public Guid? FindingId { get; init; }

    /// <summary>"image/jpeg", "image/png" or "image/webp".</summary>
    public required string MediaType { get; init; }

    public required byte[] Content { get; init; }

    public required int WidthPx { get; init; }

    public required int HeightPx { get; init; }

    public Guid? CaptionRemarkId { get; init; }

    public required Guid AddedBy { get; init; }

    public required Instant AddedAt { get; init; }
}
