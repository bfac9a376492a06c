using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

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

    /// <summary>Another shim: from the box, from the bench or from another valve.</summary>
    FitShim,

    /// <summary>A shim that is not to be had here.</summary>
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
/// <param name="Empty">That shim is out, and no other in yet.</param>
public sealed record MeasuredValve(
    ValveKey Valve, IReadOnlyDictionary<int, Bracket> Lobes, ShimThickness? Shim, bool ChangedSince = false, bool Empty = false);

/// <summary>One lobe before and after.</summary>
/// <param name="LevelMm">The clearance now; nothing where an end of the bracket is open and no history tells.</param>
/// <param name="FromHistory">The level is from the lobe's history, not the middle of its bracket.</param>
/// <param name="AimMm">What a shim is chosen for.</param>
public sealed record LobeOutlook(
    int Lobe, Bracket Found, ClearanceVerdict Verdict, ClearanceLimits Limits, decimal? LevelMm, bool FromHistory, decimal AimMm)
{
    /// <summary>With the shim advised; nothing where none is.</summary>
    public decimal? PredictedMm { get; init; }

    /// <summary>Change of clearance per 10,000 km, mm; nothing where it is not known.</summary>
    public decimal? DriftMmPer10000Km { get; init; }

    /// <summary>
    /// How far it goes at its drift until a limit, in km: with the shim advised, or as it is. Nothing where the drift is not
    /// known or none, or where it is outside.
    /// </summary>
    public decimal? LastsKm => (PredictedMm ?? LevelMm, DriftMmPer10000Km) switch
    {
        ({ } mm, < 0 and var drift) when mm >= Limits.Lower.Millimetres => 10_000 * (mm - Limits.Lower.Millimetres) / -drift,
        ({ } mm, > 0 and var drift) when mm <= Limits.Upper.Millimetres => 10_000 * (Limits.Upper.Millimetres - mm) / drift,
        _ => null,
    };

    /// <summary>Standard uncertainty, mm: of the prediction where a shim is advised, else of the level.</summary>
    public double UncertaintyMm { get; init; }

    /// <summary>By the guard band: the level, or the prediction, lies near a limit.</summary>
    public bool NearLimit { get; init; }

    /// <summary>Probability of leaving the limits before the next check if nothing is changed; nothing without a forecast.</summary>
    public double? LeavesNow { get; init; }

    /// <summary>The same with the shim advised.</summary>
    public double? LeavesThen { get; init; }
}

/// <summary>
/// What a plan costs, in the order in which plans are compared. Whole numbers, so that a plan is better or is not.
/// </summary>
/// <param name="Outside">Valves left outside their limits.</param>
/// <param name="Likely">Valves more likely than the threshold to leave them before the next check.</param>
/// <param name="Shafts">Camshafts or follower shafts that have to come out.</param>
/// <param name="Changed">Valves changed; one that is near a limit, under a shaft that comes out anyway, is not counted.</param>
/// <param name="NearLimit">Valves left near a limit, by the guard band.</param>
/// <param name="FromBox">Shims taken from the box.</param>
/// <param name="DistanceMicrometres">Sum of the valves' distances from their aims, each in whole 0.001 mm.</param>
public sealed record PlanTotals(int Outside, int Likely, int Shafts, int Changed, int NearLimit, int FromBox, long DistanceMicrometres)
{
    /// <summary>Below zero where this plan is better than the other; 0 where they are equally good.</summary>
    /// <param name="other">Of the same task.</param>
    /// <param name="setAll">Every valve is to be set: nearness to the aim then goes before what has to come out.</param>
    public int CompareTo(PlanTotals other, bool setAll)
    {
        ArgumentNullException.ThrowIfNull(other);
        var (mine, theirs) = (InOrder(setAll), other.InOrder(setAll));
        for (var i = 0; i < mine.Length; i++)
        {
            if (mine[i] != theirs[i])
            {
                return mine[i].CompareTo(theirs[i]);
            }
        }

        return 0;
    }

    /// <summary>The figures, the weightiest first.</summary>
    internal long[] InOrder(bool setAll) => setAll
        ? [Outside, Likely, NearLimit, DistanceMicrometres, Shafts, Changed, FromBox]
        : [Outside, Likely, Shafts, Changed, NearLimit, FromBox, DistanceMicrometres];
}

/// <summary>Another way to serve one valve, and what it would cost the whole plan.</summary>
/// <param name="Shim">Nothing where the valve would stay as it is.</param>
/// <param name="PredictedMm">The clearance that it gives, per lobe.</param>
/// <param name="Totals">Of the best plan with it.</param>
/// <param name="Cost">In words: what is worse, or that nothing is.</param>
public sealed record ShimAlternative(ShimLot? Shim, IReadOnlyList<decimal> PredictedMm, PlanTotals Totals, string Cost);

/// <summary>What is advised for one valve, and why.</summary>
public sealed record ValvePlan(ValveKey Valve, ShimAdvice Advice, string Why, IReadOnlyList<LobeOutlook> Lobes)
{
    /// <summary>What lies in it.</summary>
    public ShimThickness? Old { get; init; }

    /// <summary>The thickness that would give the clearance aimed at, mm, not rounded.</summary>
    public decimal? IdealMm { get; init; }

    /// <summary>The shim to fit, and where it lies.</summary>
    public ShimLot? Shim { get; init; }

    /// <summary>The size to order.</summary>
    public ShimThickness? Order { get; init; }

    /// <summary>Where one has to be ordered: what is to be had that comes nearest, and leaves it outside.</summary>
    public ShimAlternative? Nearest { get; init; }

    /// <summary>It would need a thickness beyond what is permitted: no matter of shims.</summary>
    public bool BeyondPermitted { get; init; }

    /// <summary>Chosen by hand.</summary>
    public bool Locked { get; init; }

    /// <summary>Near a limit, under a shaft that comes out anyway: another shim costs no access.</summary>
    public bool Offered { get; init; }

    public IReadOnlyList<ShimAlternative> Alternatives { get; init; } = [];

    /// <summary>The shim to fit, or to order.</summary>
    public ShimThickness? New => Shim?.Thickness ?? Order;
}

/// <summary>The best plan there is for an open engine.</summary>
/// <param name="Valves">Every valve of the engine, in order.</param>
/// <param name="Shafts">The camshafts or follower shafts that have to come out for it and do not lie on the bench already.</param>
/// <param name="Totals">What it costs.</param>
/// <param name="Basis">How the present clearance is taken.</param>
/// <param name="SetAside">Choices made by hand that could not be kept.</param>
public sealed record ShimPlan(
    IReadOnlyList<ValvePlan> Valves,
    IReadOnlyList<Camshaft> Shafts,
    PlanTotals Totals,
    string Basis,
    IReadOnlyList<ChoiceSetAside> SetAside);

/// <summary>A choice made by hand that could not be kept, and why, in words that follow "because".</summary>
public sealed record ChoiceSetAside(ValveKey Valve, string Why)
{
    /// <summary>For a page.</summary>
    public string Sentence => $"The choice for {Valve.Spoken} is set aside: {Why}.";
}
