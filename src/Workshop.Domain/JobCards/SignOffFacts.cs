using Workshop.Domain.Arrivals;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.Finishing;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;
using Workshop.Domain.Ignition;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Domain.TorqueSheets;

namespace Workshop.Domain.JobCards;

/// <summary>All that is known of a visit when somebody wants to sign it off.</summary>
public sealed record SignOffFacts
{
    public required int Number { get; init; }

    public required JobCardState State { get; init; }

    public required EngineSpecification Specification { get; init; }

    public required IReadOnlyList<ItemUnderWay> UnderWay { get; init; }

    /// <summary>Codes of items under way of which the person says that they were not done.</summary>
    public IReadOnlySet<string> NotDone { get; init; } = new HashSet<string>();

    /// <summary>The person gives a remark that accepts clearances outside their limits.</summary>
    public bool OutsideAccepted { get; init; }

    /// <summary>Readings of this card, all attempts.</summary>
    public IReadOnlyList<ClearanceReading> Readings { get; init; } = [];

    public IReadOnlyList<ShimObservation> Shims { get; init; } = [];

    /// <summary>The shim that each valve had when the visit began, where an earlier one tells.</summary>
    public IReadOnlyDictionary<ValveKey, ShimThickness> ShimsBefore { get; init; } = new Dictionary<ValveKey, ShimThickness>();

    public IReadOnlyList<ValveEvent> Events { get; init; } = [];

    public IReadOnlyList<PartChange> Changes { get; init; } = [];

    public IReadOnlyList<FastenerTick> Ticks { get; init; } = [];

    /// <summary>What each code of the specification means in the stores; codes that they do not know are left out.</summary>
    public IReadOnlyDictionary<string, Part> Parts { get; init; } = new Dictionary<string, Part>();

    /// <summary>Of this card, superseded ones among them.</summary>
    public IReadOnlyList<SealInspection> SealInspections { get; init; } = [];

    /// <summary>Codes of the fasteners at which the workshop asks for a second person.</summary>
    public IReadOnlySet<string> AskSecondPerson { get; init; } = new HashSet<string>();

    /// <summary>Ticks that a second person has confirmed.</summary>
    public IReadOnlySet<Guid> WitnessedTicks { get; init; } = new HashSet<Guid>();

    /// <summary>The workshop asks for a second person for the readings as left.</summary>
    public bool AskAsLeftSecondPerson { get; init; }

    public IReadOnlyList<AsLeftWitness> AsLeftWitnesses { get; init; } = [];

    /// <summary>What follows the work, as far as it was done.</summary>
    public FinishedWork Finished { get; init; } = FinishedWork.Nothing;

    /// <summary>Checks of cam timing of this card, all attempts.</summary>
    public IReadOnlyList<CamTimingCheck> CamChecks { get; init; } = [];

    public IReadOnlyList<CamRecheck> CamRechecks { get; init; } = [];

    /// <summary>Codes of the cautions that somebody has acknowledged on this card.</summary>
    public IReadOnlySet<string> Acknowledged { get; init; } = new HashSet<string>();

    /// <summary>What was found on this visit, and what the owner said.</summary>
    public IReadOnlyList<FindingFacts> Findings { get; init; } = [];

    /// <summary>The owner complains of how it runs.</summary>
    public bool Complaint { get; init; }

    /// <summary>What was seen on arrival, and what the owner complains of; all rows.</summary>
    public IReadOnlyList<ArrivalNote> Arrival { get; init; } = [];

    /// <summary>Compression and leak-down of this card, all attempts.</summary>
    public IReadOnlyList<CylinderTest> CylinderTests { get; init; } = [];

    /// <summary>Spark plugs of this card, all attempts.</summary>
    public IReadOnlyList<PlugCheck> PlugChecks { get; init; } = [];

    /// <summary>Valves that the visit disturbed, with what disturbed them.</summary>
    public IReadOnlyDictionary<ValveKey, string> Disturbed => DisturbedValves.Of(Specification, Shims, Events, Changes);

    /// <summary>Items that are written into the history at sign-off.</summary>
    public IReadOnlyList<ServiceItem> Done => [.. UnderWay.Select(i => i.Item).Where(i => !NotDone.Contains(i.Code))];

    /// <summary>
    /// Items that were at least begun: the done ones, and those said not to be done though the card shows that somebody was
    /// at them. What these opened must be closed.
    /// </summary>
    public IReadOnlyList<ServiceItem> Begun =>
        [.. UnderWay.Where(i => !NotDone.Contains(i.Item.Code) || i.StartedAt is not null || WasTouched(i.Item)).Select(i => i.Item)];

    /// <summary>The fasteners that must be tight: those of items begun, and any that was ever ticked on this card.</summary>
    public IReadOnlyList<TorqueLine> ToBeTight
    {
        get
        {
            var opened = Opened.By(Specification, Begun).Fasteners.Select(f => f.Code).ToHashSet(StringComparer.Ordinal);
            return [.. TorqueSheet.Of(Specification, UnderWay, Ticks).Lines
                .Where(l => opened.Contains(l.Fastener.Code) || l.Tick.Last is not null)];
        }
    }

    /// <summary>Old seals that may go back in, of what was opened.</summary>
    public IReadOnlyList<SealToInspect> SealsOpened => OpenedSeals.Of(Specification, Begun, Parts);

    private bool WasTouched(ServiceItem item) => item.Kind switch
    {
        ServiceItemKind.ValveClearanceCheck => Readings.Count > 0,
        ServiceItemKind.ValveClearanceAdjustment => Disturbed.Count > 0,
        ServiceItemKind.CamTimingCheck => CamChecks.Count > 0,
        _ => false,
    };
}
