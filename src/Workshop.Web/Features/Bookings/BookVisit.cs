using System.Linq.Expressions;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// Books a visit: opens the job card with its items, plans its phases and takes for each what it needs, keeps the wishes, and
/// reserves the kit. Two bookings that want the same wait for each other at the resources' rows; the second reads what is free next.
/// </summary>
public static class BookVisit
{
    private const int MostItems = 40;

    public sealed record Request
    {
        public Guid? MotorcycleId { get; init; }

        // A list that can be added to: the page's binder fills it in place.
        public IList<Item> Items { get; init; } = [];

        public Guid? BayId { get; init; }

        public Guid? TechnicianId { get; init; }

        /// <summary>When the work starts; or else <see cref="Day"/> and <see cref="Time"/> in the workshop's zone.</summary>
        public Instant? StartsAt { get; init; }

        public LocalDate? Day { get; init; }

        public LocalTime? Time { get; init; }

        /// <summary>When the motorcycle arrives; absent: as late as its soak and the opening hours allow.</summary>
        public Instant? ArrivesAt { get; init; }

        public Wishes? Wishes { get; init; }

        /// <summary>The earlier job card of the same motorcycle, signed off, because of which it comes back.</summary>
        public int? ComebackOf { get; init; }

        /// <summary>Why it comes back.</summary>
        public string? ComebackReason { get; init; }
    }

    public sealed record Item
    {
        public string? Code { get; init; }

        public Likelihood Likelihood { get; init; }
    }

    /// <param name="StartsAt">When the work starts.</param>
    /// <param name="Warnings">What the person should know before saying yes: parts that are not here in time.</param>
    public sealed record Answer(
        int Number,
        Instant ArrivesAt,
        Instant StartsAt,
        Instant ReadyAt,
        int BookedMinutes,
        int PossibleMinutes,
        IReadOnlyList<TakenResource> Resources,
        IReadOnlyList<PlannedPhaseAnswer> Phases,
        IReadOnlyList<string> Warnings);

