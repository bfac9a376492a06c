namespace Workshop.Domain.Bookings;

/// <summary>
/// When the phases from the work on begin and end, for one technician and one start, in ticks; a phase that a visit has not
/// ends as it begins. Every moment of it is later or the same when the start is later.
/// </summary>
internal readonly record struct PhaseTiming(
    long Start, long WorkEnd, long CureEnd, long WarmFrom, long WarmEnd, long RideFrom, long RideEnd, long RecheckFrom, long RecheckEnd, long HandOver, long Ready)
{
    /// <summary>The end of the last phase that keeps the bay.</summary>
    public long BayUntil => RecheckEnd;

    public bool NeverEnds => Ready == Spans.Never;

    /// <summary>The end of so much work begun at <paramref name="start"/>, a moment at which the technician works.</summary>
    /// <param name="shift">The working span that holds the start.</param>
    public static long EndOfWork(Spans working, int shift, long start, long work)
    {
        for (var from = start; shift < working.Count; shift++)
        {
            from = Math.Max(from, working.Start(shift));
            if (working.End(shift) - from >= work)
            {
                return from + work;
            }

            work -= working.End(shift) - from;
        }

        return Spans.Never;
    }

    /// <summary>What follows the work: each phase as soon as the one before is over and, where it needs him, the technician is free.</summary>
    public static PhaseTiming After(long start, long workEnd, VisitTicks visit, ResourceTimeline technician, Spans open)
    {
        var cureEnd = workEnd + visit.Cure;
        var warm = First(technician, cureEnd, visit.WarmRun);
        var warmEnd = warm == Spans.Never ? warm : warm + visit.WarmRun;
        var ride = First(technician, warmEnd, visit.TestRide);
        var rideEnd = ride == Spans.Never ? ride : ride + visit.TestRide;
        var recheck = First(technician, rideEnd == Spans.Never ? rideEnd : rideEnd + visit.Cool, visit.Recheck);
        var recheckEnd = recheck == Spans.Never ? recheck : recheck + visit.Recheck;
        var handOver = FirstOpen(open, recheckEnd, visit.HandOver);
        return new PhaseTiming(start, workEnd, cureEnd, warm, warmEnd, ride, rideEnd, recheck, recheckEnd, handOver,
            handOver == Spans.Never ? handOver : handOver + visit.HandOver);
    }

    private static long First(ResourceTimeline technician, long from, long length) =>
        from == Spans.Never || length == 0 ? from : technician.FirstFree(from, length);

    private static long FirstOpen(Spans open, long from, long length)
    {
        if (from == Spans.Never || length == 0)
        {
            return from;
        }

        for (var day = open.EndingAfter(from); day < open.Count; day++)
        {
            var start = Math.Max(from, open.Start(day));
            if (open.End(day) - start >= length)
            {
                return start;
            }
        }

        return Spans.Never;
    }
}

/// <summary>A <see cref="VisitShape"/> in ticks.</summary>
internal readonly record struct VisitTicks(
    long Arrival, long Soak, long Work, long Cure, long WarmRun, long TestRide, long Cool, long Recheck, long HandOver)
{
    public static VisitTicks Of(VisitShape shape) => new(
        Minutes(shape.ArrivalMinutes), shape.Soak.BclCompatibleTicks, Minutes(shape.WorkMinutes), Minutes(shape.CureMinutes),
        Minutes(shape.WarmRunMinutes), Minutes(shape.TestRideMinutes), shape.RecheckMinutes > 0 ? shape.Cool.BclCompatibleTicks : 0,
        Minutes(shape.RecheckMinutes), Minutes(shape.HandOverMinutes));

    private static long Minutes(int minutes) => minutes * NodaTime.NodaConstants.TicksPerMinute;
}
