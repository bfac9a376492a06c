using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

/// <summary>What is due, soonest first: of every motorcycle, or of one.</summary>
public static class ListDue
{
    private const int FurthestDays = 36_525;

    public sealed record Request
    {
        public string? After { get; init; }

        public int? Take { get; init; }

        /// <summary>Only what is overdue, by the calendar, by a reading or by its rate.</summary>
        public bool Overdue { get; init; }

        /// <summary>Only what is expected within so many days from today, overdue items included.</summary>
        public int? WithinDays { get; init; }

        public Guid? MotorcycleId { get; init; }
    }

    public sealed record Row
    {
        public required Guid MotorcycleId { get; init; }

        public required string Registration { get; init; }

        public required string Maker { get; init; }

        public required string Model { get; init; }

        public string? Owner { get; init; }

        /// <summary>What the sentences are said in.</summary>
        public required OdometerUnit OdometerUnit { get; init; }

        public required string Code { get; init; }

        public required string Name { get; init; }

        public LocalDate? DueOn { get; init; }

        [JsonPropertyName("dueAtKm")]
        public Distance? DueAt { get; init; }

        /// <summary>From the last reading; below zero when it is passed.</summary>
        [JsonPropertyName("leftKm")]
        public Distance? Left { get; init; }

        public required LocalDate ExpectedOn { get; init; }

        public LocalDate? EarliestOn { get; init; }

        public LocalDate? LatestOn { get; init; }

        public RateBasis? RateBasis { get; init; }

        public LocalDate? LastDoneOn { get; init; }

        [JsonPropertyName("lastDoneAtKm")]
        public Distance? LastDoneAt { get; init; }

        public required DueState State { get; init; }

        /// <summary>"at 24,000 km, in 900 km".</summary>
        public string? ByDistance { get; init; }

        /// <summary>The distance is that of the drift forecast, which comes before the interval's.</summary>
        public bool ByForecast { get; init; }

        /// <summary>"2026-05-01, in 8 weeks".</summary>
        public string? ByDate { get; init; }

        /// <summary>"2026-04-20 (2026-03-30 to 2026-06-01), by its own readings".</summary>
        public required string Expected { get; init; }

        /// <summary>"2025-04-30 at 12,030 km", or that nobody has recorded it.</summary>
        public required string LastDone { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.WithinDays).IsWhole(0, FurthestDays);
            RuleFor(r => r.After)
                .Must(after => string.IsNullOrEmpty(after) || DuePlace.TryParse(after, out _))
                .WithMessage((_, after) => $"after is \"{after}\": send what an earlier page gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var items = db.DueItems.AsNoTracking();
        if (request.MotorcycleId is { } motorcycleId)
        {
            if (!await db.Motorcycles.AnyAsync(m => m.Id == motorcycleId, ct))
            {
                return Problem.NotFound($"Motorcycle {motorcycleId}");
            }

            items = items.Where(d => d.MotorcycleId == motorcycleId);
        }

        if (request.Overdue)
        {
            items = items.Where(d => d.ExpectedOn < today);
        }

        if (request.WithinDays is { } days)
        {
            var until = today.PlusDays(days);
            items = items.Where(d => d.ExpectedOn <= until);
        }

        if (DuePlace.TryParse(request.After, out var after))
        {
            items = items.Where(d => EF.Functions.GreaterThan(
                ValueTuple.Create(d.ExpectedOn, d.MotorcycleId, d.ServiceItemCode),
                ValueTuple.Create(after.ExpectedOn, after.MotorcycleId, after.Code)));
        }

        var found = await Ordered(db, items).ToSlice(request.Take, f => DuePlace.Of(f.Due).ToString(), ct);
        return new Slice<Row>([.. found.Rows.Select(f => RowOf(f, today))], found.Next);
    }

    private sealed record Found(
        DueItem Due, string Registration, string Maker, string Model, string? Owner, OdometerUnit Unit, Distance? Last);

    private static IQueryable<Found> Ordered(WorkshopDbContext db, IQueryable<DueItem> items) =>
        from due in items
        join motorcycle in db.Motorcycles on due.MotorcycleId equals motorcycle.Id
        join odometer in db.Odometers on motorcycle.Id equals odometer.MotorcycleId
        join person in db.People on motorcycle.OwnerId equals person.Id into owners
        from owner in owners.DefaultIfEmpty()
        where odometer.RemovedOn == null
        orderby due.ExpectedOn, due.MotorcycleId, due.ServiceItemCode
        select new Found(
            due, motorcycle.Registration, motorcycle.Maker, motorcycle.Model, owner!.Name, odometer.Unit,
            db.OdometerReadings
                .Where(r => r.MotorcycleId == motorcycle.Id && !db.OdometerReadings.Any(later => later.SupersedesId == r.Id))
                .OrderByDescending(r => r.ReadOn).ThenByDescending(r => r.Distance)
                .Select(r => (Distance?)r.Distance).FirstOrDefault());

    private static Row RowOf(Found found, LocalDate today)
    {
        var due = found.Due;
        Distance? left = due.DueAt is { } at ? at - (found.Last ?? Distance.Zero) : null;
        return new Row
        {
            MotorcycleId = due.MotorcycleId,
            Registration = found.Registration,
            Maker = found.Maker,
            Model = found.Model,
            Owner = found.Owner,
            OdometerUnit = found.Unit,
            Code = due.ServiceItemCode,
            Name = due.Name,
            DueOn = due.DueOn,
            DueAt = due.DueAt,
            Left = left,
            ExpectedOn = due.ExpectedOn,
            EarliestOn = due.EarliestOn,
            LatestOn = due.LatestOn,
            RateBasis = due.RateBasis,
            LastDoneOn = due.LastDoneOn,
            LastDoneAt = due.LastDoneAt,
            ByForecast = due.ByForecast,
            State = DueWords.StateOf(due.DueOn, left, due.ExpectedOn, today),
            ByDistance = due.DueAt is { } point
                ? $"at {DueWords.InUnit(point, found.Unit)}, {DueWords.HowFar(left!.Value, found.Unit)}{(due.ByForecast ? ", by its drift before the interval" : "")}"
                : null,
            ByDate = due.DueOn is { } day ? $"{Day(day)}, {DueWords.When(day, today)}" : null,
            Expected = DueWords.Expected(due.ExpectedOn, due.EarliestOn, due.LatestOn, due.RateBasis, left),
            LastDone = due.LastDoneOn is { } doneOn
                ? $"{Day(doneOn)} at {DueWords.InUnit(due.LastDoneAt!.Value, found.Unit)}"
                : "not recorded",
        };
    }

    private static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", null);
}
