using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using static Workshop.Domain.Tests.JobCards.VisitFacts;

namespace Workshop.Domain.Tests.Compression;

/// <summary>A four in line with 1000 kPa as the least, 100 kPa between cylinders and 15 % of 600 kPa as the largest leakage.</summary>
internal static class TestedCylinders
{
    public static readonly CompressionLimits Limits = new(Kpa(1000), EngineWarmth.Warm, Engine.Provenance)
    {
        LargestDifference = Kpa(100), LargestLeakDownPercent = 15, LeakDownAt = Kpa(600),
    };

    public static readonly EngineSpecification Four = Engine with
    {
        Layout = Engine.Layout with { Cylinders = [.. Enumerable.Range(1, 4).Select(n => new Cylinder(n, "only"))], FiringOrder = [1, 2, 4, 3] },
        Compression = Limits,
    };

    public static Pressure Kpa(decimal kpa) => Pressure.FromKilopascals(kpa);

    public static CylinderTest Dry(int cylinder, decimal kpa, int attempt = 1, EngineWarmth warmth = EngineWarmth.Warm, bool throttleOpen = true) =>
        Test(cylinder, CylinderTestMethod.Dry, kpa, attempt: attempt, warmth: warmth, throttleOpen: throttleOpen);

    public static CylinderTest Wet(int cylinder, decimal kpa) => Test(cylinder, CylinderTestMethod.Wet, kpa);

    public static CylinderTest Leak(int cylinder, decimal percent, decimal kpa = 600, params AirPlace[] heard) =>
        Test(cylinder, CylinderTestMethod.LeakDown, kpa, percent, heard: heard);

    public static CylinderFinding Of(int cylinder, params CylinderTest[] tests) =>
        CylinderFindings.Of(Four, tests, Stage.AsFound, []).Single(f => f.Cylinder == cylinder);

    private static CylinderTest Test(
        int cylinder, CylinderTestMethod method, decimal kpa, decimal? percent = null, int attempt = 1, EngineWarmth warmth = EngineWarmth.Warm,
        bool throttleOpen = true, AirPlace[]? heard = null) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Cylinder = cylinder, Method = method, Stage = Stage.AsFound, Attempt = attempt,
        Pressure = Kpa(kpa), LossPercent = percent, Warmth = warmth, ThrottleOpen = throttleOpen,
        HeardAtIntake = heard?.Contains(AirPlace.Intake) == true, HeardAtExhaust = heard?.Contains(AirPlace.Exhaust) == true,
        HeardAtCrankcase = heard?.Contains(AirPlace.Crankcase) == true, HeardInCoolant = heard?.Contains(AirPlace.Coolant) == true,
        OdometerReadingId = Guid.Empty, MeasuredAt = Start, MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = Start,
    };
}
