using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Intervals;

/// <summary>A service item that was done, here or elsewhere. Only ever added.</summary>
public sealed class DoneItem
{
    public required Guid Id { get; init; }

    public required Guid MotorcycleId { get; init; }

    public required string ServiceItemCode { get; init; }

    public required LocalDate DoneOn { get; init; }

    /// <summary>What the motorcycle had done.</summary>
    public required Distance Distance { get; init; }

    public int? JobCardNumber { get; init; }

    public required Guid DoneBy { get; init; }

    /// <summary>The file that it came from; then nobody here did it, and <see cref="DoneBy"/> brought it over.</summary>
    public Guid? ImportId { get; init; }

    public Guid? RemarkId { get; init; }

    public required Instant EnteredAt { get; init; }
}

/// <summary>A file of older history that was taken over, known by its content: the same file writes nothing twice.</summary>
public sealed class HistoryImport
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

/// <summary>When an item of a motorcycle falls due: a row that Due reads by index, rewritten per motorcycle on a change.</summary>
public sealed class DueItem
{
    public required Guid MotorcycleId { get; init; }

    public required string ServiceItemCode { get; init; }

    public required string Name { get; init; }

    /// <summary>By the calendar, where the interval has months.</summary>
    public LocalDate? DueOn { get; init; }

    /// <summary>By the motorcycle's distance, where the interval has kilometres.</summary>
    public Distance? DueAt { get; init; }

    /// <summary>The earlier of the calendar and the date at which the distance is expected to be reached.</summary>
    public required LocalDate ExpectedOn { get; init; }

    /// <summary>The same at the fastest rate that the odometer allows; absent where the calendar alone decides.</summary>
    public LocalDate? EarliestOn { get; init; }

    /// <summary>Absent beside an early date: at the slowest rate it is never reached.</summary>
    public LocalDate? LatestOn { get; init; }

    /// <summary>What the dates by distance rest on; absent where the calendar alone decides.</summary>
    public RateBasis? RateBasis { get; init; }

    /// <summary>When it was last done; absent where no one has recorded that it ever was.</summary>
    public LocalDate? LastDoneOn { get; init; }

    public Distance? LastDoneAt { get; init; }

    /// <summary>The distance is that of the drift forecast, which comes before the interval's.</summary>
    public bool ByForecast { get; init; }

    public required Instant ComputedAt { get; init; }
}
