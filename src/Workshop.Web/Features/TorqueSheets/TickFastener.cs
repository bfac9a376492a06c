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
using Workshop.Web.Features.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>
/// Ticks a fastener of the sheet, all of its count as one, with the wrench that gave the final torque, what was between and what was
/// dialled; or takes the tick back. A wrench that does not suit, or may not be used, is refused with the reason.
/// </summary>
public static class TickFastener
{
    private const decimal LargestDialled = 20_000;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public string? FastenerCode { get; init; }

        /// <summary>Not needed to take a tick back.</summary>
        public Guid? WrenchId { get; init; }

        /// <summary>What was between wrench and fastener, if anything.</summary>
        public Guid? AdapterId { get; init; }

        /// <summary>Of an offset adapter against the wrench: 0 straight on, 90 across, 180 back along the wrench.</summary>
        public decimal? AdapterAngleDegrees { get; init; }

        /// <summary>In the wrench's own unit; absent: what the service says is to be dialled.</summary>
        public decimal? Dialled { get; init; }

        /// <summary>False takes the tick back, and with it what a second person confirmed.</summary>
        public bool? Tightened { get; init; }
    }

    /// <param name="NotTightened">How many fasteners of the sheet are still to be tightened.</param>
    /// <param name="Dialled">For the final torque, with its unit; absent where a tick is taken back.</param>
    public sealed record Answer(Guid TickId, string FastenerCode, TickState State, int NotTightened, string? Dialled);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.FastenerCode).IsGiven("the code of a fastener of the torque sheet").IsAtMost(Limits.Code);
            RuleFor(r => r.Tightened).NotNull().WithMessage("{PropertyName} is empty: give true, or false to take a tick back.");
            RuleFor(r => r.WrenchId).IsGiven("the torque wrench that was used").When(r => r.Tightened == true);
            RuleFor(r => r.AdapterAngleDegrees).IsWithin(0, WrenchLever.LargestAngle, 1, "degrees");
            RuleFor(r => r.AdapterAngleDegrees).Null().When(r => r.AdapterId is null)
                .WithMessage("adapterAngleDegrees is given, but no adapter; say which one, or leave it out.");
            RuleFor(r => r.Dialled).IsWithin(0.001m, LargestDialled, 3, "of the wrench's unit");
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
            return NotOpened(request.Number, request.FastenerCode!, sheet);
        }

        return request.Tightened!.Value
            ? (await OfferFor(request, line, db, clock, ct)).TryGet(out var offer, out problem)
                ? await Write(request, sheet, line, offer, db, actor, clock, ct)
                : problem
            : AgainstTakingBack(line) ?? await Write(request, sheet, line, null, db, actor, clock, ct);
    }

    /// <summary>The refusal where a fastener is not on the sheet.</summary>
    internal static Problem NotOpened(int number, string fastenerCode, TorqueSheet sheet) => Problem.Impossible("not-opened", "fastenerCode",
        $"fastenerCode is {fastenerCode}: it is not opened on job card {number}; "
        + $"on its torque sheet are {string.Join(", ", sheet.Lines.Select(l => l.Fastener.Code))}.");

    private static async Task<Outcome<Answer>> Write(
        Request request, TorqueSheet sheet, TorqueLine line, WrenchOffer? offer, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var tightened = offer is not null;
        var dialled = request.Dialled ?? (offer is null ? null : decimal.Round(offer.Dialled, 3));
        var tick = new FastenerTick
        {
            Id = NewId.At(clock),
            JobCardNumber = request.Number,
            FastenerCode = line.Fastener.Code,
            Tightened = tightened,
            WrenchId = offer?.OnHand.Wrench.Id,
            AdapterId = offer?.Adapter?.Id,
            AdapterAngleDegrees = offer?.AngleDegrees,
            Dialled = tightened ? dialled : null,
            Cycles = tightened ? WrenchCycles.Of(line.Fastener) : null,
            SupersedesId = line.Tick.Last?.Id,
            TickedBy = actor.PersonId,
            TickedAt = clock.GetCurrentInstant(),
        };
        db.FastenerTicks.Add(tick);
        await db.SaveChangesAsync(ct);
        var others = sheet.Lines.Count(l => l != line && !l.IsTightened);
        return new Answer(
            tick.Id, tick.FastenerCode, tightened ? TickState.Tightened : TickState.TakenBack, others + (tightened ? 0 : 1),
            offer?.Scale.Say(dialled!.Value));
    }

    private static Problem? AgainstTakingBack(TorqueLine line) => line.Tick.Last is { Tightened: true }
        ? null
        : Problem.Conflict("no-tick", $"{line.Fastener.Name} ({line.Fastener.Code}) has no tick to take back: it is {line.Tick.State.Spoken()}.");

    private static async Task<Outcome<WrenchOffer>> OfferFor(
        Request request, TorqueLine line, WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var (today, task) = (time.DayOf(clock.GetCurrentInstant()), WrenchTask.Of(line.Fastener)[^1]);
        if (!(await WrenchWay.Read(db, time, request.WrenchId!.Value, request.AdapterId, request.AdapterAngleDegrees, ct)).TryGet(out var way, out var problem))
        {
            return problem;
        }

        var (offer, against) = WrenchJudgement.Of(task, way.OnHand, way.Adapter, way.AngleDegrees, today);
        if (offer is null)
        {
            var choice = WrenchChoice.For(task, await WrenchesOnHand.Read(db, time, ct), await WrenchesOnHand.Adapters(db, ct), today);
            return Problem.Impossible("wrench-unsuited", "wrenchId", $"wrenchId: {way.OnHand.Name} {against}. {Suited(task, choice)}");
        }

        return request.Dialled is { } dialled && WrenchJudgement.AgainstDialled(task, offer, dialled) is { } wrong
            ? Problem.Impossible("dialled-wrong", "dialled", $"dialled is {offer.Scale.Say(dialled)}: {wrong}.")
            : offer;
    }

    private static string Suited(WrenchTask task, WrenchChoice choice) => choice.Missing is { } missing
        ? $"No wrench of the workshop suits {task.Torque} today: {missing}."
        : $"These suit {task.Torque}: {string.Join("; ", choice.Offers.Select(o => $"{o.OnHand.Name}{(o.Adapter is { } a ? $" with {a.Name}" : "")}").Distinct())}.";
}
