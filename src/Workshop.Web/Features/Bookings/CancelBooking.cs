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

        if (CardRules.RefuseCancel(open.Card, await PlannedVisit.WorkBegun(db, open, ct)) is { } refused)
        {
            return refused;
        }

        open.Card.State = JobCardState.Cancelled;
        await End(db, open.Card, request.Reason!, actor, clock, ct);
        return new Answer(request.Number, open.Card.State);
    }

    /// <summary>The visit does not take place: why, and what it held is free again.</summary>
    internal static async Task End(WorkshopDbContext db, JobCard card, string why, Actor actor, IClock clock, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var reason = new Remark { Id = NewId.At(clock), Text = why, WrittenBy = actor.PersonId, WrittenAt = now };
        db.Remarks.Add(reason);
        db.Cancellations.Add(new Cancellation
        {
            JobCardNumber = card.Number, ReasonRemarkId = reason.Id, CancelledBy = actor.PersonId, CancelledAt = now,
        });
        // The calendars that show the visit see a change.
        card.PlanRevision++;
        await PlanWriter.LetGo(db, [card.Number], now, ct);
        await KitReservations.Release(db, card.Number, actor, clock, ct);
    }
}
