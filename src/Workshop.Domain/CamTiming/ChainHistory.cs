using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>What is read to tell how far a drive is worn.</summary>
public enum WearMeasure
{
    /// <summary>Extension of the tensioner, in mm.</summary>
    TensionerExtension,

    /// <summary>Mean retard of all camshafts of the drive, in crank degrees.</summary>
    MeanRetard,
}

/// <summary>
/// One reading of wear: between two ends, as a tensioner in notches tells nothing between two of them, and one at its stop
/// only that the chain is at least so long.
/// </summary>
/// <param name="At">What the engine had done.</param>
/// <param name="Lower">mm or crank degrees.</param>
/// <param name="Upper">The same as <paramref name="Lower"/> where it was read exactly; infinity at the stop.</param>
public sealed record WearReading(Distance At, double Lower, double Upper)
{
    /// <summary>For a picture: the middle, or the lower end where the upper is open.</summary>
    public double Middle => double.IsInfinity(Upper) ? Lower : (Lower + Upper) / 2;
}

/// <summary>Readings of one level: until tensioner or guide were renewed.</summary>
/// <param name="Origin">What the engine had done where it begins.</param>
/// <param name="Refitted">It begins with a new tensioner or guide on a chain that had run.</param>
public sealed record WearLeg(Distance Origin, bool Refitted, IReadOnlyList<WearReading> Readings);

/// <summary>The life of one chain: all that shares its slope.</summary>
/// <param name="EngineId">Of which engine.</param>
/// <param name="DriveCode">Of which drive.</param>
/// <param name="Legs">In order; the last is the present one.</param>
/// <param name="IsPresent">It is the chain that is in the engine now.</param>
public sealed record ChainLife(Guid EngineId, string DriveCode, IReadOnlyList<WearLeg> Legs, bool IsPresent)
{
    /// <summary>All readings, in order.</summary>
    public IEnumerable<WearReading> Readings => Legs.SelectMany(l => l.Readings);

    /// <summary>How many distances were read on some leg that tells a slope.</summary>
    public int Distances => Legs.Select(l => l.Readings.Select(r => r.At).Distinct().Count()).DefaultIfEmpty(0).Max();
}

/// <summary>Reads the rows of an engine as lives of its chains.</summary>
public static class ChainHistory
{
    /// <summary>The lives of a drive's chains in one engine, by one measure, the present one last.</summary>
    /// <param name="engineId">Which engine.</param>
    /// <param name="drive">As the specification has it now.</param>
    /// <param name="measure">By what wear is told.</param>
    /// <param name="readings">Of the tensioner, all attempts of all visits.</param>
    /// <param name="checks">Of cam timing, all attempts of all visits.</param>
    /// <param name="changes">What was renewed.</param>
    /// <param name="distances">What the engine had done at each odometer reading; rows whose reading is not among them are left out.</param>
    public static IReadOnlyList<ChainLife> Of(
        Guid engineId,
        CamDrive drive,
        WearMeasure measure,
        IReadOnlyCollection<ChainReading> readings,
        IReadOnlyCollection<CamTimingCheck> checks,
        IReadOnlyCollection<ChainChange> changes,
        IReadOnlyDictionary<Guid, Distance> distances)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(distances);
        var seen = (measure == WearMeasure.TensionerExtension ? Extensions(drive, readings, distances) : Retards(drive, checks, distances)).ToArray();
        var own = changes.Where(c => c.DriveCode == drive.Code && distances.ContainsKey(c.OdometerReadingId))
            .Select(c => new Step(distances[c.OdometerReadingId], c.Kind, null)).ToArray();

