using System.Text.Json.Serialization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>
/// Everything that the engine maker states about one engine model, as one immutable document: a job card pins the version
/// that it was booked with. The same document is the seed file, the API's answer and the stored row.
/// </summary>
public sealed record EngineSpecification
{
    public required ValveTrainKind ValveTrain { get; init; }

    public required EngineLayout Layout { get; init; }

    public required IReadOnlyList<Valve> Valves { get; init; }

    public required IReadOnlyList<Camshaft> Camshafts { get; init; }

    /// <summary>What drives the camshafts and how they are timed; empty where nothing is stated.</summary>
    public IReadOnlyList<CamDrive> CamDrives { get; init; } = [];

    /// <summary>In running direction; work goes from the first to the last.</summary>
    public required IReadOnlyList<MeasuringPosition> MeasuringPositions { get; init; }

    /// <summary>Per side, and per lobe where the profile is switched.</summary>
    public required IReadOnlyList<ClearanceLimits> Limits { get; init; }

    /// <summary>Absent for screw and locknut.</summary>
    public ShimRange? Shims { get; init; }

    public required ColdCondition Cold { get; init; }

    /// <summary>What a cylinder must hold; absent where nothing is stated.</summary>
    public CompressionLimits? Compression { get; init; }

    /// <summary>Absent where nothing is stated.</summary>
    public SparkPlugs? SparkPlugs { get; init; }

    public required IReadOnlyList<Access> Accesses { get; init; }

    public required IReadOnlyList<Joint> Joints { get; init; }

    public required IReadOnlyList<Fastener> Fasteners { get; init; }

    public required IReadOnlyList<ServiceItem> ServiceItems { get; init; }

    /// <summary>What some of its motorcycles have and others have not, where a service item asks for it.</summary>
    public IReadOnlyList<FittedOption> Options { get; init; } = [];

    /// <summary>Which items fall together; absent where the workshop's own setting holds.</summary>
    public TogetherWithin? Together { get; init; }

    /// <summary>What follows the work; absent where the workshop's usual minutes do.</summary>
    public AfterWork? AfterWork { get; init; }

    /// <summary>What is asked for on a visit before and after the work; empty where nothing is.</summary>
    public IReadOnlyList<CheckOnVisit> VisitChecks { get; init; } = [];

    public required Provenance Provenance { get; init; }

    /// <summary>The re-check of the cooled engine that some of these items ask for; nothing where none does.</summary>
    public Recheck? RecheckAfter(IEnumerable<ServiceItem> items) =>
        AfterWork?.Recheck is { } recheck && items.Any(i => recheck.AfterItems.Contains(i.Code)) ? recheck : null;
}

/// <summary>What stands between cam and valve. Positively closed and hydraulic trains are refused in words, not listed.</summary>
public enum ValveTrainKind
{
    ShimUnderBucket,
    ShimOverBucket,
    ShimUnderFingerFollower,
    ScrewAndLocknut,
}

/// <summary>Which document a figure comes from, and who compared it with that document; nobody is said, not hidden.</summary>
public sealed record Provenance(string Source, string Edition, string? CheckedBy = null, string? CheckedOn = null);

public enum TurningDirection
{
    Clockwise,
    Anticlockwise,
}

/// <param name="Description">In words: "V-twin, crankshaft across the frame".</param>
/// <param name="Cylinders">Cylinders with their bank, in order of number.</param>
/// <param name="NumberingSeenFrom">Where one stands when counting cylinders and valve positions.</param>
/// <param name="FiringOrder">Cylinder numbers in order of firing.</param>
/// <param name="Turning">Running direction of the crankshaft, seen from <paramref name="TurningSeenFrom"/>.</param>
/// <param name="TimingMarks">What lines up with what at the timing position, in words.</param>
public sealed record EngineLayout(
    string Description,
    IReadOnlyList<Cylinder> Cylinders,
    string NumberingSeenFrom,
    IReadOnlyList<int> FiringOrder,
    TurningDirection Turning,
    string TurningSeenFrom,
    string TimingMarks);

public sealed record Cylinder(int Number, string Bank);

