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

    /// <summary>One case in ten is before this day; absent where the calendar alone decides.</summary>
    public LocalDate? EarliestOn { get; init; }

    /// <summary>Nine cases in ten are by this day; absent beside an early date where it is beyond twenty years.</summary>
    public LocalDate? LatestOn { get; init; }

    /// <summary>What the dates by distance rest on; absent where the calendar alone decides.</summary>
    public RateBasis? RateBasis { get; init; }

    /// <summary>When it was last done; absent where no one has recorded that it ever was.</summary>
    public LocalDate? LastDoneOn { get; init; }

    public Distance? LastDoneAt { get; init; }

    /// <summary>The distance is that of the drift forecast, which comes before the interval's.</summary>
    public bool ByForecast { get; init; }

    /// <summary>From the last reading to where it is due; below zero when passed.</summary>
    public Distance? Left { get; init; }

    /// <summary>The day on which it comes up: when it is expected, or until when it was put off.</summary>
    public required LocalDate ComesOn { get; init; }

    /// <summary>The decision to do it later that counts.</summary>
    public Guid? PutOffId { get; init; }

    /// <summary>The code of the bigger item that it is done with.</summary>
    public string? IncludedIn { get; init; }

    /// <summary>Whether the visit that is proposed does it.</summary>
    public required DueAdvice Advice { get; init; }

    /// <summary>Minutes of opening and closing that doing it in that visit saves.</summary>
    public int SavesMinutes { get; init; }

    public required Instant ComputedAt { get; init; }
}

/// <summary>The visit that a motorcycle is due for: a row that Due reads by index, rewritten with its <see cref="DueItem"/>s.</summary>
public sealed class DueVisit
{
    public required Guid MotorcycleId { get; init; }

    public required Guid EngineModelId { get; init; }

    /// <summary>When the first of its items comes up.</summary>
    public required LocalDate ComesOn { get; init; }

    /// <summary>The least distance left of its items; absent where only the calendar counts.</summary>
    public Distance? Left { get; init; }

    /// <summary>Of its items, every access once.</summary>
    public required int LabourMinutes { get; init; }

    /// <summary>Of opening and closing, against a visit for each.</summary>
    public required int SavesMinutes { get; init; }

    /// <summary>What its items need, by the words of the engine model.</summary>
    public required string[] SpecialTools { get; init; }

    public required Instant ComputedAt { get; init; }
}

/// <summary>What the fleet rides, as it was worked out last; the latest version counts.</summary>
public sealed class FleetRidingVersion
{
    public required int Version { get; init; }

    public required Instant ComputedAt { get; init; }

    public required Distance PerDay { get; init; }

    public required double LogDeviation { get; init; }

    public required double WanderDays { get; init; }

    public required double SeasonCosine { get; init; }

    public required double SeasonSine { get; init; }

    /// <summary>Of so much of a season by chance; absent where too few readings were there to ask.</summary>
    public double? SeasonProbability { get; init; }

    /// <summary>How many it rests on; 0 where it is assumed.</summary>
    public required int Motorcycles { get; init; }

    /// <summary>As it is reckoned with.</summary>
    public FleetRiding Riding => new(
        PerDay, LogDeviation, WanderDays, new RidingSeason(SeasonCosine, SeasonSine), SeasonProbability, Motorcycles);
}

/// <summary>A request to reckon anew what the whole fleet is due for, and how far it is.</summary>
public sealed class DueRecompute
{
    public required Guid Id { get; init; }

    /// <summary>Absent where the service itself asks, after an upgrade.</summary>
    public Guid? RequestedBy { get; init; }

    public required Instant RequestedAt { get; init; }

    public Instant? StartedAt { get; set; }

    /// <summary>What the fleet rides, worked out at its start; absent before.</summary>
    public int? FleetRidingVersion { get; set; }

    /// <summary>Motorcycles at its start.</summary>
    public int Motorcycles { get; set; }

    /// <summary>Motorcycles whose rows rest on it already.</summary>
    public int Written { get; set; }

    /// <summary>The last of them, in the order of the database.</summary>
    public Guid? LastMotorcycle { get; set; }

    public Instant? FinishedAt { get; set; }
}
