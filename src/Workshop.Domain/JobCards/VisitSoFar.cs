using NodaTime;
using Workshop.Domain.Bookings;

namespace Workshop.Domain.JobCards;

/// <summary>How far a visit is, and what of it decides on what may begin next. The motorcycle is checked in.</summary>
public sealed record VisitSoFar
{
    public required int Number { get; init; }

    public required Instant CheckedInAt { get; init; }

    /// <summary>In order of time.</summary>
    public required IReadOnlyList<PhaseStart> Begun { get; init; }

    /// <summary>In order of time.</summary>
    public IReadOnlyList<MotorcycleMove> Moves { get; init; } = [];

    /// <summary>When the soak is over, counted from the engine's last stop; absent where the visit needs no cold engine.</summary>
    public Instant? ColdFrom { get; init; }

    /// <summary>The longest that any sealant of the visit hardens; zero where there is none.</summary>
    public Duration Cure { get; init; }

    /// <summary>An item under way lets the engine oil out.</summary>
    public bool DrainsOil { get; init; }

    /// <summary>The engine model wants it looked at once more when it has cooled.</summary>
    public bool AsksForRecheck { get; init; }

    /// <summary>When the cooled engine was last looked at once more; absent where nobody did.</summary>
    public Instant? RecheckedAt { get; init; }

    /// <summary>What it waits for now.</summary>
    public VisitWait? Waits { get; init; }

    /// <summary>The phase that it is in; none has begun right after check-in.</summary>
    public VisitPhase? Phase => Begun.Count == 0 ? null : Begun[^1].Phase;

    /// <summary>Since when it is in that phase, or else here.</summary>
    public Instant Since => Begun.Count == 0 ? CheckedInAt : Begun[^1].StartedAt;

    /// <summary>When work began, the last time where it was gone back to.</summary>
    public Instant? WorkBegunAt => Last(VisitPhase.Work)?.StartedAt;

    /// <summary>Oil ran out, and the engine has not run since: it is not to be started before somebody says that oil is in.</summary>
    public bool MayLackOil => DrainsOil && Begun.Any(s => s.Phase is VisitPhase.Arrival or VisitPhase.Work) && !RanSinceWork;

    /// <summary>The engine ran after the work was begun, the last time.</summary>
    public bool RanSinceWork => BegunSinceWork(VisitPhase.WarmRun) || BegunSinceWork(VisitPhase.TestRide);

    /// <summary>The tag that hangs on the handlebar; see <see cref="TagOf"/>.</summary>
    public Guid? TagRemarkId => TagOf(Begun, Moves);

    /// <summary>The remark of the tag that the last move hung; nothing where it hung none, or the engine was run since.</summary>
    public static Guid? TagOf(IReadOnlyList<PhaseStart> begun, IReadOnlyList<MotorcycleMove> moves)
    {
        ArgumentNullException.ThrowIfNull(begun);
        ArgumentNullException.ThrowIfNull(moves);
        return moves.Count > 0 && !begun.Any(s => PhaseRules.EngineRuns(s.Phase) && s.StartedAt >= moves[^1].MovedAt)
            ? moves[^1].TagRemarkId
            : null;
    }

    /// <summary>The last start of a phase after work was begun, the last time; nothing where it was not begun since.</summary>
    public PhaseStart? SinceWork(VisitPhase phase) =>
        WorkBegunAt is { } work && Last(phase) is { } start && start.StartedAt >= work ? start : null;

    /// <summary>The re-check was begun, or its result entered, since the work.</summary>
    public bool RecheckedSinceWork => BegunSinceWork(VisitPhase.CoolAndRecheck) || RecheckedAt >= WorkBegunAt;

    public bool BegunSinceWork(VisitPhase phase) => SinceWork(phase) is not null;

    private PhaseStart? Last(VisitPhase phase) => Begun.LastOrDefault(s => s.Phase == phase);
}
