using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Domain.Shims;

/// <summary>Where a shim lies that may be fitted.</summary>
public enum LotSource
{
    /// <summary>In the shim box.</summary>
    Box,

    /// <summary>On the bench: it came out of this engine at this visit and lies in no valve.</summary>
    Bench,

    /// <summary>In another valve of this engine; that valve then needs another.</summary>
    Valve,
}

/// <summary>Shims of one measured thickness in one place.</summary>
/// <param name="Code">What names it in a lock; the same for as long as it lies there.</param>
/// <param name="Thickness">By micrometer.</param>
/// <param name="Count">How many; 1 on the bench and in a valve.</param>
/// <param name="Place">Of the box, in words; or the valve that it came out of or lies in.</param>
public sealed record ShimLot(
    string Code, ShimThickness Thickness, StockCondition Condition, LotSource Source, int Count, string Place, ValveKey? Valve = null)
{
    /// <summary>The name of "leave it as it is" in a lock.</summary>
    public const string Stay = "stay";

    /// <summary>What a valve's own shim is called while it lies there.</summary>
    public static string CodeIn(ValveKey valve) => $"in-{valve}";
}

/// <summary>Which clearance a valve is set to where a shim is chosen for it.</summary>
public enum PlanAim
{
    /// <summary>The clearance that the maker says.</summary>
    SetTo,

    /// <summary>
    /// To the side from which it drifts away: a valve that tightens to the loose side, inside the limit by twice the
    /// prediction's standard uncertainty. Without a known drift: set-to.
    /// </summary>
    LongestLife,
}

/// <summary>What the technician and the manager ask of a plan.</summary>
public sealed record PlanOptions
{
    public PlanAim Aim { get; init; } = PlanAim.SetTo;

    /// <summary>Also the valves within their limits are set as near to their aim as can be, whatever has to come out for it.</summary>
    public bool SetAll { get; init; }

    public GuardBand Guard { get; init; } = GuardBand.Off;

    /// <summary>Above this probability of leaving its limits before the next check a valve is not left as it is.</summary>
    public double Threshold { get; init; } = 0.1;

    /// <summary>A shim may go from one valve of the engine to another.</summary>
    public bool MayMoveBetweenValves { get; init; } = true;

    /// <summary>Chosen by hand: for a valve the code of a shim, or <see cref="ShimLot.Stay"/>.</summary>
    public IReadOnlyDictionary<ValveKey, string> Locked { get; init; } = new Dictionary<ValveKey, string>();

    /// <summary>Standard uncertainty of the blades, mm, beside the width of the bracket.</summary>
    public decimal BladeUncertaintyMm { get; init; } = ShimUncertainty.UsualBladeMm;

    /// <summary>Standard uncertainty of the micrometer, mm; a swap carries it twice.</summary>
    public decimal MicrometerUncertaintyMm { get; init; } = ShimUncertainty.UsualMicrometerMm;
}

/// <summary>A valve's clearance now, where its history tells better than the bracket's middle.</summary>
public sealed record PresentLevel(decimal Millimetres, double StandardUncertaintyMm);

/// <summary>All that a plan is made from.</summary>
public sealed record PlanTask
{
    public required EngineSpecification Specification { get; init; }

    /// <summary>What is known of the valves; one that is missing is not measured yet.</summary>
    public required IReadOnlyCollection<MeasuredValve> Measured { get; init; }

    /// <summary>
    /// What may be fitted beside the shims that lie in the valves: of the engine model's own part, as the workshop's policy on
    /// used shims allows.
    /// </summary>
    public required IReadOnlyCollection<ShimLot> Shims { get; init; }

    public PlanOptions Options { get; init; } = new();

    /// <summary>Codes of the camshafts or follower shafts that lie on the bench already.</summary>
    public IReadOnlySet<string> ShaftsOut { get; init; } = new HashSet<string>();

    /// <summary>Where a lobe's history tells its clearance.</summary>
    public IReadOnlyDictionary<LobeKey, PresentLevel> Levels { get; init; } = new Dictionary<LobeKey, PresentLevel>();

    /// <summary>Change of clearance per 10,000 km, mm, where it is known; negative where the lobe tightens.</summary>
    public IReadOnlyDictionary<LobeKey, decimal> DriftMmPer10000Km { get; init; } = new Dictionary<LobeKey, decimal>();

    /// <summary>
    /// The probability that a lobe left with this clearance, mm, is outside its limits before the next check; nothing where
    /// there is no forecast.
    /// </summary>
    public Func<LobeKey, decimal, double?>? Leaving { get; init; }
}
