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

/// <summary>An odometer reading typed at the counter, or the correction of an earlier one, which stays on record.</summary>
public static class RecordOdometer
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid MotorcycleId { get; init; }

        /// <summary>Whole kilometres or miles, as the motorcycle's own instrument counts.</summary>
        public int? Odometer { get; init; }

        public LocalDate? ReadOn { get; init; }

        /// <summary>The reading that this one corrects.</summary>
        public Guid? SupersedesId { get; init; }

        /// <summary>Why; with a correction, or with what looks like a slip and is none.</summary>
        public string? Reason { get; init; }

        /// <summary>
        /// It is right although it runs backwards or too far; earlier entries that it contradicts then no longer count.
        /// </summary>
        public bool ConfirmUnusual { get; init; }
    }

    public sealed record Answer(
        Guid Id, int Odometer, OdometerUnit Unit, LocalDate ReadOn, [property: JsonPropertyName("distanceKm")] Distance Distance);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Odometer).IsGiven("what the odometer shows, in whole units").IsOdometerCount();
            RuleFor(r => r.ReadOn).IsGiven("the day on which it was read");
            RuleFor(r => r.Reason).IsGiven("why the earlier reading is wrong").When(r => r.SupersedesId is not null);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            RuleFor(r => r.Reason)
                .Empty().When(r => r.SupersedesId is null && !r.ConfirmUnusual)
                .WithMessage("{PropertyName} is given, but supersedesId is empty: name the reading that is corrected.");
            RuleFor(r => r.Reason).IsGiven("why the reading is right").When(r => r.ConfirmUnusual && r.SupersedesId is null);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.Motorcycles.AnyAsync(m => m.Id == request.MotorcycleId, ct))
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var typed = new OdometerEntry.Typed("odometer", request.Odometer!.Value, request.ReadOn!.Value) { DayField = "readOn" };
        if (request.SupersedesId is { } supersededId)
        {
            if (!(await ToCorrect(db, request.MotorcycleId, supersededId, ct)).TryGet(out var superseded, out var refusal))
            {
                return refusal;
            }

            typed = typed with { Supersedes = superseded };
        }

        if (request.SupersedesId is not null || request.ConfirmUnusual)
        {
            var reason = new Remark
            {
                Id = NewId.At(clock), Text = request.Reason!, WrittenBy = actor.PersonId, WrittenAt = clock.GetCurrentInstant(),
            };
            db.Remarks.Add(reason);
            typed = typed with { ReasonRemarkId = reason.Id, Confirmed = request.ConfirmUnusual };
        }

        if (!(await OdometerEntry.Add(db, request.MotorcycleId, typed, actor, clock, ct)).TryGet(out var reading, out var problem))
        {
            return problem;
        }

        var engines = await EnginesOf(db, request.MotorcycleId, ct);
        await ForecastRows.Rewrite(db, engines, clock, ct);
        await DueRows.Rewrite(db, request.MotorcycleId, clock, ct);
        if (request.SupersedesId is not null)
        {
            await Refits.RequestFor(db, engines, clock, ct);
        }

        return new Answer(reading.Id, reading.Count, reading.Unit, reading.ReadOn, reading.Distance);
    }

    private static async Task<Outcome<OdometerReading>> ToCorrect(
        WorkshopDbContext db, Guid motorcycleId, Guid readingId, CancellationToken ct)
    {
        await MotorcycleLock.Take(db, motorcycleId, ct);
        var reading = await db.OdometerReadings.AsNoTracking()
            .SingleOrDefaultAsync(r => r.Id == readingId && r.MotorcycleId == motorcycleId, ct);
        if (reading is null)
        {
            return Problem.Impossible("reading-unknown", "supersedesId",
                $"supersedesId is {readingId}: this motorcycle has no such odometer reading; choose one of its readings.");
        }

        if (await db.OdometerReadings.AnyAsync(r => r.SupersedesId == readingId, ct))
        {
            return Problem.Conflict("superseded",
                $"The reading of {reading.Count} {reading.Unit.Symbol()} was corrected already; correct the one that stands now.");
        }

        // The next instrument's start was reckoned from it, and with it every distance since.
        return await db.Odometers.AnyAsync(o => o.MotorcycleId == motorcycleId && o.RemovedOn == reading.ReadOn, ct)
            ? Problem.Conflict("odometer-replaced",
                $"The odometer was replaced on that day, at {reading.Count} {reading.Unit.Symbol()}; the new one goes on from there, so this reading stays.")
            : reading;
    }

    /// <summary>Every engine that was ever in a motorcycle.</summary>
    internal static Task<List<Guid>> EnginesOf(WorkshopDbContext db, Guid motorcycleId, CancellationToken ct) =>
        db.EngineFittings.Where(f => f.MotorcycleId == motorcycleId).Select(f => f.EngineId).Distinct().ToListAsync(ct);
}
