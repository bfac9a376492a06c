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
}
