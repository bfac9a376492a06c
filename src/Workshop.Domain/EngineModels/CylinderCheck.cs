using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>What is stated of cylinders and plugs: compression, leakage, gaps.</summary>
internal static class CylinderCheck
{
    public const int MostPlugs = 2;

    /// <summary>Gaps of road engines lie well inside these (common practice, no source).</summary>
    private const decimal SmallestGapMm = 0.2m;
    private const decimal LargestGapMm = 2m;

    /// <summary>Least compression that makers state lies inside these (common practice, no source); outside it is confirmed.</summary>
    private const decimal UsualLowestKpa = 500;
    private const decimal UsualHighestKpa = 2000;

    public static void Run(EngineSpecification specification, Findings findings)
    {
        if (specification.Compression is { } compression)
        {
            Compression(compression, findings);
        }

        if (specification.SparkPlugs is { } plugs)
        {
            Plugs(plugs, findings);
        }
    }

    private static void Compression(CompressionLimits limits, Findings findings)
    {
        findings.FaultIf(limits.Least.Kilopascals <= 0, "compression.leastKpa",
            $"compression.leastKpa is {limits.Least.Kilopascals}: above 0 and at most {Pressure.LargestKpa} kPa is allowed.");
        findings.FaultIf(limits.LargestDifference is { Kilopascals: <= 0 }, "compression.largestDifferenceKpa",
            $"compression.largestDifferenceKpa is {limits.LargestDifference?.Kilopascals}: above 0 is allowed; leave it out where nothing is stated.");
        findings.FaultIf(limits.LargestDifference >= limits.Least, "compression.largestDifferenceKpa",
            $"compression.largestDifferenceKpa is {limits.LargestDifference?.Kilopascals}: below the least compression, {limits.Least.Kilopascals} kPa, is allowed.");
        findings.FaultIf(limits.LargestLeakDownPercent is <= 0 or >= 100, "compression.largestLeakDownPercent",
            $"compression.largestLeakDownPercent is {limits.LargestLeakDownPercent}: above 0 and below 100 is allowed; leave it out where nothing is stated.");
        findings.FaultIf(limits.LeakDownAt is { Kilopascals: <= 0 }, "compression.leakDownKpa",
            $"compression.leakDownKpa is {limits.LeakDownAt?.Kilopascals}: above 0 is allowed; leave it out where nothing is stated.");
        findings.FaultIf(limits.LeakDownAt is not null && limits.LargestLeakDownPercent is null, "compression.largestLeakDownPercent",
            $"compression.largestLeakDownPercent is missing: leakDownKpa says at which pressure it holds.");
        findings.Provenance("compression.provenance", limits.Provenance);
        if (limits.Least.Kilopascals is > 0 and (< UsualLowestKpa or > UsualHighestKpa))
        {
            findings.Confirm("compression.leastKpa",
                $"compression.leastKpa is {limits.Least.Kilopascals}: {UsualLowestKpa} to {UsualHighestKpa} kPa is usual; 1 bar is 100 kPa.");
        }
    }

    private static void Plugs(SparkPlugs plugs, Findings findings)
    {
        findings.FaultIf(plugs.PerCylinder is < 1 or > MostPlugs, "sparkPlugs.perCylinder",
            $"sparkPlugs.perCylinder is {plugs.PerCylinder}: 1 to {MostPlugs} is allowed.");
        findings.PartCode("sparkPlugs.partCode", plugs.PartCode);
        foreach (var (member, gap) in new[] { ("gapSmallestMm", plugs.GapSmallestMm), ("gapLargestMm", plugs.GapLargestMm) })
        {
            findings.FaultIf(gap is < SmallestGapMm or > LargestGapMm, $"sparkPlugs.{member}",
                $"sparkPlugs.{member} is {gap}: {SmallestGapMm} to {LargestGapMm} mm is allowed.");
        }

        findings.FaultIf(plugs.GapLargestMm < plugs.GapSmallestMm, "sparkPlugs.gapLargestMm",
            $"sparkPlugs.gapLargestMm is {plugs.GapLargestMm}: at least the smallest, {plugs.GapSmallestMm} mm, is allowed.");
        findings.Provenance("sparkPlugs.provenance", plugs.Provenance);
    }
}
