using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>Cancels a visit before work on it begins: what it took is free again, its kit is let go, the card keeps the reason.</summary>
public static class CancelBooking
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public string? Reason { get; init; }
    }

    public sealed record Answer(int Number, JobCardState State);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() =>
            RuleFor(r => r.Reason).IsGiven("why the visit does not take place").IsAtMost(Limits.Remark);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Lock(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (CardRules.RefuseCancel(open.Card, await WorkDone(db, open, ct)) is { } refused)
        {
            return refused;
        }

        var now = clock.GetCurrentInstant();
        var reason = new Remark { Id = NewId.At(clock), Text = request.Reason!, WrittenBy = actor.PersonId, WrittenAt = now };
        db.Remarks.Add(reason);
        db.Cancellations.Add(new Cancellation
        {
            JobCardNumber = request.Number, ReasonRemarkId = reason.Id, CancelledBy = actor.PersonId, CancelledAt = now,
        });
        open.Card.State = JobCardState.Cancelled;
        foreach (var occupancy in await db.Occupancies.Where(o => o.JobCardNumber == request.Number && o.Live).ToListAsync(ct))
        {
            occupancy.Live = false;
        }

        await db.SaveChangesAsync(ct);
        await KitReservations.Release(db, request.Number, actor, clock, ct);
        return new Answer(request.Number, open.Card.State);
    }

    private static async Task<bool> WorkDone(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var number = open.Card.Number;
        return open.Items.Any(i => i.StartedAt is not null)
            || await db.ClearanceReadings.AnyAsync(r => r.JobCardNumber == number, ct)
            || await db.ShimObservations.AnyAsync(o => o.JobCardNumber == number, ct)
            || await db.FastenerTicks.AnyAsync(t => t.JobCardNumber == number, ct)
            || await db.ValveEvents.AnyAsync(e => e.JobCardNumber == number, ct)
            || await db.PartChanges.AnyAsync(c => c.JobCardNumber == number, ct);
    }
}
