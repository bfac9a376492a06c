using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Bookings;

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

    /// <summary>Under which it is called; stands in what it writes.</summary>
    public string? Phone { get; set; }

    /// <summary>Whether shims that came out of an engine are fitted again.</summary>
    public UsedShimPolicy UsedShims { get; set; } = UsedShimPolicy.Yes;

    /// <summary>
    /// The probability of any valve being outside its limits at which the manager wants an engine to be checked, whatever the
    /// interval says; above 0, below 1.
    /// </summary>
    public double DriftThreshold { get; set; } = UsualDriftThreshold;

    /// <summary>A technician's minutes for a test run and the complaint at arrival, where a visit asks for it.</summary>
    public int ArrivalMinutes { get; set; } = 15;

    /// <summary>A technician's minutes to run the engine warm after the work, where the engine model says nothing else.</summary>
    public int WarmRunMinutes { get; set; } = 15;

    /// <summary>A technician's minutes of the test ride, where the engine model says nothing else.</summary>
    public int TestRideMinutes { get; set; } = 20;

    /// <summary>From the last of the work until the owner can have it: paper, washing, the bill.</summary>
    public int HandOverMinutes { get; set; } = 15;

    /// <summary>Items that fall due within so far of each other are done together, where the engine model says nothing else.</summary>
    public Distance TogetherWithin { get; set; } = Distance.FromKilometres(500);

    /// <summary>The same in days.</summary>
    public int TogetherWithinDays { get; set; } = 30;

    /// <summary>Three letters of ISO 4217; every sum is in it.</summary>
    public string Currency { get; set; } = "EUR";

    /// <summary>Of one hour of labour, before tax; absent until the workshop has set it.</summary>
    public decimal? LabourNetPerHour { get; set; }

    /// <summary>The tax rate of labour, and of parts that name none.</summary>
    public string? TaxRateCode { get; set; }

    /// <summary>The share of lead times without a shortage that is wanted of the stores, where a part says nothing else.</summary>
    public double ServiceLevel { get; set; } = 0.95;

    /// <summary>The workshop and its data are invented; every page says so.</summary>
    public bool Invented { get; init; }
}
