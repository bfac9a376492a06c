using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>How a shim left the workshop's hands for good, or for now.</summary>
public enum ShimEnd
{
    Scrapped,

    /// <summary>A count did not find it, or another lay in the valve where it should have been.</summary>
    Missing,

    /// <summary>Handed out without a valve being named.</summary>
    Issued,
}

/// <summary>Where a shim is.</summary>
public enum ShimWhere
{
    Box,
    Engine,
    Bench,
    Gone,
}

/// <summary>Why a shim that came out is not used again, or why a part is thrown away; which is for which says <see cref="ScrapReasons"/>.</summary>
public enum ScrapReason
{
    Pitted,
    Dished,
    Chipped,

    /// <summary>Discoloured by heat: its hardness is gone.</summary>
    Blued,

    /// <summary>Worn beyond what the workshop accepts.</summary>
    Worn,

    /// <summary>Its last day is past.</summary>
    Expired,

    Damaged,

    /// <summary>Opened, dirty or wet.</summary>
    Contaminated,

    /// <summary>Nothing that comes here needs it any more.</summary>
    Obsolete,
}

/// <summary>Which reasons hold for what.</summary>
public static class ScrapReasons
{
    /// <summary>What is seen on a shim.</summary>
    public static readonly IReadOnlyList<ScrapReason> OfShims =
        [ScrapReason.Pitted, ScrapReason.Dished, ScrapReason.Chipped, ScrapReason.Blued, ScrapReason.Worn];

    /// <summary>Why any other part is thrown away.</summary>
    public static readonly IReadOnlyList<ScrapReason> OfParts =
        [ScrapReason.Expired, ScrapReason.Damaged, ScrapReason.Contaminated, ScrapReason.Obsolete];
}

/// <summary>What the workshop does with shims that came out of an engine.</summary>
public enum UsedShimPolicy
{
    /// <summary>New ones only; a shim may stay in its own valve.</summary>
    Never,

    /// <summary>Back into the motorcycle that it came from, into any valve of it.</summary>
    OwnMachineOnly,

    Yes,
}

/// <summary>
/// One shim, the piece of steel itself, and where it is: in a place of the stores, in a valve of an engine, on the bench of a
/// visit, or gone; exactly one of these. Written by the database's trigger as movements are added, never by the service, so
/// that a shim which is in an engine cannot be in the box.
/// </summary>
public sealed class Shim
{
    public required Guid Id { get; init; }

    public required Guid PartId { get; init; }

    /// <summary>By micrometer, when it was last measured.</summary>
    public required ShimThickness Thickness { get; set; }

    /// <summary>What is stamped or printed on it, where anybody noted that. Never computed with.</summary>
    public ShimThickness? Nominal { get; init; }

    public required StockCondition Condition { get; set; }

    /// <summary>The motorcycle that it came out of last; absent while it is new.</summary>
    public Guid? CameFromMotorcycleId { get; set; }

    public Guid? PlaceId { get; set; }

    public Guid? EngineId { get; set; }

    /// <summary>In an engine: where it is. On the bench: where it came from.</summary>
    public ValveKey? Valve { get; set; }

    /// <summary>The job card on whose bench it lies.</summary>
    public int? BenchCardNumber { get; set; }

    public ShimEnd? Gone { get; set; }

    /// <summary>The one of the four that holds.</summary>
    public ShimWhere Where => this switch
    {
        { PlaceId: not null } => ShimWhere.Box,
        { EngineId: not null } => ShimWhere.Engine,
        { BenchCardNumber: not null } => ShimWhere.Bench,
        _ => ShimWhere.Gone,
    };
}

/// <summary>
/// The sizes in which shims of one part are sold, and the box that holds them: compartments in rows, one size in each, the
/// thinnest first.
/// </summary>
public sealed class ShimSeries
{
    public const int SmallestColumns = 1;
    public const int LargestColumns = 26;

    public required Guid PartId { get; init; }

    public required ValveTrainKind Seat { get; init; }

    public required decimal DiameterMm { get; init; }

    public required ShimThickness Smallest { get; init; }

    public required ShimThickness Largest { get; init; }

    public required decimal StepMm { get; init; }

    /// <summary>The box.</summary>
    public required Guid PlaceId { get; set; }

    /// <summary>Compartments in a row of the box.</summary>
    public required int Columns { get; set; }

    /// <summary>Where the sizes are taken from.</summary>
    public required string Source { get; init; }
}
