using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>Which shims the workshop's policy lets a motorcycle have.</summary>
public static class UsedShims
{
    /// <summary>Two readings of one shim differ by no more than this, mm: two micrometers and a film of oil. Common practice, no source.</summary>
    public const decimal SameShimMm = 0.010m;

    /// <summary>A shim that measures this much less than its size is worn out, mm. Common practice, no source.</summary>
    public const decimal MostWearMm = 0.030m;

    /// <summary>Whether a shim may go into a valve of this motorcycle. Putting one back into its own valve is no matter of policy.</summary>
    public static bool Allows(this UsedShimPolicy policy, StockCondition condition, Guid? cameFrom, Guid motorcycle) =>
        condition == StockCondition.New || policy switch
        {
            UsedShimPolicy.Yes => true,
            UsedShimPolicy.OwnMachineOnly => cameFrom == motorcycle,
            _ => false,
        };

    /// <summary>Whether both thicknesses may be of one and the same shim.</summary>
    public static bool MayBeSame(ShimThickness one, ShimThickness other) => decimal.Abs(one - other) <= SameShimMm;

    /// <summary>Whether wear has taken more from a shim than the workshop accepts; false where its size is not noted.</summary>
    public static bool IsWornOut(ShimThickness? nominal, ShimThickness measured) => nominal - measured > MostWearMm;
}
