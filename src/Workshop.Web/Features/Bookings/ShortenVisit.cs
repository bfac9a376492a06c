using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// Gives a visit fewer or more minutes of work than its items add up to, where it stands: same bay, technician and start. What it
/// no longer takes is free; where it needs more, others may stand in the way.
/// </summary>
public static class ShortenVisit
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Minutes of work; absent: what the items add up to.</summary>
        public int? WorkMinutes { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.WorkMinutes).IsWhole(1, VisitShape.MostWorkMinutes);
    }

    public static async Task<Outcome<MoveVisit.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        if (!(await OpenCard.Lock(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (await PlannedVisit.RefuseMove(db, open, ct) is { } refused)
        {
            return refused;
        }

        if (await PlannedVisit.Place(db, request.Number, ct) is not { } place)
        {
            return Problem.Conflict("no-plan", $"Job card {request.Number} has no bay and technician planned for its work; move it to some first.");
        }

        var wishes = await db.VisitWishes.SingleOrDefaultAsync(w => w.JobCardNumber == request.Number, ct);
        if (wishes is null)
        {
            wishes = new VisitWishes { JobCardNumber = request.Number };
            db.VisitWishes.Add(wishes);
        }

        wishes.WorkMinutes = request.WorkMinutes;
        await db.SaveChangesAsync(ct);
        var visit = await VisitCase.OfCard(db, open, ct);
        var here = await PlannedVisit.Here(db, open, ct);
        var terms = visit.Terms(clock.GetCurrentInstant(), here: here);
        // The motorcycle still comes when its owner was told.
        var arrives = here is null && visit.Shape.ArrivalMinutes > 0 ? open.Card.StartsAt : (Instant?)null;
        return await PlannedVisit.Replace(
            db, open, visit, calendar, new Placement(place.Bay, place.Technician, "workMinutes", place.StartsAt, arrives), terms, actor, clock, ct);
    }
}
