using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>Writes down what was found: the phases in order, and what each takes of whom.</summary>
internal sealed class PlanBuilder(VisitShape shape, VisitTicks visit, PlanTerms terms)
{
    private readonly List<PhaseSpan> phases = [];
    private readonly List<Take> takes = [];

    public VisitPlan Build(
        ResourceTimeline bay,
        ResourceTimeline technician,
        PhaseTiming timing,
        IReadOnlyList<ResourceTimeline> tools,
        long arrival,
        ResourceTimeline? soaksIn)
    {
        Arrive(bay, technician, timing, arrival, soaksIn);
        Add(VisitPhase.Work, timing.Start, timing.WorkEnd);
        AddWork(technician, timing);
        foreach (var tool in tools)
        {
            Take(VisitPhase.Work, tool, timing.Start, timing.WorkEnd);
        }

        Add(VisitPhase.SealantCure, timing.WorkEnd, timing.CureEnd);
        Add(VisitPhase.WarmRun, timing.WarmFrom, timing.WarmEnd);
        Take(VisitPhase.WarmRun, technician, timing.WarmFrom, timing.WarmEnd);
        Add(VisitPhase.TestRide, timing.RideFrom, timing.RideEnd);
        Take(VisitPhase.TestRide, technician, timing.RideFrom, timing.RideEnd);
        Add(VisitPhase.CoolAndRecheck, timing.RideEnd, timing.RecheckEnd);
        Take(VisitPhase.CoolAndRecheck, technician, timing.RecheckFrom, timing.RecheckEnd);
        KeepBay(bay, timing.BayUntil);
        Add(VisitPhase.HandOver, timing.HandOver, timing.Ready);
        return new VisitPlan(phases, takes);
    }

    private void Arrive(ResourceTimeline bay, ResourceTimeline technician, PhaseTiming timing, long arrival, ResourceTimeline? soaksIn)
    {
        var stopped = arrival;
        if (terms.Here is { } here)
        {
            // The past stays as it was; what is taken is taken from now on.
            stopped = here.Arrival is { } came ? Spans.Ticks(came.End) : arrival;
            if (here.Arrival is { } was)
            {
                phases.Add(new PhaseSpan(VisitPhase.Arrival, was));
            }
        }
        else
        {
            stopped += visit.Arrival;
            Add(VisitPhase.Arrival, arrival, stopped);
            if (shape.ArrivalTakes != ArrivalTakes.Nobody)
            {
                Take(VisitPhase.Arrival, technician, arrival, stopped);
            }

            if (shape.ArrivalTakes == ArrivalTakes.TechnicianAndBay)
            {
                Take(VisitPhase.Arrival, bay, arrival, stopped);
            }
        }

        if (visit.Soak > 0)
        {
            Add(VisitPhase.ColdSoak, stopped, timing.Start);
        }

        if (soaksIn is not null)
        {
            Take(VisitPhase.ColdSoak, soaksIn, terms.Here is null ? stopped : arrival, timing.Start);
        }
    }

    private void AddWork(ResourceTimeline technician, PhaseTiming timing)
    {
        var working = technician.Working!;
        for (var i = working.EndingAfter(timing.Start); i < working.Count && working.Start(i) < timing.WorkEnd; i++)
        {
            Take(VisitPhase.Work, technician, Math.Max(timing.Start, working.Start(i)), Math.Min(timing.WorkEnd, working.End(i)));
        }
    }

    /// <summary>From the work on without a gap: while nobody is there to go on, the motorcycle stands in its bay.</summary>
    private void KeepBay(ResourceTimeline bay, long until)
    {
        var kept = phases.Where(p => p.Phase >= VisitPhase.Work).ToList();
        for (var i = 0; i < kept.Count; i++)
        {
            Take(kept[i].Phase, bay, Spans.Ticks(kept[i].Span.Start), i + 1 < kept.Count ? Spans.Ticks(kept[i + 1].Span.Start) : until);
        }
    }

    private void Add(VisitPhase phase, long from, long until)
    {
        if (until > from)
        {
            phases.Add(new PhaseSpan(phase, Spans.Interval(from, until)));
        }
    }

    private void Take(VisitPhase phase, ResourceTimeline resource, long from, long until)
    {
        if (until > from)
        {
            takes.Add(new Take(phase, resource.Resource.Id, Spans.Interval(from, until)));
        }
    }
}
