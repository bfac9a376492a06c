using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Shims;

/// <summary>How many shims of one size are asked for.</summary>
/// <param name="Expected">The mean.</param>
/// <param name="Variance">Wider than the mean where motorcycles bring many valves that want the same.</param>
public sealed record SizeDemand(ShimThickness Size, double Expected, double Variance)
{
    /// <summary>Poisson, or negative binomial where the variance is larger.</summary>
    public CountLaw Law => CountLaw.WithMoments(Expected, Variance);
}

/// <summary>What is asked for of a series.</summary>
/// <param name="Sizes">Of the series, every one, the thinnest first.</param>
/// <param name="Beyond">Valves expected to want a thickness beyond what their engine permits: they need inspection, no shim.</param>
public sealed record DemandBySize(IReadOnlyList<SizeDemand> Sizes, double Beyond);

/// <summary>
/// From what is foretold of the valves to how many shims of each size: a valve asks for the size nearest to the thickness that
/// it will want. Given that its motorcycle comes, each valve asks or does not, independently; whether it comes, its valves share.
/// </summary>
public static class ShimDemand
{
    /// <summary>The demand for each size of a box.</summary>
    /// <param name="valves">Of engines that take this series.</param>
    /// <param name="series">The sizes.</param>
    public static DemandBySize Of(IReadOnlyCollection<ValveOutlook> valves, BoxMap series)
    {
        ArgumentNullException.ThrowIfNull(valves);
        ArgumentNullException.ThrowIfNull(series);
        var half = (double)series.StepMm / 2;
        var motorcycles = valves.GroupBy(v => v.Motorcycle).Select(g => g.ToList()).ToList();
        var sizes = series.Compartments.Select(c =>
        {
            var (expected, variance) = (0.0, 0.0);
            foreach (var motorcycle in motorcycles)
            {
                // Law of total variance over "comes or does not", the chances within a motorcycle taken as its first valve's.
                var comes = motorcycle[0].Comes;
                var asks = motorcycle.Select(v => IsPermitted(v, c.Nominal) ? v.NeedsShim * v.Wants(Lower(c.Nominal, half), Upper(c.Nominal, half)) : 0).ToList();
                var mean = asks.Sum();
                expected += comes * mean;
                variance += (comes * asks.Sum(a => a * (1 - a))) + (comes * (1 - comes) * mean * mean);
            }

            return new SizeDemand(c.Nominal, expected, variance);
        }).ToList();
        return new DemandBySize(sizes, valves.Sum(v => v.Comes * v.NeedsShim) - sizes.Sum(s => s.Expected));
    }

    private static bool IsPermitted(ValveOutlook valve, ShimThickness size) =>
        size >= valve.Permitted.Smallest && size <= valve.Permitted.Largest;

    private static double Lower(ShimThickness size, double half) => (double)size.Millimetres - half;

    private static double Upper(ShimThickness size, double half) => (double)size.Millimetres + half;
}
