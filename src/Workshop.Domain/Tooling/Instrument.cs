using NodaTime;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tooling;

public enum InstrumentKind
{
    FeelerSet,
    Micrometer,
    TorqueWrench,
    DialGauge,
    DegreeWheel,
    Thermometer,
    AlignmentJig,
    Caliper,

    /// <summary>Shows how far below the air's the pressure is, one intake or several at once.</summary>
    VacuumGauge,
    CompressionGauge,
    LeakDownTester,
    PlugGauge,
}

public enum InstrumentState
{
    InUse,
    OutForCalibration,
    Withdrawn,
}

/// <summary>A thing that measures or sets, with what is known of how well.</summary>
public sealed class Instrument
{
    public required Guid Id { get; init; }

    public required InstrumentKind Kind { get; init; }

    public required string Name { get; set; }

    public required string SerialNumber { get; set; }

    /// <summary>The unit of its scale: "mm", "in", "N.m", "lbf.ft", "°C", "degree".</summary>
    public required string Unit { get; init; }

    public decimal? RangeLowest { get; set; }

    public decimal? RangeHighest { get; set; }

    /// <summary>Standard uncertainty in the instrument's unit; of a wrench, the permissible deviation in percent.</summary>
    public decimal? Uncertainty { get; set; }

    public LocalDate? CalibratedOn { get; set; }

    public LocalDate? CalibrationDueOn { get; set; }

    /// <summary>Months from one calibration to the next; of a torque wrench 12 where nothing else is said (ISO 6789-1:2017).</summary>
    public int? CalibrationMonths { get; set; }

    /// <summary>Torque wrenches only: cycles from one calibration to the next; 5,000 where nothing else is said (ISO 6789-1:2017).</summary>
    public int? CalibrationCycles { get; set; }

    /// <summary>The steps in which its scale is set or read, in its own unit.</summary>
    public decimal? Graduation { get; set; }

    /// <summary>Torque wrenches only: from the centre of the drive to the mark on the grip, in mm.</summary>
    public decimal? LengthMm { get; set; }

    /// <summary>Torque wrenches only: the square drive or the fitting for insert tools: "1/4 in", "9 x 12 mm".</summary>
    public string? Drive { get; set; }

    public InstrumentState State { get; set; } = InstrumentState.InUse;

    /// <summary>The person who has it now.</summary>
    public Guid? HolderId { get; set; }

    /// <summary>What befell it since its last calibration; nothing once it is calibrated.</summary>
    public InstrumentDamage? Damage { get; set; }

    public LocalDate? DamagedOn { get; set; }

    /// <summary>
    /// The day on which the manager let it be used in spite of what stood against it then. Nothing where nobody did, and again
    /// when it is calibrated or damaged.
    /// </summary>
    public LocalDate? ReleasedOn { get; set; }

    /// <summary>The last day of the release; absent: until the next calibration.</summary>
    public LocalDate? ReleasedUntil { get; set; }

    /// <summary>The release was also for cycles beyond those allowed.</summary>
    public bool ReleasedBeyondCycles { get; set; }

    /// <summary>Nothing stands against its use on <paramref name="day"/>; see <see cref="InstrumentStanding"/>. Cycles are not counted here.</summary>
    public bool MayBeUsedOn(LocalDate day) => InstrumentStanding.ReasonAgainst(this, day, cycles: 0) is null;
}

/// <summary>What puts an instrument out of use until it is calibrated or released.</summary>
public enum InstrumentDamage
{
    Dropped,

    /// <summary>Torqued beyond its rated maximum, or used to loosen.</summary>
    Overloaded,
}

/// <summary>One blade of a feeler set.</summary>
public sealed class FeelerBlade
{
    public required Guid Id { get; init; }

    public required Guid InstrumentId { get; init; }

    public required Clearance Nominal { get; init; }

    /// <summary>By micrometer, where it was checked.</summary>
    public Clearance? Measured { get; set; }

    /// <summary>Bent or worn.</summary>
    public bool Withdrawn { get; set; }
}
