using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Shims;

/// <summary>One size: how many are asked for, how many to hold, how many to order.</summary>
/// <param name="Expected">Expected demand over the time.</param>
/// <param name="Hold">The base-stock level: enough with the service level's probability.</param>
/// <param name="OnHand">In the box now, in this size's compartment.</param>
/// <param name="Order">What is missing to the level.</param>
/// <param name="ExpectedMissing">How many are expected to be asked for and not there, once the order has come.</param>
/// <param name="IsWide">By the negative binomial law: motorcycles bring several valves that want this size.</param>
public sealed record SizeToHold(
    ShimThickness Size, double Expected, double Variance, int Hold, int OnHand, int Order, double ExpectedMissing, bool IsWide);

/// <summary>Which shims to hold, size by size.</summary>
public static class Stocking
{
    /// <summary>The level and the order of every size of a series.</summary>
    /// <param name="demand">Over the time until the next order has come.</param>
    /// <param name="onHand">What lies in the box, by size of the series.</param>
    /// <param name="serviceLevel">The probability, size by size, that nobody asks in vain; above 0 and below 1.</param>
    public static IReadOnlyList<SizeToHold> Propose(
        DemandBySize demand, IReadOnlyDictionary<ShimThickness, int> onHand, double serviceLevel)
    {
        ArgumentNullException.ThrowIfNull(demand);
        ArgumentNullException.ThrowIfNull(onHand);
        return [.. demand.Sizes.Select(size =>
        {
            var (law, there) = (size.Law, onHand.TryGetValue(size.Size, out var count) ? count : 0);
            var hold = law.SmallestCovering(serviceLevel);
            return new SizeToHold(
                size.Size, size.Expected, size.Variance, hold, there, Math.Max(hold - there, 0),
                law.ExpectedMissing(Math.Max(hold, there)), law is NegativeBinomialLaw);
        })];
    }
}
