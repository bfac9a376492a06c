using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Replan;

/// <summary>
/// Moves the visits of a proposal that a person accepts, all of those or none. Each is checked again on what holds now: refused where a
/// visit was changed meanwhile, no longer fits, or goes where another still stands.
/// </summary>
public static class AcceptReplan
{
    private const int MostMoves = 300;
    private const int MostPhases = 12;

    public sealed record Request
    {
        /// <summary>By ISO 8601.</summary>
        public string? Week { get; init; }

        public IReadOnlyList<Move> Moves { get; init; } = [];
    }

    /// <summary>As the proposal has it.</summary>
    public sealed record Move
    {
        public int? Number { get; init; }

        public int? PlanRevision { get; init; }

        public Guid? BayId { get; init; }

        public Guid? TechnicianId { get; init; }

        public Guid? PlaceId { get; init; }

        public IReadOnlyList<Guid> ToolIds { get; init; } = [];

        public IReadOnlyList<PlannedPhaseAnswer> Phases { get; init; } = [];

        public static Move Of(ReplanAnswer.Move move)
        {
            ArgumentNullException.ThrowIfNull(move);
            var to = move.Proposed;
            return new Move
            {
                Number = move.Number, PlanRevision = move.PlanRevision, BayId = to.BayId, TechnicianId = to.TechnicianId,
                PlaceId = to.PlaceId, ToolIds = to.ToolIds, Phases = to.Phases,
            };
        }
    }

    public sealed record Answer(IReadOnlyList<Moved> Visits);

