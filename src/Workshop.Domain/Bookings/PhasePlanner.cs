using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>A plan, or everything that stands in its way.</summary>
public sealed record PlanOrObstacles(VisitPlan? Plan, IReadOnlyList<Obstacle> Obstacles);

/// <summary>
/// Plans a visit by its phases on what is free. The work begins at a chosen moment; the motorcycle arrives as late as its soak
/// and the opening hours allow; what follows the work comes as soon as it can. Between begin and end of the work its technician
/// pauses for breaks, closed hours and part-day absences, and for no other visit.
/// </summary>
public sealed class PhasePlanner
{
    private readonly VisitTicks visit;
    private readonly VisitShape shape;
    private readonly Spans open;
    private readonly long now;
    private readonly long earliest;
    private readonly long readyBy;
    private readonly ArrivalSearch arrivals;
    private readonly List<List<ResourceTimeline>> tools;
    private readonly IReadOnlyList<ResourceTimeline> places;

    /// <summary>A planner for one visit.</summary>
    /// <param name="floor">What is there and what is taken.</param>
    /// <param name="shape">How long its phases take.</param>
    /// <param name="needs">Its special tools; technician and bay are chosen by the caller, who asks <see cref="VisitNeeds"/>.</param>
    /// <param name="terms">Wishes, parts, and where the motorcycle is.</param>
    public PhasePlanner(WorkshopFloor floor, VisitShape shape, VisitNeeds needs, PlanTerms terms)
    {
        ArgumentNullException.ThrowIfNull(floor);
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(needs);
        ArgumentNullException.ThrowIfNull(terms);
        (Floor, this.shape, Needs, Terms, visit) = (floor, shape, needs, terms, VisitTicks.Of(shape));
        open = floor.Opening.Open;
        now = Spans.Ticks(terms.Now);
        earliest = Math.Max(now, terms.NotBefore is { } notBefore ? Spans.Ticks(notBefore) : now);
        readyBy = terms.ReadyBy is { } by ? Spans.Ticks(by) : Spans.Never;
        arrivals = new ArrivalSearch(open, shape, earliest);
        var all = floor.Of(ResourceKind.SpecialTool);
        tools = needs.SpecialTools.Select(code => all.Where(t => t.Resource.Capabilities.Contains(code)).ToList()).ToList();
        places = floor.Of(ResourceKind.ParkingPlace);
    }

    public WorkshopFloor Floor { get; }

    public VisitNeeds Needs { get; }

    public PlanTerms Terms { get; }

    /// <summary>Codes of special tools that the workshop has none of.</summary>
    public IReadOnlyList<string> MissingTools => [.. Needs.SpecialTools.Where((_, i) => tools[i].Count == 0)];

    private bool Arrives => Terms.Here is null;

    /// <summary>
    /// The plan with the work begun at that moment, to the minute that is given; or whatever stands in its way: hours and
    /// absences first, and when they allow it, all that others have taken.
    /// </summary>
    /// <param name="bay">One that is fit for it.</param>
    /// <param name="technician">One who is fit for it.</param>
    /// <param name="workStart">When the work begins.</param>
    /// <param name="arrivesAt">When the motorcycle arrives; else as late as it can.</param>
    public PlanOrObstacles Plan(ResourceTimeline bay, ResourceTimeline technician, Instant workStart, Instant? arrivesAt = null)
    {
        ArgumentNullException.ThrowIfNull(bay);
        ArgumentNullException.ThrowIfNull(technician);
        var start = Spans.Ticks(workStart);
        var obstacles = new List<Bar>();
        if (start < now)
        {
            obstacles.Add(new Bar(ObstacleKind.Past, null, start, now));
        }
        else if (WorkNotBefore() is var parts && start < parts.Until)
        {
            obstacles.Add(parts with { From = start });
        }

        if (obstacles.Count > 0 || Timing(technician, start, obstacles, stopAtTaken: false) is not { } timing)
        {
            return new PlanOrObstacles(null, [.. obstacles.Select(o => o.Said)]);
        }

        if (timing.Ready > readyBy)
        {
            obstacles.Add(new Bar(ObstacleKind.ReadyBy, null, start, Spans.Never));
        }

        var taken = Tools(timing, obstacles);
        Bay(bay, timing, obstacles);
        var arrival = Arrival(bay, technician, start, arrivesAt is { } at ? Spans.Ticks(at) : null, obstacles);
        return obstacles.Count == 0
            ? new PlanOrObstacles(Build(bay, technician, timing, taken!, arrival!.Value), [])
            : new PlanOrObstacles(null, [.. obstacles.Select(o => Within(o, timing).Said)]);
    }

