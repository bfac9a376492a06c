namespace Workshop.Domain.Shims;

/// <summary>What an assortment in one step would do for the valves that are foretold to need a shim.</summary>
/// <param name="StepMm">Between sizes, mm.</param>
/// <param name="MeanDistanceMm">Expected distance of the clearance from set-to after fitting the nearest size, mm.</param>
/// <param name="LargestDistanceMm">The largest that can be, mm: half a step times the largest lever ratio.</param>
/// <param name="MeanLifeKm">
/// Expected distance until the clearance leaves its limits again, no valve counted for more than
/// <see cref="StepComparison.LongestLifeKm"/>; absent where no drift is known.
/// </param>
/// <param name="LeastLifeKm">The same where each valve has come out at half a step to the wrong side: what the step assures.</param>
public sealed record StepOutcome(
    decimal StepMm, double MeanDistanceMm, double LargestDistanceMm, double? MeanLifeKm, double? LeastLifeKm);

/// <summary>
/// Common practice, no source: an assortment in steps of 0.02 mm serves better than one of 0.04. Here it is computed, for the
/// valves at hand: each wants some thickness, gets the nearest size of a full box, and drifts on from there.
/// </summary>
public static class StepComparison
{
    /// <summary>Beyond this nobody foretells anything, km.</summary>
    public const double LongestLifeKm = 200_000;

    /// <summary>Thicknesses are weighed in steps of this, mm: the micrometer's.</summary>
    private const double GridMm = 0.001;

    private const double KmPerUnit = 10_000;

    /// <summary>The outcome for one step; nothing where no valve is foretold to need a shim.</summary>
    /// <param name="valves">Those foretold.</param>
    /// <param name="stepMm">Above 0.</param>
    public static StepOutcome? For(IReadOnlyCollection<ValveOutlook> valves, decimal stepMm)
    {
        ArgumentNullException.ThrowIfNull(valves);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stepMm);
        var (weights, distance, largest) = (0.0, 0.0, 0.0);
        var (lives, life, least) = (0.0, 0.0, 0.0);
        foreach (var valve in valves)
        {
            var (ratio, asked) = ((double)valve.Limits.LeverRatio.Value, valve.Comes * valve.NeedsShim);
            var (first, last) = ((double)valve.Permitted.Smallest.Millimetres, (double)valve.Permitted.Largest.Millimetres);
            var half = ratio * (double)stepMm / 2;
            largest = Math.Max(largest, half);
            for (var wanted = first + (GridMm / 2); wanted < last; wanted += GridMm)
            {
                var weight = asked * valve.Wants(wanted - (GridMm / 2), wanted + (GridMm / 2));
                if (weight < 1e-12)
                {
                    continue;
                }

                // Too thick by so much, the clearance is too small by its lever ratio's worth.
                var away = ratio * (wanted - Nearest(wanted, first, last, (double)stepMm));
                weights += weight;
                distance += weight * Math.Abs(away);
                if (valve.DriftMmPer10000Km is { } drift)
                {
                    lives += weight;
                    life += weight * LifeKm(valve, drift, away);
                    least += weight * LifeKm(valve, drift, drift < 0 ? -half : half);
                }
            }
        }

        return weights == 0
            ? null
            : new StepOutcome(
                stepMm, distance / weights, largest,
                lives == 0 ? null : life / lives, lives == 0 ? null : least / lives);
    }

    private static double Nearest(double wanted, double first, double last, double step)
    {
        var size = first + (step * Math.Round((wanted - first) / step));
        return size > last + 1e-9 ? size - step : size;
    }

    /// <param name="awayMm">How far above set-to the clearance is left.</param>
    private static double LifeKm(ValveOutlook valve, double drift, double awayMm)
    {
        var limits = valve.Limits;
        var setTo = limits.SetTo.Millimetres;
        var left = drift < 0 ? (double)(setTo - limits.Lower.Millimetres) + awayMm : (double)(limits.Upper.Millimetres - setTo) - awayMm;
        return left <= 0 ? 0 : Math.Min(left / Math.Abs(drift) * KmPerUnit, LongestLifeKm);
    }
}
