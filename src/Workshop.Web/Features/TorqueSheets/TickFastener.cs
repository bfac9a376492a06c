using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>
/// Ticks a fastener of the sheet, all of its count as one, with the wrench that gave the final torque; or takes the tick back.
/// </summary>
public static class TickFastener
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public string? FastenerCode { get; init; }

        /// <summary>Not needed to take a tick back.</summary>
        public Guid? WrenchId { get; init; }

        /// <summary>False takes the tick back.</summary>
        public bool? Tightened { get; init; }
    }

    /// <param name="NotTightened">How many fasteners of the sheet are still to be tightened.</param>
    public sealed record Answer(string FastenerCode, TickState State, int NotTightened);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.FastenerCode).IsGiven("the code of a fastener of the torque sheet").IsAtMost(Limits.Code);
            RuleFor(r => r.Tightened).NotNull().WithMessage("{PropertyName} is empty: give true, or false to take a tick back.");
            RuleFor(r => r.WrenchId).IsGiven("the torque wrench that was used").When(r => r.Tightened == true);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var sheet = await GetTorqueSheet.Read(db, open, ct);
        if (sheet.Lines.SingleOrDefault(l => l.Fastener.Code == request.FastenerCode) is not { } line)
        {
            return Problem.Impossible("not-opened", "fastenerCode",
                $"fastenerCode is {request.FastenerCode}: it is not opened on job card {request.Number}; "
                + $"on its torque sheet are {string.Join(", ", sheet.Lines.Select(l => l.Fastener.Code))}.");
        }

        var tightened = request.Tightened!.Value;
        var refusal = tightened
            ? await AgainstWrench(request.WrenchId!.Value, line, db, clock, ct)
            : AgainstTakingBack(line);
        if (refusal is not null)
        {
            return refusal;
        }

        var tick = new FastenerTick
        {
            Id = NewId.At(clock),
            JobCardNumber = request.Number,
            FastenerCode = line.Fastener.Code,
            Tightened = tightened,
            WrenchId = tightened ? request.WrenchId : null,
            SupersedesId = line.Tick.Last?.Id,
            TickedBy = actor.PersonId,
            TickedAt = clock.GetCurrentInstant(),
        };
        db.FastenerTicks.Add(tick);
        await db.SaveChangesAsync(ct);
        var others = sheet.Lines.Count(l => l != line && !l.IsTightened);
        return new Answer(
            tick.FastenerCode, tightened ? TickState.Tightened : TickState.TakenBack, others + (tightened ? 0 : 1));
    }

    private static Problem? AgainstTakingBack(TorqueLine line) => line.Tick.Last is { Tightened: true }
        ? null
        : Problem.Conflict("no-tick", $"{line.Fastener.Name} ({line.Fastener.Code}) has no tick to take back: it is {line.Tick.State.Spoken()}.");

    private static async Task<Problem?> AgainstWrench(
        Guid wrenchId, TorqueLine line, WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var wrenches = await GetTorqueSheet.Wrenches(db, ct);
        var wrench = await db.Instruments.FindAsync([wrenchId], ct);
        var against = wrench is null
            ? "is no instrument of the workshop"
            : TorqueWrench.ReasonAgainst(wrench, line.Fastener.Torque, today);
        if (against is null)
        {
            return null;
        }

        var suited = TorqueWrench.Suited(wrenches, line.Fastener.Torque, today);
        var allowed = suited.Count > 0
            ? $"These suit {line.Fastener.Torque}: {string.Join("; ", suited.Select(Name))}."
            : $"No wrench of the workshop suits {line.Fastener.Torque} today; see Tooling.";
        return Problem.Impossible("wrench-unsuited", "wrenchId",
            $"wrenchId: {(wrench is null ? wrenchId.ToString() : Name(wrench))} {against}. {allowed}");
    }

    private static string Name(Instrument wrench) => $"{wrench.Name} ({wrench.SerialNumber})";
}
