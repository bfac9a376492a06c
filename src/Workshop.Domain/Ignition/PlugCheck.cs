using NodaTime;

namespace Workshop.Domain.Ignition;

/// <summary>What a spark plug looks like, which tells how its cylinder burns.</summary>
public enum PlugCondition
{
    /// <summary>Light brown to grey.</summary>
    Normal,

    /// <summary>Dry and black.</summary>
    Sooty,

    /// <summary>Wet with oil.</summary>
    Oily,

    /// <summary>Wet with fuel.</summary>
    WetWithFuel,

    /// <summary>White or blistered: overheated.</summary>
    Overheated,

    WornElectrode,
    CrackedInsulator,
    Deposits,
}

/// <summary>With what the gap was measured.</summary>
public enum GapGauge
{
    Blade,
    Wire,
}

/// <summary>Which plug: of a cylinder, and which of it where it has two.</summary>
public readonly record struct PlugKey(int Cylinder, int Plug) : IComparable<PlugKey>
{
    public int CompareTo(PlugKey other) => (Cylinder, Plug).CompareTo((other.Cylinder, other.Plug));

    public static bool operator <(PlugKey left, PlugKey right) => left.CompareTo(right) < 0;
    public static bool operator >(PlugKey left, PlugKey right) => left.CompareTo(right) > 0;
    public static bool operator <=(PlugKey left, PlugKey right) => left.CompareTo(right) <= 0;
    public static bool operator >=(PlugKey left, PlugKey right) => left.CompareTo(right) >= 0;

    public override string ToString() => $"{Cylinder}-{Plug}";
}

/// <summary>
/// One spark plug at one visit: as it came out, and what goes back in. Only ever added: a correction is a new row that supersedes
/// the old one, with who, when and why.
/// </summary>
public sealed class PlugCheck : IAttempt
{
    public required Guid Id { get; init; }

    public required Guid EngineId { get; init; }

    public required int JobCardNumber { get; init; }

    public required int Cylinder { get; init; }

    /// <summary>1, or 2 for the second of a cylinder.</summary>
    public required int Plug { get; init; }

    /// <summary>1 for the first entry of this plug at the visit, and so on; the last one counts.</summary>
    public required int Attempt { get; init; }

    public required PlugCondition Condition { get; init; }

    /// <summary>As it came out; absent where nobody measured it, as of a plug that is renewed in any case.</summary>
    public decimal? GapFoundMm { get; init; }

    /// <summary>A new one goes in; else the old one goes back.</summary>
    public required bool Renewed { get; init; }

    /// <summary>The stores' code of the new one.</summary>
    public string? PartCode { get; init; }

    /// <summary>Of the plug that goes in, new or old.</summary>
    public required decimal GapLeftMm { get; init; }

    public required GapGauge Gauge { get; init; }

    public Guid? InstrumentId { get; init; }

    public required Guid OdometerReadingId { get; init; }

    public required Instant CheckedAt { get; init; }

    public required Guid CheckedBy { get; init; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    public Guid? SupersedesId { get; init; }

    public Guid? ReasonRemarkId { get; init; }

    public PlugKey Key => new(Cylinder, Plug);
}