    public sealed record Moved(int Number, Instant ArrivesAt, Instant WorkStartsAt, Instant ReadyAt, int PlanRevision);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Week).IsGiven("the week of the proposal").IsIsoWeek();
            RuleFor(r => r.Moves).Must(m => m is { Count: > 0 and <= MostMoves })
                .WithMessage($"moves holds none or too many: tick at least one visit; 1 to {MostMoves} are allowed.");
            RuleFor(r => r.Moves).Must(m => m is null || m.DistinctBy(x => x.Number).Count() == m.Count)
                .WithMessage("moves names the same job card more than once.");
            RuleForEach(r => r.Moves).ChildRules(move =>
            {
                move.RuleFor(m => m.Number).IsGiven("the number of the job card");
                move.RuleFor(m => m.PlanRevision).NotNull().WithMessage("{PropertyName} is empty: send back what the proposal gave.");
                move.RuleFor(m => m.BayId).IsGiven("the bay, as the proposal gave it");
                move.RuleFor(m => m.TechnicianId).IsGiven("the technician, as the proposal gave it");
                move.RuleFor(m => m.ToolIds).NotNull().WithMessage("{PropertyName} is null: send back what the proposal gave.");
                move.RuleFor(m => m.Phases).Must(AreInOrder)
                    .WithMessage($"{{PropertyName}} are no plan: 1 to {MostPhases} different phases with the work among them, each from a moment until a later one, are allowed.");
            });
        }

        private static bool AreInOrder(IReadOnlyList<PlannedPhaseAnswer>? phases) =>
            phases is { Count: > 0 and <= MostPhases }
            && phases.All(p => p is not null && p.From < p.Until)
            && phases.DistinctBy(p => p.Phase).Count() == phases.Count
            && phases.Any(p => p.Phase == VisitPhase.Work);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var week = IsoWeek.TryParse(request.Week, out var named) ? named : throw new ArgumentException("The validator let through what is no week.", nameof(request));
        var moves = request.Moves.OrderBy(m => m.Number).ToList();
        int[] numbers = [.. moves.Select(m => m.Number!.Value)];
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        await Lock(db, numbers, ct);
        var read = await ReplanCase.Read(db, calendar, week, numbers, clock.GetCurrentInstant(), ct);
        if (ChangedMeanwhile(moves, read, calendar.Time, week) is { } changed)
        {
            return changed;
        }

        var alone = read.Week with { Floor = await WithoutOthers(db, calendar, read, ct) };
        var plans = WeekReplan.Accept(alone, [.. read.Week.Visits.Select(v => Wanted(moves.Single(m => m.Number == v.Number)))]);
        var refusals = read.Week.Visits.Zip(plans).Where(p => p.Second is null)
            .Select(p => new FieldFault(FieldOf(moves, p.First.Number),
                $"Job card {p.First.Number} no longer fits there: hours, absences, its items or its wishes have changed; ask for a new proposal."))
            .ToList();
        if (refusals.Count == 0)
        {
            refusals = await StandInTheWay(db, moves, [.. read.Week.Visits.Zip(plans, (v, p) => (v.Number, p!))], calendar.Time, ct);
        }

        if (refusals.Count > 0)
        {
            return Problem.Conflict("does-not-fit", string.Join(' ', refusals.Select(r => r.Sentence))) with { Faults = refusals };
        }

        var written = read.Week.Visits.Zip(plans, (v, p) => (read.Cards[v.Number].Row, p!)).ToList();
        if (await PlanWriter.Write(db, written, clock, ct) is { } taken)
        {
            return taken;
        }

        await KitReservations.ReserveWhatLasts(db, [.. written.Select(w => w.Row.Number)], actor, clock, ct);
        return new Answer([.. written.Select(w => new Moved(
                w.Row.Number, w.Item2.ArrivesAt, w.Item2.WorkStartsAt, w.Item2.ReadyAt, w.Row.PlanRevision))]);
    }

    /// <summary>Cards, then their motorcycles, then all resources, each in one order, as every other use case does.</summary>
    private static async Task Lock(WorkshopDbContext db, int[] numbers, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from job_cards where number = any ({numbers}) order by number for update", ct);
        await MotorcycleLock.Take(db, await db.JobCards.Where(c => numbers.Contains(c.Number)).Select(c => c.MotorcycleId).ToArrayAsync(ct), ct);
        await PlanWriter.Lock(db, await db.Resources.Where(r => !r.Retired).Select(r => r.Id).ToArrayAsync(ct), ct);
    }

    private static Problem? ChangedMeanwhile(List<Move> moves, ReplanCase read, WorkshopTime time, IsoWeek week)
    {
        var faults = moves
            .Where(m => !read.Cards.TryGetValue(m.Number!.Value, out var card) || card.Row.PlanRevision != m.PlanRevision
                || read.Week.Visits.All(v => v.Number != m.Number))
            .Select(m => new FieldFault(FieldOf(moves, m.Number!.Value), read.Cards.TryGetValue(m.Number!.Value, out var card)
                ? $"Job card {m.Number} was changed meanwhile: it stands from {time.Say(card.Row.StartsAt)} until {time.Say(card.Row.EndsAt)} now; ask for a new proposal."
                : $"Job card {m.Number} can no longer be moved within week {week}: it was cancelled, moved or has come, or it comes before {time.Say(read.MovableFrom)}; ask for a new proposal."))
            .ToList();
        return faults.Count == 0
            ? null
            : Problem.Conflict("changed-meanwhile", string.Join(' ', faults.Select(f => f.Sentence))) with { Faults = faults };
    }

    /// <summary>Hours and absences only: who else holds what is looked at by name.</summary>
    private static async Task<WorkshopFloor> WithoutOthers(WorkshopDbContext db, OpeningCalendar calendar, ReplanCase read, CancellationToken ct)
    {
        var window = read.Week.Floor.Window;
        var all = await Occupied.LiveDuring(db, window).Select(o => o.JobCardNumber).Distinct().ToArrayAsync(ct);
        return await FloorReader.Read(db, calendar, window.Start, window.End, all, null, ct);
    }

    private static VisitPlan Wanted(Move move)
    {
        var work = move.Phases.Single(p => p.Phase == VisitPhase.Work);
        var span = new Interval(work.From, work.Until);
        return new VisitPlan(
            [.. move.Phases.Select(p => new PhaseSpan(p.Phase, new Interval(p.From, p.Until)))],
            [
                .. move.ToolIds.Prepend(move.TechnicianId!.Value).Prepend(move.BayId!.Value).Select(id => new Take(VisitPhase.Work, id, span)),
                .. move.PlaceId is { } place ? [new Take(VisitPhase.ColdSoak, place, span)] : Array.Empty<Take>(),
            ]);
    }

    /// <summary>Others that hold what an accepted visit would take, and accepted ones that would take the same.</summary>
    private static async Task<List<FieldFault>> StandInTheWay(
        WorkshopDbContext db, List<Move> moves, List<(int Number, VisitPlan Plan)> plans, WorkshopTime time, CancellationToken ct)
    {
        var takes = plans.SelectMany(p => p.Plan.Takes).ToList();
        var window = new Interval(takes.Min(t => t.Span.Start), takes.Max(t => t.Span.End));
        var others = (await Occupied.During(db, window, ct)).Where(t => plans.TrueForAll(p => p.Number != t.By)).ToList();
        var standing = plans.SelectMany(p => others
            .Where(o => p.Plan.Takes.Any(t => t.ResourceId == o.Resource.Id && Overlap(t.Span, o.Span)))
            .GroupBy(o => (o.Resource.Id, o.By)).Select(g => g.OrderBy(o => o.Span.Start).First())
            .Select(o => new FieldFault(FieldOf(moves, p.Number),
                $"Job card {p.Number} would take {o.Resource.Name}, which job card {o.By} has from {time.Say(o.Span.Start)} on: if job card {o.By} moves in the same proposal, accept both; else leave job card {p.Number} where it is.")));
        var among = plans.SelectMany((p, index) => plans.Skip(index + 1)
            .Where(q => p.Plan.Takes.Any(t => q.Plan.Takes.Any(u => u.ResourceId == t.ResourceId && Overlap(t.Span, u.Span))))
            .Select(q => new FieldFault(FieldOf(moves, q.Number), $"Job cards {p.Number} and {q.Number} would take the same at the same time; ask for a new proposal.")));
        return [.. standing, .. among];
    }

    private static bool Overlap(Interval one, Interval other) => one.Start < other.End && other.Start < one.End;

    private static string FieldOf(List<Move> moves, int number) => $"moves[{moves.FindIndex(m => m.Number == number)}]";
}
