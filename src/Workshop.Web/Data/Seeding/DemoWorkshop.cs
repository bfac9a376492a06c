using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;

namespace Workshop.Web.Data.Seeding;

/// <summary>An engine model as a seed file holds it: the specification in its one form, wrapped with whose it is.</summary>
internal sealed record SeedEngineModel(string Maker, string Name, bool Invented, EngineSpecification Specification);

/// <summary>The invented workshop as its seed file holds it.</summary>
/// <param name="About">Says that it is invented, to whoever opens the file.</param>
/// <param name="DriftThreshold">Its manager waits for even odds: on four cylinders some valve always stands near a limit.</param>
internal sealed record DemoWorkshop(
    string About,
    string Name,
    string TimeZone,
    string Phone,
    double DriftThreshold,
    IReadOnlyList<DemoHours> OpeningHours,
    IReadOnlyList<DemoHoliday> Holidays,
    IReadOnlyList<DemoResource> Bays,
    IReadOnlyList<string> ParkingPlaces,
    IReadOnlyList<DemoResource> SpecialTools,
    IReadOnlyList<DemoPerson> People,
    IReadOnlyList<string> StoragePlaces,
    IReadOnlyList<DemoPart> Parts,
    IReadOnlyList<DemoShimBox> ShimBoxes,
    IReadOnlyList<DemoPackage> Packages,
    IReadOnlyList<DemoLot> Lots,
    IReadOnlyList<DemoCount> Counts,
    IReadOnlyList<DemoInstrument> Instruments,
    IReadOnlyList<DemoAdapter> WrenchAdapters);

internal sealed record DemoHours(IsoDayOfWeek Weekday, LocalTime OpensAt, LocalTime ClosesAt);

/// <summary>The same day every year.</summary>
internal sealed record DemoHoliday(int Month, int Day, string Name);

internal sealed record DemoResource(string Name, IReadOnlyList<string> Capabilities);

/// <param name="Account">The name to sign in with; the password is generated.</param>
/// <param name="Initials">Technicians only: they are a resource that visits take.</param>
/// <param name="Hours">Absent: the opening hours.</param>
/// <param name="BreakFrom">On every working day.</param>
internal sealed record DemoPerson(
    string Name,
    string Account,
    IReadOnlyList<string> Roles,
    string? Initials = null,
    IReadOnlyList<string>? Skills = null,
    TechnicianGrade? Grade = null,
    IReadOnlyList<DemoWorkingHours>? Hours = null,
    LocalTime? BreakFrom = null,
    LocalTime? BreakUntil = null);

internal sealed record DemoWorkingHours(IReadOnlyList<IsoDayOfWeek> Weekdays, LocalTime StartsAt, LocalTime EndsAt);

/// <param name="Stock">On hand on the seeding day, in the part's unit.</param>
/// <param name="Size">The row of the catalogue that its sizes are taken from.</param>
/// <param name="Hardness">Of rubber, Shore A.</param>
/// <param name="InsteadOf">The part that it stands in for.</param>
/// <param name="Note">What is to be kept in mind then.</param>
/// <param name="ReplacedBy">It is made no more since the seeding day, and this took its place.</param>
internal sealed record DemoPart(
    string Code, string Name, PartKind Kind, PartUnit Unit, string Place, decimal Stock, string? Size = null, string? Material = null,
    int? Hardness = null, int? ShelfLifeMonths = null, string? InsteadOf = null, string? Note = null,
    string? Designation = null, decimal? PackQuantity = null, int? DeliveryDays = null, string? ReplacedBy = null);

/// <summary>What a scanner reads on a package, and what it holds.</summary>
internal sealed record DemoPackage(string Part, string Code, decimal Quantity);

/// <summary>Beside what was there before lots were kept.</summary>
internal sealed record DemoLot(string Part, string Place, string Lot, decimal Quantity, int ReceivedDaysAgo, int ExpiresInDays);

/// <param name="Remark">Why it differed.</param>
internal sealed record DemoCount(string Place, bool Closed, IReadOnlyList<DemoCountedPart> Parts, string? Remark = null);

/// <param name="Fewer">Than the books say.</param>
internal sealed record DemoCountedPart(string Part, decimal Fewer);

/// <param name="Each">How many of a thickness a full compartment holds.</param>
/// <param name="Columns">Compartments in a row of the box.</param>
internal sealed record DemoShimBox(string PartCode, string Place, decimal FromMm, decimal ToMm, int Each, int Columns);

/// <summary>Dates count from the seeding day, so that something is always due soon and something overdue.</summary>
internal sealed record DemoInstrument(
    InstrumentKind Kind,
    string Name,
    string SerialNumber,
    string Unit,
    decimal? RangeLowest = null,
    decimal? RangeHighest = null,
    decimal? Uncertainty = null,
    int? CalibratedDaysAgo = null,
    int? CalibrationDueInDays = null,
    DemoBlades? Blades = null,
    decimal? Graduation = null,
    decimal? LengthMm = null,
    string? Drive = null,
    int? DroppedHoursAgo = null);

/// <summary>See <see cref="WrenchAdapter"/>.</summary>
internal sealed record DemoAdapter(
    string Name, WrenchAdapterKind Kind, decimal EffectiveLengthMm, string Tool, string Drive, decimal? ThicknessMm = null);

/// <summary>Nominal thicknesses of a feeler set, in the set's unit.</summary>
internal sealed record DemoBlades(decimal From, decimal To, decimal Step)
{
    public IEnumerable<decimal> Each()
    {
        for (var thickness = From; thickness <= To; thickness += Step)
        {
            yield return thickness;
        }
    }
}
