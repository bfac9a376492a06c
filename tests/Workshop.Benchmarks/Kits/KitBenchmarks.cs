using BenchmarkDotNet.Attributes;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;
using Workshop.Domain.Stores;

namespace Workshop.Benchmarks.Kits;

/// <summary>The kit of a job with twelve items on a made-up engine that opens much, with every line's sentence; the bar is 5 ms.</summary>
[MemoryDiagnoser]
public class KitBenchmarks
{
    private const int Joints = 40;
    private const int FastenersOfJoint = 4;
    private const int PartCount = 80;

    private static readonly Provenance Source = new("Invented for a benchmark", "1");

    private EngineSpecification engine = null!;
    private Dictionary<string, Part> parts = null!;

    /// <summary>Half of them, but never fewer than three, are certain; the others are held ready.</summary>
    [Params(3, 12)]
    public int Items { get; set; }

    [GlobalSetup]
    public void MakeUp()
    {
        parts = Enumerable.Range(0, PartCount).ToDictionary(n => $"part-{n}", n => new Part
        {
            Id = new Guid(n, 0, 0, new byte[8]), Code = $"part-{n}", Name = $"Sealing ring {n}", Kind = PartKind.SealingRing, Unit = PartUnit.Piece,
            InnerDiameterMm = 8 + n, OuterDiameterMm = 12 + n, SectionMm = 1.5m, FittedOnce = n % 3 == 0,
        });
        List<Fastener> fasteners = [.. Enumerable.Range(0, Joints * FastenersOfJoint).Select(n => new Fastener(
            $"fastener-{n}", $"Bolt {n}", 4, "M6x1", Torque.FromNewtonMetres(10), ThreadTreatment.Dry, "8 mm socket", Source)
        {
            Seals = [new Seal($"part-{n % PartCount}", 4, (SealPolicy)(n % 3))],
        })];
        List<Joint> joints = [.. Enumerable.Range(0, Joints).Select(n => new Joint(
            $"joint-{n}", $"Cover {n}", [.. Enumerable.Range(n * FastenersOfJoint, FastenersOfJoint).Select(f => $"fastener-{f}")],
            [new Seal($"part-{n}", 1, (SealPolicy)(n % 3)), new Seal($"part-{n + 1}", 2, SealPolicy.InspectAndReuse)], new Sealant("part-79", 4, 30)))];
        engine = new EngineSpecification
        {
            ValveTrain = ValveTrainKind.ScrewAndLocknut,
            Layout = new EngineLayout("Single made up for a benchmark", [new Cylinder(1, "only")], "the left", [1], TurningDirection.Clockwise, "the right", "T"),
            Valves = [],
            Camshafts = [],
            MeasuringPositions = [],
            Limits = [],
            Cold = new ColdCondition(8, Temperature.FromCelsius(5), Temperature.FromCelsius(35), "probe", Source),
            Accesses = [.. Enumerable.Range(0, Joints / 2).Select(n => new Access($"access-{n}", $"Access {n}", 10, [$"joint-{n * 2}"], []))],
            Joints = joints,
            Fasteners = fasteners,
            ServiceItems = [.. Enumerable.Range(0, Items).Select(n => new ServiceItem($"item-{n}", $"Item {n}", ServiceItemKind.Routine, 20, Source)
            {
                // Every item opens a third of all, and each joint is opened by several.
                Accesses = [.. Enumerable.Range(n, 8).Select(a => $"access-{a % (Joints / 2)}")],
                Joints = [.. Enumerable.Range(n * 3, 8).Select(j => $"joint-{j % Joints}")],
                Parts = [new ItemPart($"part-{70 + (n % 8)}", 1), new ItemPart($"part-{60 + (n % 8)}", 2, HaveReady: true)],
            })],
            Provenance = Source,
        };
    }

    [Benchmark]
    public int KitWithSentences()
    {
        var certain = Math.Max(3, Items / 2);
        var kit = Kit.Of(engine, engine.ServiceItems.Take(certain), engine.ServiceItems.Skip(certain), parts);
        return kit.Lines.Sum(l => l.Sentence.Length);
    }

    /// <summary>Twelve items that are all done in any case.</summary>
    [Benchmark]
    public int KitOfCertainItems() => Kit.Of(engine, engine.ServiceItems, [], parts).Lines.Count;
}