/// <param name="Lobes">2 where the profile is switched: two lobes act on one valve through one shim.</param>
public sealed record Valve([property: JsonPropertyName("valve")] ValveKey Key, int Lobes = 1);

/// <param name="Valves">The valves that are disturbed when this camshaft (or follower shaft) comes out.</param>
public sealed record Camshaft(string Code, string Name, IReadOnlyList<ValveKey> Valves);

/// <summary>One lobe of one valve; lobe 1 where the profile is not switched.</summary>
[method: JsonConstructor]
public readonly record struct LobeKey(ValveKey Valve, int Lobe = 1) : IComparable<LobeKey>
{
    [JsonIgnore]
    public string Spoken => Lobe == 1 ? Valve.Spoken : $"{Valve.Spoken}, lobe {Lobe}";

    public int CompareTo(LobeKey other) => (Valve, Lobe).CompareTo((other.Valve, other.Lobe));

    public static bool operator <(LobeKey left, LobeKey right) => left.CompareTo(right) < 0;
    public static bool operator >(LobeKey left, LobeKey right) => left.CompareTo(right) > 0;
    public static bool operator <=(LobeKey left, LobeKey right) => left.CompareTo(right) <= 0;
    public static bool operator >=(LobeKey left, LobeKey right) => left.CompareTo(right) >= 0;

    public override string ToString() => Lobe == 1 ? Valve.ToString() : $"{Valve}/{Lobe}";
}

/// <param name="CrankDegrees">Crank angle from compression dead centre of cylinder 1, in running direction.</param>
/// <param name="Mark">What the technician sees when the crank is there.</param>
public sealed record MeasuringPosition(string Name, decimal CrankDegrees, string Mark, IReadOnlyList<LobeKey> Lobes);

/// <param name="Lower">Smallest clearance allowed.</param>
/// <param name="Upper">Largest clearance allowed.</param>
/// <param name="SetTo">The clearance to aim at.</param>
public sealed record ClearanceLimits(
    Side Side,
    int Lobe,
    [property: JsonPropertyName("lowerMm")] Clearance Lower,
    [property: JsonPropertyName("upperMm")] Clearance Upper,
    [property: JsonPropertyName("setToMm")] Clearance SetTo,
    LeverRatio LeverRatio,
    Provenance Provenance);

/// <param name="Form">What it is and where it sits: "disc under bucket".</param>
/// <param name="PartCode">The stores' code of these shims; thickness tells them apart.</param>
/// <param name="Smallest">Thinnest permitted.</param>
/// <param name="Largest">Thickest permitted.</param>
public sealed record ShimRange(
    string PartCode,
    decimal DiameterMm,
    string Form,
    [property: JsonPropertyName("smallestMm")] ShimThickness Smallest,
    [property: JsonPropertyName("largestMm")] ShimThickness Largest,
    decimal StepMm,
    Provenance Provenance);

/// <param name="SoakHours">Hours the engine must stand, counted from its last stop.</param>
/// <param name="Lowest">Lowest temperature of the cylinder head for a reading.</param>
/// <param name="Highest">Highest temperature of the cylinder head for a reading.</param>
/// <param name="Method">How the temperature is taken.</param>
public sealed record ColdCondition(
    decimal SoakHours,
    [property: JsonPropertyName("lowestC")] Temperature Lowest,
    [property: JsonPropertyName("highestC")] Temperature Highest,
    string Method,
    Provenance Provenance);

/// <summary>What the engine maker or the workshop wants after the work.</summary>
/// <param name="WarmRunMinutes">Absent: the workshop's usual; 0 where there is none.</param>
/// <param name="TestRideMinutes">Absent: the workshop's usual; 0 where there is none.</param>
public sealed record AfterWork(int? WarmRunMinutes = null, int? TestRideMinutes = null, Recheck? Recheck = null);

/// <summary>The engine cools again and is looked at once more.</summary>
/// <param name="AfterItems">Service items, by code, that ask for it.</param>
/// <param name="CoolHours">Hours that the engine stands first.</param>
/// <param name="Minutes">A technician's minutes.</param>
public sealed record Recheck(IReadOnlyList<string> AfterItems, decimal CoolHours, int Minutes);
