using NodaTime;

namespace Workshop.Domain.Stores;

/// <summary>Somebody went to a place and counted what lies there. Open until its differences are explained and booked.</summary>
public sealed class StockCount
{
    public required Guid Id { get; init; }

    public required Guid PlaceId { get; init; }

    public required Guid StartedBy { get; init; }

    public required Instant StartedAt { get; init; }

    public Guid? ClosedBy { get; set; }

    /// <summary>From here on it stands, or is given up.</summary>
    public Instant? ClosedAt { get; set; }

    /// <summary>Ended without a movement: its lines are kept, and mean nothing.</summary>
    public bool GivenUp { get; set; }
}

/// <summary>Why a count differs from the books.</summary>
public enum CountDifferenceReason
{
    TakenWithoutIssue,
    ReceivedWithoutEntry,
    PutInAnotherPlace,
    CountedWrongBefore,
    DamagedOrLost,
    Unknown,
}

/// <summary>What was counted of one part. The last line of a part in a count holds.</summary>
public sealed class StockCountLine
{
    public required Guid Id { get; init; }

    public required Guid CountId { get; init; }

    /// <summary>Within the count, from 1.</summary>
    public required int Number { get; init; }

    public required Guid PartId { get; init; }

    public Guid? LotId { get; init; }

    /// <summary>In the part's unit.</summary>
    public required decimal Counted { get; init; }

    /// <summary>What the books said as it was counted.</summary>
    public required decimal Expected { get; init; }

    /// <summary>Asked for where the two differ.</summary>
    public CountDifferenceReason? Reason { get; init; }

    public Guid? RemarkId { get; init; }

    public required Guid CountedBy { get; init; }

    /// <summary>When <see cref="Expected"/> was read; a line that explains an earlier one keeps its moment.</summary>
    public required Instant CountedAt { get; init; }

    /// <summary>Who said the reason; absent where the line was counted and not explained.</summary>
    public Guid? ExplainedBy { get; init; }
}
