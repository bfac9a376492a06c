using System.Globalization;
using NodaTime;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.Bookings;

/// <summary>From a time of day to a later one, by the workshop's clock.</summary>
public sealed record DayStretch(LocalTime From, LocalTime Until)
{
    /// <summary>"08:00 to 12:00".</summary>
    public override string ToString() => $"{WorkingWeek.Say(From)} to {WorkingWeek.Say(Until)}";
}

/// <summary>One weekday of a technician as it is entered, with the field that it came in.</summary>
/// <param name="Field">As the caller wrote it: <c>days[2]</c>.</param>
/// <param name="Weekday">None more than once.</param>
/// <param name="Hours">The hours of that day; nothing where the opening hours hold, or where the day is off.</param>
/// <param name="Breaks">In any order.</param>
public sealed record EnteredDay(
    string Field, IsoDayOfWeek Weekday, (LocalTime? From, LocalTime? Until) Hours, IReadOnlyList<EnteredBreak> Breaks);

/// <summary>One break as it is entered; both times absent where nothing was.</summary>
public sealed record EnteredBreak(string Field, LocalTime? From, LocalTime? Until);

/// <summary>What may be entered as the week of a technician, and of the workshop.</summary>
public static class WorkingWeek
{
    /// <summary>What is wrong with a week; nothing when it can be worked.</summary>
    /// <param name="days">As entered.</param>
    /// <param name="asOpeningHours">The technician works whenever it is open: days hold breaks only.</param>
    /// <param name="opening">The workshop's week, which technicians without hours of their own work.</param>
    public static IReadOnlyList<FieldFault> Faults(
        IReadOnlyList<EnteredDay> days, bool asOpeningHours, IReadOnlyCollection<OpeningHours> opening)
    {
        ArgumentNullException.ThrowIfNull(days);
        ArgumentNullException.ThrowIfNull(opening);
        var open = opening.ToDictionary(o => o.Weekday, o => new DayStretch(o.OpensAt, o.ClosesAt));
        return days.SelectMany(day => DayFaults(day, asOpeningHours, open.GetValueOrDefault(day.Weekday))).ToArray();
    }

    /// <summary>What is wrong with a stretch of a day: half given, or ending before it starts.</summary>
    public static IReadOnlyList<FieldFault> StretchFaults(
        string fromField, LocalTime? from, string untilField, LocalTime? until) => (from, until) switch
    {
        (null, null) => [],
        (null, _) => [new FieldFault(fromField, $"{fromField} is empty, but {untilField} is {Say(until!.Value)}: give both, or neither.")],
        (_, null) => [new FieldFault(untilField, $"{untilField} is empty, but {fromField} is {Say(from!.Value)}: give both, or neither.")],
        _ when until <= from => [new FieldFault(untilField,
            $"{untilField} is {Say(until.Value)}, which is not after {fromField}, {Say(from.Value)}; a later time of the same day is allowed.")],
        _ => [],
    };

    /// <summary>A time of day as one reads it off a clock.</summary>
    public static string Say(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static IEnumerable<FieldFault> DayFaults(EnteredDay day, bool asOpeningHours, DayStretch? open)
    {
        var (from, until) = day.Hours;
        var faults = StretchFaults($"{day.Field}.startsAt", from, $"{day.Field}.endsAt", until)
            .Concat(day.Breaks.SelectMany(b => StretchFaults($"{b.Field}.startsAt", b.From, $"{b.Field}.endsAt", b.Until))).ToList();
        if (faults.Count > 0)
        {
            return faults;
        }

        var breaks = day.Breaks.Where(b => b.From is not null)
            .Select(b => (b.Field, Stretch: new DayStretch(b.From!.Value, b.Until!.Value))).OrderBy(b => b.Stretch.From).ToList();
        if (asOpeningHours && from is not null)
        {
            return [new FieldFault($"{day.Field}.startsAt",
                $"{day.Field}.startsAt is given, but the technician is said to work the opening hours; give breaks only, or own hours for each day.")];
        }

        var hours = asOpeningHours ? open : from is null ? null : new DayStretch(from.Value, until!.Value);
        return breaks.Where(b => !Holds(hours, b.Stretch)).Select(b => Outside(b.Field, b.Stretch, day.Weekday, hours))
            .Concat(breaks.Zip(breaks.Skip(1)).Where(pair => pair.Second.Stretch.From < pair.First.Stretch.Until)
                .Select(pair => new FieldFault($"{pair.Second.Field}.startsAt",
                    $"{pair.Second.Field} is {pair.Second.Stretch}: it overlaps the break {pair.First.Stretch} of that {day.Weekday}; breaks follow each other.")));
    }

    private static bool Holds(DayStretch? outer, DayStretch inner) =>
        outer is not null && outer.From <= inner.From && inner.Until <= outer.Until;

    private static FieldFault Outside(string field, DayStretch taken, IsoDayOfWeek weekday, DayStretch? hours) =>
        new($"{field}.startsAt", hours is null
            ? $"{field} is {taken}: {weekday} has no hours to take a break from."
            : $"{field} is {taken}: the hours of {weekday} are {hours}; a break lies within them.");
}
