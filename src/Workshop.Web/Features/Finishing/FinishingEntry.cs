using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Finishing;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Finishing;

/// <summary>What every entry after the work starts from: the locked card, how far the visit is, and what its gates look at.</summary>
internal sealed class FinishingEntry
{
    private readonly WorkshopDbContext db;
    private readonly Actor actor;
    private readonly IClock clock;
    private readonly string? reason;
    private Guid? reasonId;

    private FinishingEntry(WorkshopDbContext db, VisitState visit, SignOffFacts facts, WorkshopTime time, string? reason, Actor actor, IClock clock)
    {
        (this.db, Visit, Facts, Time, Now) = (db, visit, facts, time, clock.GetCurrentInstant());
        (this.reason, this.actor, this.clock) = (string.IsNullOrWhiteSpace(reason) ? null : reason, actor, clock);
    }

    public VisitState Visit { get; }

    public OpenCard Open => Visit.Open;

    public SignOffFacts Facts { get; }

    public WorkshopTime Time { get; }

    public Instant Now { get; }

    public LocalDate Today => Time.DayOf(Now);

    /// <param name="reason">Why something is entered again.</param>
    public static async Task<Outcome<FinishingEntry>> Begin(
        WorkshopDbContext db, int number, string? reason, Actor actor, IClock clock, CancellationToken ct) =>
        (await VisitState.ForWork(db, number, ct)).TryGet(out var visit, out var problem)
            ? new FinishingEntry(db, visit, await Gather(db, visit.Open, ct), await WorkshopTimes.Read(db, ct), reason, actor, clock)
            : problem;

    /// <summary>As much of the facts as entries look at: nobody has said yet what is not done, so readings and shims decide nothing.</summary>
    private static async Task<SignOffFacts> Gather(WorkshopDbContext db, OpenCard open, CancellationToken ct) => new()
    {
        Number = open.Card.Number,
        State = open.Card.State,
        Specification = open.Specification,
        UnderWay = open.UnderWay,
        Ticks = await db.FastenerTicks.AsNoTracking().Where(t => t.JobCardNumber == open.Card.Number).ToListAsync(ct),
        Finished = await FinishingRows.Read(db, open.Card.Number, ct),
    };

    /// <summary>When it was, which is now where nothing is sent: not before check-in, and not to come.</summary>
    public Outcome<Instant> When(string field, Instant? sent)
    {
        var at = sent ?? Now;
        var here = Visit.SoFar.CheckedInAt;
        return at > Now
            ? Problem.Impossible("still-to-come", field, $"{field} is {Time.Say(at)}, which is still to come; it is {Time.Say(Now)} now.")
            : at < here
                ? Problem.Impossible("before-check-in", field, $"{field} is {Time.Say(at)}, but the motorcycle is here since {Time.Say(here)}; not before that is allowed.")
                : at;
    }

    /// <summary>Nothing where all is entered for the first time, or a reason is given; else the refusal.</summary>
    /// <param name="sent">What is entered, in words, and the attempt that it would supersede.</param>
    public Problem? AgainstAgain(params IEnumerable<(string What, IAttempt? Before)> sent) =>
        Attempts.FaultOfReason(reason, sent.Where(s => s.Before is not null).Select(s => s.What)) is { } fault
            ? Problem.Impossible("reason-missing", fault.Field, fault.Sentence)
            : null;

    /// <summary>The remark that says why; one for the whole send, nothing where nothing is superseded.</summary>
    public Guid? ReasonFor(IAttempt? before) => before is null ? null : reasonId ??= Remarks.Add(db, reason, actor, clock);

    /// <summary>
    /// The engine ran until then, and its cold soak begins anew. Within a warm run or a test ride that goes on, its end will say when
    /// the engine stopped.
    /// </summary>
    public void EngineRanUntil(Instant at)
    {
        var goesOn = Visit.SoFar.Phase is { } phase && PhaseRules.EngineRuns(phase) && Visit.SoFar.Since <= at;
        if (!goesOn && !(at <= Open.EngineStoppedAt))
        {
            RecordEngineStop.Add(db, Open.Card.Number, at, actor, clock);
        }
    }

    public Guid? Words(string? text) => Remarks.Add(db, text, actor, clock);
}
