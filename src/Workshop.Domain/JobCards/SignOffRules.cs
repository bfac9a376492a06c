using Workshop.Domain.Outcomes;

namespace Workshop.Domain.JobCards;

/// <summary>Where a person goes to put right what stands in the way of a sign-off.</summary>
public enum SignOffPlace
{
    Card,
    CheckIn,
    Cautions,
    TorqueSheet,
    Seals,
    Readings,
    Shims,
    Findings,
    CamTiming,
    AfterWork,
    Compression,
    Plugs,
}

/// <summary>One thing that stands in the way of a sign-off.</summary>
/// <param name="Subject">What it is about, for programs: <c>fasteners.drain-plug</c>, <c>valves.1-intake-1</c>.</param>
/// <param name="Sentence">Names the valve, fastener or caution.</param>
/// <param name="Place">Where it is put right.</param>
public sealed record SignOffReason(string Subject, string Sentence, SignOffPlace Place);

/// <summary>A gate before the sign-off: looks at the facts of a visit and says what stands in the way.</summary>
public interface ISignOffRule
{
    /// <summary>Nothing where the rule has nothing against it.</summary>
    IReadOnlyList<SignOffReason> Against(SignOffFacts facts);
}

/// <summary>All gates before a sign-off. A new one is a class beside these and a line here.</summary>
public static class SignOffRules
{
    public static readonly IReadOnlyList<ISignOffRule> All =
    [
        new CardIsOpen(),
        new ArrivalStateIsRecorded(),
        new EveryValveIsMeasuredAsFound(),
        new CompressionIsMeasured(),
        new PlugsAreChecked(),
        new DisturbedValvesAreMeasuredAsLeft(),
        new ClearancesAreLeftWithinLimits(),
        new NoValveNeedsInspection(),
        new OpenedFastenersAreTicked(),
        new OpenedSealsAreInspected(),
        new MarkedFastenersHaveASecondPerson(),
        new CamTimingIsCheckedAsFound(),
        new OpenedDrivesAreRechecked(),
        new CamTimingIsLeftRight(),
        new AsLeftSetHasASecondPerson(),
        new CylindersAreBalanced(),
        new NothingLeaks(),
        new TestRideIsSaid(),
        new RechecksAreDone(),
        new ReminderIsSaid(),
        new EverythingIsCountedBack(),
        new CautionsAreAcknowledged(),
        new FindingsAreAnswered(),
    ];

    /// <summary>Everything that stands in the way, in the order of the rules; empty where the card may be signed off.</summary>
    public static IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);

        // On a card that is not open, nothing else matters yet or any more.
        var closed = new CardIsOpen().Against(facts);
        return closed.Count > 0 ? closed : [.. All.SelectMany(rule => rule.Against(facts))];
    }

    /// <summary>The same as a refusal; nothing where the card may be signed off.</summary>
    public static Problem? Refuse(SignOffFacts facts)
    {
        var reasons = Against(facts);
        return reasons.Count == 0
            ? null
            : new Problem(ProblemKind.Conflict, "not-ready", string.Join(" ", reasons.Select(r => r.Sentence)))
            {
                Faults = [.. reasons.Select(r => new FieldFault(r.Subject, r.Sentence))],
            };
    }
}
