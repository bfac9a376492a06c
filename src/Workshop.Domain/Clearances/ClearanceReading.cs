using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Clearances;

/// <summary>Before or after adjustment.</summary>
public enum Stage
{
    AsFound,
    AsLeft,
}

/// <summary>
/// One bracket of one lobe's clearance at one stage of a visit. Only ever added: a correction is a new row that supersedes
/// the old one, with who, when and why.
/// </summary>
public sealed class ClearanceReading : IAttempt
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    /// <summary>Absent for readings taken over from old worksheets.</summary>
    public int? JobCardNumber { get; init; }

    public Guid? ImportId { get; init; }

    public required ValveKey Valve { get; init; }

    public required int Lobe { get; init; }

    public required Stage Stage { get; init; }

    /// <summary>1 for the first reading of this lobe at this stage of the visit, and so on; the last one counts.</summary>
    public required int Attempt { get; init; }

    public required BracketKind Kind { get; init; }

    public Clearance? Go { get; init; }

    public Clearance? NoGo { get; init; }

    public bool Stacked { get; init; }

    /// <summary>The feeler set; absent for old worksheets that do not say.</summary>
    public Guid? InstrumentId { get; init; }

    public Temperature? HeadTemperature { get; init; }

    public string? TemperatureMethod { get; init; }

    /// <summary>Outside the cold range, kept with a reason, and left out of fits.</summary>
    public bool NotCold { get; init; }

    /// <summary>Carried from as found because the valve was not disturbed; used once.</summary>
    public bool NotRemeasured { get; init; }

    /// <summary>The motorcycle's odometer at the visit.</summary>
    public required Guid OdometerReadingId { get; init; }

    public required Instant MeasuredAt { get; init; }

    public required Guid MeasuredBy { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }

    public LobeKey Key => new(Valve, Lobe);

    public Bracket Bracket => Bracket.Of(Kind, Go, NoGo, Stacked);
}

/// <summary>What is done to a valve that readings alone do not show.</summary>
public enum ValveEventKind
{
    /// <summary>The adjusting screw was turned: a new leg, the same slope.</summary>
    ScrewTurned,

    /// <summary>Nobody knows whether the shim was changed: a new leg, the same slope.</summary>
    ChangeUnknown,

    /// <summary>The camshaft stayed in; as found stands as as left.</summary>
    NotDisturbed,
}

/// <summary>What was done to a valve at a visit, beside its shim. Only ever added.</summary>
public sealed class ValveEvent
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public int? JobCardNumber { get; init; }

    public Guid? ImportId { get; init; }

    public required ValveKey Valve { get; init; }

    public required ValveEventKind Kind { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required Instant HappenedAt { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }
}

/// <summary>The parts whose wear or change moves a clearance.</summary>
public enum ValvePart
{
    Valve,
    Seat,
    Camshaft,
    Follower,
    Bucket,
    CylinderHead,
}

/// <summary>What was done to such a part; either way the drift begins anew.</summary>
public enum PartChangeKind
{
    Replaced,
    Ground,
}

/// <summary>A part that the clearance depends on was replaced or ground: a new leg and a new slope. Only ever added.</summary>
public sealed class PartChange
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    /// <summary>Absent where the part serves every valve of the engine.</summary>
    public ValveKey? Valve { get; init; }

    public required ValvePart Part { get; init; }

    public required PartChangeKind Kind { get; init; }

    public int? JobCardNumber { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required LocalDate ChangedOn { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? RemarkId { get; init; }
}

/// <summary>A batch of old worksheets, taken over as a whole.</summary>
public sealed class ReadingImport
{
    public required Guid Id { get; init; }

    public required string FileName { get; init; }

    public required int Rows { get; init; }

    public required Guid ImportedBy { get; init; }

    public required Instant ImportedAt { get; init; }
}
