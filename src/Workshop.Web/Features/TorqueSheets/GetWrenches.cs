using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Tooling;
using Workshop.Web.Http;

namespace Workshop.Web.Features.TorqueSheets;

/// <summary>
/// Every way to tighten one fastener of a card: per torque the wrenches that suit with what is dialled, and those that do not with the
/// reason; and of a way that somebody names, wrench, adapter and angle, what is to be dialled.
/// </summary>
public static class GetWrenches
{
    /// <param name="WrenchId">With adapter and angle the way that is asked about; absent where none is.</param>
    public sealed record Request(int Number, string FastenerCode, Guid? WrenchId = null, Guid? AdapterId = null, decimal? AdapterAngleDegrees = null);

    public sealed record Answer(
        int JobCardNumber, string FastenerCode, string Name, int Count, string Tool, string? AccessNote, IReadOnlyList<Step> Steps,
        IReadOnlyList<Choice> Wrenches, IReadOnlyList<Choice> Adapters);

    /// <param name="Asked">The way that was asked about, where it suits.</param>
    /// <param name="AskedAgainst">Why it does not.</param>
    public sealed record Step(
        decimal TorqueNm, decimal? LowestNm, decimal? HighestNm, IReadOnlyList<OfferLine> Wrenches, IReadOnlyList<Unsuited> Against, string? Missing,
        OfferLine? Asked, string? AskedAgainst);

    /// <param name="Reason">In words that go on after the name.</param>
    public sealed record Unsuited(Guid Id, string Name, string SerialNumber, string Reason);

    public sealed record Choice(Guid Id, string Name);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.AdapterAngleDegrees).IsWithin(0, WrenchLever.LargestAngle, 1, "degrees");
            RuleFor(r => r.WrenchId).IsGiven("the wrench that the adapter is put on").When(r => r.AdapterId is not null);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var sheet = await GetTorqueSheet.Read(db, open, ct);
        if (sheet.Lines.SingleOrDefault(l => l.Fastener.Code == request.FastenerCode) is not { } line)
        {
            return Problem.NotFound($"{request.FastenerCode} on the torque sheet of job card {request.Number}");
        }

        var time = await WorkshopTimes.Read(db, ct);
        WrenchWay? way = null;
        if (request.WrenchId is { } wrenchId
            && !(await WrenchWay.Read(db, time, wrenchId, request.AdapterId, request.AdapterAngleDegrees, ct)).TryGet(out way, out problem))
        {
            return problem;
        }

        var today = time.DayOf(clock.GetCurrentInstant());
        var (wrenches, adapters) = (await WrenchesOnHand.Read(db, time, ct), await WrenchesOnHand.Adapters(db, ct));
        var steps = WrenchTask.Of(line.Fastener).Select(task => StepOf(task, WrenchChoice.For(task, wrenches, adapters, today), way, today)).ToList();
        return new Answer(
            request.Number, line.Fastener.Code, line.Fastener.Name, line.Fastener.Count, line.Fastener.Tool,
            WrenchChoice.SayAccess(line.Fastener.SpaceOverMm), steps,
            [.. wrenches.Where(w => w.Wrench.State == InstrumentState.InUse).OrderBy(w => w.Name, StringComparer.Ordinal).Select(w => new Choice(w.Wrench.Id, w.Name))],
            [.. adapters.Where(a => !a.Retired).Select(a => new Choice(a.Id, a.Name))]);
    }

    private static Step StepOf(WrenchTask task, WrenchChoice choice, WrenchWay? way, LocalDate today)
    {
        var (asked, against) = way is null ? (null, null) : WrenchJudgement.Of(task, way.OnHand, way.Adapter, way.AngleDegrees, today);
        return new Step(
            task.Torque.NewtonMetres, task.Lowest?.NewtonMetres, task.Highest?.NewtonMetres, [.. choice.Offers.Select(OfferLine.Of)],
            [.. choice.Against.Select(a => new Unsuited(a.OnHand.Wrench.Id, a.OnHand.Wrench.Name, a.OnHand.Wrench.SerialNumber, a.Reason))],
            choice.Missing, asked is null ? null : OfferLine.Of(asked), against);
    }
}
