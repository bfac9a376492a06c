using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Drift;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Drift;

/// <summary>
/// Leaves a visit's readings out of the fits on a person's word, or takes them in again. The readings stay, and are shown as left
/// out with the reason.
/// </summary>
public static class LeaveOutVisit
{
    /// <param name="ReadingId">Any reading of the visit.</param>
    /// <param name="LeftOut">Left out; taken in again where false.</param>
    public sealed record Request
    {
        [System.Text.Json.Serialization.JsonIgnore]
        public Guid MotorcycleId { get; init; }

        public Guid? ReadingId { get; init; }

        public bool? LeftOut { get; init; }

        public string? Reason { get; init; }
    }

    public sealed record Answer(int? JobCardNumber, bool LeftOut);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.ReadingId).IsGiven("the id of a reading of the visit");
            RuleFor(r => r.LeftOut).IsGiven("true to leave it out, false to take it in again");
            RuleFor(r => r.Reason).IsGiven("why the visit's readings are not to be trusted, or are after all").IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var reading = await (
            from r in db.ClearanceReadings.AsNoTracking()
            join fitting in db.EngineFittings on r.EngineId equals fitting.EngineId
            where r.Id == request.ReadingId && fitting.MotorcycleId == request.MotorcycleId
            select r).FirstOrDefaultAsync(ct);
        if (reading is null)
        {
            return Problem.NotFound($"Reading {request.ReadingId} of motorcycle {request.MotorcycleId}");
        }

        var reason = new Remark
        {
            Id = NewId.At(clock), Text = request.Reason!, WrittenBy = actor.PersonId, WrittenAt = clock.GetCurrentInstant(),
        };
        db.Remarks.Add(reason);
        db.LeftOutVisits.Add(new LeftOutVisit
        {
            Id = NewId.At(clock),
            EngineId = reading.EngineId,
            JobCardNumber = reading.JobCardNumber,
            OdometerReadingId = reading.OdometerReadingId,
            LeftOut = request.LeftOut!.Value,
            ReasonRemarkId = reason.Id,
            DecidedBy = actor.PersonId,
            DecidedAt = clock.GetCurrentInstant(),
        });
        await ForecastRows.Rewrite(db, reading.EngineId, clock, ct);
        await DueRows.Rewrite(db, request.MotorcycleId, clock, ct);
        await Refits.RequestFor(db, [reading.EngineId], clock, ct);
        return new Answer(reading.JobCardNumber, request.LeftOut.Value);
    }
}
