using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>Why a part of a visit can no longer stand where it was booked; it stays there until a person moves it.</summary>
public enum Misplacement
{
    /// <summary>The bay, technician, tool or place is away.</summary>
    Absent,

    /// <summary>The workshop is closed.</summary>
    Closed,

    /// <summary>The technician does not work then, or has a break.</summary>
    NotAtWork,
}

/// <summary>Finds what stands wrong after absences, hours, holidays or the time zone have changed.</summary>
public static class Misplacements
{
    /// <summary>Why a taken span of a resource cannot stand; nothing where it can. Only technicians keep hours: a bay is taken overnight.</summary>
    /// <param name="kind">Of the resource.</param>
    /// <param name="time">Of the resource.</param>
    /// <param name="calendar">Of the workshop.</param>
    /// <param name="span">Taken.</param>
    public static Misplacement? Of(ResourceKind kind, WorkingTime time, OpeningCalendar calendar, Interval span)
    {
        ArgumentNullException.ThrowIfNull(time);
        return time.AbsencesDuring(span).Count > 0 ? Misplacement.Absent
            : kind != ResourceKind.Technician || time.Holds(span) ? null
            : IsOpen(calendar, span) ? Misplacement.NotAtWork
            : Misplacement.Closed;
    }

    /// <summary>Why a phase cannot stand, whoever carries it out: people come to bring and to fetch within the opening hours.</summary>
    public static Misplacement? Of(VisitPhase phase, OpeningCalendar calendar, Interval span) =>
        phase is VisitPhase.Arrival or VisitPhase.HandOver && !IsOpen(calendar, span) ? Misplacement.Closed : null;

    /// <summary>How it is said on a page.</summary>
    public static string Spoken(this Misplacement why) => why switch
    {
        Misplacement.Absent => "stands in an absence",
        Misplacement.Closed => "outside the opening hours",
        Misplacement.NotAtWork => "outside the technician's hours",
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, null),
    };

    private static bool IsOpen(OpeningCalendar calendar, Interval span)
    {
        ArgumentNullException.ThrowIfNull(calendar);
        return calendar.OpenOn(calendar.Time.DayOf(span.Start)) is { } open && open.Start <= span.Start && span.End <= open.End;
    }
}
