using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.CamTiming;

/// <summary>
/// After what holds a drive was closed: the tensioner went in at rest and has let go, and what the maker wants checked once
/// more was. Refused while a fastener of the drive is not ticked, or nobody has turned the engine by hand since.
/// </summary>
public static class ConfirmCamRecheck
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public string? Drive { get; init; }

        /// <summary>It was set back to its rest before it went in. Asked where the tensioner was out.</summary>
        public bool TensionerWentInAtRest { get; init; }

        /// <summary>It has let go, and the chain's slack is gone. Asked where the tensioner was out.</summary>
        public bool TensionerReleased { get; init; }

        /// <summary>The wrench with which the sprocket bolts were checked once more, where the maker wants that.</summary>
        public Guid? WrenchId { get; init; }
    }

    public sealed record Answer(int Number, string Drive, Instant ConfirmedAt);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Drive).IsGiven("the drive, by its code").IsAtMost(Limits.Code);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (CamTimingRules.FaultOfDrive("drive", request.Drive, open.Specification) is { } unknown)
        {
            return Problem.Impossible("drive-unknown", unknown.Field, unknown.Sentence);
        }

        var facts = await SignOffCase.Gather(db, open, ct);
        if (OpenedDrive.Of(open.Specification.CamDrives, facts.ToBeTight).FirstOrDefault(d => d.Drive.Code == request.Drive) is not { } opened)
        {
            return Problem.Conflict("not-opened", $"Nothing on job card {request.Number} opens sprocket bolts or tensioner of that drive: there is nothing to check once more.");
        }

        var turns = await db.HandTurns.AsNoTracking().Where(t => t.JobCardNumber == request.Number).ToListAsync(ct);
        var against = opened.AgainstRecheck(turns);
        if (against.Count > 0)
        {
            return Problem.Conflict("not-closed", string.Join(" ", against));
        }

        var now = clock.GetCurrentInstant();
        var faults = await FaultsOf(request, opened, db, (await WorkshopTimes.Read(db, ct)).DayOf(now), ct);
        if (faults.Count > 0)
        {
            return Problem.Impossible("not-confirmed", faults);
        }

        db.CamRechecks.Add(new CamRecheck
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, DriveCode = opened.Drive.Code,
            WrenchId = opened.Drive.RecheckSprocketBolts ? request.WrenchId : null, ConfirmedBy = actor.PersonId, ConfirmedAt = now,
        });
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, opened.Drive.Code, now);
    }

    private static async Task<IReadOnlyList<FieldFault>> FaultsOf(
        Request request, OpenedDrive opened, WorkshopDbContext db, LocalDate day, CancellationToken ct)
    {
        var faults = new List<FieldFault>();
        if (opened.TensionerWasOut && !request.TensionerWentInAtRest)
        {
            faults.Add(new FieldFault("tensionerWentInAtRest",
                "tensionerWentInAtRest is false: fitted under load it overloads the chain. Take it out under control, set it back to its rest, and fit it again; only true is recorded."));
        }

        if (opened.TensionerWasOut && !request.TensionerReleased)
        {
            faults.Add(new FieldFault("tensionerReleased",
                "tensionerReleased is false: a chain without its tensioner jumps teeth. Release it as the maker's manual says and look that the slack is gone; only true is recorded."));
        }

        if (opened.Drive.RecheckSprocketBolts)
        {
            var fault = request.WrenchId is null
                ? new FieldFault("wrenchId", "wrenchId is empty: the maker wants the sprocket bolts' torque checked once more after the tensioner was fitted; give the torque wrench.")
                : await UsableInstrument.FaultOf(db, "wrenchId", request.WrenchId, InstrumentKind.TorqueWrench, day, ct);
            if (fault is not null)
            {
                faults.Add(fault);
            }
        }

        return faults;
    }
}
