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

    /// <summary>The engine model's service item that puts it right, by code; absent where it is work of another kind.</summary>
    public string? ServiceItemCode { get; init; }

    public required Guid FoundBy { get; init; }

    public required Instant FoundAt { get; init; }

    /// <summary>The work itself was done, after the owner agreed. Of a service item the sign-off says so.</summary>
    public Instant? DoneAt { get; set; }

    public Guid? DoneBy { get; set; }

    /// <summary>It was no finding after all; nobody answers it any more.</summary>
    public Instant? WithdrawnAt { get; set; }

    public Guid? WithdrawnBy { get; set; }

    public Guid? WithdrawnRemarkId { get; set; }
}

/// <summary>How far a finding is.</summary>
public enum FindingState
{
    /// <summary>To be watched; nobody is asked.</summary>
    Watched,

    /// <summary>Nobody can ask the owner before somebody says what it costs.</summary>
    WaitsForPrice,

    /// <summary>The owner has not said yes or no.</summary>
    WaitsForAnswer,

    /// <summary>The owner wants it done.</summary>
    Agreed,
    Declined,
    Done,
    Withdrawn,
}

/// <summary>What is known of a finding, beside its words.</summary>
/// <param name="Answer">The last one; nothing while nobody has said anything.</param>
/// <param name="HasPrice">An estimate of it was made.</param>
/// <param name="IsServiceItem">It is put right by a service item, which the sign-off counts as done.</param>
public sealed record FindingFacts(
    Guid Id, string Place, FindingGravity Gravity, EstimateDecision? Answer, bool ToldOfDanger, bool HasPrice, bool IsServiceItem,
    bool IsDone, bool IsWithdrawn)
{
    public FindingState State => (IsWithdrawn, IsDone, Answer, Gravity, HasPrice) switch
    {
        (true, _, _, _, _) => FindingState.Withdrawn,
        (_, true, _, _, _) => FindingState.Done,
        (_, _, EstimateDecision.Agreed, _, _) => FindingState.Agreed,
        (_, _, EstimateDecision.Declined, _, _) => FindingState.Declined,
        (_, _, _, FindingGravity.Watch, false) => FindingState.Watched,
        (_, _, _, _, false) => FindingState.WaitsForPrice,
        _ => FindingState.WaitsForAnswer,
    };

    /// <summary>It leaves the workshop unsafe, because the owner wants it so.</summary>
    public bool StaysUnsafe => State == FindingState.Declined && Gravity == FindingGravity.Unsafe;

    /// <summary>Somebody has to ask the owner, or to say first what it costs.</summary>
    public bool Waits => State is FindingState.WaitsForPrice or FindingState.WaitsForAnswer;
}

/// <summary>A picture, as it was cleaned: nothing but the picture is left of what was sent.</summary>
public sealed class Photo
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public Guid? FindingId { get; init; }

    /// <summary>"image/jpeg", "image/png" or "image/webp".</summary>
    public required string MediaType { get; init; }

    /// <summary>Empty once it was removed.</summary>
    public required byte[] Content { get; set; }

    /// <summary>The same, small, for pages: a JPEG. Empty once it was removed.</summary>
    public required byte[] Thumbnail { get; set; }

    public required int WidthPx { get; init; }

    public required int HeightPx { get; init; }

    public Guid? CaptionRemarkId { get; init; }

    public required Guid AddedBy { get; init; }

    public required Instant AddedAt { get; init; }

    public Instant? RemovedAt { get; set; }

    public Guid? RemovedBy { get; set; }

    public Guid? RemovedRemarkId { get; set; }
}