        // At one visit: as found, what was renewed, as left.
        var steps = seen.Where(s => s.Stage == Stage.AsFound).Select(s => new Step(s.Reading.At, null, s.Reading))
            .Concat(own)
            .Concat(seen.Where(s => s.Stage == Stage.AsLeft).Select(s => new Step(s.Reading.At, null, s.Reading)))
            .OrderBy(s => s.At);
        return new Walk(engineId, drive.Code).Through(steps, seen.Length > 0);
    }

    private static IEnumerable<(Stage Stage, WearReading Reading)> Extensions(
        CamDrive drive, IEnumerable<ChainReading> readings, IReadOnlyDictionary<Guid, Distance> distances) => Attempts.LastOfEach(
            readings.Where(r => r.DriveCode == drive.Code && distances.ContainsKey(r.OdometerReadingId)), r => (r.JobCardNumber, r.Stage))
        .Where(r => r.ExtensionMm is not null || r.AtStop)
        .Select(r => (r.Stage, Read(drive.Tensioner, r, distances[r.OdometerReadingId])));

    private static WearReading Read(ChainTensioner? tensioner, ChainReading reading, Distance at)
    {
        if (reading.AtStop)
        {
            return new WearReading(at, (double)(tensioner?.StopMm ?? tensioner?.LimitMm ?? 0), double.PositiveInfinity);
        }

        // The notch that holds it says that it is not yet one further.
        var mm = (double)reading.ExtensionMm!.Value;
        return new WearReading(at, mm, mm + (double)(tensioner?.StepMm ?? 0));
    }

    private static IEnumerable<(Stage Stage, WearReading Reading)> Retards(
        CamDrive drive, IEnumerable<CamTimingCheck> checks, IReadOnlyDictionary<Guid, Distance> distances) => checks
        .Where(c => distances.ContainsKey(c.OdometerReadingId) && c.Method == TimingMethod.DegreeWheel && drive.CamshaftCodes().Contains(c.CamshaftCode))
        .GroupBy(c => (c.JobCardNumber, c.Stage))
        .Select(g => (g.Key.Stage, At: distances[g.First().OdometerReadingId], Retard: MeanRetard(drive, CamTimingRules.Standing(g))))
        .Where(r => r.Retard is not null)
        .Select(r => (r.Stage, new WearReading(r.At, r.Retard!.Value, r.Retard!.Value)));

    /// <summary>Of all camshafts, each measured and comparable; else nothing.</summary>
    private static double? MeanRetard(CamDrive drive, IReadOnlyList<CamTimingCheck> standing)
    {
        var found = standing.Select(c => (c.CamshaftCode, Advance: CamTimingRules.Finding(drive, c)?.Advance)).Where(f => f.Advance is not null)
            .GroupBy(f => f.CamshaftCode).Select(g => g.Average(f => f.Advance!.Value.Degrees)).ToArray();
        return found.Length == drive.CamshaftCodes().Count() ? -(double)found.Average() : null;
    }

    private sealed record Step(Distance At, ChainChangeKind? Kind, WearReading? Reading);

    /// <summary>Goes through readings and changes in order of distance.</summary>
    private sealed class Walk(Guid engineId, string drive)
    {
        private readonly List<ChainLife> lives = [];
        private readonly List<WearLeg> legs = [];
        private readonly List<WearReading> readings = [];
        private Distance origin = Distance.Zero;
        private bool refitted;

        public ChainLife[] Through(IEnumerable<Step> steps, bool wasRead)
        {
            foreach (var step in steps)
            {
                if (step.Reading is { } reading)
                {
                    readings.Add(reading);
                }
                else
                {
                    EndLeg(step.At, step.Kind != ChainChangeKind.ChainRenewed);
                    if (step.Kind == ChainChangeKind.ChainRenewed)
                    {
                        EndLife(isPresent: false);
                    }
                }
            }

            EndLeg(origin, refitted);
            EndLife(isPresent: true);
            return wasRead ? lives.ToArray() : [];
        }

        private void EndLeg(Distance nextOrigin, bool nextRefitted)
        {
            legs.Add(new WearLeg(origin, refitted, readings.ToArray()));
            readings.Clear();
            (origin, refitted) = (nextOrigin, nextRefitted);
        }

        private void EndLife(bool isPresent)
        {
            lives.Add(new ChainLife(engineId, drive, legs.ToArray(), isPresent));
            legs.Clear();
        }
    }
}
