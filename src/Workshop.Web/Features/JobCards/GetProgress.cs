using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.JobCards;

/// <summary>How far a visit is: its phases with who and when, where it stands, what it waits for, since when its engine stands.</summary>
public static class GetProgress
{
    public sealed record Request(int Number);

    /// <param name="Phase">Absent where none was begun.</param>
    /// <param name="Since">Of the phase, or else of the check-in; absent before it.</param>
    /// <param name="ColdFrom">When the soak is over, where the visit needs a cold engine.</param>
    /// <param name="ConfirmsOil">Whoever runs the engine next confirms that oil is in.</param>
    /// <param name="Next">Phases that may begin, what usually comes next first.</param>
    public sealed record Answer(
        int Number,
        JobCardState State,
        VisitPhase? Phase,
        Instant? Since,
        PlaceOfVisit? Place,
        string? Tag,
        Instant? EngineStoppedAt,
        Instant? ColdFrom,
        WaitOfVisit? Waits,
        bool ConfirmsOil,
        bool TagProposed,
        IReadOnlyList<VisitPhase> Next,
        IReadOnlyList<PhaseOfVisit> Phases,
        IReadOnlyList<MoveOfVisit> Moves);

    public sealed record PlaceOfVisit(Guid Id, ResourceKind Kind, string Name);

    public sealed record WaitOfVisit(WaitsFor For, Instant Since, Instant ExpectedUntil, string? Remark);

    public sealed record PhaseOfVisit(VisitPhase Phase, Instant StartedAt, string? Technician, string? Reason, string EnteredBy);

    public sealed record MoveOfVisit(string Place, string? Tag, Instant MovedAt, string MovedBy);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (open.CheckIn is null)
        {
            return new Answer(request.Number, open.Card.State, null, null, null, null, null, null, null, false, false, [], [], []);
        }

        var visit = await VisitState.Read(db, open, ct);
        var soFar = visit.SoFar;
        var phases = await (
            from start in db.PhaseStarts.AsNoTracking()
            join person in db.People on start.EnteredBy equals person.Id
            from technician in db.Resources.Where(r => r.Id == start.TechnicianId).DefaultIfEmpty()
            from remark in db.Remarks.Where(r => r.Id == start.ReasonRemarkId).DefaultIfEmpty()
            where start.JobCardNumber == request.Number
            orderby start.StartedAt, start.Id
            select new PhaseOfVisit(start.Phase, start.StartedAt, technician.Name, remark.Text, person.Name)).ToListAsync(ct);
        var moves = await (
            from move in db.MotorcycleMoves.AsNoTracking()
            join place in db.Resources on move.ResourceId equals place.Id
            join person in db.People on move.MovedBy equals person.Id
            from tag in db.Remarks.Where(r => r.Id == move.TagRemarkId).DefaultIfEmpty()
            where move.JobCardNumber == request.Number
            orderby move.MovedAt, move.Id
            select new MoveOfVisit(place.Name, tag.Text, move.MovedAt, person.Name)).ToListAsync(ct);
        var here = open.Card.State == JobCardState.CheckedIn;
        var stands = here ? visit.StandsIn(clock.GetCurrentInstant()) : null;
        return new Answer(
            request.Number,
            open.Card.State,
            soFar.Phase,
            soFar.Since,
            await db.Resources.AsNoTracking().Where(r => r.Id == stands)
                .Select(r => new PlaceOfVisit(r.Id, r.Kind, r.Name)).SingleOrDefaultAsync(ct),
            soFar.TagRemarkId is null ? null : moves[^1].Tag,
            open.EngineStoppedAt,
            soFar.ColdFrom,
            soFar.Waits is { } wait
                ? new WaitOfVisit(wait.For, wait.Since, wait.ExpectedUntil,
                    await db.Remarks.Where(r => r.Id == wait.RemarkId).Select(r => r.Text).SingleOrDefaultAsync(ct))
                : null,
            soFar.MayLackOil || soFar.TagRemarkId is not null,
            soFar.MayLackOil,
            here ? PhaseRules.Offered(soFar) : [],
            phases,
            moves);
    }
}
