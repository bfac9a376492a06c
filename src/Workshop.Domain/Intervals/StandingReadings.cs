using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Intervals;

/// <summary>
/// The odometer readings of one motorcycle that count: those that no correction has superseded and no confirmed reading overrules;
/// and what became of the superseded ones. What was done is recorded with the day and distance of a reading; when that is
/// corrected, the correction counts.
/// </summary>
public sealed class StandingReadings
{
    private readonly Dictionary<OdometerPoint, OdometerPoint> corrections = [];

    private StandingReadings(IReadOnlyList<OdometerReading> readings) => Readings = readings;

    /// <summary>The readings that count.</summary>
    public IReadOnlyList<OdometerReading> Readings { get; }

    /// <summary>Sorts out all the readings of one motorcycle, superseded ones included.</summary>
    public static StandingReadings Of(IReadOnlyCollection<OdometerReading> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        var corrections = all.Where(r => r.SupersedesId is not null).ToDictionary(r => r.SupersedesId!.Value);
        var standing = new StandingReadings(NotOverruled([.. all.Where(r => !corrections.ContainsKey(r.Id))]));
        var stands = standing.Readings.Select(PointOf).ToHashSet();
        foreach (var superseded in all.Where(r => corrections.ContainsKey(r.Id) && !stands.Contains(PointOf(r))))
        {
            var last = superseded;
            while (corrections.TryGetValue(last.Id, out var next))
            {
                last = next;
            }

            standing.corrections[PointOf(superseded)] = PointOf(last);
        }

        return standing;
    }

    /// <summary>
    /// Those that no reading entered after them, and confirmed, contradicts: a lower one of a later day, or a higher one of an
    /// earlier day. Only readings of one instrument contradict each other.
    /// </summary>
    /// <param name="standing">Readings that no correction has superseded, of one motorcycle.</param>
    public static IReadOnlyList<OdometerReading> NotOverruled(IReadOnlyList<OdometerReading> standing)
    {
        ArgumentNullException.ThrowIfNull(standing);
        return standing.Any(r => r.Confirmed)
            ? [.. standing.Where(r => !standing.Any(c => c.Confirmed && Contradicts(c, r)))]
            : standing;
    }

    private static bool Contradicts(OdometerReading confirmed, OdometerReading earlier) =>
        confirmed.OdometerId == earlier.OdometerId
        && (confirmed.EnteredAt, confirmed.Id).CompareTo((earlier.EnteredAt, earlier.Id)) > 0
        && (confirmed.ReadOn > earlier.ReadOn ? confirmed.Count < earlier.Count
            : confirmed.ReadOn < earlier.ReadOn && confirmed.Count > earlier.Count);

    /// <summary>The day and distance as corrected; unchanged where the reading behind them stands, or where there is none.</summary>
    public OdometerPoint Corrected(OdometerPoint recorded) => corrections.GetValueOrDefault(recorded, recorded);

    private static OdometerPoint PointOf(OdometerReading reading) => new(reading.ReadOn, reading.Distance);
}
