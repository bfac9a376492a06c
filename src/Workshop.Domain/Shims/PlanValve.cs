using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>
/// One valve's side of a plan: how its lobes stand, what a shim of a given thickness would make of them, which shafts are in
/// the way. Where two lobes act on one valve through one shim, a thickness must satisfy both.
/// </summary>
internal sealed class PlanValve
{
    private readonly PlanTask task;

    public PlanValve(PlanTask task, Valve valve, MeasuredValve? measured)
    {
        this.task = task;
        Key = valve.Key;
        Shim = measured?.Shim;
        ChangedSince = measured?.ChangedSince ?? false;
        Empty = measured?.Empty ?? false;
        var lobes = Enumerable.Range(1, valve.Lobes).Select(l => new LobeKey(valve.Key, l)).ToList();
        LobesNotMeasured = [.. lobes.Where(l => measured?.Lobes.ContainsKey(l.Lobe) != true)];
        Lobes = [.. lobes.Except(LobesNotMeasured).Select(l => Stands(l, measured!.Lobes[l.Lobe]))];
        Shafts = task.Specification.ValveTrain is ValveTrainKind.ShimUnderBucket or ValveTrainKind.ShimUnderFingerFollower
            ? [.. task.Specification.Camshafts.Where(c => c.Valves.Contains(valve.Key)).Select(c => c.Code)]
            : [];
    }

    public ValveKey Key { get; }

    public ShimThickness? Shim { get; }

    public bool ChangedSince { get; }

    /// <summary>Its shim is out, so its shafts are too.</summary>
    public bool Empty { get; }

    public IReadOnlyList<LobeKey> LobesNotMeasured { get; }

    public IReadOnlyList<LobeOutlook> Lobes { get; }

    /// <summary>Camshafts or follower shafts that must come out before its shim can.</summary>
    public IReadOnlyList<string> Shafts { get; }

    public bool IsOut => Lobes.Any(l => l.Verdict.IsOut);

    public ClearanceVerdict? Undecided => Lobes.Select(l => l.Verdict).FirstOrDefault(v => v.Verdict == Verdict.NotDecided);

    public LobeOutlook? LobeWithoutLevel => Lobes.FirstOrDefault(l => l.LevelMm is null);

    /// <summary>Not out, and by the guard band not proven within either.</summary>
    public bool IsNear => !IsOut && Lobes.Any(l => l.NearLimit);

    /// <summary>More likely than the threshold to leave its limits before the next check, as it is.</summary>
    public bool IsLikelyToLeave => Lobes.Any(l => l.LeavesNow > task.Options.Threshold);

    /// <summary>
    /// The thickness whose worse lobe is nearest to its aim. One lobe: exactly its ideal. Two: with residuals r1 (t - t1) and
    /// r2 (t - t2) the larger is least where they are equal and opposite, at the mean of the ideals weighted by the ratios.
    /// </summary>
    public decimal IdealMm(ShimThickness old)
    {
        var weights = Lobes.Sum(l => l.Limits.LeverRatio.Value);
        return Lobes.Sum(l => l.Limits.LeverRatio.Value
            * ShimArithmetic.IdealMm(l.LevelMm!.Value, l.Limits.LeverRatio, old, l.AimMm)) / weights;
    }

    /// <summary>The thicknesses that bring every lobe inside its limits; empty where the first is above the second.</summary>
    public (decimal Thinnest, decimal Thickest) WindowMm(ShimThickness old) => (
        Lobes.Max(l => ShimArithmetic.IdealMm(l.LevelMm!.Value, l.Limits.LeverRatio, old, l.Limits.Upper.Millimetres)),
        Lobes.Min(l => ShimArithmetic.IdealMm(l.LevelMm!.Value, l.Limits.LeverRatio, old, l.Limits.Lower.Millimetres)));

    public bool IsInsideLimits(ShimThickness old, decimal thicknessMm) => Lobes.All(l =>
        Predicted(l, old, thicknessMm) is var mm && mm >= l.Limits.Lower.Millimetres && mm <= l.Limits.Upper.Millimetres);

    /// <summary>Largest distance of a lobe from its aim with a shim of this thickness, in whole 0.001 mm.</summary>
    public long DistanceMicrometres(ShimThickness old, decimal thicknessMm) =>
        Whole(Lobes.Max(l => decimal.Abs(Predicted(l, old, thicknessMm) - l.AimMm)));

