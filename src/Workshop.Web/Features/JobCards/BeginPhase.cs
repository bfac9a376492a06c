using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Kits;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// Somebody says that a phase of a visit begins; the one before ended then. Where the engine ran in it, it stopped then, too.
/// What was planned stays as it is: who is late by it is shown, and moves nobody.
/// </summary>
public static class BeginPhase
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public VisitPhase? Phase { get; init; }

        /// <summary>Absent: whoever says so, if a technician, or else who it was planned with.</summary>
        public Guid? TechnicianId { get; init; }

        /// <summary>Absent, and <see cref="StartedDay"/> and <see cref="StartedTime"/> too: now.</summary>
        public Instant? StartedAt { get; init; }

        public LocalDate? StartedDay { get; init; }

        public LocalTime? StartedTime { get; init; }

        /// <summary>Why it begins before its time: on a warm engine, before sealant is hard, without the re-check.</summary>
        public string? Reason { get; init; }

        /// <summary>Oil is in, its level is checked, the tag is off: asked before an engine is run that may lack oil.</summary>
        public bool OilIn { get; init; }
    }

    /// <param name="ColdFrom">When the cold soak is over, counted from the engine's last stop.</param>
    public sealed record Answer(
        int Number, VisitPhase Phase, Instant StartedAt, string? Technician, Instant? ColdFrom,
        IReadOnlyList<string> Warnings, IReadOnlyList<CautionNow> Cautions);

    public sealed record CautionNow(string Code, string Title, string Text);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Phase).IsGiven("the phase that begins").IsInEnum();
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            When(
                r => r.StartedAt is not null || r.StartedDay is not null || r.StartedTime is not null,
                () => this.MomentIsGiven(r => r.StartedAt, r => r.StartedDay, r => r.StartedTime, "when the phase began"));
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var now = clock.GetCurrentInstant();
        var (field, moment) = request.StartedAt is null && request.StartedDay is null
            ? ("startedAt", now)
            : Moments.Read(time, "startedAt", request.StartedAt, "startedTime", request.StartedDay, request.StartedTime);
        if (!(await VisitState.ForWork(db, request.Number, ct)).TryGet(out var visit, out var problem)
            || !moment.TryGet(out var at, out problem))
        {
            return problem;
        }

        if (at > now)
        {
            return Problem.Impossible("begins-later", field,
                $"{field} is {time.Say(at)}, which is still to come; it is {time.Say(now)} now. Say that it begins when it does.");
        }

        var phase = request.Phase!.Value;
        var reason = string.IsNullOrWhiteSpace(request.Reason) ? null : request.Reason.Trim();
        if (PhaseRules.RefuseBegin(visit.SoFar, new PhaseToBegin(phase, at, reason is not null, request.OilIn), time) is { } refused)
        {
            return refused;
        }

        if (!(await Technician(db, visit, phase, request.TechnicianId, actor, ct)).TryGet(out var who, out problem))
        {
            return problem;
        }

        var coldFrom = visit.Open.ColdFrom;
        if (await EngineStops(db, visit, phase, at, ct))
        {
            RecordEngineStop.Add(db, request.Number, at, actor, clock);
            coldFrom = CardRules.SoakEndsAt(at, visit.Open.Specification.Cold);
        }

        db.PhaseStarts.Add(new PhaseStart
        {
            Id = NewId.At(clock),
            JobCardNumber = request.Number,
            Phase = phase,
            TechnicianId = who.Technician?.Id,
            StartedAt = at,
            ReasonRemarkId = Remarks.Add(db, reason, actor, clock),
            EnteredBy = actor.PersonId,
        });
        await db.SaveChangesAsync(ct);
        IReadOnlyList<string> missing = phase == VisitPhase.Work ? await KitReservations.IssueReserved(db, visit.Open, actor, clock, ct) : [];
        return new Answer(
            request.Number, phase, at, who.Technician?.Name, coldFrom,
            [.. missing, .. await Warnings(db, visit, who.Technician, ct), .. await BegunEarly(db, visit, phase, who.Technician, clock, ct)],
            [.. PhaseRules.CautionsAt(visit.SoFar, phase).Select(c => new CautionNow(c.Code, c.Title, c.Text))]);
    }

    private sealed record Who(Resource? Technician);

    private static async Task<Outcome<Who>> Technician(
        WorkshopDbContext db, VisitState visit, VisitPhase phase, Guid? named, Actor actor, CancellationToken ct)
    {
        if (!PhaseRules.HasTechnician(phase))
        {
            return new Who(null);
        }

        var technicians = await db.Resources.AsNoTracking()
            .Where(r => r.Kind == ResourceKind.Technician && !r.Retired).OrderBy(r => r.Name).ToListAsync(ct);
        if (named is { } id)
        {
            return technicians.Find(t => t.Id == id) is { } found
                ? new Who(found)
                : Problem.Impossible("technician-unknown", "technicianId",
                    $"technicianId is {id}: no technician has it; choose one of {string.Join(", ", technicians.Select(t => t.Name))}.");
        }

        var planned = visit.Taken.Where(t => t.Row.Phase == phase && t.Resource.Kind == ResourceKind.Technician)
            .OrderBy(t => t.Row.Span.Start).FirstOrDefault()?.Resource;
        return new Who(technicians.Find(t => t.PersonId == actor.PersonId) ?? planned);
    }

    /// <summary>The engine ran in the phase that ends now, and nobody has said when it stopped.</summary>
    private static async Task<bool> EngineStops(WorkshopDbContext db, VisitState visit, VisitPhase next, Instant at, CancellationToken ct)
    {
        if (visit.SoFar.Phase is not { } ends || PhaseRules.EngineRuns(next) || visit.Open.EngineStoppedAt >= visit.SoFar.Since)
        {
            return false;
        }

        return at >= visit.SoFar.Since && (PhaseRules.EngineRuns(ends) || (ends == VisitPhase.Arrival
            && await db.VisitWishes.AnyAsync(w => w.JobCardNumber == visit.Card.Number && w.TestRunAtArrival, ct)));
    }

    /// <summary>
    /// Work that begins before its time takes its bay and its technician from now on, and lets go of what it was to take later. Begun
    /// late it keeps its plan, so that what it was to be ready by stays in sight.
    /// </summary>
    private static async Task<IReadOnlyList<string>> BegunEarly(
        WorkshopDbContext db, VisitState visit, VisitPhase phase, Resource? technician, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var bays = visit.Taken.Where(t => t.Resource.Kind == ResourceKind.Bay && t.Row.Phase == VisitPhase.Work).OrderBy(t => t.Row.Span.Start).ToList();
        if (phase != VisitPhase.Work || technician is null || bays.Count == 0 || bays[0].Row.Span.Start <= now || visit.SoFar.WorkBegunAt is not null)
        {
            return [];
        }

        var stands = visit.StandsIn(now);
        var bay = await db.Resources.AsNoTracking().SingleOrDefaultAsync(r => r.Id == stands && r.Kind == ResourceKind.Bay, ct) ?? bays[0].Resource;
        return await RestOfVisit.PlanFromNow(db, visit, bay, technician, clock, ct);
    }

    private static async Task<IReadOnlyList<string>> Warnings(
        WorkshopDbContext db, VisitState visit, Resource? technician, CancellationToken ct)
    {
        if (technician is null)
        {
            return [];
        }

        var needs = VisitNeeds.Of([.. visit.Open.Items.Select(i => new ChosenItem(visit.Open.ItemOf(i), i.Likelihood))]);
        List<string> warnings = needs.SkillsMissing(technician) is { Count: > 0 } missing
            ? [$"{technician.Name} lacks {string.Join(" and ", missing)}, which this visit asks for."]
            : [];
        var elsewhere = await (
            from start in db.PhaseStarts
            join card in db.JobCards on start.JobCardNumber equals card.Number
            where card.State == JobCardState.CheckedIn && card.Number != visit.Card.Number && start.TechnicianId == technician.Id
                && !db.PhaseStarts.Any(later => later.JobCardNumber == start.JobCardNumber && later.StartedAt > start.StartedAt)
            select card.Number).ToListAsync(ct);
        warnings.AddRange(elsewhere.Select(number => $"{technician.Name} is at job card {number}, too."));
        return warnings;
    }
}
