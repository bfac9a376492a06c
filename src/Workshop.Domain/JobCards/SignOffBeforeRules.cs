using Workshop.Domain.Arrivals;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Ignition;

namespace Workshop.Domain.JobCards;

/// <summary>Where the engine model asks for it, somebody wrote down what was seen on arrival, and what was looked for in vain.</summary>
public sealed class ArrivalStateIsRecorded : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (AskedChecks.Find(facts, VisitCheckKind.ArrivalState) is not { } asked)
        {
            return [];
        }

        var missing = ArrivalRules.Missing(facts.Arrival);
        return missing.Count == 0 ? [] :
            [new("arrival", $"State on arrival, asked for {asked.Because}: not recorded yet: {string.Join("; ", missing)}.", SignOffPlace.CheckIn)];
    }
}

/// <summary>Where the engine model asks for it, every cylinder was tested by compression or leak-down before anything was put right.</summary>
public sealed class CompressionIsMeasured : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (AskedChecks.Find(facts, VisitCheckKind.Compression) is not { } asked)
        {
            return [];
        }

        return [.. CylinderFindings.Of(facts.Specification, facts.CylinderTests, Stage.AsFound, [])
            .Where(f => !f.IsMeasured)
            .Select(f => new SignOffReason(
                $"cylinders.{f.Cylinder}", $"Cylinder {f.Cylinder}: compression or leak-down is asked for ({asked.Because}), but it was not measured.",
                SignOffPlace.Compression))];
    }
}

/// <summary>Where the engine model asks for it, every spark plug was looked at, and goes back with a gap that is allowed.</summary>
public sealed class PlugsAreChecked : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (AskedChecks.Find(facts, VisitCheckKind.Plugs) is not { } asked)
        {
            return [];
        }

        return [.. PlugRules.PlugsOf(facts.Specification)
            .Select(plug => (plug, Against: PlugRules.Standing(facts.PlugChecks, plug) is { } check
                ? PlugRules.AgainstGapLeft(check, facts.Specification.SparkPlugs)
                : $"the spark plugs are asked for ({asked.Because}), but nobody has written down what was seen of it"))
            .Where(p => p.Against is not null)
            .Select(p => new SignOffReason($"plugs.{p.plug}", $"{p.plug.SpokenIn(facts.Specification)}: {p.Against}.", SignOffPlace.Plugs))];
    }
}
