using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// Books a visit: opens the job card with its items, takes bay, technician and special tools for the work, and reserves the
/// kit. Two bookings that want the same wait for each other at the resources' rows; the database refuses the second.
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
    }

    public sealed record Item
    {
        public string? Code { get; init; }

        public Likelihood Likelihood { get; init; }
    }

    public sealed record Answer(
        int Number, Instant StartsAt, Instant EndsAt, int BookedMinutes, int PossibleMinutes, IReadOnlyList<TakenResource> Resources);

    public sealed record TakenResource(Guid Id, ResourceKind Kind, string Name);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.MotorcycleId).IsGiven("the motorcycle that comes");
            RuleFor(r => r.BayId).IsGiven("the bay that it stands in");
            RuleFor(r => r.TechnicianId).IsGiven("the technician who works on it");
            this.MomentIsGiven(r => r.StartsAt, r => r.Day, r => r.Time, "when the work starts");
            RuleFor(r => r.Items).Must(items => items is { Count: > 0 and <= MostItems })
                .WithMessage($"items holds none or too many: 1 to {MostItems} service items are allowed.");
            RuleFor(r => r.Items).Must(items => items is null or [] || items.Any(i => i.Likelihood != Likelihood.Possible))
                .WithMessage("items are all possible only: at least one certain or likely item is needed.");
            RuleFor(r => r.Items).Must(items => items is null || items.DistinctBy(i => i.Code).Count() == items.Count)
                .WithMessage("items names the same code more than once; each item is done once a visit.");
            RuleForEach(r => r.Items).ChildRules(item =>
                item.RuleFor(i => i.Code).IsGiven("the code of a service item").IsAtMost(Limits.Code));
        }
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
                .TryGet(out var items, out problem))
        {
            return problem;
        }

        var duration = VisitDuration.Of(subject.Version.Specification, items);
        var visit = new Interval(startsAt, startsAt + duration.Booked);
        if (RefuseTime(startField, visit, calendar, now) is { } untimely)
        {
            return untimely;
        }

        var needs = VisitNeeds.Of(items);
        var resources = await Lock(db, request, needs, ct);
        if (await RefuseSecondVisit(db, subject, visit, calendar.Time, ct) is { } second)
        {
            return second;
        }

        if (!(await Choose(db, request, needs, resources, visit, ct)).TryGet(out var wanted, out problem))
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
            StartsAt = visit.Start,
            EndsAt = visit.End,
        };
        db.JobCards.Add(card);
        await db.SaveChangesAsync(ct);
        db.JobCardItems.AddRange(items.Select(i => new JobCardItem
        {
            JobCardNumber = card.Number, ServiceItemCode = i.Item.Code, Likelihood = i.Likelihood,
        }));
        db.Occupancies.AddRange(wanted.Select(w => new Occupancy
        {
            Id = NewId.At(clock), JobCardNumber = card.Number, Phase = VisitPhase.Work, ResourceId = w.Resource.Id, Span = visit,
        }));
        try
        {
            await db.SaveChangesAsync(ct);
        }
        catch (DbUpdateException fault) when (fault.InnerException is PostgresException { SqlState: PostgresErrorCodes.ExclusionViolation })
        {
            // Back at its savepoint, the transaction can still say who has what.
            return await Occupied.Refuse(db, visit, wanted.ToDictionary(w => w.Resource.Id, w => w.Field), calendar.Time, ct);
        }

        await KitReservations.Reserve(db, card.Number, actor, clock, ct);
        return new Answer(card.Number, visit.Start, visit.End, duration.BookedMinutes, duration.PossibleMinutes,
            [.. wanted.Select(w => new TakenResource(w.Resource.Id, w.Resource.Kind, w.Resource.Name))]);
    }

    private sealed record Wanted(string Field, Resource Resource);

    private static Problem? RefuseTime(string field, Interval visit, OpeningCalendar calendar, Instant now) =>
        visit.Start < now
            ? Problem.Impossible("past", field,
                $"{field} is {calendar.Time.Say(visit.Start)}, which is past; it is {calendar.Time.Say(now)} now.")
            : calendar.Refuse(field, visit);

    /// <summary>
    /// Locks the motorcycle and whatever may be taken, in order of id, and reads it as it then is. Whoever wants one of
    /// them at the same time waits here, so nobody ends in a deadlock.
    /// </summary>
    private static async Task<IReadOnlyList<Resource>> Lock(
        WorkshopDbContext db, Request request, VisitNeeds needs, CancellationToken ct)
    {
        Guid[] named = [request.BayId!.Value, request.TechnicianId!.Value];
        string[] tools = [.. needs.SpecialTools];
        await MotorcycleLock.Take(db, request.MotorcycleId!.Value, ct);
        await db.Database.ExecuteSqlAsync(
            $"""
             select 1 from resources
             where id = any ({named}) or (kind = 'special_tool' and capabilities && {tools})
             order by id for update
             """, ct);
        return await db.Resources.AsNoTracking()
            .Where(r => named.Contains(r.Id) || (r.Kind == ResourceKind.SpecialTool && r.Capabilities.Any(c => tools.Contains(c))))
            .ToListAsync(ct);
    }

    private static async Task<Problem?> RefuseSecondVisit(
        WorkshopDbContext db, VisitSubject subject, Interval visit, WorkshopTime time, CancellationToken ct)
    {
        var other = await db.JobCards.AsNoTracking()
            .Where(c => c.MotorcycleId == subject.Motorcycle.Id && (c.State == JobCardState.Booked || c.State == JobCardState.CheckedIn)
                && c.StartsAt < visit.End && visit.Start < c.EndsAt)
            .FirstOrDefaultAsync(ct);
        return other is null
            ? null
            : Problem.Conflict("motorcycle-booked",
                $"{subject.Motorcycle.Registration} is booked already on job card {other.Number} from {time.Say(other.StartsAt)} until {time.Say(other.EndsAt)}.");
    }

    private static async Task<Outcome<IReadOnlyList<Wanted>>> Choose(
        WorkshopDbContext db, Request request, VisitNeeds needs, IReadOnlyList<Resource> resources, Interval visit, CancellationToken ct)
    {
        var bay = resources.SingleOrDefault(r => r.Id == request.BayId && r.Kind == ResourceKind.Bay);
        var technician = resources.SingleOrDefault(r => r.Id == request.TechnicianId && r.Kind == ResourceKind.Technician);
        var taken = (await Occupied.LiveDuring(db, visit).Select(o => o.ResourceId).ToListAsync(ct)).ToHashSet();
        var tools = needs.ToolsFrom(resources.Where(r => r.Kind == ResourceKind.SpecialTool), taken);
        List<FieldFault> faults =
        [
            .. Unfit("bayId", request.BayId, bay, "bay"),
            .. Unfit("technicianId", request.TechnicianId, technician, "technician"),
            .. LacksSkills(technician, needs),
            .. tools.Where(t => t.Value is null).Select(t => new FieldFault("items",
                $"items need the special tool \"{t.Key}\", which the workshop has not; leave the item out, or enter the tool first.")),
        ];
        return faults.Count > 0
            ? Problem.Impossible("resource-unfit", faults)
            : (Outcome<IReadOnlyList<Wanted>>)new List<Wanted>(
                tools.Values.Distinct().Select(tool => new Wanted("items", tool!))
                    .Prepend(new Wanted("technicianId", technician!)).Prepend(new Wanted("bayId", bay!)));
    }

    private static IEnumerable<FieldFault> Unfit(string field, Guid? id, Resource? found, string what) => found switch
    {
        null => [new FieldFault(field, $"{field} is {id}: no {what} has it; choose one of GET /api/v1/bookings/availability.")],
        { Retired: true } => [new FieldFault(field, $"{field} is {found.Name}, which is retired; choose another {what}.")],
        _ => [],
    };

    private static IEnumerable<FieldFault> LacksSkills(Resource? technician, VisitNeeds needs) =>
        technician is not null && needs.SkillsMissing(technician) is { Count: > 0 } missing
            ? [new FieldFault("technicianId",
                $"technicianId is {technician.Name}, who lacks {string.Join(" and ", missing)}; these items need a technician with {string.Join(" and ", needs.Skills)}.")]
            : [];
}