    /// <summary>
    /// Tries one start of the work with one technician in every bay. Gives the bays in which it fits, or the first later moment at which
    /// what stood in the way no longer does; <see cref="Spans.Never"/> when it always will.
    /// </summary>
    internal long Try(
        ResourceTimeline technician, IReadOnlyList<ResourceTimeline> bays, long start, List<VisitPlan> fits, ICollection<Bar>? why)
    {
        var obstacles = new List<Bar>(2);
        var timing = Timing(technician, start, obstacles, stopAtTaken: true);
        if (timing is { } ends && ends.Ready > readyBy)
        {
            obstacles.Add(new Bar(ObstacleKind.ReadyBy, null, start, Spans.Never));
        }

        var taken = obstacles.Count == 0 ? Tools(timing!.Value, obstacles) : null;
        if (obstacles.Count > 0)
        {
            Note(why, obstacles);
            return obstacles[0].Until;
        }

        var next = Spans.Never;
        foreach (var bay in bays)
        {
            obstacles.Clear();
            Bay(bay, timing!.Value, obstacles);
            var arrival = obstacles.Count == 0 ? Arrival(bay, technician, start, null, obstacles) : null;
            if (arrival is { } found)
            {
                fits.Add(Build(bay, technician, timing.Value, taken!, found));
            }
            else
            {
                Note(why, obstacles);
                next = Math.Min(next, obstacles[0].Until);
            }
        }

        return fits.Count > 0 ? start : next;
    }

    /// <summary>Parts, and the soak of a motorcycle that is here: what holds the work back whoever does it.</summary>
    internal Bar WorkNotBefore()
    {
        var parts = Terms.PartsFrom is { } from ? Spans.Ticks(from) : 0;
        var cold = Terms.Here is { } here && visit.Soak > 0 ? Spans.Ticks(here.ColdFrom) : 0;
        return parts >= cold ? new Bar(ObstacleKind.Parts, null, now, parts) : new Bar(ObstacleKind.Soak, null, now, cold);
    }

    /// <summary>What others have, as far as this visit would want it: visits that follow on each other are one span on the floor.</summary>
    private static Bar Within(Bar bar, PhaseTiming timing) => bar.Kind is not (ObstacleKind.Taken or ObstacleKind.ToolsTaken) ? bar : bar with
    {
        From = Math.Max(bar.From, timing.Start),
        Until = Math.Min(bar.Until, bar.Resource?.Kind == ResourceKind.Bay ? timing.BayUntil : timing.WorkEnd),
    };

    private static void Note(ICollection<Bar>? why, List<Bar> obstacles)
    {
        foreach (var obstacle in obstacles)
        {
            why?.Add(obstacle);
        }
    }

    private PhaseTiming? Timing(ResourceTimeline technician, long start, List<Bar> obstacles, bool stopAtTaken)
    {
        var working = technician.Working!;
        var shift = working.Holding(start);
        if (shift < 0)
        {
            var away = technician.Away.Holding(start) >= 0;
            var next = working.EndingAfter(start);
            obstacles.Add(new Bar(
                away ? ObstacleKind.Away : ObstacleKind.OffDuty, technician.Resource, start,
                next < working.Count ? working.Start(next) : Spans.Never));
            return null;
        }

        var workEnd = PhaseTiming.EndOfWork(working, shift, start, visit.Work);
        if (technician.Blocked.Overlapping(start, workEnd) is var taken and >= 0)
        {
            var until = technician.Blocked.End(taken);
            obstacles.Add(new Bar(
                technician.Away.Overlapping(start, workEnd) >= 0 ? ObstacleKind.Away : ObstacleKind.Taken,
                technician.Resource, technician.Blocked.Start(taken), until));
            if (stopAtTaken)
            {
                return null;
            }
        }

        var timing = workEnd == Spans.Never ? default : PhaseTiming.After(start, workEnd, visit, technician, open);
        if (workEnd == Spans.Never || timing.NeverEnds)
        {
            obstacles.Add(new Bar(ObstacleKind.NoEnd, null, start, Spans.Never));
            return null;
        }

        return timing;
    }

