using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>
/// When a motorcycle may arrive: within the opening hours of one day, with the technician and the bay where its arrival takes
/// them, on the grid of the search.
/// </summary>
internal sealed class ArrivalSearch(Spans open, VisitShape shape, long earliest)
{
    /// <summary>Starts and arrivals that are searched lie on multiples of it; whole hours and quarters of every zone do too.</summary>
    public const long Grid = SlotSearch.GridMinutes * NodaConstants.TicksPerMinute;

    private readonly long length = VisitTicks.Of(shape).Arrival;

    public static long Up(long ticks) => -Down(-ticks);

    public static long Down(long ticks) => ticks - (((ticks % Grid) + Grid) % Grid);

    /// <summary>The last arrival up to <paramref name="latest"/>; nothing when none is left.</summary>
    public long? Latest(long latest, ResourceTimeline technician, ResourceTimeline bay)
    {
        var at = Down(latest);
        while (at >= earliest)
        {
            var day = open.StartingBefore(at + length);
            while (day >= 0 && Math.Min(at + length, open.End(day)) - open.Start(day) < length)
            {
                day--;
            }

            if (day < 0)
            {
                return null;
            }

            var free = Math.Min(at, open.End(day) - length);
            free = shape.ArrivalTakes == ArrivalTakes.Nobody ? free : technician.LastFree(free, length);
            free = shape.ArrivalTakes != ArrivalTakes.TechnicianAndBay || free < earliest ? free : bay.LastFree(free, length);
            if (free == at)
            {
                return at;
            }

            at = free < earliest ? free : Down(free);
        }

        return null;
    }

    /// <summary>Whether it may arrive at exactly that moment.</summary>
    public bool Fits(long at, ResourceTimeline technician, ResourceTimeline bay) =>
        open.Holding(at) is var day and >= 0 && open.End(day) >= at + length
        && (shape.ArrivalTakes == ArrivalTakes.Nobody || technician.FirstFree(at, length) == at)
        && (shape.ArrivalTakes != ArrivalTakes.TechnicianAndBay || bay.FirstFree(at, length) == at);

    /// <summary>The first arrival from <paramref name="from"/> on; nothing when there is none.</summary>
    public long? First(long from, ResourceTimeline technician, ResourceTimeline bay)
    {
        var at = Up(Math.Max(from, earliest));
        while (true)
        {
            var day = open.EndingAfter(at);
            while (day < open.Count && open.End(day) - Math.Max(at, open.Start(day)) < length)
            {
                day++;
            }

            if (day >= open.Count)
            {
                return null;
            }

            var free = Math.Max(at, open.Start(day));
            free = shape.ArrivalTakes == ArrivalTakes.Nobody ? free : technician.FirstFree(free, length);
            free = shape.ArrivalTakes != ArrivalTakes.TechnicianAndBay || free == Spans.Never ? free : bay.FirstFree(free, length);
            if (free == Spans.Never)
            {
                return null;
            }

            if (free == at)
            {
                return at;
            }

            at = Up(free);
        }
    }
}
