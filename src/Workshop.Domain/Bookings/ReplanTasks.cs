using NodaTime;
using Workshop.Domain.Statistics.Scheduling;

namespace Workshop.Domain.Bookings;

/// <summary>
/// The visits of a week as jobs of tasks, in whole minutes from the first of the window: each phase is a task, the bay is held
/// from the work on, a place through the soak, tools through the work. The rules are those of <see cref="PhasePlanner"/>.
/// </summary>
internal sealed class ReplanTasks
{
    /// <summary>What is moved begins where a search for slots would begin it; what stays, stays to the minute.</summary>
    private const int GridMinutes = SlotSearch.GridMinutes;
    private const long Minute = NodaConstants.TicksPerMinute;

    private readonly ReplanWeek week;
    private readonly long origin;
    private readonly int horizon;
    private readonly ResourceTimeline[] resources;
    private readonly TimeStretch[] open;

    public ReplanTasks(ReplanWeek week)
    {
        this.week = week;
        origin = Spans.Ticks(week.Floor.Window.Start) / Minute * Minute;
        horizon = Last(Spans.Ticks(week.Floor.Window.End));
        resources = week.Floor.Resources.ToArray();
        open = Inner(week.Floor.Opening.Open);
    }

    public ScheduleProblem Problem(IReadOnlyList<ReplanVisit> visits) => new(
        horizon,
        resources.Select(ResourceOf).ToArray(),
        visits.Select(JobOf).ToArray(),
        Loads().Where(l => l.Available > 0)
            .Select(l => new WorkerLoad(l.Index, Math.Max(1, 1_000_000 / l.Available), l.Taken)).ToArray());

    /// <summary>Of each technician: minutes of work that the week has, and those that others have taken of it.</summary>
    public IEnumerable<(int Index, int Available, int Taken)> Loads() => resources
        .Select((timeline, index) => (timeline, index))
        .Where(r => r.timeline.Working is not null)
        .Select(r => (r.index, Minutes(r.timeline.Working!),
            Minutes(r.timeline.Working!) - Minutes(r.timeline.Working!.Without(r.timeline.Blocked))));

    public Interval IntervalOf(TimeStretch stretch) => Spans.Interval(Ticks(stretch.From), Ticks(stretch.Until));

    public ResourceTimeline Timeline(int resource) => resources[resource];

    /// <summary>A plan of a visit in tasks; nothing where it has not the phases that its items ask for, to the minute.</summary>
    public PlacedJob? Placed(ReplanVisit visit, VisitPlan plan)
    {
        var (layout, job, phases) = (new ReplanLayout(visit.Shape), JobOf(visit), plan.Phases.ToDictionary(p => p.Phase, p => p.Span));
        var tasks = layout.Tasks.Select(task => SpanOf(visit, phases, task.Step)).ToArray();
        var chosen = job.Choices.Select((choice, index) => Chosen(plan, choice, layout.PhaseOf(index))).ToArray();
        var known = layout.Tasks.Select(t => t.Phase).OfType<VisitPhase>().ToHashSet();
        return tasks.Any(t => t is null) || chosen.Any(c => c < 0) || !known.SetEquals(phases.Keys)
            ? null
            : new PlacedJob(tasks.Select(t => t!.Value).ToArray(), chosen);
    }

    /// <summary>The plan that tasks in their places are.</summary>
    public VisitPlan PlanOf(ReplanVisit visit, PlacedJob placed)
    {
        var (layout, ticks) = (new ReplanLayout(visit.Shape), VisitTicks.Of(visit.Shape));
        long From(ReplanStep step, long otherwise) => layout.Index(step) is var at and >= 0 ? Ticks(placed.Tasks[at].From) : otherwise;
        long Until(ReplanStep step, long otherwise) => layout.Index(step) is var at and >= 0 ? Ticks(placed.Tasks[at].Until) : otherwise;
        var (start, workEnd) = (From(ReplanStep.Work, 0), Until(ReplanStep.Work, 0));
        var cureEnd = Until(ReplanStep.Cure, workEnd);
        var warmEnd = Until(ReplanStep.WarmRun, cureEnd);
        var rideEnd = Until(ReplanStep.TestRide, warmEnd);
        var recheckEnd = Until(ReplanStep.Recheck, rideEnd);
        var timing = new PhaseTiming(
            start, workEnd, cureEnd, From(ReplanStep.WarmRun, cureEnd), warmEnd, From(ReplanStep.TestRide, warmEnd), rideEnd,
            From(ReplanStep.Recheck, rideEnd), recheckEnd, From(ReplanStep.HandOver, recheckEnd), Until(ReplanStep.HandOver, recheckEnd));
        var firstTool = layout.Soaks ? ReplanLayout.Place + 1 : ReplanLayout.Place;
        return new PlanBuilder(visit.Shape, ticks, visit.Terms).Build(
            resources[placed.Chosen[ReplanLayout.Bay]],
            resources[placed.Chosen[ReplanLayout.Technician]],
            timing,
            placed.Chosen.Skip(firstTool).Select(tool => resources[tool]).ToArray(),
            Ticks(placed.Tasks[0].From),
            layout.Soaks ? resources[placed.Chosen[ReplanLayout.Place]] : null);
    }

