using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;

namespace Workshop.Domain.JobCards;

/// <summary>A check that a visit needs before its sign-off.</summary>
/// <param name="Because">Why: "on every visit", "after Valve clearance check".</param>
/// <param name="Stated">As the engine model states it; absent for a re-check that stands in what follows the work alone.</param>
/// <param name="Cooled">Of a re-check: the engine cools first.</param>
public sealed record AskedCheck(VisitCheckKind Kind, string Because, CheckOnVisit? Stated = null, Recheck? Cooled = null);

/// <summary>What is asked for on a visit beside its service items; nothing where the engine model asks for nothing.</summary>
public static class AskedChecks
{
    /// <summary>In the order of the kinds, each once.</summary>
    /// <param name="specification">That the card pinned.</param>
    /// <param name="items">Service items under way, without those of which somebody says that they were not even begun.</param>
    /// <param name="tight">Valves found tight.</param>
    /// <param name="complaint">The owner complains of how it runs.</param>
    public static IReadOnlyList<AskedCheck> Of(
        EngineSpecification specification, IReadOnlyCollection<ServiceItem> items, IReadOnlyCollection<ValveKey> tight, bool complaint)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(tight);
        var stated = specification.VisitChecks
            .Select(check => (Check: check, Because: Because(specification, check, items, tight, complaint)))
            .Where(c => c.Because is not null)
            .Select(c => new AskedCheck(c.Check.Kind, c.Because!, c.Check))
            .ToList();
        if (specification.RecheckAfter(items) is { } cooled)
        {
            var because = $"after {Named(items.Where(i => cooled.AfterItems.Contains(i.Code)))}";
            var at = stated.FindIndex(c => c.Kind == VisitCheckKind.Recheck);
            if (at >= 0)
            {
                stated[at] = stated[at] with { Cooled = cooled };
            }
            else
            {
                stated.Add(new AskedCheck(VisitCheckKind.Recheck, because, null, cooled));
            }
        }

        return stated.OrderBy(c => c.Kind).ToArray();
    }

    /// <summary>Of a visit as its facts stand.</summary>
    public static IReadOnlyList<AskedCheck> Of(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return Of(facts.Specification, facts.Begun, TightValves(facts.Specification, facts.Readings), facts.Complaint);
    }

    /// <summary>The check where the visit needs it; nothing where it does not.</summary>
    public static AskedCheck? Find(SignOffFacts facts, VisitCheckKind kind) => Of(facts).FirstOrDefault(c => c.Kind == kind);

    /// <summary>Valves of which a lobe was certainly too tight as found, or let no blade in, by the attempts that count.</summary>
    public static IReadOnlyList<ValveKey> TightValves(EngineSpecification specification, IReadOnlyCollection<ClearanceReading> readings)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(readings);
        return ReadingRules.LobesOf(specification)
            .Where(lobe => ReadingRules.Standing(readings, lobe, Stage.AsFound) is { } found
                && (found.Kind == BracketKind.NoneEnters
                    || ClearanceVerdict.Of(found.Bracket, ReadingRules.LimitsOf(specification, lobe)).Verdict == Verdict.TooTight))
            .Select(lobe => lobe.Valve).Distinct().ToArray();
    }

    private static string? Because(
        EngineSpecification specification, CheckOnVisit check, IReadOnlyCollection<ServiceItem> items, IReadOnlyCollection<ValveKey> tight, bool complaint)
    {
        var after = items.Where(i => check.AfterItems.Contains(i.Code)).ToArray();
        return check.Asked switch
        {
            WhenAsked.Always => check.SpokenWhen(specification),
            WhenAsked.AfterItems => after.Length > 0 ? $"after {Named(after)}" : null,
            WhenAsked.TightOrComplaint => tight.Count > 0 ? $"found tight: {string.Join("; ", tight.Select(v => v.Spoken))}"
                : complaint ? "the owner complains of how it runs" : null,
            _ => throw new InvalidOperationException($"Nobody says when {check.Asked} is."),
        };
    }

    private static string Named(IEnumerable<ServiceItem> items) => string.Join("; ", items.Select(i => i.Name));
}
