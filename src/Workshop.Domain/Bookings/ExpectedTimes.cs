using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>When a phase is expected to begin and to end.</summary>
/// <param name="Begun">When it was begun; absent where it was not.</param>
/// <param name="Over">It lies behind us.</param>
/// <param name="HeldBy">Whose end it waits for, and for what; absent where it waits for nobody.</param>
internal sealed record ExpectedPhase(
    PhaseSpan Planned, Instant Start, Instant End, Instant? Begun, bool Over, (int Visit, Guid Resource)? HeldBy);

/// <summary>One pass over all phases in the order in which they were planned.</summary>
/// <param name="blocked">
/// Absent: those who use the same resources wait for each other. Else each visit runs as if it were alone; what is here and to begin, and
/// is among these, is not late by itself, since others have what it needs.
/// </param>
internal sealed class ExpectedTimes(
    IReadOnlyCollection<VisitToday> visits,
    IReadOnlyDictionary<Guid, IReadOnlyList<Interval>> working,
    IReadOnlyList<Interval>? open,
    Instant now,
    HashSet<(int Visit, VisitPhase Phase)>? blocked)
{
    /// <summary>Phases that were seen so far of each resource: until when they were planned to have it, and will.</summary>
    private readonly Dictionary<Guid, List<(Instant PlannedEnd, Instant End, int Visit)>> users = [];

    private readonly Dictionary<int, List<ExpectedPhase>> expected = visits.ToDictionary(v => v.Number, _ => new List<ExpectedPhase>());

    public Dictionary<int, List<ExpectedPhase>> Run()
    {
        // Whoever waits for another was planned after the other, so that the other has been seen.
        foreach (var (visit, index) in visits
            .SelectMany(v => v.Planned.Select((phase, index) => (Visit: v, Index: index, phase.Span.Start)))
            .OrderBy(p => p.Start).ThenBy(p => p.Visit.Number).ThenBy(p => p.Index).Select(p => (p.Visit, p.Index)))
        {
            var phase = Expect(visit, index);
            expected[visit.Number].Add(phase);
            if (blocked is null)
            {
                Note(visit, phase);
            }
        }

        return expected;
    }

    private ExpectedPhase Expect(VisitToday visit, int index)
    {
        var planned = visit.Planned[index];
        var before = index == 0 ? null : expected[visit.Number][index - 1];
        if (Actual(visit, planned.Phase) is { } actual)
        {
            var end = actual.Until ?? Instant.Max(now, End(visit, planned, actual.From));
            return new ExpectedPhase(planned, actual.From, end, actual.From, actual.Until is not null, null);
        }

        var start = planned.Span.Start;
        if (before is not null)
        {
            start = Instant.Max(start, before.End);
        }

        if (planned.Phase == VisitPhase.Work && visit.ColdFrom is { } cold)
        {
            start = Instant.Max(start, cold);
        }

        var held = blocked is null ? Holder(visit, planned.Phase, start) : null;
        if (visit.CameAt is null || blocked?.Contains((visit.Number, planned.Phase)) != true)
        {
            start = Instant.Max(start, now);
        }

        if (held is { } holder)
        {
            held = holder.Until >= start ? held : null;
            start = Instant.Max(start, holder.Until);
        }

        // What follows by itself when the phase before is over is not late because nobody says so.
        var byItself = planned.Phase == VisitPhase.ColdSoak && visit.CameAt is not null;
        start = byItself ? Instant.Min(start, Instant.Max(planned.Span.Start, before?.End ?? planned.Span.Start)) : start;
        return new ExpectedPhase(planned, start, End(visit, planned, start), null, false, held is { } h ? (h.Visit, h.Resource) : null);
    }

    /// <summary>From when until when a phase was, by what people said; without an end where the visit is in it.</summary>
    private static (Instant From, Instant? Until)? Actual(VisitToday visit, VisitPhase phase)
    {
        if (visit.Begun.Count > 0 && visit.Begun[^1].Phase is var current && phase <= current)
        {
            var starts = visit.Begun.Where(b => b.Phase == phase).ToList();
            var later = visit.Begun.Where(b => b.Phase > phase && b.Phase <= current).Select(b => (Instant?)b.At).Min() ?? visit.Begun[^1].At;
            return phase == current
                ? (starts[0].At, null)
                : (starts.Count > 0 ? starts[0].At : later, later);
        }

        // Nobody says that an arrival ends: the motorcycle is here, and its engine stands.
        return phase == VisitPhase.Arrival && visit.CameAt is { } came && visit.Begun.Count == 0 ? (came, came) : null;
    }

    /// <summary>
    /// Begun as planned or before, a phase ends as planned. Begun later, it takes as long as it would have: a technician's
    /// minutes within his hours, anything else by the clock on the wall.
    /// </summary>
    private Instant End(VisitToday visit, PhaseSpan planned, Instant start)
    {
        if (planned.Phase == VisitPhase.ColdSoak)
        {
            return Instant.Max(planned.Span.End, visit.ColdFrom ?? start + visit.Soak);
        }

        if (planned.Phase == VisitPhase.Work && visit.Waits is { } wait)
        {
            return Instant.Max(planned.Span.End, Instant.Max(now, wait.Until) + Duration.Max(Duration.Zero, planned.Span.End - Instant.Max(wait.Since, planned.Span.Start)));
        }

        if (start <= planned.Span.Start)
        {
            return planned.Span.End;
        }

        var ofTechnician = visit.Takes.Where(t => t.Phase == planned.Phase && working.ContainsKey(t.ResourceId)).OrderBy(t => t.Span.Start).ToList();
        if (ofTechnician.Count == 0)
        {
            return Instant.Max(planned.Span.End, planned.Phase == VisitPhase.HandOver && open is not null
                ? Worked(open, start, planned.Span.Duration)
                : start + planned.Span.Duration);
        }

        var minutes = ofTechnician.Aggregate(Duration.Zero, (sum, t) => sum + t.Span.Duration);
        var lead = ofTechnician[0].Span.Start - planned.Span.Start;
        return Instant.Max(planned.Span.End, Worked(working[ofTechnician[0].ResourceId], start + Duration.Max(Duration.Zero, lead), minutes));
    }

    /// <summary>When so much work is done; what does not fit into the hours that are known goes on right after them.</summary>
    private static Instant Worked(IReadOnlyList<Interval> hours, Instant from, Duration work)
    {
        foreach (var span in hours)
        {
            if (span.End <= from)
            {
                continue;
            }

            from = Instant.Max(from, span.Start);
            if (span.End - from >= work)
            {
                return from + work;
            }

            work -= span.End - from;
            from = span.End;
        }

        return from + work;
    }

    /// <summary>Who of those planned before holds a resource of this phase longest beyond <paramref name="start"/>.</summary>
    private (Instant Until, int Visit, Guid Resource)? Holder(VisitToday visit, VisitPhase phase, Instant start)
    {
        (Instant Until, int Visit, Guid Resource)? longest = null;
        foreach (var taken in visit.Takes.Where(t => t.Phase == phase).GroupBy(t => t.ResourceId))
        {
            var from = taken.Min(t => t.Span.Start);
            foreach (var user in users.GetValueOrDefault(taken.Key) ?? [])
            {
                if (user.Visit != visit.Number && user.PlannedEnd <= from && user.End > (longest?.Until ?? start))
                {
                    longest = (user.End, user.Visit, taken.Key);
                }
            }
        }

        return longest;
    }

    private void Note(VisitToday visit, ExpectedPhase phase)
    {
        foreach (var taken in visit.Takes.Where(t => t.Phase == phase.Planned.Phase).GroupBy(t => t.ResourceId))
        {
            var ends = (taken.Max(t => t.Span.End), phase.End, visit.Number);
            if (users.TryGetValue(taken.Key, out var seen))
            {
                seen.Add(ends);
            }
            else
            {
                users.Add(taken.Key, new List<(Instant, Instant, int)> { ends });
            }
        }
    }
}
