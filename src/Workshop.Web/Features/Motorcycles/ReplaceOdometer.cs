using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>A new instrument: the motorcycle's distance goes on from what the old one showed last.</summary>
public static class ReplaceOdometer
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid MotorcycleId { get; init; }

        public LocalDate? ReplacedOn { get; init; }

        /// <summary>What the old instrument showed last, in its whole units.</summary>
        public int? OldOdometer { get; init; }

        /// <summary>What the new one showed when it was fitted, in its own whole units; 0 when new.</summary>
        public int? NewOdometer { get; init; }

        public OdometerUnit NewUnit { get; init; }
    }

    public sealed record Answer(Guid Id, OdometerUnit Unit, [property: JsonPropertyName("distanceKm")] Distance Distance);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.ReplacedOn).IsGiven("the day on which it was replaced");
            RuleFor(r => r.OldOdometer).IsGiven("what the old odometer showed last, in whole units").IsOdometerCount();
            RuleFor(r => r.NewOdometer).IsGiven("what the new odometer showed when it was fitted; 0 when new").IsOdometerCount();
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        await MotorcycleLock.Take(db, request.MotorcycleId, ct);
        var old = await db.Odometers.SingleOrDefaultAsync(o => o.MotorcycleId == request.MotorcycleId && o.RemovedOn == null, ct);
        if (old is null)
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var on = request.ReplacedOn!.Value;
        if (await Refuses(db, old, on, ct) is { } refusal)
        {
            return refusal;
        }

        var last = new OdometerEntry.Typed("oldOdometer", request.OldOdometer!.Value, on) { DayField = "replacedOn" };
        if (!(await OdometerEntry.Add(db, request.MotorcycleId, last, actor, clock, ct)).TryGet(out var reading, out var problem))
        {
            return problem;
        }

        // The old one goes first: a motorcycle never has two current instruments, not even for a moment.
        old.RemovedOn = on;
        await db.SaveChangesAsync(ct);
        var fitted = new Odometer
        {
            Id = NewId.At(clock),
            MotorcycleId = request.MotorcycleId,
            Unit = request.NewUnit,
            FittedOn = on,
            Offset = OdometerRules.OffsetAfter(reading.Distance, request.NewUnit, request.NewOdometer!.Value),
        };
        db.Odometers.Add(fitted);
        await db.SaveChangesAsync(ct);
        var first = new OdometerEntry.Typed("newOdometer", request.NewOdometer.Value, on) { DayField = "replacedOn" };
        if ((await OdometerEntry.Add(db, request.MotorcycleId, first, actor, clock, ct)).Problem is { } impossible)
        {
            return impossible;
        }

        await ForecastRows.Rewrite(db, await RecordOdometer.EnginesOf(db, request.MotorcycleId, ct), clock, ct);
        await DueRows.Rewrite(db, request.MotorcycleId, clock, ct);
        return new Answer(fitted.Id, fitted.Unit, reading.Distance);
    }

    private static async Task<Problem?> Refuses(WorkshopDbContext db, Odometer old, LocalDate on, CancellationToken ct)
    {
        if (on <= old.FittedOn)
        {
            return Problem.Impossible("before-odometer", "replacedOn",
                $"replacedOn is {Day(on)}: the odometer that it has now was fitted on {Day(old.FittedOn)}; a later day is allowed.");
        }

        var latest = await OdometerEntry.Standing(db, old.MotorcycleId).Where(r => r.OdometerId == old.Id)
            .OrderByDescending(r => r.ReadOn).FirstOrDefaultAsync(ct);
        return latest is not null && latest.ReadOn > on
            ? Problem.Impossible("read-since", "replacedOn",
                $"replacedOn is {Day(on)}: the old odometer was read on {Day(latest.ReadOn)} still; that day or a later one is allowed.")
            : null;
    }

    private static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", null);
}
