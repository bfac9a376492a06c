using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.Compression;

/// <summary>One cylinder at one stage of a visit, with its verdict in words.</summary>
/// <param name="Dry">Absent where it was not measured so; likewise the others.</param>
/// <param name="Sentences">Why, and where it likely leaks.</param>
public sealed record CylinderView(
    int Cylinder, CylinderVerdict Verdict, IReadOnlyList<string> Sentences, PressureView? Dry, PressureView? Wet, LeakDownView? LeakDown)
{
    internal static IReadOnlyList<CylinderView> Of(IReadOnlyList<CylinderFinding> findings) =>
        [.. findings.Select(f => new CylinderView(f.Cylinder, f.Verdict, f.Sentences, PressureView.Of(f.Dry), PressureView.Of(f.Wet), LeakDownView.Of(f.LeakDown)))];
}

/// <param name="Said">"1180 kPa (11.8 bar, 171 psi)".</param>
public sealed record PressureView(decimal Kpa, string Said, EngineWarmth Warmth, bool ThrottleOpen, int? Tries)
{
    internal static PressureView? Of(CylinderTest? test) =>
        test is null ? null : new PressureView(test.Pressure.Kilopascals, test.Pressure.OnAnyGauge(), test.Warmth, test.ThrottleOpen, test.Tries);
}

/// <param name="AtKpa">The pressure that was let in.</param>
public sealed record LeakDownView(decimal LossPercent, decimal AtKpa, IReadOnlyList<AirPlace> HeardAt, string Said)
{
    internal static LeakDownView? Of(CylinderTest? test) =>
        test is null ? null : new LeakDownView(test.LossPercent!.Value, test.Pressure.Kilopascals, test.HeardAt, test.Spoken());
}
