using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Finishing;

/// <summary>What follows the work on a visit: what is asked for and why, what was done of it, and what still stands in the way.</summary>
public static class GetAfterWork
{
    public sealed record Request(int Number);

    /// <param name="Left">What still stands in the way of the sign-off, by subject.</param>
    /// <param name="Earlier">Entries that a later one took the place of.</param>
    public sealed record Answer(
        int Number, JobCardState State, IReadOnlyList<Asked> Asked, IReadOnlyList<Open> Left, Balance Balance, IReadOnlyList<Place> Places, Ride? Ride,
        IReadOnlyList<Again> Rechecks, IReadOnlyList<Drive> Drives, Reminder? Reminder, IReadOnlyList<Thing> Things, AsLeft AsLeft, IReadOnlyList<Entry> Earlier)
    {
        /// <summary>The check as it is asked for on this visit; nothing where it is not.</summary>
        public Asked? AskedFor(VisitCheckKind kind) => Asked.FirstOrDefault(a => a.Kind == kind);

        /// <summary>What is left of one part: its subject begins so.</summary>
        public IEnumerable<Open> LeftOf(string subject) => Left.Where(l => l.Subject.StartsWith(subject, StringComparison.Ordinal));
    }

    public sealed record Asked(VisitCheckKind Kind, string Because, string? Note, string Figures);

    public sealed record Open(string Subject, string Sentence);

    /// <param name="Cylinders">Numbers of the engine's cylinders.</param>
    /// <param name="Stated">The maker's figures; absent where none are stated.</param>
    public sealed record Balance(IReadOnlyList<int> Cylinders, BalanceFigures? Stated, IReadOnlyList<Run> Runs);

    /// <param name="Counts">No later run of its stage took its place.</param>
    public sealed record Run(
        Stage Stage, int Attempt, bool Counts, int SpeedRpm, decimal HotAtC, HotPart HotOf, string Gauge, BalanceVerdict Verdict, string Sentence,
        IReadOnlyList<Cylinder> Cylinders, Instant At, string By, string? Reason);

    /// <param name="FromKpa">From the reference cylinder, or from the lowest where there is none.</param>
    public sealed record Cylinder(int Number, decimal VacuumKpa, decimal VacuumMmHg, decimal FromKpa);

    /// <param name="IsOpen">Nobody has looked since it was last closed.</param>
    public sealed record Place(
        string Code, string Name, LeakState? State, string? Words, int? RunMinutes, Instant? At, string? By, bool TightenedSince, bool IsOpen);

    public sealed record Ride(
        bool Ridden, WhyNotRidden? WhyNot, string? Rider, decimal? DistanceKm, int? OdometerIn, string? Words, Instant At, string EnteredBy);

    /// <param name="Key">"cooled", "oilAfterRun" or the fastener's code.</param>
    /// <param name="CooledFrom">When the engine has cooled for as long as is asked.</param>
    /// <param name="TightenedSince">The fastener was tightened anew after that.</param>
    public sealed record Again(
        string Key, RecheckPoint Point, string? Fastener, string Name, decimal? TorqueNm, decimal? CoolHours, Instant? CooledFrom, bool? InOrder,
        string? Words, string? EarlyBecause, Instant? At, string? By, bool TightenedSince);

    /// <summary>A camshaft's drive that was opened: its re-check is on the page of cam timing.</summary>
    public sealed record Drive(string Code, string Name, bool Rechecked);

    public sealed record Reminder(ReminderOutcome Outcome, string? Words, Instant At, string By);

    /// <param name="Taps">How many taps the two are made of.</param>
    /// <param name="Difference">Came back less went in.</param>
    public sealed record Thing(string Code, string Name, int WentIn, int CameBack, int Taps, int Difference, string Words, string? Explained, string? ExplainedBy);

    /// <param name="Asked">The workshop asks for a second person.</param>
    /// <param name="Readings">How many readings as left the card has, superseded ones among them: what a confirmation names.</param>
    /// <param name="MayConfirm">Whoever asks has entered none of them, and nobody has confirmed them as they stand.</param>
    public sealed record AsLeft(bool Asked, int Readings, bool MayConfirm, string? ConfirmedBy, Instant? ConfirmedAt, string? Words);

    public sealed record Entry(string What, string Words, Instant At, string By, string? WhyAgain);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var facts = await SignOffCase.Gather(db, open, ct);
        return await new AfterWorkReader(db, open, facts, actor).Read(ct);
    }
}
