using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Resources;

/// <summary>
/// The week of a technician, sent whole: hours and breaks of each weekday. Booked visits stay where they are; the answer names
/// those that the new hours leave no room for.
/// </summary>
public static class SetWorkingHours
{
    private const int MostBreaks = 6;

    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid ResourceId { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Works whenever the workshop is open; days then hold breaks only.</summary>
        public bool AsOpeningHours { get; init; }

        // Lists that can be added to: the page's binder fills them in place.
        public IList<Day> Days { get; init; } = [];
    }

    /// <summary>A weekday; without hours it is a day off, or a day of the opening hours where those hold.</summary>
    public sealed record Day
    {
        public IsoDayOfWeek? Weekday { get; init; }

        public LocalTime? StartsAt { get; init; }

        public LocalTime? EndsAt { get; init; }

        public IList<Break> Breaks { get; init; } = [];
    }

    /// <summary>A form sends rows that nobody filled: without both times it is none.</summary>
    public sealed record Break
    {
        public LocalTime? StartsAt { get; init; }

        public LocalTime? EndsAt { get; init; }
    }

    /// <param name="Standing">Booked visits of the technician that now stand outside his hours or in a break.</param>
    public sealed record Answer(Guid Id, uint RowVersion, IReadOnlyList<StandingVisit> Standing) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Days).IsAWeek(d => d.Weekday);
            RuleForEach(r => r.Days).ChildRules(day => day.RuleFor(d => d.Breaks).Must(b => b is { Count: <= MostBreaks })
                .WithMessage($"breaks holds more than {MostBreaks}, or is null: at most {MostBreaks} a day are allowed."));
            RuleFor(r => r.Days).Must((request, days) => request.AsOpeningHours || days is null || days.Any(d => d.StartsAt is not null || d.EndsAt is not null))
                .WithMessage("days has no hours at all: give the hours of at least one weekday, say asOpeningHours, or retire the technician.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ResourceLock.Take(db, request.ResourceId, ct)).TryGet(out var resource, out var problem))
        {
            return problem;
        }

        if (resource.Kind != ResourceKind.Technician)
        {
            return Problem.Impossible("no-technician", "id", $"{resource.Name} is a {resource.Kind.Spoken()}; only technicians have working hours.");
        }

        var faults = WorkingWeek.Faults(
            [.. request.Days.Select(Entered)], request.AsOpeningHours, await db.OpeningHours.AsNoTracking().ToListAsync(ct));
        if (faults.Count > 0)
        {
            return Problem.Impossible("hours-impossible", faults);
        }

        await db.WorkingHours.Where(h => h.ResourceId == resource.Id).ExecuteDeleteAsync(ct);
        await db.WorkBreaks.Where(b => b.ResourceId == resource.Id).ExecuteDeleteAsync(ct);
        foreach (var day in request.Days)
        {
            Add(db, resource.Id, day, clock);
        }

        var version = await ResourceLock.Save(db, resource, request.RowVersion!.Value, ct);
        return new Answer(resource.Id, version, await StandingVisits.Read(db, resource.Id, clock.GetCurrentInstant(), ct));
    }

    private static EnteredDay Entered(Day day, int index) => new(
        $"days[{index}]", day.Weekday!.Value, (day.StartsAt, day.EndsAt),
        [.. day.Breaks.Select((b, at) => new EnteredBreak($"days[{index}].breaks[{at}]", b.StartsAt, b.EndsAt))]);

    private static void Add(WorkshopDbContext db, Guid resourceId, Day day, IClock clock)
    {
        if (day.StartsAt is { } startsAt)
        {
            db.WorkingHours.Add(new WorkingHours
            {
                ResourceId = resourceId, Weekday = day.Weekday!.Value, StartsAt = startsAt, EndsAt = day.EndsAt!.Value,
            });
        }

        db.WorkBreaks.AddRange(day.Breaks.Where(b => b.StartsAt is not null).Select(b => new WorkBreak
        {
            Id = NewId.At(clock), ResourceId = resourceId, Weekday = day.Weekday!.Value, StartsAt = b.StartsAt!.Value, EndsAt = b.EndsAt!.Value,
        }));
    }
}
