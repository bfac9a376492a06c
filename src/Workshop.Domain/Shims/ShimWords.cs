using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>How advice is said on a page.</summary>
public static class ShimWords
{
    /// <summary>What to do, in a few words.</summary>
    public static string Spoken(this ShimAdvice advice) => advice switch
    {
        ShimAdvice.Keep => "stays as it is",
        ShimAdvice.MeasureClearance => "measure the clearance",
        ShimAdvice.TryBlade => "not decided",
        ShimAdvice.MeasureShim => "measure the shim",
        ShimAdvice.FitShim => "fit a shim",
        ShimAdvice.OrderShim => "order a shim",
        ShimAdvice.Inspect => "inspect",
        ShimAdvice.SetScrew => "set the screw",
        ShimAdvice.MeasureAsLeft => "measure as left",
        _ => throw new ArgumentOutOfRangeException(nameof(advice), advice, null),
    };

    /// <summary>What valves are set to.</summary>
    public static string Spoken(this PlanAim aim) => aim switch
    {
        PlanAim.SetTo => "the clearance that the maker says",
        PlanAim.LongestLife => "the side from which they drift, for the longest life",
        _ => throw new ArgumentOutOfRangeException(nameof(aim), aim, null),
    };

    /// <summary>The guard band, in a few words.</summary>
    public static string Spoken(this Clearances.GuardBand band) => band switch
    {
        Clearances.GuardBand.Off => "off: the limits themselves",
        Clearances.GuardBand.At95Percent => "1.65 u, 95 % at a limit",
        Clearances.GuardBand.ExpandedUncertainty => "U = 2 u",
        _ => throw new ArgumentOutOfRangeException(nameof(band), band, null),
    };
}

/// <summary>How shims and what becomes of them are said on a page.</summary>
public static class ShimBoxWords
{
    /// <summary>As a reason: "pitted".</summary>
    public static string Spoken(this ScrapReason reason) => reason switch
    {
        ScrapReason.Pitted => "pitted",
        ScrapReason.Dished => "dished",
        ScrapReason.Chipped => "chipped",
        ScrapReason.Blued => "blued by heat",
        ScrapReason.Worn => "worn beyond the limit",
        ScrapReason.Expired => "expired",
        ScrapReason.Damaged => "damaged",
        ScrapReason.Contaminated => "opened, dirty or wet",
        ScrapReason.Obsolete => "not needed any more",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };

    /// <summary>The policy as an answer to "used shims?".</summary>
    public static string Spoken(this UsedShimPolicy policy) => policy switch
    {
        UsedShimPolicy.Never => "never",
        UsedShimPolicy.OwnMachineOnly => "own machine only",
        UsedShimPolicy.Yes => "yes",
        _ => throw new ArgumentOutOfRangeException(nameof(policy), policy, null),
    };

    /// <summary>How it ended.</summary>
    public static string Spoken(this ShimEnd end) => end switch
    {
        ShimEnd.Scrapped => "scrapped",
        ShimEnd.Missing => "missing",
        ShimEnd.Issued => "handed out",
        _ => throw new ArgumentOutOfRangeException(nameof(end), end, null),
    };

    /// <summary>What a movement was to one shim.</summary>
    public static string SpokenOfShim(this MovementKind kind) => kind switch
    {
        MovementKind.Received => "came in",
        MovementKind.Issued => "fitted",
        MovementKind.CameOut => "came out",
        MovementKind.Returned => "put away",
        MovementKind.Counted => "put right by a count",
        MovementKind.Scrapped => "scrapped",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
