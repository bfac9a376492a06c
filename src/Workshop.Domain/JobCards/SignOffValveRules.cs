using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Shims;

namespace Workshop.Domain.JobCards;

/// <summary>A valve clearance check that counts as done has every lobe measured as found.</summary>
public sealed class EveryValveIsMeasuredAsFound : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Done.FirstOrDefault(i => i.Kind == ServiceItemKind.ValveClearanceCheck) is { } check
            ? [.. ReadingRules.LobesOf(facts.Specification)
                .Where(lobe => ReadingRules.Standing(facts.Readings, lobe, Stage.AsFound) is null)
                .Select(lobe => ValveReasons.Of(lobe, $"\"{check.Name}\" is booked, but it was not measured as found."))]
            : [];
    }
}

/// <summary>
/// Every valve that was disturbed is measured as left, each of its lobes; what was only carried over from as found does not
/// count, nor what was measured before the valve was changed once more.
/// </summary>
public sealed class DisturbedValvesAreMeasuredAsLeft : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var disturbed = facts.Disturbed;
        return [.. ReadingRules.LobesOf(facts.Specification)
            .Where(lobe => disturbed.ContainsKey(lobe.Valve))
            .Select(lobe => ReadingRules.Standing(facts.Readings, lobe, Stage.AsLeft) switch
            {
                null or { NotRemeasured: true } =>
                    ValveReasons.Of(lobe, $"disturbed, since {disturbed[lobe.Valve]}, but not measured as left."),
                { } left when left.MeasuredAt < DisturbedValves.LastChangeOf(lobe.Valve, facts.Shims, facts.Events) =>
                    ValveReasons.Of(lobe, "changed again after it was measured as left; measure it once more."),
                _ => null,
            })
            .OfType<SignOffReason>()];
    }
}

/// <summary>
/// No lobe is left with a clearance that is certainly outside its limits, measured as left or found so and left alone; unless
/// the person accepts it with a remark. What the blades leave undecided is no reason.
/// </summary>
public sealed class ClearancesAreLeftWithinLimits : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.OutsideAccepted ? [] : [.. Outside(facts).Select(o =>
            ValveReasons.Of(o.Lobe, $"{o.Words}; adjust it, or accept it with a remark."))];
    }

    /// <summary>The lobes that are left outside their limits, whether accepted or not, with what was measured in words.</summary>
    public static IReadOnlyList<(LobeKey Lobe, string Words)> Outside(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var disturbed = facts.Disturbed;
        return [.. ReadingRules.LobesOf(facts.Specification)
            .Select(lobe => (Lobe: lobe, Left: Left(facts, lobe, disturbed.ContainsKey(lobe.Valve))))
            .Where(l => l.Left is not null)
            .Select(l => (l.Lobe, l.Left!.Value.Words, Verdict: ClearanceVerdict.Of(
                l.Left.Value.Reading.Bracket, ReadingRules.LimitsOf(facts.Specification, l.Lobe))))
            .Where(l => l.Verdict.IsOut)
            .Select(l => (l.Lobe, $"{l.Words} {l.Verdict.Sentence}"))];
    }

    /// <summary>What stands of a lobe at the end of the visit; nothing for one that was not measured, or not since it was disturbed.</summary>
    private static (ClearanceReading Reading, string Words)? Left(SignOffFacts facts, LobeKey lobe, bool disturbed) =>
        ReadingRules.Standing(facts.Readings, lobe, Stage.AsLeft) is { } left && !(disturbed && left.NotRemeasured)
            ? (left, left.NotRemeasured ? "found and left" : "as left")
            : !disturbed && ReadingRules.Standing(facts.Readings, lobe, Stage.AsFound) is { } found
                ? (found, "found and left")
                : null;
}

/// <summary>
/// No valve is left that would need a thickness beyond what is permitted: that is no matter of shims, and no remark makes it
/// good. The gate opens once a part of the valve is changed on the card and it is measured again; or the check is not done, and
/// so stays due.
/// </summary>
public sealed class NoValveNeedsInspection : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (!facts.Done.Any(i => i.Kind is ServiceItemKind.ValveClearanceCheck or ServiceItemKind.ValveClearanceAdjustment))
        {
            return [];
        }

        var plan = ShimPlanner.For(new PlanTask
        {
            Specification = facts.Specification,
            Measured = MeasuredValves.Of(facts.Specification, facts.Readings, facts.Shims, facts.Events, facts.ShimsBefore),
            Shims = [],
        });
        return [.. plan.Valves
            .Where(v => v.BeyondPermitted && !facts.Changes.Any(c => c.Valve is null || c.Valve == v.Valve))
            .Select(v => ValveReasons.Of(new LobeKey(v.Valve),
                $"{v.Why} Sign-off is held until it is inspected and its part changed, or the check is said not to be done.") with { Place = SignOffPlace.Shims })];
    }
}

/// <summary>How a reason names a lobe.</summary>
internal static class ValveReasons
{
    public static SignOffReason Of(LobeKey lobe, string sentence) => new(
        lobe.Lobe == 1 ? $"valves.{lobe.Valve}" : $"valves.{lobe.Valve}.lobe{lobe.Lobe}",
        $"{char.ToUpperInvariant(lobe.Spoken[0])}{lobe.Spoken[1..]}: {sentence}",
        SignOffPlace.Readings);
}
