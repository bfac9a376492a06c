using Workshop.Domain.Motorcycles;

namespace Workshop.Domain.Intervals;

/// <summary>
/// The odometer readings of one motorcycle that no correction has superseded, and what became of the superseded ones. What
/// was done is recorded with the day and distance of a reading; when that is corrected, the correction counts.
/// </summary>
public sealed class StandingReadings
{
    private readonly Dictionary<OdometerPoint, OdometerPoint> corrections = [];

    private StandingReadings(IReadOnlyList<OdometerReading> readings) => Readings = readings;

    /// <summary>The readings that stand.</summary>
    public IReadOnlyList<OdometerReading> Readings { get; }

    /// <summary>Sorts out all the readings of one motorcycle, superseded ones included.</summary>
    public static StandingReadings Of(IReadOnlyCollection<OdometerReading> all)
    {
        ArgumentNullException.ThrowIfNull(all);
        var corrections = all.Where(r => r.SupersedesId is not null).ToDictionary(r => r.SupersedesId!.Value);
        var standing = new StandingReadings([.. all.Where(r => !corrections.ContainsKey(r.Id))]);
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

    /// <summary>The day and distance as corrected; unchanged where the reading behind them stands, or where there is none.</summary>
    public OdometerPoint Corrected(OdometerPoint recorded) => corrections.GetValueOrDefault(recorded, recorded);

    private static OdometerPoint PointOf(OdometerReading reading) => new(reading.ReadOn, reading.Distance);
}
