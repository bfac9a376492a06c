using NodaTime;

namespace Workshop.Domain.Bookings;

public enum ResourceKind
{
    Bay,
    Technician,
    SpecialTool,
    ParkingPlace,
}

/// <summary>What a technician may be given without another's supervision, as the workshop judges it; in rising order.</summary>
public enum TechnicianGrade
{
    Apprentice,
    Journeyman,
    Master,
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

    /// <summary>Technicians only.</summary>
    public TechnicianGrade? Grade { get; set; }

    public bool Retired { get; set; }
}

/// <summary>
/// When a technician works on a weekday, by the workshop's clock. A technician without any row works the opening hours; one
/// with rows works on those weekdays only.
/// </summary>
public sealed class WorkingHours
{
    public required Guid ResourceId { get; init; }

    public required IsoDayOfWeek Weekday { get; init; }

    public required LocalTime StartsAt { get; set; }

    public required LocalTime EndsAt { get; set; }
}

/// <summary>A break within a technician's working hours, by the workshop's clock; work goes on after it.</summary>
public sealed class WorkBreak
{
    public required Guid Id { get; init; }

    public required Guid ResourceId { get; init; }

    public required IsoDayOfWeek Weekday { get; init; }

    public required LocalTime StartsAt { get; set; }

    public required LocalTime EndsAt { get; set; }
}

/// <summary>
/// A span in which a resource cannot be taken: a technician's leave, a bay's repair, a tool sent to calibration. It may be
/// entered over visits that are booked already; those then stand out until a person moves them.
/// </summary>
public sealed class Absence
{
    public required Guid Id { get; init; }

    public required Guid ResourceId { get; init; }

    public required Interval Span { get; set; }

    public required AbsenceReason Reason { get; set; }

    public required Guid EnteredBy { get; init; }

    public required Instant EnteredAt { get; init; }

    /// <summary>Withdrawn ones are kept for the record and take nothing.</summary>
    public Instant? WithdrawnAt { get; set; }
}

/// <summary>Never what ails a person: health is nobody's business here.</summary>
public enum AbsenceReason
{
    Leave,
    Training,
    OtherAbsence,
    Repair,
    Calibration,
    LentOut,
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

    public static string Spoken(this TechnicianGrade grade) => grade switch
    {
        TechnicianGrade.Apprentice => "apprentice",
        TechnicianGrade.Journeyman => "journeyman",
        TechnicianGrade.Master => "master",
        _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, null),
    };

    public static string Spoken(this AbsenceReason reason) => reason switch
    {
        AbsenceReason.Leave => "leave",
        AbsenceReason.Training => "training",
        AbsenceReason.OtherAbsence => "absent",
        AbsenceReason.Repair => "repair",
        AbsenceReason.Calibration => "calibration",
        AbsenceReason.LentOut => "lent out",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };
}
