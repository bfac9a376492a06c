using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>
/// Whether plans of visits keep to a made-up floor, minute by minute: written from the rules, sharing nothing with planner, solver or
/// timelines but the rows.
/// </summary>
internal sealed class PlanTally(MadeUpFloor made)
{
    private readonly HashSet<(Guid Resource, int Minute)> used = [];

    public string? FirstFault(IEnumerable<(ReplanVisit Visit, VisitPlan Plan)> plans) =>
        plans.Select(p => FaultOf(p.Visit, p.Plan) is { } fault ? $"job card {p.Visit.Number}: {fault}" : null).FirstOrDefault(f => f is not null);

    private string? FaultOf(ReplanVisit visit, VisitPlan plan)
    {
        var (shape, terms) = (visit.Shape, visit.Terms);
        int Long(VisitPhase phase) => plan.Phases.Where(p => p.Phase == phase).Sum(p => Minutes(p.Span));
        List<int> Of(VisitPhase phase, ResourceKind kind) =>
            [.. plan.Takes.Where(t => t.Phase == phase && Row(t.ResourceId).Resource.Kind == kind).SelectMany(t => MinutesOf(t.Span))];

        var work = plan.Phases.Single(p => p.Phase == VisitPhase.Work).Span;
        var lastInBay = plan.Phases.Last(p => p.Phase != VisitPhase.HandOver).Span.End;
        var technicians = plan.Takes.Where(t => Row(t.ResourceId).Resource.Kind == ResourceKind.Technician).Select(t => t.ResourceId).Distinct().ToList();
        var bays = plan.Takes.Where(t => t.Phase >= VisitPhase.Work && Row(t.ResourceId).Resource.Kind == ResourceKind.Bay).ToList();
        if (technicians.Count != 1 || bays.Select(b => b.ResourceId).Distinct().Count() != 1)
        {
            return "not one technician and one bay";
        }

        if ((visit.TechnicianId is { } wished && wished != technicians[0]) || (visit.BayId is { } bay && bay != bays[0].ResourceId))
        {
            return "a wish is not kept";
        }

        var technician = Row(technicians[0]);
        if (Of(VisitPhase.Work, ResourceKind.Technician).Count != shape.WorkMinutes
            || Of(VisitPhase.Work, ResourceKind.Technician).Min() != MinuteOf(work.Start) || Of(VisitPhase.Work, ResourceKind.Technician).Max() != MinuteOf(work.End) - 1
            || MinutesOf(work).Any(m => IsTaken(technician, m))
            || Of(VisitPhase.WarmRun, ResourceKind.Technician).Count != shape.WarmRunMinutes || Long(VisitPhase.WarmRun) != shape.WarmRunMinutes
            || Of(VisitPhase.TestRide, ResourceKind.Technician).Count != shape.TestRideMinutes || Long(VisitPhase.TestRide) != shape.TestRideMinutes
            || Of(VisitPhase.CoolAndRecheck, ResourceKind.Technician).Count != shape.RecheckMinutes
            || Long(VisitPhase.SealantCure) != shape.CureMinutes || Long(VisitPhase.HandOver) != shape.HandOverMinutes)
        {
            return "a phase is not as long as it takes";
        }

        if (bays.SelectMany(b => MinutesOf(b.Span)).Order().SequenceEqual(MinutesOf(new Interval(work.Start, lastInBay))) is false)
        {
            return "the bay is not kept from the work on";
        }

        if (shape.RecheckMinutes > 0 && Long(VisitPhase.CoolAndRecheck) < shape.Cool.TotalMinutes + shape.RecheckMinutes)
        {
            return "not cooled";
        }

        if (shape.Soak > Duration.Zero && (Long(VisitPhase.ColdSoak) < shape.Soak.TotalMinutes
            || plan.Takes.Where(t => t.Phase == VisitPhase.ColdSoak).SelectMany(t => MinutesOf(t.Span)).Count() != Long(VisitPhase.ColdSoak)))
        {
            return "not cold, or without a place";
        }

        if (plan.ArrivesAt < terms.Now || plan.ArrivesAt < terms.NotBefore || work.Start < terms.PartsFrom || plan.ReadyAt > terms.ReadyBy)
        {
            return "outside what was agreed on";
        }

        var doors = plan.Phases.Where(p => p.Phase is VisitPhase.Arrival or VisitPhase.HandOver).SelectMany(p => MinutesOf(p.Span));
        if (!doors.All(IsOpen) || !IsOpen(MinuteOf(plan.ArrivesAt)))
        {
            return "arrives or leaves at closed doors";
        }

        if (plan.Phases.Zip(plan.Phases.Skip(1)).Any(pair => pair.First.Span.End > pair.Second.Span.Start))
        {
            return "phases out of order";
        }

        return plan.Takes.SelectMany(t => MinutesOf(t.Span).Select(m => (t.ResourceId, Minute: m)))
            .Any(t => !used.Add(t) || IsTaken(Row(t.ResourceId), t.Minute) || !Works(Row(t.ResourceId), t.Minute))
            ? "a resource is taken twice, or absent"
            : null;
    }

    private MadeUpResource Row(Guid id) => made.Resources.Single(r => r.Resource.Id == id);

    private bool IsTaken(MadeUpResource row, int minute) => row.Taken.Any(t => Holds(t, minute))
        || (row.Resource.Kind != ResourceKind.Technician && row.Absences.Any(a => Holds(a, minute)));

    private bool Works(MadeUpResource row, int minute)
    {
        if (row.Resource.Kind != ResourceKind.Technician)
        {
            return true;
        }

        var local = made.Calendar.Time.At(At(minute));
        var shift = row.Hours.Count == 0
            ? IsOpen(minute)
            : !made.Calendar.IsHoliday(local.Date) && row.Hours.Any(h => h.Weekday == local.DayOfWeek && Within(local.Date, h.StartsAt, h.EndsAt, minute));
        return shift && !row.Absences.Any(a => Holds(a, minute))
            && !row.Breaks.Any(b => b.Weekday == local.DayOfWeek && Within(local.Date, b.StartsAt, b.EndsAt, minute));
    }

    private bool Within(LocalDate day, LocalTime from, LocalTime until, int minute)
    {
        var zone = made.Calendar.Time.Zone;
        return Holds(new Interval((day + from).InZoneLeniently(zone).ToInstant(), (day + until).InZoneLeniently(zone).ToInstant()), minute);
    }

    private bool IsOpen(int minute) =>
        made.Calendar.OpenOn(made.Calendar.Time.DayOf(At(minute))) is { } hours && Holds(hours, minute);

    private bool Holds(Interval span, int minute) => span.Contains(At(minute));

    private IEnumerable<int> MinutesOf(Interval span) => Enumerable.Range(MinuteOf(span.Start), Minutes(span));

    private static int Minutes(Interval span) => (int)span.Duration.TotalMinutes;

    private int MinuteOf(Instant at) => (int)(at - made.Begin).TotalMinutes;

    private Instant At(int minute) => made.Begin + Duration.FromMinutes(minute);
}
