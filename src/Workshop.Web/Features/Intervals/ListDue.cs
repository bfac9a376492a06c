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

/// <summary>What is due, item by item, soonest first: of every motorcycle, or of one. <see cref="ListDueVisits"/> gives it by visit.</summary>
public static class ListDue
{
    public sealed record Request
    {
        public string? After { get; init; }

        public int? Take { get; init; }

        /// <summary>Only what is overdue, by the calendar, by a reading or by its rate, and not put off.</summary>
        public bool Overdue { get; init; }

        /// <summary>Only what comes up within so many days from today, overdue items included.</summary>
        public int? WithinDays { get; init; }

        /// <summary>Only what has no more than so many kilometres left.</summary>
        public int? WithinKm { get; init; }

        public Guid? MotorcycleId { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.WithinDays).IsWhole(0, DueLimits.FurthestDays);
            RuleFor(r => r.WithinKm).IsWhole(0, DueLimits.FurthestKm);
            RuleFor(r => r.After)
                .Must(after => string.IsNullOrEmpty(after) || DuePlace.TryParse(after, out _))
                .WithMessage((_, after) => $"after is \"{after}\": send what an earlier page gave as next.");
        }
    }

    public static async Task<Outcome<Slice<DueLine>>> Handle(
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
        else
        {
            // What a bigger item swallows is said with its motorcycle, not in the list of all.
            items = items.Where(d => d.IncludedIn == null);
        }

        if (request.Overdue)
        {
            items = items.Where(d => d.ComesOn < today);
        }

        if (request.WithinDays is { } days)
        {
            var until = today.PlusDays(days);
            items = items.Where(d => d.ComesOn <= until);
        }

        if (request.WithinKm is { } km)
        {
            var far = Distance.FromKilometres(km);
            items = items.Where(d => d.Left <= far);
        }

        if (DuePlace.TryParse(request.After, out var after))
        {
            items = items.Where(d => EF.Functions.GreaterThan(
                ValueTuple.Create(d.ComesOn, d.MotorcycleId, d.ServiceItemCode),
                ValueTuple.Create(after.ComesOn, after.MotorcycleId, after.Code)));
        }

        var found = await items.OrderBy(d => d.ComesOn).ThenBy(d => d.MotorcycleId).ThenBy(d => d.ServiceItemCode)
            .ToSlice(request.Take, due => DuePlace.Of(due).ToString(), ct);
        return new Slice<DueLine>(await DueLine.Read(db, found.Rows, today, ct), found.Next);
    }
}

/// <summary>How far ahead somebody may ask.</summary>
internal static class DueLimits
{
    public const int FurthestDays = 36_525;
    public const int FurthestWeeks = 520;
    public const int FurthestKm = 1_000_000;
}
