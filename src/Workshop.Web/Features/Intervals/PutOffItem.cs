using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Intervals;

/// <summary>
/// An item is done later than it is due, and why; or that is taken back. The interval does not move: the item stays due, and its
/// motorcycle comes up in the list on the day until which it was put off.
/// </summary>
public static class PutOffItem
{
    /// <summary>Further than two years ahead nothing is put off; it is then left undone.</summary>
    private const int FurthestDays = 731;

    public sealed record Request
    {
        [JsonIgnore]
        public Guid MotorcycleId { get; init; }

        /// <summary>Code of the service item.</summary>
        public string? Item { get; init; }

        /// <summary>Absent: what was decided before is taken back.</summary>
        public LocalDate? Until { get; init; }

        public string? Reason { get; init; }
    }

    public sealed record Answer(Guid Id, string Item, LocalDate? Until);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Item).IsGiven("the code of a service item").IsAtMost(Limits.Code);
            RuleFor(r => r.Reason).IsGiven("why it is done later").IsAtMost(PutOff.LongestReason);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!await db.Motorcycles.AnyAsync(m => m.Id == request.MotorcycleId, ct))
        {
            return Problem.NotFound($"Motorcycle {request.MotorcycleId}");
        }

        var due = await db.DueItems.AsNoTracking().Where(d => d.MotorcycleId == request.MotorcycleId).ToListAsync(ct);
        if (due.Find(d => d.ServiceItemCode == request.Item) is not { } item)
        {
            return Problem.Impossible("not-due", "item",
                $"item is \"{request.Item}\": the motorcycle is due for {string.Join(", ", due.Select(d => d.ServiceItemCode).DefaultIfEmpty("nothing"))}.");
        }

        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        if (Refuses(request.Until, item, today) is { } refusal)
        {
            return refusal;
        }

        var decided = new PutOff
        {
            Id = NewId.At(clock),
            MotorcycleId = request.MotorcycleId,
            ServiceItemCode = item.ServiceItemCode,
            Until = request.Until,
            Reason = request.Reason!,
            DecidedOn = today,
            DecidedBy = actor.PersonId,
            DecidedAt = clock.GetCurrentInstant(),
        };
        db.PutOffs.Add(decided);
        await DueRows.Rewrite(db, request.MotorcycleId, clock, ct);
        return new Answer(decided.Id, decided.ServiceItemCode, decided.Until);
    }

    private static Problem? Refuses(LocalDate? until, DueItem item, LocalDate today)
    {
        if (item.IncludedIn is { } bigger)
        {
            return Problem.Impossible("included", "item", $"item is \"{item.ServiceItemCode}\": it is done with \"{bigger}\"; put that one off.");
        }

        if (until is null)
        {
            return item.PutOffId is null
                ? Problem.Impossible("not-put-off", "until", "until is empty, but the item was not put off: give the day until which it is.")
                : null;
        }

        var furthest = today.PlusDays(FurthestDays);
        return until <= today || until > furthest
            ? Problem.Impossible("until-day", "until", $"until is {Days.Write(until.Value)}: a day after today, {Days.Write(today)}, and not after {Days.Write(furthest)} is allowed.")
            : null;
    }
}
