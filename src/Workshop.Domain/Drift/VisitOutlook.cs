using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Drift;

/// <summary>What a visit is likely to find, said before the cover opens.</summary>
public static class VisitOutlook
{
    /// <summary>From this probability of being outside its limits a valve is expected to need adjustment.</summary>
    public const double Expected = 0.5;

    /// <summary>From this one it may.</summary>
    public const double Possible = 0.1;

    /// <summary>"Expect to shim exhaust 2 and 4; possible: intake 1." in the numbering of the specification.</summary>
    /// <param name="specification">The engine.</param>
    /// <param name="outside">The probability of each lobe of being outside its limits at the visit, where one is known.</param>
    public static string Say(EngineSpecification specification, IReadOnlyDictionary<LobeKey, double> outside)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(outside);
        if (outside.Count == 0)
        {
            return "Nothing is known of its valves yet.";
        }

        var work = specification.Shims is null ? "set" : "shim";
        var expected = Names(outside.Where(o => o.Value >= Expected));
        var possible = Names(outside.Where(o => o.Value is >= Possible and < Expected));
        return (expected, possible) switch
        {
            ("", "") => $"Expect every valve within its limits: none is outside with more than {100 * Possible:0} %.",
            ("", _) => $"No valve is expected to need work; possible: {possible}.",
            (_, "") => $"Expect to {work} {expected}.",
            _ => $"Expect to {work} {expected}; possible: {possible}.",
        };
    }

    /// <summary>A valve with two lobes is said once.</summary>
    private static string Names(IEnumerable<KeyValuePair<LobeKey, double>> lobes)
    {
        var valves = lobes.Select(l => l.Key.Valve).Distinct().Order().Select(v => v.Spoken).ToList();
        return valves.Count < 2 ? string.Concat(valves) : $"{string.Join("; ", valves.SkipLast(1))} and {valves[^1]}";
    }
}
