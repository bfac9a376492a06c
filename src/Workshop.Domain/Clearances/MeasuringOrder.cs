using Workshop.Domain.EngineModels;

namespace Workshop.Domain.Clearances;

/// <summary>Where the crankshaft is turned to for some lobes.</summary>
/// <param name="Name">As the specification names the position.</param>
/// <param name="Lobes">The lobes that are measured there, each at one position only.</param>
public sealed record MeasuringStop(string Name, IReadOnlyList<LobeKey> Lobes);

/// <summary>
/// In which order lobes are measured: position after position in running direction, at each every lobe that may be measured
/// there, never back.
/// </summary>
public static class MeasuringOrder
{
    /// <summary>What lobes are measured at that the specification puts nowhere.</summary>
    public const string NoPosition = "No position stated";

    /// <summary>
    /// The positions in running direction, each lobe at the first that the crankshaft comes to; lobes that stand nowhere come last.
    /// </summary>
    public static IReadOnlyList<MeasuringStop> Of(EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        var left = ReadingRules.LobesOf(specification).ToHashSet();
        var stops = specification.MeasuringPositions
            .Select(p => new MeasuringStop(p.Name, p.Lobes.Where(left.Remove).ToArray()))
            .Where(s => s.Lobes.Count > 0).ToList();
        if (left.Count > 0)
        {
            stops.Add(new MeasuringStop(NoPosition, left.Order().ToArray()));
        }

        return stops;
    }

    /// <summary>
    /// The next lobe to measure: after the present one at the same position, else at the positions that follow in running
    /// direction, round to the present one again; nothing where all are measured.
    /// </summary>
    /// <param name="stops">In running direction.</param>
    /// <param name="open">Lobes that are still to be measured.</param>
    /// <param name="after">The lobe measured last; nothing at the start.</param>
    public static LobeKey? Next(IReadOnlyList<MeasuringStop> stops, IReadOnlySet<LobeKey> open, LobeKey? after)
    {
        ArgumentNullException.ThrowIfNull(stops);
        ArgumentNullException.ThrowIfNull(open);
        var here = after is { } last ? Array.FindIndex(stops.ToArray(), s => s.Lobes.Contains(last)) : -1;
        var turn = stops.SelectMany(s => s.Lobes).ToList();
        var behind = here < 0 ? 0 : turn.IndexOf(after!.Value) + 1;
        var first = here < 0 ? 0 : turn.IndexOf(stops[here].Lobes[0]);

        // What was jumped over at this position comes before the crankshaft is turned on.
        var before = here < 0 ? [] : stops[here].Lobes.Where(l => turn.IndexOf(l) < behind);
        var atThis = here < 0 ? [] : stops[here].Lobes.Where(l => turn.IndexOf(l) >= behind);
        var further = turn.Skip(here < 0 ? 0 : first + stops[here].Lobes.Count).Concat(turn.Take(first));
        foreach (var lobe in atThis.Concat(before).Concat(further))
        {
            if (open.Contains(lobe))
            {
                return lobe;
            }
        }

        return null;
    }
}
