using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Domain.Statistics;

namespace Workshop.Domain.Tests.Drift;

/// <summary>The rows of a whole engine as visits write them, and the road from them to the drift model.</summary>
internal sealed class EngineRows(int number = 1)
{
    private static readonly Instant Start = Instant.FromUtc(2020, 1, 1, 9, 0);

    private readonly List<ClearanceReading> readings = [];
    private readonly List<ShimObservation> shims = [];
    private readonly List<ValveEvent> events = [];
    private readonly List<PartChange> parts = [];
    private readonly Dictionary<Guid, Distance> distances = [];
    private int made;
    private Guid odometer;
    private Instant when;

    public Distance? FirstCheckDue { get; init; } = Distance.FromKilometres(24_000);

    /// <summary>Every distance is written times this.</summary>
    public decimal KmFactor { get; init; } = 1;

    /// <summary>Added to every distance.</summary>
    public decimal KmShift { get; init; }

    /// <summary>Added to every blade from here on.</summary>
    public decimal ShiftMm { get; set; }

    public Guid EngineId => new(number, 0, 0, [1, 0, 0, 0, 0, 0, 0, 0]);

    /// <summary>The card of the visit that is open, from 1001.</summary>
    public int Card { get; private set; } = 1000;

    /// <summary>The distance of the last visit.</summary>
    public Distance Last { get; private set; }

    /// <summary>The next visit; everything after it belongs to it.</summary>
    public EngineRows At(decimal km)
    {
        Card++;
        odometer = NextId();
        Last = Distance.FromKilometres((km * KmFactor) + KmShift);
        distances.Add(odometer, Last);
        when = Start + Duration.FromDays(Card);
        return this;
    }

    public EngineRows Found(LobeKey lobe, decimal? go, decimal? noGo, bool stacked = false) =>
        Read(lobe, Stage.AsFound, Of(go, noGo, stacked));

    public EngineRows Left(LobeKey lobe, decimal? go, decimal? noGo) => Read(lobe, Stage.AsLeft, Of(go, noGo));

    public EngineRows Read(LobeKey lobe, Stage stage, Bracket bracket, bool notRemeasured = false)
    {
        readings.Add(new ClearanceReading
        {
            Id = NextId(), EngineId = EngineId, JobCardNumber = Card, Valve = lobe.Valve, Lobe = lobe.Lobe, Stage = stage, Attempt = 1,
            Kind = bracket.Kind, Go = Shifted(bracket.Go), NoGo = Shifted(bracket.NoGo), Stacked = bracket.Stacked, NotRemeasured = notRemeasured,
            OdometerReadingId = odometer, MeasuredAt = when, MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = when,
        });
        return this;
    }

    /// <summary>A shim came out (as found) or went in (as left), measured or not.</summary>
    public EngineRows Shim(ValveKey valve, Stage stage, decimal? mm)
    {
        shims.Add(new ShimObservation
        {
            Id = NextId(), EngineId = EngineId, JobCardNumber = Card, Valve = valve, Stage = stage,
            Thickness = mm is { } thickness ? ShimThickness.FromMillimetres(thickness) : null,
            OdometerReadingId = odometer, MeasuredAt = when, MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = when,
        });
        return this;
    }

    public EngineRows Happened(ValveKey valve, ValveEventKind kind)
    {
        events.Add(new ValveEvent
        {
            Id = NextId(), EngineId = EngineId, JobCardNumber = Card, Valve = valve, Kind = kind,
            OdometerReadingId = odometer, HappenedAt = when, EnteredBy = Guid.Empty, EnteredAt = when,
        });
        return this;
    }

    public EngineRows Replaced(ValvePart part, ValveKey? valve)
    {
        parts.Add(new PartChange
        {
            Id = NextId(), EngineId = EngineId, Valve = valve, Part = part, Kind = PartChangeKind.Replaced,
            OdometerReadingId = odometer, JobCardNumber = Card, ChangedOn = when.InUtc().Date,
            EnteredBy = Guid.Empty, EnteredAt = when,
        });
        return this;
    }

    /// <summary>What the drift model makes of the rows.</summary>
    /// <param name="specification">Limits and lever ratios as the specification states them.</param>
    /// <param name="doneNowKm">Where the odometer was last read; none: at the last visit.</param>
    /// <param name="shuffledBy">Puts the rows in another order.</param>
    /// <param name="leftOut">Cards that a person left out.</param>
    public DriftEngine Engine(
        EngineSpecification specification, decimal? doneNowKm = null, ulong? shuffledBy = null, params IEnumerable<int> leftOut)
    {
        var history = new EngineHistory(
            Shuffled(readings, shuffledBy), Shuffled(shims, shuffledBy), Shuffled(events, shuffledBy), Shuffled(parts, shuffledBy), distances)
        {
            FirstCheckDue = FirstCheckDue,
            LeftOut = new LeftOutVisits(leftOut.ToHashSet(), new HashSet<Guid>()),
        };
        return DriftEngine.Of(
            EngineId, specification, history, doneNowKm is { } km ? Distance.FromKilometres(km) : made == 0 ? null : Last);
    }

    public static Bracket Of(decimal? go, decimal? noGo, bool stacked = false) => Bracket.Of(
        go is null ? BracketKind.NoneEnters : noGo is null ? BracketKind.ThickestIsLoose : BracketKind.GoAndNoGo,
        go is { } g ? Clearance.FromMillimetres(g) : null,
        noGo is { } n ? Clearance.FromMillimetres(n) : null,
        stacked);

    private Clearance? Shifted(Clearance? blade) =>
        blade is { } mm ? Clearance.FromMillimetres(mm.Millimetres + ShiftMm) : null;

    private Guid NextId() => new(++made, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]);

    private static List<T> Shuffled<T>(List<T> rows, ulong? seed)
    {
        if (seed is not { } by)
        {
            return [.. rows];
        }

        var random = new RandomSource(by);
        return [.. rows.OrderBy(_ => random.Bits())];
    }
}