    /// <summary>When the work begins and the motorcycle arrives.</summary>
    public (Instant Work, Instant? Arrives) Start(ReplanVisit visit, PlacedJob placed)
    {
        var layout = new ReplanLayout(visit.Shape);
        return (IntervalOf(placed.Tasks[layout.Work]).Start, layout.Arrives ? IntervalOf(placed.Tasks[0]).Start : null);
    }

    private ScheduleJob JobOf(ReplanVisit visit)
    {
        var layout = new ReplanLayout(visit.Shape);
        var bays = Fit(ResourceKind.Bay, visit.BayId, visit, visit.Needs.BayLacks);
        var tools = visit.Needs.SpecialTools
            .Select(code => Indexes(r => r.Kind == ResourceKind.SpecialTool && r.Capabilities.Contains(code)).ToArray())
            .DistinctBy(copies => string.Join(' ', copies))
            .ToArray();
        var places = layout.Soaks ? Indexes(r => r.Kind == ResourceKind.ParkingPlace).Concat(bays).ToArray() : [];
        var choices = new[] { Fit(ResourceKind.Technician, visit.TechnicianId, visit, visit.Needs.TechnicianLacks), bays }
            .Concat(layout.Soaks ? [places] : []).Concat(tools).ToArray();
        return new ScheduleJob(
            layout.Tasks.Select(task => TaskOf(visit, layout, task)).ToArray(),
            choices,
            layout.Holds(tools.Length).ToArray())
        {
            Tied = layout.Soaks ? [new TiedChoice(ReplanLayout.Place, ReplanLayout.Bay)] : [],
        };
    }

    private ScheduleTask TaskOf(ReplanVisit visit, ReplanLayout layout, ReplanTask task)
    {
        var terms = visit.Terms;
        var first = task.Step is ReplanStep.Arrival or ReplanStep.Gate;
        var notBefore = first ? Later(terms.Now, terms.NotBefore) : task.Step == ReplanStep.Work ? Later(terms.Now, terms.PartsFrom) : 0;
        var last = layout.Tasks[^1].Step == task.Step;
        return new ScheduleTask(task.Minutes)
        {
            Worker = task.Worked ? ReplanLayout.Technician : null,
            Unbroken = task.Worked && task.Step != ReplanStep.Work,
            Longest = task.Step == ReplanStep.Soak ? horizon : null,
            MaxGap = task.Follows ? 0 : null,
            NotBefore = Math.Min(horizon, notBefore),
            EndsBy = last ? EndsBy(visit) : null,
            Within = first || task.Step == ReplanStep.HandOver ? open : null,
            Starts = first || task.Step == ReplanStep.Work ? Starts(visit, task.Step) : null,
        };
    }

    /// <summary>Within the week, and by when it was promised; where it ends later as it stands, it may go on doing so.</summary>
    private int EndsBy(ReplanVisit visit)
    {
        var by = Spans.Ticks(week.Week.End);
        by = visit.Terms.ReadyBy is { } promised ? Math.Min(by, Spans.Ticks(promised)) : by;
        return Math.Clamp(Last(Math.Max(by, Spans.Ticks(visit.Today.ReadyAt))), 0, horizon);
    }

