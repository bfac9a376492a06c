using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Tests.Drift;

/// <summary>The rows of one valve as visits write them, said in a few words.</summary>
internal sealed class LobeRows
{
    public static readonly ValveKey Valve = new(1, Side.Exhaust, 1);
    public static readonly LeverRatio Ratio = LeverRatio.From(0.6m);

    private static readonly Instant Start = Instant.FromUtc(2020, 1, 1, 9, 0);

    private readonly List<ClearanceReading> readings = [];
    private readonly List<ShimObservation> shims = [];
    private readonly List<ValveEvent> events = [];
    private readonly List<PartChange> parts = [];
    private readonly Dictionary<Guid, Distance> distances = [];
    private int made;
    private int card = 1000;
    private Guid odometer;
    private Instant when;

    public Distance? FirstCheckDue { get; init; }

    /// <summary>The next visit; everything after it belongs to it.</summary>
    public LobeRows At(decimal km)
    {
        card++;
        odometer = NextId();
        distances.Add(odometer, Distance.FromKilometres(km));
        when = Start + Duration.FromHours((double)km);
        return this;
    }

    public LobeRows Found(decimal? go, decimal? noGo, int attempt = 1, bool notCold = false, int lobe = 1) =>
        Read(Stage.AsFound, go, noGo, attempt, notCold, false, lobe);

    public LobeRows Left(
        decimal? go, decimal? noGo, int attempt = 1, bool notCold = false, bool notRemeasured = false, int lobe = 1) =>
        Read(Stage.AsLeft, go, noGo, attempt, notCold, notRemeasured, lobe);

    /// <summary>A shim came out, measured or not.</summary>
    public LobeRows CameOut(decimal? mm) => Shim(Stage.AsFound, mm);

    /// <summary>A shim went in, measured or not.</summary>
    public LobeRows WentIn(decimal? mm) => Shim(Stage.AsLeft, mm);

    public LobeRows Happened(ValveEventKind kind, ValveKey? valve = null)
    {
        events.Add(new ValveEvent
        {
            Id = NextId(), EngineId = Guid.Empty, JobCardNumber = card, Valve = valve ?? Valve, Kind = kind,
            OdometerReadingId = odometer, HappenedAt = when, EnteredBy = Guid.Empty, EnteredAt = when,
        });
        return this;
    }

    public LobeRows Changed(ValvePart part, ValveKey? valve)
    {
        parts.Add(new PartChange
        {
            Id = NextId(), EngineId = Guid.Empty, Valve = valve, Part = part, Kind = PartChangeKind.Replaced,
            OdometerReadingId = odometer, JobCardNumber = card, ChangedOn = when.InUtc().Date,
            EnteredBy = Guid.Empty, EnteredAt = when,
        });
        return this;
    }

    /// <summary>The last reading was wrong: a new row takes its place.</summary>
    public LobeRows Corrected(decimal go, decimal noGo)
    {
        var wrong = readings[^1];
        Read(wrong.Stage, go, noGo, wrong.Attempt + 1, false, false, wrong.Lobe, supersedes: wrong.Id);
        return this;
    }

    public EngineHistory History(ulong? shuffledBy = null) => new(
        Shuffled(readings, shuffledBy), Shuffled(shims, shuffledBy), Shuffled(events, shuffledBy), Shuffled(parts, shuffledBy), distances)
    {
        FirstCheckDue = FirstCheckDue,
    };

    public LobeHistory Legs(decimal? ratio = null, int lobe = 1, ulong? shuffledBy = null) => Domain.Drift.Legs.Of(
        History(shuffledBy), new LobeKey(Valve, lobe), ratio is { } other ? LeverRatio.From(other) : Ratio);

    private LobeRows Read(
        Stage stage, decimal? go, decimal? noGo, int attempt, bool notCold, bool notRemeasured, int lobe, Guid? supersedes = null)
    {
        readings.Add(new ClearanceReading
        {
            Id = NextId(), EngineId = Guid.Empty, JobCardNumber = card, Valve = Valve, Lobe = lobe, Stage = stage, Attempt = attempt,
            Kind = (go, noGo) switch
            {
                (null, _) => BracketKind.NoneEnters,
                (_, null) => BracketKind.NextNotTried,
                _ => BracketKind.GoAndNoGo,
            },
            Go = go is { } g ? Clearance.FromMillimetres(g) : null,
            NoGo = noGo is { } n ? Clearance.FromMillimetres(n) : null,
            NotCold = notCold, NotRemeasured = notRemeasured, OdometerReadingId = odometer, MeasuredAt = when,
            MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = when, SupersedesId = supersedes,
        });
        return this;
    }

    private LobeRows Shim(Stage stage, decimal? mm)
    {
        shims.Add(new ShimObservation
        {
            Id = NextId(), EngineId = Guid.Empty, JobCardNumber = card, Valve = Valve, Stage = stage,
            Thickness = mm is { } thickness ? ShimThickness.FromMillimetres(thickness) : null,
            OdometerReadingId = odometer, MeasuredAt = when, MeasuredBy = Guid.Empty, EnteredBy = Guid.Empty, EnteredAt = when,
        });
        return this;
    }

    private Guid NextId() => new(++made, 0, 0, [0, 0, 0, 0, 0, 0, 0, 0]);

    private static List<T> Shuffled<T>(List<T> rows, ulong? seed)
    {
        if (seed is not { } by)
        {
            return rows;
        }

        var random = new Workshop.Domain.Statistics.RandomSource(by);
        return [.. rows.OrderBy(_ => random.Bits())];
    }
}
