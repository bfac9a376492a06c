using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;

namespace Workshop.Domain.Drift;

/// <summary>
/// Joins the readings of one lobe into legs. As found takes the shim that came out, as left the one that went in; a shim that
/// nobody moved needs no thickness, and takes the one that it turns out to have when it is measured later. A leg is cut by
/// what makes the step unknown: a screw turned, a shim changed to or from an unmeasured one, changed or not unknown; and by a
/// part replaced or ground, which begins a new slope as well.
/// </summary>
/// <remarks>
/// What nobody wrote down did not happen: a leg is cut by an event, not by a missing number. So a shim measured as it came
/// out, with none recorded as going in, went back; and a valve measured again as left with nothing recorded was not changed,
/// unless the two readings lie too far apart for that: then changed or not is unknown.
/// </remarks>
public static class Legs
{
    /// <summary>The legs of one lobe.</summary>
    /// <param name="history">The rows of its engine.</param>
    /// <param name="lobe">The lobe.</param>
    /// <param name="ratio">The lever ratio of its side and lobe.</param>
    /// <exception cref="KeyNotFoundException">A row names an odometer reading whose distance is not given.</exception>
    public static LobeHistory Of(EngineHistory history, LobeKey lobe, LeverRatio ratio)
    {
        ArgumentNullException.ThrowIfNull(history);
        var walk = new LegWalk(lobe, ratio, history.FirstCheckDue, history.LeftOut);
        foreach (var visit in Visits(history, lobe))
        {
            walk.Take(visit);
        }

        return walk.Finish();
    }

    private static IEnumerable<LobeVisit> Visits(EngineHistory history, LobeKey lobe)
    {
        var superseded = history.Readings.Select(r => r.SupersedesId).Concat(history.Shims.Select(s => s.SupersedesId))
            .OfType<Guid>().ToHashSet();
        var visits = new Dictionary<(int?, Guid?), LobeVisit>();

        LobeVisit At(int? card, Guid odometerReading, Instant when)
        {
            (int?, Guid?) key = card is null ? (null, odometerReading) : (card, null);
            var distance = history.DistanceAt[odometerReading];
            if (!visits.TryGetValue(key, out var visit))
            {
                visits.Add(key, visit = new LobeVisit(distance, when, card));
            }

            visit.Include(distance, when);
            return visit;
        }

        foreach (var reading in history.Readings.Where(r => r.Key == lobe && !superseded.Contains(r.Id)))
        {
            At(reading.JobCardNumber, reading.OdometerReadingId, reading.MeasuredAt).Readings
                .Add((reading, history.DistanceAt[reading.OdometerReadingId]));
        }

        foreach (var shim in history.Shims.Where(s => s.Valve == lobe.Valve && !superseded.Contains(s.Id)))
        {
            At(shim.JobCardNumber, shim.OdometerReadingId, shim.MeasuredAt).Shims.Add(shim);
        }

        foreach (var done in history.Events.Where(e => e.Valve == lobe.Valve))
        {
            At(done.JobCardNumber, done.OdometerReadingId, done.HappenedAt).Events.Add(done.Kind);
        }

        foreach (var change in history.PartChanges.Where(c => c.Valve is null || c.Valve == lobe.Valve))
        {
            At(change.JobCardNumber, change.OdometerReadingId, change.ChangedOn.AtMidnight().InUtc().ToInstant()).PartChanged = true;
        }

        return visits.OrderBy(v => v.Value.At).ThenBy(v => v.Value.When).ThenBy(v => v.Key).Select(v => v.Value);
    }
}

/// <summary>What happened to one lobe at one visit.</summary>
internal sealed class LobeVisit(Distance at, Instant when, int? card)
{
    public Distance At { get; private set; } = at;

    public Instant When { get; private set; } = when;

    public int? Card { get; } = card;

    public List<(ClearanceReading Reading, Distance At)> Readings { get; } = [];

    public List<ShimObservation> Shims { get; } = [];

    public List<ValveEventKind> Events { get; } = [];

    public bool PartChanged { get; set; }

    public void Include(Distance distance, Instant moment)
    {
        At = distance < At ? distance : At;
        When = Instant.Min(When, moment);
    }

    /// <summary>The last accepted reading of a stage; the attempts before it do not count.</summary>
    public (ClearanceReading Reading, Distance At)? Last(Stage stage) => Readings
        .Where(r => r.Reading.Stage == stage)
        .OrderBy(r => r.Reading.Attempt).ThenBy(r => r.Reading.EnteredAt).ThenBy(r => r.Reading.Id)
        .Select(r => ((ClearanceReading, Distance)?)r)
        .LastOrDefault();

    public ShimObservation? Shim(Stage stage) => Shims
        .Where(s => s.Stage == stage)
        .OrderBy(s => s.MeasuredAt).ThenBy(s => s.EnteredAt).ThenBy(s => s.Id)
        .LastOrDefault();
}
