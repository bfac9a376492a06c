using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>What is to be done about a valve's clearance.</summary>
public enum ShimAdvice
{
    /// <summary>It may stay as it is.</summary>
    Keep,

    /// <summary>A lobe has no reading, or one that no thickness can be computed from.</summary>
    MeasureClearance,

    /// <summary>The blades leave it open whether it is out of limits.</summary>
    TryBlade,

    /// <summary>What came out is not known, so what must go in is not either.</summary>
    MeasureShim,

    /// <summary>A shim from the box.</summary>
    FitShim,

    /// <summary>A shim that the box does not hold.</summary>
    OrderShim,

    /// <summary>No permitted thickness helps: something is worn, bent or burnt.</summary>
    Inspect,

    /// <summary>Screw and locknut: set it to the clearance aimed at.</summary>
    SetScrew,

    /// <summary>The shim was changed since it was measured; measure again.</summary>
    MeasureAsLeft,
}

/// <summary>What is known of a valve: its lobes' brackets, its shim.</summary>
/// <param name="Shim">What lay in it when the brackets were taken; nothing where it is not measured.</param>
/// <param name="ChangedSince">A shim was fitted, or the screw turned, after the brackets were taken.</param>
public sealed record MeasuredValve(
    ValveKey Valve, IReadOnlyDictionary<int, Bracket> Lobes, ShimThickness? Shim, bool ChangedSince = false);

/// <summary>Shims of the engine model's own part that lie in the box: so many of one measured thickness.</summary>
public sealed record BoxShim(ShimThickness Thickness, StockCondition Condition, int Count);

/// <summary>One lobe before and after.</summary>
/// <param name="FoundMm">Middle of the bracket; nothing where an end is open.</param>
/// <param name="PredictedMm">With the shim advised; nothing where none is.</param>
public sealed record LobeOutlook(
    int Lobe, Bracket Found, ClearanceVerdict Verdict, ClearanceLimits Limits, decimal? FoundMm, decimal? PredictedMm);

/// <summary>What is advised for one valve, and why.</summary>
public sealed record ShimProposal(
    ValveKey Valve, ShimAdvice Advice, string Why, IReadOnlyList<LobeOutlook> Lobes)
{
    public ShimThickness? Old { get; init; }

    /// <summary>The thickness that would give the clearance aimed at, mm, not rounded.</summary>
    public decimal? IdealMm { get; init; }

    /// <summary>The shim to fit, or to order.</summary>
    public ShimThickness? New { get; init; }

    /// <summary>Of the shim to fit: new, or used before.</summary>
    public StockCondition? Condition { get; init; }
}
