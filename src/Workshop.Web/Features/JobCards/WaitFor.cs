using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// An engine lies open and waits for shims, parts or the owner's word. It keeps its bay until then and for what is left of the
/// work; technician and special tools are free. Said again while it waits, it says anew until when.
/// </summary>
public static class WaitFor
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public WaitsFor? For { get; init; }

        /// <summary>When work is expected to go on; or else <see cref="ExpectedDay"/> and <see cref="ExpectedTime"/> in the workshop's zone.</summary>
        public Instant? ExpectedUntil { get; init; }

        public LocalDate? ExpectedDay { get; init; }

        public LocalTime? ExpectedTime { get; init; }

        /// <summary>Special tools stay in the engine, and so taken.</summary>
        public bool KeepsTools { get; init; }

        public string? Remark { get; init; }
    }

    /// <param name="Warnings">What of the bay is not free for so long, and who has it.</param>
    public sealed record Answer(int Number, WaitsFor For, Instant Since, Instant ExpectedUntil, IReadOnlyList<string> Warnings);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.For).IsGiven("what it waits for").IsInEnum();
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
            this.MomentIsGiven(r => r.ExpectedUntil, r => r.ExpectedDay, r => r.ExpectedTime, "when work is expected to go on");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var now = clock.GetCurrentInstant();
        var (field, moment) = Moments.Read(
            time, "expectedUntil", request.ExpectedUntil, "expectedTime", request.ExpectedDay, request.ExpectedTime);
        if (!(await VisitState.ForWork(db, request.Number, ct)).TryGet(out var visit, out var problem)
            || !moment.TryGet(out var until, out problem))
        {
            return problem;
        }

        if (WaitRules.RefuseWait(visit.SoFar, request.For!.Value, field, until, now, time) is { } refused)
        {
            return refused;
        }

        await TakeWhatIsFree.Lock(db, visit.Taken.Select(t => t.Resource.Id), ct);
        var wait = visit.SoFar.Waits;
        if (wait is null)
        {
            wait = new VisitWait
            {
                Id = NewId.At(clock), JobCardNumber = request.Number, For = request.For.Value, Since = now, ExpectedUntil = until,
                RemarkId = Remarks.Add(db, request.Remark, actor, clock), EnteredBy = actor.PersonId,
            };
            db.VisitWaits.Add(wait);
            db.PhaseStarts.Add(new PhaseStart
            {
                Id = NewId.At(clock), JobCardNumber = request.Number, Phase = VisitPhase.Waiting, StartedAt = now, EnteredBy = actor.PersonId,
            });
        }

        wait.ExpectedUntil = until;
        await db.SaveChangesAsync(ct);
        var warnings = await WaitingPlace.Keep(db, visit, until, request.KeepsTools, time, clock, ct);
        return new Answer(request.Number, wait.For, wait.Since, until, warnings);
    }
}
