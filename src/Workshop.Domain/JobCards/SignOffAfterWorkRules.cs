using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;

namespace Workshop.Domain.JobCards;

/// <summary>
/// Where a balance is asked for, one stands that was read after valves were last changed, and is within what the maker states; or
/// the remark of the sign-off accepts it.
/// </summary>
public sealed class CylindersAreBalanced : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (AskedChecks.Find(facts, VisitCheckKind.Balance) is not { } asked)
        {
            return [];
        }

        var run = Standing(facts);
        var changed = facts.Specification.Valves.Max(v => DisturbedValves.LastChangeOf(v.Key, facts.Shims, facts.Events));
        var sentence = run is null ? $"Throttles or carburettors are not balanced hot, which is asked for {asked.Because}."
            : run.MeasuredAt < changed ? "Throttles or carburettors were balanced before valves were changed; read them once more."
            : BalanceJudgement.Of(asked.Stated?.Balance, run.Vacuums) is { Verdict: BalanceVerdict.Outside } judged && !facts.OutsideAccepted
                ? $"Throttles or carburettors are left {judged.Sentence}; set them, or accept it with a remark."
            : null;
        return sentence is null ? [] : [new("afterWork.balance", sentence, SignOffPlace.AfterWork)];
    }

    /// <summary>How they are left: the last run as left, or as found where nothing had to be set.</summary>
    public static BalanceRun? Standing(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return Attempts.Last(facts.Finished.Balances.Where(b => b.Stage == Stage.AsLeft))
            ?? Attempts.Last(facts.Finished.Balances.Where(b => b.Stage == Stage.AsFound));
    }
}

/// <summary>Where a leak check is asked for, every place was looked at since it was closed. A leak that was seen holds, asked for or not.</summary>
public sealed class NothingLeaks : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var asked = AskedChecks.Find(facts, VisitCheckKind.LeakCheck);
        return [.. LeakPlaces.StatesOf(facts)
            .Select(place => (place.Place, Sentence: Words(place, asked)))
            .Where(p => p.Sentence is not null)
            .Select(p => new SignOffReason($"afterWork.leaks.{p.Place.Code}", $"{p.Place.Name}: {p.Sentence}", SignOffPlace.AfterWork))];
    }

    private static string? Words(LeakPlaceState place, AskedCheck? asked) => place switch
    {
        { Last.State: LeakState.Leaking } => "leaks. Put it right, run it warm and look again.",
        { TightenedSince: true } when asked is not null => "tightened again since somebody looked for leaks; run it warm and look again.",
        { Last: null } when asked is not null => "nobody has looked for leaks with the engine warm.",
        _ => null,
    };
}

/// <summary>Where a test ride is asked for, one was ridden, or there is a reason why not.</summary>
public sealed class TestRideIsSaid : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return AskedChecks.Find(facts, VisitCheckKind.TestRide) is { } asked && facts.Finished.Rides.Count == 0
            ? [new("afterWork.testRide", $"No test ride was ridden, and nobody says why not; it is asked for {asked.Because}.", SignOffPlace.AfterWork)]
            : [];
    }
}

/// <summary>What is to be looked at once more was, and is in order. What was found not in order holds.</summary>
public sealed class RechecksAreDone : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. Rechecks.Of(facts)
            .Where(r => !r.IsGood && !(r is { Point: RecheckPoint.Cooled, Last: null } && facts.Finished.HandedOverUncooled))
            .Select(r => new SignOffReason($"afterWork.rechecks.{r.Key}", $"{r.Name}: {Words(r)}.", SignOffPlace.AfterWork))];
    }

    private static string Words(RecheckState recheck) => recheck switch
    {
        { Last: null } => "not looked at once more",
        { TightenedSince: true } => "tightened anew since its torque was checked once more",
        _ => "found not in order; put it right and look once more",
    };
}

/// <summary>Where the reminder's reset is asked for, somebody says what became of it.</summary>
public sealed class ReminderIsSaid : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return AskedChecks.Find(facts, VisitCheckKind.ReminderReset) is { } asked && facts.Finished.Reminders.Count == 0
            ? [new("afterWork.reminder", $"Nobody says whether the service reminder is reset, which is asked for {asked.Because}.", SignOffPlace.AfterWork)]
            : [];
    }
}

/// <summary>
/// Where counting is asked for, something was counted in. What was counted in came back, or it is explained where it is; that
/// holds wherever somebody counted.
/// </summary>
public sealed class EverythingIsCountedBack : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (AskedChecks.Find(facts, VisitCheckKind.PartsCounted) is { } asked && !IsCountedIn(facts))
        {
            return [new("afterWork.counts", $"Parts and tools are not counted, which is asked for {asked.Because}.", SignOffPlace.AfterWork)];
        }

        return [.. BayCount.Of(facts).Where(t => !t.IsSettled).Select(t => new SignOffReason(
            $"afterWork.counts.{t.Thing.Code}", $"{t.Thing.Name}: {t.Words}. Find what is short, or explain where it is.", SignOffPlace.AfterWork))];
    }

    /// <summary>Something went in.</summary>
    public static bool IsCountedIn(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return BayCount.Of(facts).Any(t => t.WentIn > 0);
    }
}

/// <summary>Where the workshop asks for it, somebody else has confirmed the readings as left as they stand.</summary>
public sealed class AsLeftSetHasASecondPerson : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.AskAsLeftSecondPerson && AsLeftSet.Of(facts.Readings) is { Count: > 0 } set && set.Confirmed(facts.AsLeftWitnesses) is null
            ? [new("asLeft.secondPerson", AsLeftSet.Words(facts.AsLeftWitnesses), SignOffPlace.Readings)]
            : [];
    }
}
