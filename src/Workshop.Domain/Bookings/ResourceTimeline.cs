using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>
/// When one resource can be taken within a window: a technician within working hours, breaks and absences taken out, and
/// while no visit has him; any other resource at all hours, while it is neither absent nor taken.
/// </summary>
public sealed class ResourceTimeline
{
    private ResourceTimeline(Resource resource, Spans? working, Spans away, Spans blocked) =>
        (Resource, Working, Away, Blocked) = (resource, working, away, blocked);

    public Resource Resource { get; }

    /// <summary>
    /// Technicians only: hours less breaks and absences. Work that is begun goes on after a pause between two of these spans.
    /// </summary>
    internal Spans? Working { get; }

    /// <summary>Absences that no work goes on over: a technician's whole working days, anything of another resource.</summary>
    internal Spans Away { get; }

    /// <summary>What visits have taken, with <see cref="Away"/>: no other visit spans any of it.</summary>
    internal Spans Blocked { get; }

    /// <summary>The timeline of one resource.</summary>
    /// <param name="resource">A technician works the opening hours, or his own hours when he has a row of them.</param>
    /// <param name="opening">Opening hours; on a holiday nobody works.</param>
    /// <param name="days">The days for which working hours are laid out.</param>
    /// <param name="hours">Of this resource; may be empty.</param>
    /// <param name="breaks">Of this resource; may be empty.</param>
    /// <param name="absences">Of this resource, those that are not withdrawn.</param>
    /// <param name="taken">Live occupancies of this resource.</param>
    public static ResourceTimeline Of(
        Resource resource,
        OpeningDays opening,
        DateInterval days,
        IEnumerable<WorkingHours> hours,
        IEnumerable<WorkBreak> breaks,
        IEnumerable<Interval> absences,
        IEnumerable<Interval> taken)
    {
        ArgumentNullException.ThrowIfNull(resource);
        ArgumentNullException.ThrowIfNull(opening);
        ArgumentNullException.ThrowIfNull(days);
        var absent = Spans.Of(absences);
        if (resource.Kind != ResourceKind.Technician)
        {
            return new ResourceTimeline(resource, null, absent, Spans.Union(absent.Each().Concat(Spans.Of(taken).Each())));
        }

        var shifts = opening.Shifts(days, hours.ToDictionary(h => h.Weekday));
        var away = Spans.Union(absent.Count == 0
            ? []
            : shifts.Each().Where(s => absent.Holding(s.From) is var i and >= 0 && absent.End(i) >= s.Until));
        var working = shifts.Without(opening.Breaks(days, breaks.ToLookup(b => b.Weekday))).Without(absent);
        return new ResourceTimeline(resource, working, away, Spans.Union(away.Each().Concat(Spans.Of(taken).Each())));
    }

    /// <summary>The same resource with more taken.</summary>
    public ResourceTimeline With(IEnumerable<Interval> taken) =>
        new(Resource, Working, Away, Spans.Union(Blocked.Each().Concat(Spans.Of(taken).Each())));

    /// <summary>The parts of a span in which the resource is there, whoever has it, in order of time.</summary>
    public IReadOnlyList<Interval> There(Interval within)
    {
        var window = Spans.Of([within]);
        var there = Working is null ? window.Without(Away) : window.Without(window.Without(Working));
        return [.. there.Each().Select(s => Spans.Interval(s.From, s.Until))];
    }

    /// <summary>The parts of a span in which the resource is there and not taken, in order of time.</summary>
    public IReadOnlyList<Interval> Free(Interval within)
    {
        var window = Spans.Of([within]);
        var there = Working is null ? window : window.Without(window.Without(Working));
        return [.. there.Without(Blocked).Each().Select(s => Spans.Interval(s.From, s.Until))];
    }

    /// <summary>The first moment from <paramref name="from"/> on at which a stretch of that length is free and without a pause.</summary>
    internal long FirstFree(long from, long length)
    {
        while (true)
        {
            if (Working is not null)
            {
                var shift = Working.EndingAfter(from);
                while (shift < Working.Count && Working.End(shift) - Math.Max(from, Working.Start(shift)) < length)
                {
                    shift++;
                }

                if (shift >= Working.Count)
                {
                    return Spans.Never;
                }

                from = Math.Max(from, Working.Start(shift));
            }

            var taken = Blocked.Overlapping(from, from + length);
            if (taken < 0)
            {
                return from;
            }

            from = Blocked.End(taken);
        }
    }

    /// <summary>The last moment up to <paramref name="latest"/> from which on a stretch of that length is free, without a pause.</summary>
    internal long LastFree(long latest, long length)
    {
        while (true)
        {
            if (Working is not null)
            {
                var shift = Working.StartingBefore(latest + length);
                while (shift >= 0 && Math.Min(latest + length, Working.End(shift)) - Working.Start(shift) < length)
                {
                    shift--;
                }

                if (shift < 0)
                {
                    return -Spans.Never;
                }

                latest = Math.Min(latest, Working.End(shift) - length);
            }

            var taken = Blocked.LastOverlapping(latest, latest + length);
            if (taken < 0)
            {
                return latest;
            }

            latest = Blocked.Start(taken) - length;
        }
    }
}
