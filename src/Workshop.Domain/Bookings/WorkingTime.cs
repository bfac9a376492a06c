using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>
/// When one resource is there, whatever visits have taken of it: a technician within hours, breaks and absences taken out; of any
/// other resource only the absences matter. What a day is made of is <see cref="ResourceTimeline"/>'s.
/// </summary>
public sealed class WorkingTime
{
    private readonly WorkshopTime time;
    private readonly ResourceTimeline there;
    private readonly ILookup<IsoDayOfWeek, WorkBreak> breaks;
    private readonly List<Absence> absences;

    private WorkingTime(WorkshopTime time, ResourceTimeline there, ILookup<IsoDayOfWeek, WorkBreak> breaks, List<Absence> absences) =>
        (this.time, this.there, this.breaks, this.absences) = (time, there, breaks, absences);

    /// <param name="resource">Bay, technician, tool or place.</param>
    /// <param name="opening">Of the workshop, over those days.</param>
    /// <param name="days">Outside of them nobody is there.</param>
    /// <param name="hours">Of this technician; none at all, he works the opening hours.</param>
    /// <param name="breaks">Of this technician.</param>
    /// <param name="absences">Of this resource; withdrawn ones take nothing.</param>
    public static WorkingTime Of(
        Resource resource,
        OpeningDays opening,
        DateInterval days,
        IEnumerable<WorkingHours> hours,
        IReadOnlyCollection<WorkBreak> breaks,
        IEnumerable<Absence> absences)
    {
        ArgumentNullException.ThrowIfNull(opening);
        var standing = absences.Where(a => a.WithdrawnAt is null).OrderBy(a => a.Span.Start).ToList();
        return new WorkingTime(
            opening.Calendar.Time,
            ResourceTimeline.Of(resource, opening, days, hours, breaks, standing.Select(a => a.Span), []),
            breaks.ToLookup(b => b.Weekday),
            standing);
    }

    /// <summary>The stretches of a day in which the resource is there, in order; none where there are none.</summary>
    public IReadOnlyList<Interval> On(LocalDate day) => there.Free(time.WholeDay(day));

    /// <summary>The breaks of a day that he works, in order.</summary>
    public IReadOnlyList<Interval> BreaksOn(LocalDate day) => On(day).Count == 0
        ? []
        : breaks[day.DayOfWeek].OrderBy(b => b.StartsAt).Select(b => new Interval(At(day, b.StartsAt), At(day, b.EndsAt)))
            .Where(b => b.Duration > Duration.Zero).ToArray();

    /// <summary>Whether the resource is there through the whole of a span, without a gap.</summary>
    public bool Holds(Interval span) => there.Free(span) is [var only] && only == span;

    /// <summary>The absences that overlap a span, in order of time; touching is no overlap.</summary>
    public IReadOnlyList<Absence> AbsencesDuring(Interval span) =>
        absences.Where(a => a.Span.Start < span.End && span.Start < a.Span.End).ToArray();

    // As OpeningCalendar reads the wall clock on a day on which the clocks change: a break of an hour that is skipped is none.
    private Instant At(LocalDate day, LocalTime at) => (day + at).InZoneLeniently(time.Zone).ToInstant();
}
