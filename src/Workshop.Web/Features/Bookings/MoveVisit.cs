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
/// Moves a visit to another time, bay or technician, before its work has begun. It keeps to the wishes, unless the person who moves it says
/// that the owner was asked. A motorcycle that stands here already keeps its arrival; its soak counts from the engine's last stop.
/// </summary>
public static class MoveVisit
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public Guid? BayId { get; init; }

        public Guid? TechnicianId { get; init; }

        /// <summary>When the work starts; or else <see cref="Day"/> and <see cref="Time"/> in the workshop's zone.</summary>
        public Instant? StartsAt { get; init; }

        public LocalDate? Day { get; init; }

        public LocalTime? Time { get; init; }

        /// <summary>When the motorcycle arrives; absent: as late as its soak and the opening hours allow.</summary>
        public Instant? ArrivesAt { get; init; }

        /// <summary>The owner was asked: the wishes that were kept with the visit do not stand in the way.</summary>
        public bool AgainstWishes { get; init; }
    }

    public sealed record Answer(
        int Number, Instant ArrivesAt, Instant StartsAt, Instant ReadyAt, IReadOnlyList<PlannedPhaseAnswer> Phases, int PlanRevision);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.BayId).IsGiven("the bay that it stands in");
            RuleFor(r => r.TechnicianId).IsGiven("the technician who works on it");
            this.MomentIsGiven(r => r.StartsAt, r => r.Day, r => r.Time, "when the work starts");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var calendar = await WorkshopTimes.ReadCalendar(db, ct);
        var (startField, start) = Moments.Read(calendar.Time, "startsAt", request.StartsAt, "time", request.Day, request.Time);
        if (!start.TryGet(out var startsAt, out var problem)
            || !(await OpenCard.Lock(db, request.Number, ct)).TryGet(out var open, out problem))
        {
            return problem;
        }

        var visit = await VisitCase.OfCard(db, open, ct);
        if ((await PlannedVisit.RefuseMove(db, open, ct) ?? AgainstWishes(request, visit.Wishes, calendar.Time, startsAt)) is { } refused)
        {
            return refused;
        }

        var kept = request.AgainstWishes ? visit with { Wishes = new VisitWishes { JobCardNumber = request.Number } } : visit;
        var now = clock.GetCurrentInstant();
        var terms = kept.Terms(now, here: await PlannedVisit.Here(db, open, ct));
        var wanted = new Placement(request.BayId!.Value, request.TechnicianId!.Value, startField, startsAt, request.ArrivesAt);
        return await PlannedVisit.Replace(db, open, kept, calendar, wanted, terms, actor, clock, ct);
    }

    private static Problem? AgainstWishes(Request request, VisitWishes wishes, WorkshopTime time, Instant startsAt)
    {
        if (request.AgainstWishes)
        {
            return null;
        }

        List<FieldFault> faults = [];
        if (wishes.TechnicianId is { } technician && technician != request.TechnicianId)
        {
            faults.Add(new FieldFault("technicianId", "technicianId is not the technician whom the owner wishes; ask the owner, and send againstWishes."));
        }

        if (wishes.BayId is { } bay && bay != request.BayId)
        {
            faults.Add(new FieldFault("bayId", "bayId is not the bay that was wished; ask, and send againstWishes."));
        }

        if (startsAt < wishes.NotBefore)
        {
            faults.Add(new FieldFault("startsAt", $"startsAt is {time.Say(startsAt)}: the motorcycle does not come before {time.Say(wishes.NotBefore!.Value)}; ask the owner, and send againstWishes."));
        }

        return faults.Count == 0 ? null : Problem.Impossible("against-wishes", faults);
    }
}
