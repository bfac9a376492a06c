using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>Limits, lever ratios, shims and the cold condition.</summary>
internal static class ClearanceCheck
{
    public const decimal LongestSoakHours = 72;
    private const decimal SmallestShimDiameterMm = 5;
    private const decimal LargestShimDiameterMm = 40;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        for (var i = 0; i < specification.Limits.Count; i++)
        {
            Limits($"limits[{i}]", specification.Limits[i], specification.ValveTrain, findings);
        }

        Coverage(specification, findings);
        Shims(specification, findings);
        Cold(specification.Cold, findings);
    }

    public static IEnumerable<LobeKey> LobesOf(EngineSpecification specification) =>
        specification.Valves.SelectMany(v => Enumerable.Range(1, Math.Clamp(v.Lobes, 1, 2)).Select(lobe => new LobeKey(v.Key, lobe)));

    private static void Limits(string path, ClearanceLimits limits, ValveTrainKind train, Findings findings)
    {
        findings.FaultIf(limits.Upper <= limits.Lower, $"{path}.upperMm",
            $"{path}.upperMm is {limits.Upper}: it must be greater than lowerMm, which is {limits.Lower}.");
        findings.FaultIf(limits.SetTo < limits.Lower || limits.SetTo > limits.Upper, $"{path}.setToMm",
            $"{path}.setToMm is {limits.SetTo}: it lies within the limits, {limits.Lower} to {limits.Upper}.");
        findings.Provenance($"{path}.provenance", limits.Provenance);
        var ratio = limits.LeverRatio;
        if (ratio.Value < LeverRatio.Smallest)
        {
            findings.Fault($"{path}.leverRatio",
                $"{path}.leverRatio is {ratio}: {LeverRatio.Smallest} to {LeverRatio.Largest} is allowed, mm of clearance per mm of shim.");
        }
        else if (train != ValveTrainKind.ShimUnderFingerFollower && ratio.Value != 1)
        {
            findings.Fault($"{path}.leverRatio", $"{path}.leverRatio is {ratio}: only finger followers have one other than 1.");
        }
        else if (ratio.AsksForConfirmation)
        {
            findings.Confirm($"{path}.leverRatio",
                $"{path}.leverRatio is {ratio}: {LeverRatio.UsualLowest} to {LeverRatio.UsualHighest} is usual. Confirm that it is the fall of clearance, where the blade goes, per mm of added shim.");
        }
    }

    /// <summary>Each lobe of each side that has one finds its limits, once.</summary>
    private static void Coverage(EngineSpecification specification, Findings findings)
    {
        var wanted = LobesOf(specification).Select(l => (l.Valve.Side, l.Lobe)).ToHashSet();
        var seen = new HashSet<(Side, int)>();
        for (var i = 0; i < specification.Limits.Count; i++)
        {
            var (side, lobe) = (specification.Limits[i].Side, specification.Limits[i].Lobe);
            findings.FaultIf(!wanted.Contains((side, lobe)), $"limits[{i}].lobe",
                $"limits[{i}] is for lobe {lobe} of the {LayoutCheck.Word(side)} side: no valve has it.");
            findings.FaultIf(!seen.Add((side, lobe)), $"limits[{i}].lobe",
                $"limits[{i}] is for lobe {lobe} of the {LayoutCheck.Word(side)} side for the second time: once is allowed.");
        }

        foreach (var (side, lobe) in wanted.Except(seen).Order())
        {
            findings.Fault("limits", $"limits has none for lobe {lobe} of the {LayoutCheck.Word(side)} side.");
        }
    }

    private static void Shims(EngineSpecification specification, Findings findings)
    {
        var byScrew = specification.ValveTrain == ValveTrainKind.ScrewAndLocknut;
        if (specification.Shims is not { } shims)
        {
            findings.FaultIf(!byScrew, "shims", $"shims is missing: a valve train with shims says which are permitted.");
            return;
        }

        findings.FaultIf(byScrew, "shims", $"shims is given, but screw and locknut has none: leave it out.");
        findings.PartCode("shims.partCode", shims.PartCode);
        findings.Text("shims.form", shims.Form, "what the shim is and where it sits");
        findings.FaultIf(shims.DiameterMm is < SmallestShimDiameterMm or > LargestShimDiameterMm, "shims.diameterMm",
            $"shims.diameterMm is {shims.DiameterMm} mm: {SmallestShimDiameterMm} to {LargestShimDiameterMm} mm is allowed.");
        findings.FaultIf(shims.Smallest.Millimetres < ShimThickness.SmallestMm, "shims.smallestMm",
            $"shims.smallestMm is missing: {ShimThickness.SmallestMm} to {ShimThickness.LargestMm} mm is allowed.");
        findings.FaultIf(shims.Largest <= shims.Smallest, "shims.largestMm",
            $"shims.largestMm is {shims.Largest}: it must be greater than smallestMm, which is {shims.Smallest}.");
        findings.FaultIf(shims.StepMm <= 0 || shims.StepMm > shims.Largest - shims.Smallest, "shims.stepMm",
            $"shims.stepMm is {shims.StepMm} mm: it is above 0 and at most the whole range.");
        findings.Provenance("shims.provenance", shims.Provenance);
    }

    private static void Cold(ColdCondition cold, Findings findings)
    {
        findings.FaultIf(cold.SoakHours is < 0 or > LongestSoakHours, "cold.soakHours",
            $"cold.soakHours is {cold.SoakHours}: 0 to {LongestSoakHours} hours is allowed.");
        findings.FaultIf(cold.Highest <= cold.Lowest, "cold.highestC",
            $"cold.highestC is {cold.Highest}: it must be greater than lowestC, which is {cold.Lowest}.");
        findings.Text("cold.method", cold.Method, "how the head's temperature is taken");
        findings.Provenance("cold.provenance", cold.Provenance);
    }
}