    private List<ResourceTimeline>? Tools(PhaseTiming timing, List<Bar> obstacles)
    {
        var chosen = new List<ResourceTimeline>(tools.Count);
        var complete = true;
        foreach (var copies in tools)
        {
            if (copies.Find(c => c.Blocked.Overlapping(timing.Start, timing.WorkEnd) < 0) is { } free)
            {
                var shared = copies.Find(chosen.Contains) ?? free;
                if (!chosen.Contains(shared))
                {
                    chosen.Add(shared);
                }

                continue;
            }

            complete = false;
            if (copies.Count == 0)
            {
                obstacles.Add(new Bar(ObstacleKind.ToolsTaken, null, timing.Start, Spans.Never));
                continue;
            }

            var first = copies.Select(c => (Copy: c, Until: c.Blocked.End(c.Blocked.Overlapping(timing.Start, timing.WorkEnd)))).MinBy(c => c.Until);
            obstacles.Add(new Bar(ObstacleKind.ToolsTaken, first.Copy.Resource, timing.Start, first.Until));
        }

        return complete ? chosen : null;
    }

    private static void Bay(ResourceTimeline bay, PhaseTiming timing, List<Bar> obstacles)
    {
        if (bay.Blocked.Overlapping(timing.Start, timing.BayUntil) is var taken and >= 0)
        {
            var kind = bay.Away.Overlapping(timing.Start, timing.BayUntil) >= 0 ? ObstacleKind.Away : ObstacleKind.Taken;
            obstacles.Add(new Bar(kind, bay.Resource, bay.Blocked.Start(taken), bay.Blocked.End(taken)));
        }
    }

    /// <summary>When it arrives and where it soaks.</summary>
    private readonly record struct Found(long At, ResourceTimeline? SoaksIn);

    private Found? Arrival(ResourceTimeline bay, ResourceTimeline technician, long start, long? given, List<Bar> obstacles)
    {
        if (!Arrives)
        {
            return Soak(bay, technician, start, now, obstacles);
        }

        if (visit.Arrival == 0 && visit.Soak == 0)
        {
            var day = open.EndingAfter(start);
            var opens = day < open.Count ? Math.Max(earliest, open.Start(day)) : Spans.Never;
            if (start < opens)
            {
                obstacles.Add(new Bar(start < earliest ? ObstacleKind.Past : ObstacleKind.Closed, null, start, opens));
                return null;
            }

            return new Found(start, null);
        }

        var latest = start - visit.Soak - visit.Arrival;
        var found = given is { } exact
            ? exact <= latest && exact >= earliest && arrivals.Fits(exact, technician, bay) ? exact : null
            : arrivals.Latest(latest, technician, bay);
        if (found is not { } at)
        {
            var first = given is null ? arrivals.First(earliest, technician, bay) : null;
            var cold = first is { } f ? ArrivalSearch.Up(f + visit.Arrival + visit.Soak) : Spans.Never;
            obstacles.Add(new Bar(visit.Soak > 0 ? ObstacleKind.Soak : ObstacleKind.Closed, null, start, cold));
            return null;
        }

        return visit.Soak == 0 ? new Found(at, null) : Soak(bay, technician, start, at, obstacles);
    }

    private Found? Soak(ResourceTimeline bay, ResourceTimeline technician, long start, long arrival, List<Bar> obstacles)
    {
        var stopped = Arrives ? arrival + visit.Arrival : arrival;
        if (visit.Soak == 0 || stopped >= start)
        {
            return new Found(arrival, null);
        }

        foreach (var place in places)
        {
            if (place.Blocked.Overlapping(stopped, start) < 0)
            {
                return new Found(arrival, place);
            }
        }

        if (bay.Blocked.Overlapping(stopped, start) < 0)
        {
            return new Found(arrival, bay);
        }

        var next = Spans.Never;
        foreach (var place in places.Append(bay))
        {
            var freeFrom = place.Blocked.End(place.Blocked.LastOverlapping(stopped, start));
            var comes = Arrives ? arrivals.First(freeFrom - visit.Arrival, technician, bay) : null;
            next = Math.Min(next, comes is { } c ? ArrivalSearch.Up(c + visit.Arrival + visit.Soak) : Spans.Never);
        }

        obstacles.Add(new Bar(ObstacleKind.NoPlace, null, start, next));
        return null;
    }

    private VisitPlan Build(
        ResourceTimeline bay, ResourceTimeline technician, PhaseTiming timing, List<ResourceTimeline> taken, Found found) =>
        new PlanBuilder(shape, visit, Terms).Build(bay, technician, timing, taken, found.At, found.SoaksIn);
}

/// <summary>An <see cref="Obstacle"/> in ticks.</summary>
internal readonly record struct Bar(ObstacleKind Kind, Resource? Resource, long From, long Until)
{
    public Obstacle Said => new(Kind, Resource, Until == Spans.Never ? null : Spans.Interval(Math.Min(From, Until), Until));
}
