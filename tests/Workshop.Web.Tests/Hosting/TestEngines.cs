using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Tests.Hosting;

/// <summary>
/// An engine made up for the tests: two cylinders, one intake valve with two lobes and one exhaust valve each, shims under
/// finger followers at a lever ratio of 0.6, one joint with two fasteners, a seal of every policy.
/// </summary>
public static class TestEngines
{
    public const string ValveCheck = "valve-clearance-check";
    public const string Adjustment = "valve-clearance-adjustment";
    public const string OilService = "oil-and-filter";

    public const string TimingCheck = "cam-timing-check";
    public const string CamChain = "cam-chain";
    public const string TensionerBolt = "tensioner-bolt";
    public const string SprocketBolt = "sprocket-bolt";

    public const string CoverBolt = "cover-bolt";
    public const string CamCapBolt = "cam-cap-bolt";
    public const string DrainPlug = "drain-plug";

    public const string ShimPart = "shim-test-9";
    public const string DrainRing = "ring-14x18";
    public const string CoverGasket = "cover-gasket";
    public const string PlugWellRing = "plug-well-o-ring";
    public const string OilFilter = "oil-filter";
    public const string Oil = "oil-10w-40";

    private static readonly Provenance Source = new("Invented for tests", "1");

    public static ValveKey Intake(int cylinder) => new(cylinder, Side.Intake, 1);

    public static ValveKey Exhaust(int cylinder) => new(cylinder, Side.Exhaust, 1);

    public static EngineSpecification Twin() => new()
    {
        ValveTrain = ValveTrainKind.ShimUnderFingerFollower,
        Layout = new EngineLayout(
            "Parallel twin made up for tests", [new Cylinder(1, "only"), new Cylinder(2, "only")], "the rider's left",
            [1, 2], TurningDirection.Clockwise, "the right side", "Notch at the case joint, lobes of cylinder 1 outward"),
        Valves = [new(Intake(1), Lobes: 2), new(Exhaust(1)), new(Intake(2), Lobes: 2), new(Exhaust(2))],
        Camshafts =
        [
            new("intake-cam", "Intake camshaft", [Intake(1), Intake(2)]),
            new("exhaust-cam", "Exhaust camshaft", [Exhaust(1), Exhaust(2)]),
        ],
        MeasuringPositions =
        [
            new("Compression dead centre of cylinder 1", 0, "Notch 1", [new(Intake(1), 1), new(Intake(1), 2), new(Exhaust(1))]),
            new("Compression dead centre of cylinder 2", 360, "Notch 2", [new(Intake(2), 1), new(Intake(2), 2), new(Exhaust(2))]),
        ],
        Limits =
        [
            Limit(Side.Intake, 1, 0.10m, 0.20m, 0.15m),
            Limit(Side.Intake, 2, 0.10m, 0.22m, 0.16m),
            Limit(Side.Exhaust, 1, 0.20m, 0.30m, 0.25m),
        ],
        Shims = new ShimRange(ShimPart, 9m, "disc under finger follower",
            ShimThickness.FromMillimetres(1.2m), ShimThickness.FromMillimetres(3.2m), 0.025m, Source),
        Cold = new ColdCondition(8, Temperature.FromCelsius(5), Temperature.FromCelsius(35), "surface probe at the head", Source),
        Accesses = [new("covers-off", "Tank and head cover off", 40, ["head-cover"], [])],
        Joints =
        [
            new("head-cover", "Head cover", [CoverBolt],
                [new Seal(CoverGasket, 1, SealPolicy.InspectAndReuse), new Seal(PlugWellRing, 2, SealPolicy.ReplaceIfDamaged)]),
            new("cam-caps", "Camshaft caps", [CamCapBolt], []),
            new("sump-drain", "Oil drain", [DrainPlug], [new Seal(DrainRing, 1, SealPolicy.ReplaceAlways)]),
        ],
        Fasteners =
        [
            new(CoverBolt, "Head cover bolt", 6, "M6x1", Torque.FromNewtonMetres(10), ThreadTreatment.Dry, "8 mm socket", Source)
                { Sequence = "crosswise from the middle" },
            new(CamCapBolt, "Camshaft cap bolt", 8, "M6x1", Torque.FromNewtonMetres(12), ThreadTreatment.Oiled, "8 mm socket", Source)
                { Stages = [Torque.FromNewtonMetres(5)], Sequence = "evenly, from the middle outward" },
            new(DrainPlug, "Oil drain plug", 1, "M14x1.5", Torque.FromNewtonMetres(24), ThreadTreatment.Dry, "12 mm hexagon", Source),
        ],
        ServiceItems =
        [
            new(ValveCheck, "Valve clearance check", ServiceItemKind.ValveClearanceCheck, 90, Source)
            {
                Interval = new ServiceInterval { Every = Distance.FromKilometres(24_000) },
                Accesses = ["covers-off"],
                AdjustmentItem = Adjustment,
                Skills = ["valve work"],
                Cautions = ["eye-protection", "turn-by-hand"],
            },
            new(Adjustment, "Valve clearance adjustment", ServiceItemKind.ValveClearanceAdjustment, 120, Source)
            {
                Accesses = ["covers-off"],
                Joints = ["cam-caps"],
                Skills = ["valve work"],
                SpecialTools = ["cam-alignment-jig"],
                Cautions = ["cam-chain-taut"],
            },
            new(OilService, "Engine oil and filter", ServiceItemKind.Routine, 30, Source)
            {
                Interval = new ServiceInterval
                {
                    Every = Distance.FromKilometres(10_000), EveryMonths = 12, First = Distance.FromKilometres(1_000), FirstMonths = 6,
                },
                Joints = ["sump-drain"],
                Parts = [new ItemPart(OilFilter, 1), new ItemPart(Oil, 3200)],
                Cautions = ["hot-oil", "used-oil"],
            },
        ],
        Provenance = Source,
    };

