using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Finishing;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Finishing;

/// <summary>
/// The test ride: who rode how far, and what was noticed; or why nobody rode. Refused while something that was opened is not
/// tight. What the odometer showed is entered as its reading.
/// </summary>
public static class RecordTestRide
{
    public const decimal LongestKm = 300;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Why nobody rode; absent where somebody did.</summary>
        public WhyNotRidden? WhyNot { get; init; }

        /// <summary>Who rode; absent: whoever enters it.</summary>
        public Guid? RiderId { get; init; }

        /// <summary>How far; or else what the odometer showed before and after.</summary>
        public decimal? DistanceKm { get; init; }

        /// <summary>Whole units of the motorcycle's odometer as it left.</summary>
        public int? OdometerOut { get; init; }

        /// <summary>The same as it came back.</summary>
        public int? OdometerIn { get; init; }

        /// <summary>What was noticed; or the reason in words.</summary>
        public string? Words { get; init; }

        public Instant? RiddenAt { get; init; }

        /// <summary>Why it is entered again.</summary>
        public string? Reason { get; init; }
    }

    public sealed record Answer(Guid Id, int Attempt, bool Ridden, decimal? DistanceKm);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.WhyNot).IsInEnum();
            RuleFor(r => r.OdometerOut).IsOdometerCount();
            RuleFor(r => r.OdometerIn).IsOdometerCount();
            RuleFor(r => r.DistanceKm).IsWithin(0.1m, LongestKm, 1, "km");
            RuleFor(r => r.Words).IsAtMost(Limits.Remark);
            RuleFor(r => r.Words).IsGiven("the reason in words").When(r => r.WhyNot == WhyNotRidden.Other);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            When(r => r.WhyNot is null, () =>
            {
                RuleFor(r => r.DistanceKm).Must((r, km) => km is not null || (r.OdometerOut is not null && r.OdometerIn is not null))
                    .WithMessage("{PropertyName} is empty: give how far it was ridden, or what the odometer showed before and after; or why it was not ridden.");
                RuleFor(r => r.DistanceKm).Must((r, km) => km is null || r.OdometerOut is null)
                    .WithMessage("{PropertyName} is given beside odometerOut: give how far it was ridden, or what the odometer showed before and after.");
                RuleFor(r => r.OdometerIn).NotNull().When(r => r.OdometerOut is not null)
                    .WithMessage("{PropertyName} is empty: give what the odometer showed as it came back.");
                RuleFor(r => r.OdometerIn).Must((r, count) => count is null || r.OdometerOut is null || count >= r.OdometerOut)
                    .WithMessage((r, count) => $"odometerIn is {count}, less than odometerOut, which is {r.OdometerOut}: at least that is allowed.");
            }).Otherwise(() =>
            {
                RuleFor(r => r.DistanceKm).Null().WithMessage("{PropertyName} is given, and why nobody rode too: leave one of them out.");
                RuleFor(r => r.OdometerOut).Null().WithMessage("{PropertyName} is given, and why nobody rode too: leave one of them out.");
                RuleFor(r => r.OdometerIn).Null().WithMessage("{PropertyName} is given, and why nobody rode too: leave one of them out.");
                RuleFor(r => r.RiderId).Null().WithMessage("{PropertyName} is given, and why nobody rode too: leave one of them out.");
            });
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await FinishingEntry.Begin(db, request.Number, request.Reason, actor, clock, ct)).TryGet(out var entry, out var problem)
            || !entry.When("riddenAt", request.RiddenAt).TryGet(out var at, out problem))
        {
            return problem;
        }

        var before = Attempts.Last(entry.Facts.Finished.Rides);
        var ridden = request.WhyNot is null;
        if (entry.AgainstAgain(("the test ride", before)) is { } again)
        {
            return again;
        }

        if (ridden && AgainstLoose(entry, at) is { } loose)
        {
            return loose;
        }

        var rider = ridden ? request.RiderId ?? actor.PersonId : (Guid?)null;
        if (rider is { } person && !await db.People.AnyAsync(p => p.Id == person && p.IsStaff, ct))
        {
            return Problem.Impossible("rider-unknown", "riderId", $"riderId is {person}: nobody of the workshop has it.");
        }

        if (!(await ReadOdometer(request, entry, at, db, actor, clock, ct)).TryGet(out var odometer, out problem))
        {
            return problem;
        }

        var ride = new TestRide
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, Attempt = Attempts.After(before), WhyNot = request.WhyNot, RiderId = rider,
            Distance = odometer.Ridden, OdometerReadingId = odometer.In?.Id, WordsRemarkId = entry.Words(request.Words), RiddenAt = at,
            EnteredBy = actor.PersonId, EnteredAt = entry.Now, SupersedesId = before?.Id, ReasonRemarkId = entry.ReasonFor(before),
        };
        db.TestRides.Add(ride);
        if (ridden)
        {
            entry.EngineRanUntil(at);
        }

        await db.SaveChangesAsync(ct);
        if (odometer.In is not null)
        {
            await ForecastRows.Rewrite(db, entry.Open.Card.EngineId, clock, ct);
            await DueRows.Rewrite(db, entry.Open.Card.MotorcycleId, clock, ct);
        }

        return new Answer(ride.Id, ride.Attempt, ridden, ride.Distance?.Kilometres);
    }

    /// <summary>Nobody rides what is not tight: what was opened was ticked before the ride.</summary>
    private static Problem? AgainstLoose(FinishingEntry entry, Instant at)
    {
        var loose = entry.Facts.ToBeTight
            .Where(l => !l.IsTightened && !entry.Facts.Ticks.Any(t => t.FastenerCode == l.Fastener.Code && t.Tightened && t.TickedAt <= at))
            .Select(l => l.Fastener.Name).ToArray();
        return loose.Length == 0
            ? null
            : Problem.Conflict("not-tight", $"Nobody rides job card {entry.Open.Card.Number} before it is tight. Tick on the torque sheet first: {string.Join(", ", loose)}.");
    }

    private sealed record Odometer(Distance? Ridden, OdometerReading? In);

    private static async Task<Outcome<Odometer>> ReadOdometer(
        Request request, FinishingEntry entry, Instant at, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var (motorcycle, day) = (entry.Open.Card.MotorcycleId, entry.Time.DayOf(at));
        OdometerReading? outward = null;
        if (request.OdometerOut is { } left)
        {
            if (!(await OdometerEntry.Add(db, motorcycle, new("odometerOut", left, day, request.Number), actor, clock, ct)).TryGet(out outward, out var problem))
            {
                return problem;
            }
        }

        if (request.OdometerIn is not { } back)
        {
            return new Odometer(request.DistanceKm is { } km ? Distance.FromKilometres(km) : null, null);
        }

        return (await OdometerEntry.Add(db, motorcycle, new("odometerIn", back, day, request.Number), actor, clock, ct)).TryGet(out var inward, out var refused)
            ? Ridden(request, outward, inward)
            : refused;
    }

    private static Outcome<Odometer> Ridden(Request request, OdometerReading? outward, OdometerReading inward)
    {
        var metres = outward is null ? request.DistanceKm!.Value * 1000 : inward.Distance.Metres - outward.Distance.Metres;
        return metres > LongestKm * 1000
            ? Problem.Impossible("ride-too-long", "odometerIn", FormattableString.Invariant($"odometerIn is {request.OdometerIn}: that is {metres / 1000:0.#} km from odometerOut; a test ride has at most {LongestKm} km."))
            : new Odometer(Distance.FromMetres(metres), inward);
    }
}
