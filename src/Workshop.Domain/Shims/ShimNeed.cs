using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Shims;

/// <summary>
/// One valve's side of the plan: how far its lobes are from their aims, and which thickness would suit. Where two lobes act on
/// one valve through one shim, a thickness must satisfy both.
/// </summary>
internal sealed class ShimNeed
{
    public ShimNeed(EngineSpecification specification, Valve valve, MeasuredValve? measured)
    {
        Valve = valve.Key;
        Shim = measured?.Shim;
        ChangedSince = measured?.ChangedSince ?? false;
        var lobes = Enumerable.Range(1, valve.Lobes).Select(l => new LobeKey(valve.Key, l)).ToList();
        LobesNotMeasured = [.. lobes.Where(l => measured?.Lobes.ContainsKey(l.Lobe) != true)];
        Lobes = [.. lobes.Except(LobesNotMeasured).Select(l =>
        {
            var (found, limits) = (measured!.Lobes[l.Lobe], ReadingRules.LimitsOf(specification, l));
            return new LobeOutlook(l.Lobe, found, ClearanceVerdict.Of(found, limits), limits, found.MiddleMm, null);
        })];
    }

    public ValveKey Valve { get; }

    public ShimThickness? Shim { get; }

    public bool ChangedSince { get; }

    public IReadOnlyList<LobeKey> LobesNotMeasured { get; }

    public IReadOnlyList<LobeOutlook> Lobes { get; }

    public bool IsOut => Lobes.Any(l => l.Verdict.IsOut);

    public ClearanceVerdict? Undecided => Lobes.Select(l => l.Verdict).FirstOrDefault(v => v.Verdict == Verdict.NotDecided);

    public LobeOutlook? LobeWithoutMiddle => Lobes.FirstOrDefault(l => l.FoundMm is null);

    /// <summary>Largest distance of a lobe's middle from its aim as it is, mm; 0 where there is no middle.</summary>
    public decimal DistanceFromAim => Lobes
        .Select(l => l.FoundMm is { } found ? decimal.Abs(found - l.Limits.SetTo.Millimetres) : 0)
        .DefaultIfEmpty(0).Max();

    /// <summary>
    /// The thickness whose worse lobe is nearest to its aim. One lobe: exactly its ideal. Two: with residuals r1 (t - t1) and
    /// r2 (t - t2) the larger is least where they are equal and opposite, at the mean of the ideals weighted by the ratios.
    /// </summary>
    public decimal IdealMm(ShimThickness old)
    {
        var weights = Lobes.Sum(l => l.Limits.LeverRatio.Value);
        return Lobes.Sum(l => l.Limits.LeverRatio.Value
            * ShimArithmetic.IdealMm(l.FoundMm!.Value, l.Limits.LeverRatio, old, l.Limits.SetTo.Millimetres)) / weights;
    }

    /// <summary>The thicknesses that bring every lobe inside its limits; empty where the first is above the second.</summary>
    public (decimal Thinnest, decimal Thickest) WindowMm(ShimThickness old) => (
        Lobes.Max(l => ShimArithmetic.IdealMm(l.FoundMm!.Value, l.Limits.LeverRatio, old, l.Limits.Upper.Millimetres)),
        Lobes.Min(l => ShimArithmetic.IdealMm(l.FoundMm!.Value, l.Limits.LeverRatio, old, l.Limits.Lower.Millimetres)));

    /// <summary>Largest distance of a lobe from its aim with a shim of this thickness, mm.</summary>
    public decimal Score(ShimThickness old, decimal thicknessMm) => Lobes.Max(l =>
        decimal.Abs(PredictedMm(l, old, thicknessMm) - l.Limits.SetTo.Millimetres));

    public bool IsInsideLimits(ShimThickness old, decimal thicknessMm) => Lobes.All(l =>
        PredictedMm(l, old, thicknessMm) >= l.Limits.Lower.Millimetres && PredictedMm(l, old, thicknessMm) <= l.Limits.Upper.Millimetres);

    /// <summary>The size of the maker's series that suits best; it may still leave a lobe outside where the series is coarse.</summary>
    public ShimThickness ToOrder(ShimThickness old, ShimRange range)
    {
        var step = decimal.Max(range.StepMm, 0.001m);
        var sizes = (int)((range.Largest - range.Smallest) / step);
        return ShimThickness.FromMillimetres(Enumerable.Range(0, sizes + 1)
            .Select(size => decimal.Round(range.Smallest.Millimetres + (size * step), ShimThickness.DecimalsMm))
            .OrderByDescending(thickness => IsInsideLimits(old, thickness)).ThenBy(thickness => Score(old, thickness))
            .First());
    }

    /// <summary>The advice, with what its shim will do to every lobe.</summary>
    public ShimProposal Advise(ShimAdvice advice, string why, ShimThickness? fit = null) =>
        new(Valve, advice, why, [.. Lobes.Select(l => l with
        {
            PredictedMm = fit is { } thickness && Shim is { } old && l.FoundMm is not null ? PredictedMm(l, old, thickness.Millimetres) : null,
        })])
        {
            Old = Shim,
            New = fit,
        };

    private static decimal PredictedMm(LobeOutlook lobe, ShimThickness old, decimal thicknessMm) =>
        ShimArithmetic.PredictedMm(lobe.FoundMm!.Value, lobe.Limits.LeverRatio, old, thicknessMm);
}