    /// <summary>
    /// The same with a cam chain of 15 to 30 teeth, lobe centres 105 after and 107 before top dead centre, 2 degrees permitted, a
    /// tensioner with a limit of 14 mm, and a cam timing check; its adjustment opens sprocket bolts and tensioner.
    /// </summary>
    public static EngineSpecification TwinWithCamDrive()
    {
        var twin = Twin();
        return twin with
        {
            CamDrives =
            [
                new CamDrive(
                    CamChain, "cam chain", "only", [new("crankshaft to camshafts", DriveKind.Chain, 15, 30)],
                    [Lobe("intake-cam", Side.Intake, 105), Lobe("exhaust-cam", Side.Exhaust, 107)],
                    "Both wheel arrows level with the head", [SprocketBolt], Source)
                {
                    TensionerFasteners = [TensionerBolt], RecheckSprocketBolts = true, Tensioner = new ChainTensioner(14) { StopMm = 18 },
                },
            ],
            Joints = [.. twin.Joints, new("tensioner", "Chain tensioner", [TensionerBolt], []), new("cam-wheels", "Camshaft wheels", [SprocketBolt], [])],
            Fasteners =
            [
                .. twin.Fasteners,
                new(TensionerBolt, "Tensioner bolt", 2, "M6x1", Torque.FromNewtonMetres(10), ThreadTreatment.Dry, "8 mm socket", Source),
                new(SprocketBolt, "Sprocket bolt", 4, "M7x1", Torque.FromNewtonMetres(14), ThreadTreatment.Dry, "10 mm socket", Source),
            ],
            ServiceItems =
            [
                .. twin.ServiceItems.Select(i => i.Code == Adjustment
                    ? i with { Joints = [.. i.Joints, "tensioner", "cam-wheels"], Cautions = ["cam-chain-taut", "tensioner-first", "tensioner-released", "turn-by-hand"] }
                    : i),
                new(TimingCheck, "Camshaft timing check", ServiceItemKind.CamTimingCheck, 30, Source) { Accesses = ["covers-off"], Cautions = ["eye-protection"] },
            ],
        };
    }

    /// <summary>
    /// The same that states at least 1000 kPa, up to 15 % of leakage at 600 kPa and a gap of 0.7 to 0.8 mm, and asks for the state on arrival
    /// always, for the plugs after the oil service, and for compression where a valve is tight or the owner complains.
    /// </summary>
    public static EngineSpecification TwinThatIsLookedOver() => Twin() with
    {
        Compression = new CompressionLimits(Pressure.FromKilopascals(1000), EngineWarmth.Warm, Source)
        {
            LargestDifference = Pressure.FromKilopascals(100), LargestLeakDownPercent = 15, LeakDownAt = Pressure.FromKilopascals(600),
        },
        SparkPlugs = new SparkPlugs(1, OilFilter, 0.7m, 0.8m, Source),
        VisitChecks =
        [
            new(VisitCheckKind.ArrivalState, WhenAsked.Always),
            new(VisitCheckKind.Plugs, WhenAsked.AfterItems) { AfterItems = [OilService] },
            new(VisitCheckKind.Compression, WhenAsked.TightOrComplaint),
        ],
    };

    private static LobeTiming Lobe(string camshaft, Side side, decimal centre) =>
        new(camshaft, side, CrankAngle.FromDegrees(2)) { LobeCentre = CrankAngle.FromDegrees(centre) };

    private static ClearanceLimits Limit(Side side, int lobe, decimal lower, decimal upper, decimal setTo) => new(
        side, lobe, Clearance.FromMillimetres(lower), Clearance.FromMillimetres(upper), Clearance.FromMillimetres(setTo),
        LeverRatio.From(0.6m), Source);
}
