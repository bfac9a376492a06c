using NodaTime;

namespace Workshop.Domain.Bookings;

/// <summary>A visit that is under way or still to come, as it was planned and as far as it is.</summary>
public sealed record VisitToday
{
    public required int Number { get; init; }

    /// <summary>In order of time; not empty.</summary>
    public required IReadOnlyList<PhaseSpan> Planned { get; init; }

    /// <summary>What it takes of whom, as planned.</summary>
    public required IReadOnlyList<Take> Takes { get; init; }

    /// <summary>When it was checked in; absent where it has not come.</summary>
    public Instant? CameAt { get; init; }

    /// <summary>Phases that were begun, in order of time; none of them <see cref="VisitPhase.Waiting"/>.</summary>
    public IReadOnlyList<(VisitPhase Phase, Instant At)> Begun { get; init; } = [];

    /// <summary>When the soak is over, counted from the engine's last stop; absent where it is not here or needs none.</summary>
    public Instant? ColdFrom { get; init; }

    /// <summary>How long the engine must stand once it has come; zero where it needs no cold engine.</summary>
    public Duration Soak { get; init; }

    /// <summary>Since when it lies open and waits, and until when that is expected.</summary>
    public (Instant Since, Instant Until)? Waits { get; init; }
}

/// <summary>Why a visit is late by itself.</summary>
public enum LateReason
{
    Waits,

    /// <summary>Planned to be here, and not checked in.</summary>
    NotHere,

    /// <summary>A phase goes on beyond its end.</summary>
    RunsOver,

    /// <summary>The engine is cold later than the work was to begin.</summary>
    SoaksLonger,

    /// <summary>A phase was to begin, and nobody has said that it has.</summary>
    NotBegun,

    /// <summary>A phase was begun late.</summary>
    BegunLate,
}

/// <summary>A visit that is late whatever the others do.</summary>
/// <param name="Phase">The first phase that is late.</param>
/// <param name="Late">By how much that phase is.</param>
/// <param name="PlannedReady">Handed over, as planned.</param>
/// <param name="ExpectedReady">Handed over, as it now looks.</param>
public sealed record LateVisit(
    int Number, LateReason Reason, VisitPhase Phase, Duration Late, Instant PlannedReady, Instant ExpectedReady);

/// <summary>A visit that others push.</summary>
/// <param name="By">The visit that holds what it needs; it may itself be pushed by another.</param>
/// <param name="ResourceId">What it waits for.</param>
/// <param name="Phase">The first phase that is pushed.</param>
/// <param name="PlannedAt">When that phase was to begin.</param>
/// <param name="ExpectedAt">When it can.</param>
/// <param name="Pushed">By how much later than without the others: above zero.</param>
public sealed record PushedVisit(
    int Number, int By, Guid ResourceId, VisitPhase Phase, Instant PlannedAt, Instant ExpectedAt, Duration Pushed, Instant PlannedReady, Instant ExpectedReady);

/// <summary>Who is late, and whom that pushes if nobody does anything.</summary>
public sealed record LateAndPushed(IReadOnlyList<LateVisit> Late, IReadOnlyList<PushedVisit> Pushed);

/// <summary>
/// What follows when visits run late and nobody moves anything: every phase begins when it was planned to, but not before the
/// phase before it is over, and not before those are done that were planned before it in the same bay, by the same technician or
/// with the same tool. Whoever is ahead of time pulls nobody forward. A longest path through the planned order, so that more
/// lateness never means less effect, and what shares nothing with a late visit, directly or by others, is never touched.
/// </summary>
public static class LateRunning
{
    /// <summary>Who is late by itself, and whom that pushes.</summary>
    /// <param name="visits">Under way or still to come, each once.</param>
    /// <param name="working">When each technician works, in order of time; who is not named works at all hours.</param>
    /// <param name="open">When the workshop is open, in order of time: motorcycles are handed over then; absent, at all hours.</param>
    /// <param name="now">The time: what has not begun begins now at the earliest.</param>
    public static LateAndPushed Of(
        IReadOnlyCollection<VisitToday> visits,
        IReadOnlyDictionary<Guid, IReadOnlyList<Interval>> working,
        IReadOnlyList<Interval>? open,
        Instant now)
    {
        ArgumentNullException.ThrowIfNull(visits);
        ArgumentNullException.ThrowIfNull(working);
        var together = new ExpectedTimes(visits, working, open, now, blocked: null).Run();
        var blocked = together.SelectMany(v => v.Value.Where(p => p.HeldBy is not null).Select(p => (v.Key, p.Planned.Phase))).ToHashSet();
        var alone = new ExpectedTimes(visits, working, open, now, blocked).Run();
        return new LateAndPushed(
            visits.Select(v => Late(v, alone[v.Number], now)).OfType<LateVisit>()
                .OrderByDescending(l => l.Late).ThenBy(l => l.Number).ToArray(),
            visits.Select(v => Pushed(v, alone[v.Number], together[v.Number])).OfType<PushedVisit>()
                .OrderBy(p => p.PlannedAt).ThenBy(p => p.Number).ToArray());
    }

    private static LateVisit? Late(VisitToday visit, List<ExpectedPhase> expected, Instant now)
    {
        var first = expected.FirstOrDefault(e => e.End > e.Planned.Span.End && !e.Over) ?? expected.FirstOrDefault(e => e.Start > e.Planned.Span.Start && !e.Over);
        if (first is null)
        {
            return null;
        }

        var late = Duration.Max(first.End - first.Planned.Span.End, first.Start - first.Planned.Span.Start);
        return new LateVisit(
            visit.Number, Why(visit, first, now), first.Planned.Phase, late, expected[^1].Planned.Span.End, expected[^1].End);
    }

    private static LateReason Why(VisitToday visit, ExpectedPhase first, Instant now) =>
        visit.Waits is not null ? LateReason.Waits
        : visit.CameAt is null ? LateReason.NotHere
        : first.Begun is { } begun ? begun > first.Planned.Span.Start && first.End > now ? LateReason.BegunLate : LateReason.RunsOver
        : visit.ColdFrom > first.Planned.Span.Start ? LateReason.SoaksLonger
        : LateReason.NotBegun;

    private static PushedVisit? Pushed(VisitToday visit, List<ExpectedPhase> alone, List<ExpectedPhase> together)
    {
        for (var i = 0; i < together.Count; i++)
        {
            if (together[i].Start > alone[i].Start && together[i].HeldBy is { } holder)
            {
                return new PushedVisit(
                    visit.Number, holder.Visit, holder.Resource, together[i].Planned.Phase, together[i].Planned.Span.Start, together[i].Start,
                    together[i].Start - alone[i].Start, together[^1].Planned.Span.End, together[^1].End);
            }
        }

        return null;
    }
}
