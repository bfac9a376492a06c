namespace Workshop.Domain.Threads;

/// <summary>Coefficient of friction in the thread and under the head, from lowest to highest.</summary>
public readonly record struct FrictionSpan(double Lowest, double Highest)
{
    /// <summary>Where nothing is said of the thread: the span that VDI 2230 tables cover for plain and plated steel.</summary>
    public static readonly FrictionSpan Any = new(0.08, 0.20);

    /// <summary>Nothing on the thread but what it came with. Common practice; no source.</summary>
    public static readonly FrictionSpan Dry = new(0.12, 0.20);

    /// <summary>Oil on thread and head. Common practice; no source.</summary>
    public static readonly FrictionSpan Oiled = new(0.08, 0.14);

    /// <summary>Compounds differ: some let a thread slide, some hold it. The whole span.</summary>
    public static readonly FrictionSpan Locked = Any;
}

/// <summary>The inner thread that is weaker than the bolt: how far it engages and what it bears.</summary>
/// <param name="EngagementMm">Length of engagement.</param>
/// <param name="ShearStrengthMpa">Shear strength of its material.</param>
public readonly record struct WeakerThread(double EngagementMm, double ShearStrengthMpa);

/// <summary>
/// What a torque can be for a solid steel bolt, in N.m: between the torques that VDI 2230 gives at 90 % of yield for the lowest and
/// the highest friction. They never replace the maker's figure.
/// </summary>
/// <param name="UsualFromNm">At 90 % of yield with the lowest friction.</param>
/// <param name="UsualToNm">At 90 % of yield with the highest friction.</param>
/// <param name="ReachesLimitFromNm">From here on the limit is reached with the lowest friction.</param>
/// <param name="ExceedsLimitNm">Above it the limit is passed whatever the friction.</param>
/// <param name="LimitN">The force that must not be passed: the bolt's proof load, or that at which the inner thread strips.</param>
/// <param name="StripsFirst">The inner thread strips before the bolt reaches its proof load.</param>
public sealed record ThreadBounds(
    double UsualFromNm, double UsualToNm, double ReachesLimitFromNm, double ExceedsLimitNm, double LimitN, bool StripsFirst)
{
    /// <summary>Below this share of the usual span a torque is taken for a slip of the pen. Common practice; no source.</summary>
    public const double SlipShare = 0.25;

    /// <summary>A torque so low that it holds next to nothing.</summary>
    public double SlipBelowNm => SlipShare * UsualFromNm;

    /// <summary>
    /// Bounds of a bolt in a thread as strong as itself, or in a weaker one whose figures are known: then the usual span ends where
    /// half of what strips it is reached (common practice; no source).
    /// </summary>
    /// <param name="thread">Of a diameter whose head <see cref="Tightening.Knows"/>, at most 16 mm.</param>
    /// <param name="steel">The bolt's class.</param>
    /// <param name="friction">Of thread and head.</param>
    /// <param name="weaker">Absent where the bolt is the weaker part.</param>
    public static ThreadBounds Of(MetricThread thread, PropertyClass steel, FrictionSpan friction, WeakerThread? weaker = null)
    {
        ArgumentNullException.ThrowIfNull(thread);
        ArgumentNullException.ThrowIfNull(steel);
        var proof = steel.ProofLoadN(thread);
        var strips = weaker is { } w ? w.ShearStrengthMpa * thread.InnerShearAreaMm2(w.EngagementMm) : double.PositiveInfinity;
        var limit = Math.Min(proof, strips);
        return new ThreadBounds(
            Usual(friction.Lowest), Usual(friction.Highest),
            Tightening.TorqueNm(thread, limit, friction.Lowest), Tightening.TorqueNm(thread, limit, friction.Highest),
            limit, strips < proof);

        double Usual(double mu) =>
            Tightening.TorqueNm(thread, Math.Min(Tightening.AssemblyForceN(thread, steel, mu), strips / 2), mu);
    }
}
