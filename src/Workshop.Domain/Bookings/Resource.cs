using NodaTime;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Bookings;

public enum ResourceKind
{
    Bay,
    Technician,
    SpecialTool,
    ParkingPlace,
}

/// <summary>What can be taken by one visit at a time. A technician's name stands with the person.</summary>
public sealed class Resource
{
    public required Guid Id { get; init; }

    public required ResourceKind Kind { get; init; }

    /// <summary>A bay, tool or place by name; a technician by initials chosen by the workshop, never a full name.</summary>
    public required string Name { get; set; }

    public Guid? PersonId { get; init; }

    /// <summary>What it can do, or which tool it is: "lift", "valve work", the code that service items ask for.</summary>
    public List<string> Capabilities { get; set; } = [];

    public bool Retired { get; set; }
}

public enum VisitPhase
{
    Arrival,
    ColdSoak,
    Work,
    SealantCure,
    WarmRun,
    TestRide,
    HandOver,
}

/// <summary>A resource taken for a span of time by one visit. Spans are half open; no two live ones may overlap.</summary>
public sealed class Occupancy
{
    public required Guid Id { get; init; }

    public required int JobCardNumber { get; init; }

    public required VisitPhase Phase { get; init; }

    public required Guid ResourceId { get; init; }

    public required Interval Span { get; set; }

    /// <summary>False once the visit is cancelled or the resource released; kept for the record.</summary>
    public bool Live { get; set; } = true;
}

/// <summary>The hours of one weekday in the workshop's own time zone; no row, closed.</summary>
public sealed class OpeningHours
{
    public required IsoDayOfWeek Weekday { get; init; }

    public required LocalTime OpensAt { get; set; }

    public required LocalTime ClosesAt { get; set; }
}

public sealed class Holiday
{
    public required LocalDate Day { get; init; }

    public required string Name { get; set; }
}

/// <summary>What is true of the one workshop that this database belongs to.</summary>
public sealed class WorkshopProfile
{
    public const int OnlyId = 1;
    public const double UsualDriftThreshold = 0.05;

    public int Id { get; init; } = OnlyId;

    public required string Name { get; set; }

    /// <summary>Of the tz database, for example "Europe/Vienna".</summary>
    public required string TimeZone { get; set; }

    /// <summary>Whether shims that came out of an engine are fitted again.</summary>
    public UsedShimPolicy UsedShims { get; set; } = UsedShimPolicy.Yes;

    /// <summary>
    /// The probability of any valve being outside its limits at which the manager wants an engine to be checked, whatever the
    /// interval says; above 0, below 1.
    /// </summary>
    public double DriftThreshold { get; set; } = UsualDriftThreshold;

    /// <summary>The workshop and its data are invented; every page says so.</summary>
    public bool Invented { get; init; }
}

/// <summary>How kinds of resources are said on a page.</summary>
public static class ResourceWords
{
    public static string Spoken(this ResourceKind kind) => kind switch
    {
        ResourceKind.Bay => "bay",
        ResourceKind.Technician => "technician",
        ResourceKind.SpecialTool => "special tool",
        ResourceKind.ParkingPlace => "parking place",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