    /// <summary>Moments of the grid, and the one at which it stands.</summary>
    private int[] Starts(ReplanVisit visit, ReplanStep step)
    {
        var from = (int)(((-origin / Minute % GridMinutes) + GridMinutes) % GridMinutes);
        var grid = Enumerable.Range(0, Math.Max(0, (horizon - from + GridMinutes - 1) / GridMinutes)).Select(i => from + (i * GridMinutes));
        if (step == ReplanStep.Gate)
        {
            grid = grid.Where(t => open.Any(o => o.From <= t && t < o.Until));
        }

        var stands = step == ReplanStep.Arrival ? visit.Today.ArrivesAt : visit.Today.WorkStartsAt;
        return Exact(stands) is { } minute ? grid.Append(minute).Distinct().ToArray() : grid.ToArray();
    }

    /// <summary>What is wished for, or whatever is fit; and what it has.</summary>
    private int[] Fit(ResourceKind kind, Guid? wished, ReplanVisit visit, Func<Resource, IReadOnlyList<string>> lacks)
    {
        var has = visit.Today.Takes.Where(t => t.Phase == VisitPhase.Work).Select(t => t.ResourceId).ToHashSet();
        return Indexes(r => r.Kind == kind && (has.Contains(r.Id) || ((wished is null || wished == r.Id) && lacks(r).Count == 0))).ToArray();
    }

    private IEnumerable<int> Indexes(Func<Resource, bool> which) =>
        Enumerable.Range(0, resources.Length).Where(i => which(resources[i].Resource));

    private TimeStretch? SpanOf(ReplanVisit visit, Dictionary<VisitPhase, Interval> phases, ReplanStep step)
    {
        TimeStretch? Whole(Interval span) => Exact(span.Start) is { } from && Exact(span.End) is { } until ? new TimeStretch(from, until) : null;

        if (step == ReplanStep.Gate)
        {
            return phases.TryGetValue(VisitPhase.Work, out var work) && Exact(work.Start) is { } at ? new TimeStretch(at, at) : null;
        }

        if (!phases.TryGetValue(ReplanLayout.PhaseOf(step)!.Value, out var phase) || Whole(phase) is not { } span)
        {
            return null;
        }

        return step switch
        {
            ReplanStep.Cool => new TimeStretch(span.From, span.From + Up(visit.Shape.Cool)),
            ReplanStep.Recheck => new TimeStretch(span.Until - visit.Shape.RecheckMinutes, span.Until),
            _ => span,
        };
    }

    private int Chosen(VisitPlan plan, IReadOnlyList<int> choice, VisitPhase phase)
    {
        var taken = plan.Takes.Where(t => t.Phase == phase).Select(t => t.ResourceId).ToHashSet();
        return choice.Where(c => taken.Contains(resources[c].Resource.Id)).DefaultIfEmpty(-1).First();
    }

    private ScheduleResource ResourceOf(ResourceTimeline timeline)
    {
        var blocked = timeline.Blocked.Each().Select(s => new TimeStretch(First(s.From), End(s.Until))).ToArray();

        // What is taken counts as working time that is taken, so that no work goes on over it, be it in the middle of a night.
        return timeline.Working is { } working
            ? new ScheduleResource(Inner(working).Concat(blocked).ToArray(), blocked)
            : new ScheduleResource(null, blocked);
    }

    private int Minutes(Spans spans) => (int)(spans.Each().Sum(s => Math.Max(
        0, Math.Min(s.Until, Spans.Ticks(week.Week.End)) - Math.Max(s.From, Spans.Ticks(week.Week.Start)))) / Minute);

    private TimeStretch[] Inner(Spans spans) => spans.Each()
        .Select(s => new TimeStretch(End(s.From), First(s.Until))).Where(s => s.Length > 0).ToArray();

    private int Later(Instant one, Instant? other) => End(Spans.Ticks(other is { } at && at > one ? at : one));

    public static int Up(Duration duration) => (int)((duration.BclCompatibleTicks + Minute - 1) / Minute);

    private long Ticks(int minute) => origin + (minute * Minute);

    /// <summary>The minute in which a moment lies, within the window.</summary>
    private int First(long ticks) => (int)Math.Clamp(Math.Floor((ticks - origin) / (double)Minute), 0, int.MaxValue / 4);

    /// <summary>The first minute that begins at or after a moment.</summary>
    private int End(long ticks) => (int)Math.Clamp(Math.Ceiling((ticks - origin) / (double)Minute), 0, int.MaxValue / 4);

    private int Last(long ticks) => First(ticks);

    private int? Exact(Instant at) =>
        Spans.Ticks(at) is var ticks && ticks >= origin && (ticks - origin) % Minute == 0 && First(ticks) <= horizon ? First(ticks) : null;
}