    /// <summary>The same as it is; 0 where a level is not known.</summary>
    public long DistanceNow => Whole(Lobes.Select(l => l.LevelMm is { } level ? decimal.Abs(level - l.AimMm) : 0).DefaultIfEmpty(0).Max());

    /// <summary>The lobes with another shim in.</summary>
    public IReadOnlyList<LobeOutlook> With(ShimThickness old, decimal thicknessMm) => [.. Lobes.Select(l =>
    {
        var predicted = Predicted(l, old, thicknessMm);
        var uncertainty = AfterSwap(l.UncertaintyMm, l.Limits.LeverRatio);
        return l with
        {
            PredictedMm = predicted,
            UncertaintyMm = uncertainty,
            NearLimit = IsNearLimit(predicted, uncertainty, l.Limits),
            LeavesThen = task.Leaving?.Invoke(new LobeKey(Key, l.Lobe), predicted),
        };
    })];

    /// <summary>The size of the maker's series that suits best; it may still leave a lobe outside where the series is coarse.</summary>
    public ShimThickness ToOrder(ShimThickness old, ShimRange range)
    {
        var step = decimal.Max(range.StepMm, 0.001m);
        var sizes = (int)((range.Largest - range.Smallest) / step);
        return ShimThickness.FromMillimetres(Enumerable.Range(0, sizes + 1)
            .Select(size => decimal.Round(range.Smallest.Millimetres + (size * step), ShimThickness.DecimalsMm))
            .OrderByDescending(thickness => IsInsideLimits(old, thickness)).ThenBy(thickness => DistanceMicrometres(old, thickness))
            .First());
    }

    private static decimal Predicted(LobeOutlook lobe, ShimThickness old, decimal thicknessMm) =>
        ShimArithmetic.PredictedMm(lobe.LevelMm!.Value, lobe.Limits.LeverRatio, old, thicknessMm);

    private static long Whole(decimal millimetres) => (long)decimal.Round(millimetres * 1000, MidpointRounding.AwayFromZero);

    private LobeOutlook Stands(LobeKey lobe, Bracket found)
    {
        var limits = ReadingRules.LimitsOf(task.Specification, lobe);
        var history = task.Levels.GetValueOrDefault(lobe);
        var level = history?.Millimetres ?? found.MiddleMm;
        var uncertainty = history?.StandardUncertaintyMm
            ?? ShimUncertainty.OfBracketMm(found, (double)task.Options.BladeUncertaintyMm);
        return new LobeOutlook(
            lobe.Lobe, found, ClearanceVerdict.Of(found, limits), limits, level, history is not null,
            AimOf(limits, task.DriftMmPer10000Km.GetValueOrDefault(lobe), uncertainty))
        {
            UncertaintyMm = uncertainty,
            DriftMmPer10000Km = task.DriftMmPer10000Km.TryGetValue(lobe, out var drift) ? drift : null,
            NearLimit = level is { } mm && IsNearLimit(mm, uncertainty, limits),
            LeavesNow = level is { } now ? task.Leaving?.Invoke(lobe, now) : null,
        };
    }

    /// <summary>
    /// Set-to, or for the longest life the side from which it drifts away, inside the limit by twice the uncertainty, in whole
    /// 0.001 mm; never on the other side of set-to.
    /// </summary>
    private decimal AimOf(ClearanceLimits limits, decimal drift, double uncertainty)
    {
        var setTo = limits.SetTo.Millimetres;
        if (task.Options.Aim == PlanAim.SetTo || drift == 0)
        {
            return setTo;
        }

        var margin = decimal.Ceiling(2000 * (decimal)AfterSwap(uncertainty, limits.LeverRatio)) / 1000;
        return drift < 0
            ? decimal.Max(setTo, limits.Upper.Millimetres - margin)
            : decimal.Min(setTo, limits.Lower.Millimetres + margin);
    }

    private double AfterSwap(double uncertainty, LeverRatio ratio) =>
        ShimUncertainty.AfterSwapMm(uncertainty, ratio, (double)task.Options.MicrometerUncertaintyMm);

    private bool IsNearLimit(decimal millimetres, double uncertainty, ClearanceLimits limits) =>
        task.Options.Guard != GuardBand.Off
        && Conformance.Of(
            (double)millimetres, (double)limits.Lower.Millimetres, (double)limits.Upper.Millimetres,
            Conformance.Width(task.Options.Guard, uncertainty)) == Conformity.NearLimit;
}
