using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Tests.Kits;
using Workshop.Domain.TorqueSheets;
using static Workshop.Domain.Tests.Kits.MadeUpEngines;

namespace Workshop.Domain.Tests.JobCards;

/// <summary>A visit with a check, its adjustment and an oil change, at which everything is in order; tests spoil one thing.</summary>
internal static class VisitFacts
{
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 8, 0);

    public static readonly ValveKey Intake = new(1, Side.Intake, 1);
    public static readonly ValveKey Exhaust = new(1, Side.Exhaust, 1);

    public static readonly ServiceItem Check = Item("check", fasteners: ["cover-bolt"]) with
    {
        Name = "Valve clearance check", Kind = ServiceItemKind.ValveClearanceCheck, Cautions = ["turn-by-hand"],
    };

    public static readonly ServiceItem Adjust = Item("adjust", fasteners: ["cap-bolt", "cover-bolt"]) with
    {
        Name = "Valve clearance adjustment", Kind = ServiceItemKind.ValveClearanceAdjustment, Cautions = ["cam-chain-taut"],
    };

    public static readonly ServiceItem Oil = Item("oil", fasteners: ["plug"]) with { Name = "Engine oil", Cautions = ["hot-oil"] };

    public static readonly EngineSpecification Engine = MadeUpEngines.Engine(
        [Check, Adjust, Oil],
        [],
        [
            Fastener("cover-bolt", 6) with { Name = "Head cover bolt" },
            Fastener("cap-bolt", 8) with { Name = "Cap bolt" },
            Fastener("plug") with { Name = "Oil drain plug" },
        ]);

    /// <summary>Check and oil, all measured within limits, all ticked and acknowledged.</summary>
    public static readonly SignOffFacts InOrder = new()
    {
        Number = 1001,
        State = JobCardState.CheckedIn,
        Specification = Engine,
        UnderWay = [new(Check), new(Oil)],
        Readings = [Reading(Intake, Stage.AsFound, 0.15m), Reading(Exhaust, Stage.AsFound, 0.25m)],
        Ticks = [Tick("cover-bolt"), Tick("plug")],
        Acknowledged = new HashSet<string> { "turn-by-hand", "hot-oil" },
    };

    /// <summary>The same with the adjustment done on the intake side.</summary>
    public static readonly SignOffFacts Adjusted = InOrder with
    {
        UnderWay = [new(Check), new(Oil), new(Adjust, Start)],
        Readings = [.. InOrder.Readings, Reading(Intake, Stage.AsLeft, 0.16m)],
        Shims = [Shim(Intake, Stage.AsFound), Shim(Intake, Stage.AsLeft)],
        Ticks = [.. InOrder.Ticks, Tick("cap-bolt")],
        Acknowledged = new HashSet<string> { "turn-by-hand", "hot-oil", "cam-chain-taut" },
    };

    public static ClearanceReading Reading(
        ValveKey valve, Stage stage, decimal goMm, decimal? noGoMm = null, int attempt = 1, int lobe = 1, bool carried = false) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = valve, Lobe = lobe, Stage = stage, Attempt = attempt,
        Kind = BracketKind.GoAndNoGo, Go = Clearance.FromMillimetres(goMm), NoGo = Clearance.FromMillimetres(noGoMm ?? goMm + 0.01m),
        NotRemeasured = carried, OdometerReadingId = Guid.Empty, MeasuredAt = Start, MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty,
        EnteredAt = Start,
    };

    public static ShimObservation Shim(ValveKey valve, Stage stage, int minute = 0) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = valve, Stage = stage,
        Thickness = ShimThickness.FromMillimetres(2.5m), OdometerReadingId = Guid.Empty,
        MeasuredAt = Start + Duration.FromMinutes(minute), MeasuredBy = Guid.Empty,
        EnteredBy = Guid.Empty, EnteredAt = Start,
    };

    public static ValveEvent Event(ValveKey valve, ValveEventKind kind) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, JobCardNumber = 1001, Valve = valve, Kind = kind, OdometerReadingId = Guid.Empty,
        HappenedAt = Start, EnteredBy = Guid.Empty, EnteredAt = Start,
    };

    public static PartChange Change(ValveKey? valve, ValvePart part) => new()
    {
        Id = NewId.At(Start), EngineId = Guid.Empty, Valve = valve, Part = part, Kind = PartChangeKind.Replaced,
        OdometerReadingId = Guid.Empty, ChangedOn = new LocalDate(2026, 3, 2), EnteredBy = Guid.Empty, EnteredAt = Start,
    };

    public static FastenerTick Tick(string code, bool tightened = true, FastenerTick? supersedes = null, int minute = 60) => new()
    {
        Id = NewId.At(Start), JobCardNumber = 1001, FastenerCode = code, Tightened = tightened, SupersedesId = supersedes?.Id,
        TickedBy = Guid.Empty, TickedAt = Start + Duration.FromMinutes(minute),
    };

    public static EngineSpecification WithTrain(ValveTrainKind train, bool oneShaft = false) => Engine with
    {
        ValveTrain = train,
        Camshafts = oneShaft ? [new Camshaft("cam", "Camshaft", [Intake, Exhaust])] : Engine.Camshafts,
    };
}
