using CsCheck;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Kits;

/// <summary>Specifications made up for tests: a plain one by hand, and any number of random ones.</summary>
internal static class MadeUpEngines
{
    public static readonly Provenance Source = new("Invented for tests", "1");

    public static Fastener Fastener(string code, int count = 1, params Seal[] seals) => new(
        code, $"Fastener {code}", count, "M6x1", Torque.FromNewtonMetres(10), ThreadTreatment.Dry, "8 mm socket", Source)
    { Seals = seals };

    public static ServiceItem Item(string code, string[]? accesses = null, string[]? joints = null, string[]? fasteners = null, params ItemPart[] parts) =>
        new(code, $"Item {code}", ServiceItemKind.Routine, 10, Source)
        {
            Accesses = accesses ?? [], Joints = joints ?? [], Fasteners = fasteners ?? [], Parts = parts,
        };

    public static EngineSpecification Engine(
        IReadOnlyList<ServiceItem> items, IReadOnlyList<Joint> joints, IReadOnlyList<Fastener> fasteners,
        IReadOnlyList<Access>? accesses = null) => new()
    {
        ValveTrain = ValveTrainKind.ShimUnderBucket,
        Layout = new EngineLayout("Single made up for tests", [new Cylinder(1, "only")], "the rider's left", [1],
            TurningDirection.Clockwise, "the right side", "Notch"),
        Valves = [new Valve(new ValveKey(1, Side.Intake, 1)), new Valve(new ValveKey(1, Side.Exhaust, 1))],
        Camshafts =
        [
            new Camshaft("intake-cam", "Intake camshaft", [new ValveKey(1, Side.Intake, 1)]),
            new Camshaft("exhaust-cam", "Exhaust camshaft", [new ValveKey(1, Side.Exhaust, 1)]),
        ],
        MeasuringPositions = [],
        Limits = [Limits(Side.Intake, 0.10m, 0.20m, 0.15m), Limits(Side.Exhaust, 0.20m, 0.30m, 0.25m)],
        Cold = new ColdCondition(8, Temperature.FromCelsius(5), Temperature.FromCelsius(35), "probe", Source),
        Accesses = accesses ?? [],
        Joints = joints,
        Fasteners = fasteners,
        ServiceItems = items,
        Provenance = Source,
    };

    private static readonly string[] Parts = ["p1", "p2", "p3", "p4"];
    private static readonly string[] FastenerCodes = ["f1", "f2", "f3", "f4", "f5"];
    private static readonly string[] JointCodes = ["j1", "j2", "j3"];
    private static readonly string[] AccessCodes = ["a1", "a2"];
    private static readonly string[] ItemCodes = ["i1", "i2", "i3", "i4"];

    private static Gen<string[]> Some(string[] codes) =>
        Gen.Int[0, (1 << codes.Length) - 1].Select(bits => codes.Where((_, i) => (bits >> i & 1) == 1).ToArray());

    private static readonly Gen<Seal> AnySeal = Gen.Select(
        Gen.OneOf(Parts.Select(p => Gen.Const(p)).ToArray()), Gen.Int[1, 3], Gen.Enum<SealPolicy>(),
        (part, quantity, policy) => new Seal(part, quantity, policy));

    private static readonly Gen<Sealant?> AnySealant = Gen.Bool.Select(yes => yes ? new Sealant("p4", 5, 30) : null);

    private static readonly Gen<Fastener[]> AnyFasteners = Gen.Select(AnySeal.Array[0, 2], Gen.Int[1, 4], Gen.Bool)
        .Array[FastenerCodes.Length]
        .Select(all => all.Select((f, i) => Fastener(FastenerCodes[i], f.Item2, f.Item1) with { UseOnce = f.Item3 }).ToArray());

    private static readonly Gen<Joint[]> AnyJoints = Gen.Select(Some(FastenerCodes), AnySeal.Array[0, 2], AnySealant)
        .Array[JointCodes.Length]
        .Select(all => all.Select((j, i) => new Joint(JointCodes[i], $"Joint {JointCodes[i]}", j.Item1, j.Item2, j.Item3)).ToArray());

    private static readonly Gen<Access[]> AnyAccesses = Gen.Select(Some(JointCodes), Some(FastenerCodes))
        .Array[AccessCodes.Length]
        .Select(all => all.Select((a, i) => new Access(AccessCodes[i], $"Access {AccessCodes[i]}", 10, a.Item1, a.Item2)).ToArray());

    private static readonly Gen<ServiceItem[]> AnyItems = Gen.Select(
            Some(AccessCodes), Some(JointCodes), Some(FastenerCodes),
            Gen.Select(Gen.OneOf(Parts.Select(p => Gen.Const(p)).ToArray()), Gen.Int[1, 3], Gen.Bool, (p, q, r) => new ItemPart(p, q, r)).Array[0, 2])
        .Array[ItemCodes.Length]
        .Select(all => all.Select((i, n) => Item(ItemCodes[n], i.Item1, i.Item2, i.Item3, i.Item4)).ToArray());

    /// <summary>Any engine with four items over three joints, five fasteners and two accesses.</summary>
    public static readonly Gen<EngineSpecification> Any = Gen.Select(AnyItems, AnyJoints, AnyFasteners, AnyAccesses,
        (items, joints, fasteners, accesses) => Engine(items, joints, fasteners, accesses));

    private static ClearanceLimits Limits(Side side, decimal lower, decimal upper, decimal setTo) => new(
        side, 1, Clearance.FromMillimetres(lower), Clearance.FromMillimetres(upper), Clearance.FromMillimetres(setTo),
        LeverRatio.From(1), Source);
}
