using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>
/// The same question asked the slow way: every minute of the window a yes or no for every resource, every start tried one after
/// the other. Shares no code with the search but the rows.
/// </summary>
internal sealed class MinuteByMinute
{
    private readonly MadeUpFloor made;
    private readonly int minutes;
    private readonly bool[] open;
    private readonly Dictionary<MadeUpResource, (bool[] Works, bool[] Blocked)> resources;

    public MinuteByMinute(MadeUpFloor made)
    {
        this.made = made;
        minutes = made.Days * 1440;
        open = Each(m => IsOpen(At(m)));
        resources = made.Resources.ToDictionary(r => r, r =>
        {
            var absent = Each(m => r.Absences.Any(a => a.Contains(At(m))));
            var taken = Each(m => r.Taken.Any(t => t.Contains(At(m))));
            if (r.Resource.Kind != ResourceKind.Technician)
            {
                return (Each(_ => true), Each(m => taken[m] || absent[m]));
            }

            var shift = Each(m => IsShift(r, At(m)));
            // A shift all of which he is absent: nothing spans it.
            var lost = Each(m => shift[m] && ShiftOf(shift, m).All(x => absent[x]));
            return (Each(m => shift[m] && !absent[m] && !IsBreak(r, At(m))), Each(m => taken[m] || lost[m]));
        });
    }

    /// <summary>The first start from a minute on that fits with anyone.</summary>
    public int? First(int from)
    {
        for (var start = from; start < minutes; start++)
        {
            if (start % SlotSearch.GridMinutes == 0 && Fits(start))
            {
                return start;
            }
        }

        return null;
    }

    public Instant At(int minute) => made.Begin + Duration.FromMinutes(minute);

    public int MinuteOf(Instant instant) => (int)Math.Ceiling((instant - made.Begin).TotalMinutes);

    private bool Fits(int start)
    {
        if (At(start) < made.Terms.Now || At(start) < made.Terms.PartsFrom)
        {
            return false;
        }

        return Of(ResourceKind.Technician).Any(t => EndsOf(t, start) is var (workEnd, bayUntil, ready)
            && (made.Terms.ReadyBy is not { } by || At(ready) <= by)
            && made.Needs.SpecialTools.All(_ => Of(ResourceKind.SpecialTool).Any(tool => Free(tool, start, workEnd)))
            && Of(ResourceKind.Bay).Any(bay => Free(bay, start, bayUntil) && Arrives(t, bay, start)));
    }

    private (int WorkEnd, int BayUntil, int Ready)? EndsOf(MadeUpResource technician, int start)
    {
        var (works, blocked) = resources[technician];
        if (!works[start])
        {
            return null;
        }

        var at = start;
        for (var left = made.Shape.WorkMinutes; left > 0; at++)
        {
            if (at >= minutes || blocked[at])
            {
                return null;
            }

            left -= works[at] ? 1 : 0;
        }

        var workEnd = at;
        at += made.Shape.CureMinutes;
        if (Next(at, made.Shape.WarmRunMinutes, Ready) is not { } warm || Next(warm, made.Shape.TestRideMinutes, Ready) is not { } ride)
        {
            return null;
        }

        var cooled = ride + (made.Shape.RecheckMinutes > 0 ? (int)made.Shape.Cool.TotalMinutes : 0);
        if (Next(cooled, made.Shape.RecheckMinutes, Ready) is not { } bayUntil || Next(bayUntil, made.Shape.HandOverMinutes, m => open[m]) is not { } ready)
        {
            return null;
        }

        return (workEnd, bayUntil, ready);

        bool Ready(int m) => works[m] && !blocked[m];
    }

    /// <summary>The end of the first stretch of that length in which every minute is right.</summary>
    private int? Next(int from, int length, Func<int, bool> right)
    {
        for (var start = from; length > 0 && start + length <= minutes; start++)
        {
            if (Enumerable.Range(start, length).All(right))
            {
                return start + length;
            }
        }

        return length == 0 ? from : null;
    }

    private bool Arrives(MadeUpResource technician, MadeUpResource bay, int start)
    {
        var (shape, earliest) = (made.Shape, Instant.Max(made.Terms.Now, made.Terms.NotBefore ?? made.Terms.Now));
        var soak = (int)shape.Soak.TotalMinutes;
        if (shape.ArrivalMinutes == 0 && soak == 0)
        {
            return At(start) >= earliest && open[start];
        }

        for (var at = start - soak - shape.ArrivalMinutes; at >= 0 && At(at) >= earliest; at--)
        {
            var stop = at + shape.ArrivalMinutes;
            if (at % SlotSearch.GridMinutes == 0
                && Enumerable.Range(at, shape.ArrivalMinutes).All(m => open[m]) && SameDay(at, stop)
                && (shape.ArrivalTakes == ArrivalTakes.Nobody || Enumerable.Range(at, shape.ArrivalMinutes).All(m => resources[technician].Works[m] && !resources[technician].Blocked[m]))
                && (shape.ArrivalTakes != ArrivalTakes.TechnicianAndBay || Free(bay, at, stop))
                && (soak == 0 || Free(bay, stop, start) || Of(ResourceKind.ParkingPlace).Any(p => Free(p, stop, start))))
            {
                return true;
            }
        }

        return false;
    }

    private bool SameDay(int from, int until) => from == until || made.Calendar.Time.DayOf(At(from)) == made.Calendar.Time.DayOf(At(until - 1));

    private IEnumerable<MadeUpResource> Of(ResourceKind kind) => made.Resources.Where(r => r.Resource.Kind == kind);

    private bool Free(MadeUpResource resource, int from, int until)
    {
        var blocked = resources[resource].Blocked;
        return until <= minutes && Enumerable.Range(from, until - from).All(m => !blocked[m]);
    }

    private bool[] Each(Func<int, bool> of) => Enumerable.Range(0, minutes).Select(of).ToArray();

    private bool IsOpen(Instant instant) =>
        made.Calendar.OpenOn(made.Calendar.Time.DayOf(instant)) is { } hours && hours.Contains(instant);

    private bool IsShift(MadeUpResource technician, Instant instant)
    {
        var local = made.Calendar.Time.At(instant);
        return technician.Hours.Count == 0 ? IsOpen(instant)
            : !made.Calendar.IsHoliday(local.Date)
                && technician.Hours.Any(h => h.Weekday == local.DayOfWeek && Within(local.Date, h.StartsAt, h.EndsAt, instant));
    }

    private bool IsBreak(MadeUpResource technician, Instant instant)
    {
        var local = made.Calendar.Time.At(instant);
        return technician.Breaks.Any(b => b.Weekday == local.DayOfWeek && Within(local.Date, b.StartsAt, b.EndsAt, instant));
    }

    private bool Within(LocalDate day, LocalTime from, LocalTime until, Instant instant)
    {
        var zone = made.Calendar.Time.Zone;
        return instant >= (day + from).InZoneLeniently(zone).ToInstant() && instant < (day + until).InZoneLeniently(zone).ToInstant();
    }

    private static IEnumerable<int> ShiftOf(bool[] shift, int minute)
    {
        var (from, until) = (minute, minute);
        while (from > 0 && shift[from - 1])
        {
            from--;
        }

        while (until + 1 < shift.Length && shift[until + 1])
        {
            until++;
        }

        return Enumerable.Range(from, until - from + 1);
    }
}
