using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.Bookings;

/// <summary>As much of a specification as booking reads: three accesses, a check with its adjustment, routine work.</summary>
internal static class TestItems
{
    private static readonly Provenance Source = new("Invented for tests", "1");

    public static readonly ServiceItem ValveCheck = new("check", "Clearance check", ServiceItemKind.ValveClearanceCheck, 90, Source)
    {
        Accesses = ["tank", "covers"], AdjustmentItem = "adjustment", Skills = ["valve work"],
        Interval = new ServiceInterval { Every = Distance.FromKilometres(24_000) },
    };

    public static readonly ServiceItem Adjustment = new("adjustment", "Adjustment", ServiceItemKind.ValveClearanceAdjustment, 120, Source)
    {
        Accesses = ["tank", "covers", "radiator"], Skills = ["valve work", "cam timing"], SpecialTools = ["jig", "holder"],
    };

    public static readonly ServiceItem Plugs = new("plugs", "Spark plugs", ServiceItemKind.Routine, 20, Source) { Accesses = ["tank"] };

    public static readonly ServiceItem Oil = new("oil", "Oil and filter", ServiceItemKind.Routine, 30, Source);

    public static EngineSpecification Specification { get; } = new()
    {
        ValveTrain = ValveTrainKind.ShimUnderBucket,
        Layout = new EngineLayout("none", [], "none", [], TurningDirection.Clockwise, "none", "none"),
        Valves = [],
        Camshafts = [],
        MeasuringPositions = [],
        Limits = [],
        Cold = new ColdCondition(8, Temperature.FromCelsius(5), Temperature.FromCelsius(35), "probe", Source),
        Accesses =
        [
            new("tank", "Tank off", 15, [], []), new("covers", "Covers off", 25, [], []), new("radiator", "Radiator aside", 35, [], []),
        ],
        Joints = [],
        Fasteners = [],
        ServiceItems = [ValveCheck, Adjustment, Plugs, Oil],
        Provenance = Source,
    };

    public static IReadOnlyList<ChosenItem> Chosen(params (ServiceItem Item, Likelihood Likelihood)[] items) =>
        [.. items.Select(i => new ChosenItem(i.Item, i.Likelihood))];
}
