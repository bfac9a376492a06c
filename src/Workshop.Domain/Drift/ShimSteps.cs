using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>From a distance on, the shims' part of y* is so much, in mm, until the next step.</summary>
/// <param name="From">What the engine had done.</param>
/// <param name="PartMm">Lever ratio x (shim now - first shim of the leg).</param>
public sealed record ShimStep(Distance From, decimal PartMm);

/// <summary>The way between clearance and y* at every distance of a leg, for pictures of either.</summary>
public static class ShimSteps
{
    /// <summary>
    /// The steps of one leg in order, the first at its first reading. A step lies where the swap is recorded; where two
    /// readings differ with no swap recorded between them, at the later one.
    /// </summary>
    /// <param name="history">The lobe's history.</param>
    /// <param name="number">The leg's place in <see cref="LobeHistory.Legs"/>.</param>
    public static IReadOnlyList<ShimStep> Of(LobeHistory history, int number)
    {
        ArgumentNullException.ThrowIfNull(history);
        var readings = history.Legs[number].Readings;
        var steps = new List<ShimStep> { new(readings[0].At, readings[0].ShimPartMm) };
        for (var i = 1; i < readings.Count; i++)
        {
            Add(steps, SwapBetween(history, readings[i - 1].At, readings[i].At) ?? readings[i].At, readings[i].ShimPartMm);
        }

        if (number == history.Legs.Count - 1 && history.CutSinceLastReading is null)
        {
            var last = readings[^1].At;
            Add(steps, history.Changes.LastOrDefault(c => c.Cut is null && c.At >= last)?.At ?? last, history.ShimPartNowMm);
        }

        return steps;
    }

    /// <summary>The shims' part that holds just after a distance.</summary>
    public static decimal At(this IReadOnlyList<ShimStep> steps, Distance distance) =>
        (steps.LastOrDefault(s => s.From <= distance) ?? steps[0]).PartMm;

    private static Distance? SwapBetween(LobeHistory history, Distance from, Distance to) =>
        history.Changes.LastOrDefault(c => c.Cut is null && c.At >= from && c.At <= to)?.At;

    private static void Add(List<ShimStep> steps, Distance from, decimal partMm)
    {
        if (steps[^1].PartMm != partMm)
        {
            steps.Add(new ShimStep(from, partMm));
        }
    }
}
