using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>
/// When a technician works, by the workshop's clock: the opening hours, or his own hours on days that are no holiday, without
/// breaks and absences. Of any other resource only the absences matter.
/// </summary>
public sealed class WorkingTime
{
    private readonly OpeningCalendar calendar;
    private readonly Dictionary<IsoDayOfWeek, WorkingHours> hours;
    private readonly ILookup<IsoDayOfWeek, WorkBreak> breaks;
    private readonly List<Absence> absences;

    /// <param name="calendar">Of the workshop.</param>
    /// <param name="hours">Of this technician; none at all, he works the opening hours.</param>
    /// <param name="breaks">Of this technician.</param>
    /// <param name="absences">Of this resource; withdrawn ones take nothing.</param>
    public WorkingTime(
        OpeningCalendar calendar, IEnumerable<WorkingHours> hours, IEnumerable<WorkBreak> breaks, IEnumerable<Absence> absences)
    {
        this.calendar = calendar;
        this.hours = hours.ToDictionary(h => h.Weekday);
        this.breaks = breaks.ToLookup(b => b.Weekday);
        this.absences = absences.Where(a => a.WithdrawnAt is null).OrderBy(a => a.Span.Start).ToList();
    }

    /// <summary>From the first to the last minute of a day; nothing on a holiday, a closed day or a day off.</summary>
    public Interval? HoursOn(LocalDate day)
    {
        if (hours.Count == 0)
        {
            return calendar.OpenOn(day);
        }

        if (calendar.IsHoliday(day) || !hours.TryGetValue(day.DayOfWeek, out var own))
        {
            return null;
        }

        var (from, until) = (At(day, own.StartsAt), At(day, own.EndsAt));
        return from < until ? new Interval(from, until) : null;
    }

    /// <summary>The breaks of a day that he works, in order.</summary>
    public IReadOnlyList<Interval> BreaksOn(LocalDate day) => HoursOn(day) is null
        ? []
        : breaks[day.DayOfWeek].OrderBy(b => b.StartsAt).Select(b => new Interval(At(day, b.StartsAt), At(day, b.EndsAt)))
            .Where(b => b.Start < b.End).ToArray();

    /// <summary>The stretches of a day in which work goes on, in order; none where there are none.</summary>
    public IReadOnlyList<Interval> On(LocalDate day) => HoursOn(day) is not { } worked
        ? []
        : FreeSpans.Of(worked, BreaksOn(day).Concat(absences.Select(a => a.Span))).Where(s => s.Duration > Duration.Zero).ToArray();

    /// <summary>Whether work can go on through the whole of a span without a gap.</summary>
    public bool Holds(Interval span) =>
        On(calendar.Time.DayOf(span.Start)).Any(s => s.Start <= span.Start && span.End <= s.End);

    /// <summary>The absences that overlap a span, in order of time; touching is no overlap.</summary>
    public IReadOnlyList<Absence> AbsencesDuring(Interval span) =>
        absences.Where(a => a.Span.Start < span.End && span.Start < a.Span.End).ToArray();

    private Instant At(LocalDate day, LocalTime time) => (day + time).InZoneLeniently(calendar.Time.Zone).ToInstant();
}
