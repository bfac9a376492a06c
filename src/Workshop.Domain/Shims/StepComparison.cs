namespace Workshop.Domain.Shims;

/// <summary>What an assortment in one step would do for the valves that are foretold to need a shim.</summary>
/// <param name="StepMm">Between sizes, mm.</param>
/// <param name="MeanDistanceMm">Expected distance of the clearance from set-to after fitting the nearest size, mm.</param>
/// <param name="LargestDistanceMm">The largest that can be, mm: half a step times the largest lever ratio.</param>
/// <param name="MeanLifeKm">Expected distance until the clearance leaves its limits again; absent where no drift is known.</param>
/// <param name="LifeOfNineInTenKm">The distance that nine of ten reach.</param>
public sealed record StepOutcome(
    decimal StepMm, double MeanDistanceMm, double LargestDistanceMm, double? MeanLifeKm, double? LifeOfNineInTenKm);

/// <summary>
/// Common practice, no source: an assortment in steps of 0.02 mm serves better than one of 0.04. Here it is computed, for the
/// valves at hand: each wants some thickness, gets the nearest size of a full box, and drifts on from there.
/// </summary>
public static class StepComparison
{
    /// <summary>Thicknesses are weighed in steps of this, mm: the micrometer's.</summary>
    private const double GridMm = 0.001;

    private const double KmPerUnit = 10_000;
    private const double SlowestDrift = 1e-6;
    private const double TenthShortest = 0.1;

    /// <summary>The outcome for one step; nothing where no valve is foretold to need a shim.</summary>
    /// <param name="valves">Those foretold.</param>
    /// <param name="stepMm">Above 0.</param>
    public static StepOutcome? For(IReadOnlyCollection<ValveOutlook> valves, decimal stepMm)
    {
        ArgumentNullException.ThrowIfNull(valves);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stepMm);
        var (weights, distance, largest) = (0.0, 0.0, 0.0);
        var lives = new List<(double Km, double Weight)>();
        foreach (var valve in valves)
        {
            var (ratio, asked) = ((double)valve.Limits.LeverRatio.Value, valve.Comes * valve.NeedsShim);
            var (first, last) = ((double)valve.Permitted.Smallest.Millimetres, (double)valve.Permitted.Largest.Millimetres);
            largest = Math.Max(largest, ratio * (double)stepMm / 2);
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
                if (LifeKm(valve, away) is { } life)
                {
                    lives.Add((life, weight));
                }
            }
        }

        return weights == 0
            ? null
            : new StepOutcome(
                stepMm, distance / weights, largest,
                lives.Count == 0 ? null : lives.Sum(l => l.Km * l.Weight) / lives.Sum(l => l.Weight), Shortest(lives));
    }

    private static double Nearest(double wanted, double first, double last, double step)
    {
        var size = first + (step * Math.Round((wanted - first) / step));
        return size > last + 1e-9 ? size - step : size;
    }

    private static double? LifeKm(ValveOutlook valve, double awayMm)
    {
        if (valve.DriftMmPer10000Km is not { } drift || Math.Abs(drift) < SlowestDrift)
        {
            return null;
        }

        var limits = valve.Limits;
        var end = drift < 0 ? limits.Lower : limits.Upper;
        return Math.Max(((double)(end.Millimetres - limits.SetTo.Millimetres) - awayMm) / drift * KmPerUnit, 0);
    }

    private static double? Shortest(List<(double Km, double Weight)> lives)
    {
        var (wanted, sum) = (lives.Sum(l => l.Weight) * TenthShortest, 0.0);
        foreach (var (km, weight) in lives.OrderBy(l => l.Km))
        {
            sum += weight;
            if (sum >= wanted)
            {
                return km;
            }
        }

        return null;
    }
}
