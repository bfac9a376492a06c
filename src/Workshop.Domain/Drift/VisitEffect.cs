using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>
/// What all readings of a visit have in common beyond the drift model, by the method of moments: every engine's last visit is
/// predicted from those before, and the squares of the mean residuals are compared with what the model expects of them.
/// </summary>
/// <param name="DeviationMm">Standard deviation over visits, 0 or above, in mm.</param>
/// <param name="Visits">Visits that tell of it.</param>
/// <param name="StandsOut">It is above 0 by more than two standard errors.</param>
public sealed record VisitEffect(double DeviationMm, int Visits, bool StandsOut)
{
    private const int FewestVisits = 8;

    private const int FewestReadings = 4;

    /// <summary>The effect over all engines; nothing where too few have a visit with a history.</summary>
    public static VisitEffect? Of(IReadOnlyList<DriftEngine> engines, DriftFit fit)
    {
        ArgumentNullException.ThrowIfNull(engines);
        ArgumentNullException.ThrowIfNull(fit);
        var excess = new List<double>();
        foreach (var engine in engines)
        {
            var readings = ReadingPrediction.Of(fit, LastVisit(engine, fit));
            if (readings.Count >= FewestReadings)
            {
                var mean = readings.Average(r => r.Score * r.DeviationMm);
                excess.Add((mean * mean) - ReadingPrediction.VarianceOfMean(fit, readings, _ => 1));
            }
        }

        if (excess.Count < FewestVisits)
        {
            return null;
        }

        var variance = excess.Average();
        var error = Math.Sqrt(excess.Sum(e => (e - variance) * (e - variance)) / (excess.Count - 1) / excess.Count);
        return new VisitEffect(Math.Sqrt(Math.Max(0, variance)), excess.Count, variance > 2 * error);
    }

    /// <summary>The as-found readings of the engine's last visit that has a visit before it, each with its history.</summary>
    private static List<HeldReading> LastVisit(DriftEngine engine, DriftFit fit)
    {
        var places = engine.Lobes.SelectMany(l => l.Legs).SelectMany(l => l.Readings)
            .Where(r => r.Reading.Stage == Stage.AsFound).Select(r => r.At).ToList();
        if (places.Count == 0)
        {
            return [];
        }

        var last = places.Max();
        var uncertainty = SwapUncertainty.Of(engine.Specification.ValveTrain, fit.SigmaMm.Value);
        return [.. engine.Lobes
            .Where(lobe => fit.Knows(lobe.Lobe.Valve.Side))
            .Select(lobe => Held(lobe, engine.LegsOf(lobe, uncertainty), last))
            .OfType<HeldReading>()];
    }

    private static HeldReading? Held(LobeHistory lobe, IReadOnlyList<ModelLeg> legs, Distance last)
    {
        for (var number = 0; number < legs.Count; number++)
        {
            var leg = legs[number];
            var x = leg.XAt(last);
            var before = leg.Readings.Where(r => r.X < x).ToList();
            if (before.Count > 0 && leg.Readings.FirstOrDefault(r => r.X == x) is { } reading)
            {
                return new HeldReading(
                    lobe.Lobe, [.. legs.Take(number), leg with { Readings = before }], x, reading.LowerMm, reading.UpperMm, reading.Variance);
            }
        }

        return null;
    }
}