    public sealed record TakenResource(Guid Id, ResourceKind Kind, string Name);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.MotorcycleId).IsGiven("the motorcycle that comes");
            RuleFor(r => r.BayId).IsGiven("the bay that it stands in");
            RuleFor(r => r.TechnicianId).IsGiven("the technician who works on it");
            this.MomentIsGiven(r => r.StartsAt, r => r.Day, r => r.Time, "when the work starts");
            this.ItemsAreGiven(r => r.Items);
            RuleFor(r => r.Wishes!).SetValidator(new Wishes.Validator()).When(r => r.Wishes is not null);
            RuleFor(r => r.ComebackReason).IsGiven("why it comes back").When(r => r.ComebackOf is not null);
            RuleFor(r => r.ComebackReason).IsAtMost(Limits.Remark);
            RuleFor(r => r.ComebackOf).NotNull().When(r => !string.IsNullOrWhiteSpace(r.ComebackReason))
                .WithMessage("{PropertyName} is empty, but comebackReason is given: name the earlier job card, or leave both out.");
        }
    }

    /// <summary>What a visit is for, as both a search and a booking name it.</summary>
    internal static void ItemsAreGiven<T>(this AbstractValidator<T> rules, Expression<Func<T, IList<Item>>> items)
    {
        rules.RuleFor(items).Must(list => list is { Count: > 0 and <= MostItems })
            .WithMessage($"items holds none or too many: 1 to {MostItems} service items are allowed.");
        rules.RuleFor(items).Must(list => list is null or [] || list.Any(i => i.Likelihood != Likelihood.Possible))
            .WithMessage("items are all possible only: at least one certain or likely item is needed.");
        rules.RuleFor(items).Must(list => list is null || list.DistinctBy(i => i.Code).Count() == list.Count)
            .WithMessage("items names the same code more than once; each item is done once a visit.");
        rules.RuleForEach(Expression.Lambda<Func<T, IEnumerable<Item>>>(items.Body, items.Parameters)).ChildRules(item =>
            item.RuleFor(i => i.Code).IsGiven("the code of a service item").IsAtMost(Limits.Code));
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var now = clock.GetCurrentInstant();
        var (startField, start) = Moments.Read(calendar.Time, "startsAt", request.StartsAt, "time", request.Day, request.Time);
        if (!start.TryGet(out var startsAt, out var problem)
            || !(await VisitSubject.Find(db, request.MotorcycleId!.Value, calendar.Time.DayOf(now), ct)).TryGet(out var subject, out problem)
            || !VisitItems.Choose(subject.Version.Specification, [.. request.Items.Select(i => new NamedItem(i.Code!, i.Likelihood))])
                .TryGet(out var items, out problem)
            || !(request.Wishes ?? new Wishes()).Read(calendar.Time).TryGet(out var wishes, out problem))
        {
            return problem;
        }

        await MotorcycleLock.Take(db, subject.Motorcycle.Id, ct);
        if (request.ComebackOf is { } earlier
            && ComebackRules.Refuse(await db.JobCards.AsNoTracking().SingleOrDefaultAsync(c => c.Number == earlier, ct), earlier, subject.Motorcycle.Id) is { } not)
        {
            return not;
        }

        var visit = await VisitCase.Of(db, subject.Version.Specification, items, wishes, ct);
        var wanted = new Placement(request.BayId!.Value, request.TechnicianId!.Value, startField, startsAt, request.ArrivesAt);
        var placed = await Placing.Plan(db, visit, calendar, wanted, visit.Terms(now), [], ct);
        if (await RefuseSecondVisit(db, subject, placed, startsAt, calendar.Time, ct) is { } second)
        {
            return second;
        }

        if (!placed.TryGet(out var plan, out problem))
        {
            return problem;
        }

        var card = new JobCard
        {
            MotorcycleId = subject.Motorcycle.Id,
            EngineId = subject.Fitting.EngineId,
            EngineModelVersionId = subject.Version.Id,
            BookedBy = actor.PersonId,
            BookedAt = now,
            StartsAt = plan.ArrivesAt,
            EndsAt = plan.ReadyAt,
        };
        db.JobCards.Add(card);
        await db.SaveChangesAsync(ct);
        db.JobCardItems.AddRange(items.Select(i => new JobCardItem
        {
            JobCardNumber = card.Number, ServiceItemCode = i.Item.Code, Likelihood = i.Likelihood,
        }));
        if (request.Wishes is not null)
        {
            db.VisitWishes.Add(request.Wishes.Read(calendar.Time, card.Number).Value);
        }

        if (request.ComebackOf is { } of)
        {
            db.Comebacks.Add(new Comeback
            {
                JobCardNumber = card.Number, OfJobCardNumber = of, ReasonRemarkId = Remarks.Add(db, request.ComebackReason, actor, clock)!.Value,
                EnteredBy = actor.PersonId, EnteredAt = now,
            });
        }

        if (await PlanWriter.Write(db, card, plan, clock, ct) is { } taken)
        {
            return await Placing.WithNextSlot(db, taken, visit, calendar, startField, startsAt, visit.Terms(now), [], ct);
        }

        var parts = await PartsShort.Read(db, visit, calendar, cardNumber: null, now, ct);
        await KitReservations.Reserve(db, card.Number, actor, clock, ct);
        return new Answer(card.Number, plan.ArrivesAt, plan.WorkStartsAt, plan.ReadyAt, visit.Labour.BookedMinutes, visit.Labour.PossibleMinutes,
            await Taken(db, plan, ct), PlannedPhaseAnswer.Of(plan),
            [.. parts.Parts.Where(p => p.From is null || p.From > startsAt).Select(p => p.Sentence)]);
    }

    private static async Task<IReadOnlyList<TakenResource>> Taken(WorkshopDbContext db, VisitPlan plan, CancellationToken ct)
    {
        var ids = plan.Takes.Select(t => t.ResourceId).Distinct().ToList();
        return [.. (await db.Resources.AsNoTracking().Where(r => ids.Contains(r.Id)).ToListAsync(ct))
            .OrderBy(r => r.Kind).ThenBy(r => r.Name, StringComparer.Ordinal).Select(r => new TakenResource(r.Id, r.Kind, r.Name))];
    }

    private static async Task<Problem?> RefuseSecondVisit(
        WorkshopDbContext db, VisitSubject subject, Outcome<VisitPlan> placed, Instant startsAt, WorkshopTime time, CancellationToken ct)
    {
        // Where no plan was found, the start alone tells whether the motorcycle is here for another visit then.
        var (from, until) = placed.TryGet(out var plan, out _) ? (plan.ArrivesAt, plan.ReadyAt) : (startsAt, startsAt + Duration.FromSeconds(1));
        var other = await db.JobCards.AsNoTracking()
            .Where(c => c.MotorcycleId == subject.Motorcycle.Id && (c.State == JobCardState.Booked || c.State == JobCardState.CheckedIn)
                && c.StartsAt < until && from < c.EndsAt)
            .FirstOrDefaultAsync(ct);
        return other is null
            ? null
            : Problem.Conflict("motorcycle-booked",
                $"{subject.Motorcycle.Registration} is booked already on job card {other.Number} from {time.Say(other.StartsAt)} until {time.Say(other.EndsAt)}.");
    }
}
