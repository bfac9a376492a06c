using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;

namespace Workshop.Domain.CamTiming;

/// <summary>What the rows of cam timing must satisfy, and which of them count.</summary>
public static class CamTimingRules
{
    /// <summary>Nothing where a drive of the engine times the camshaft; else the fault, which names those that are.</summary>
    public static FieldFault? FaultOfCamshaft(string field, string? camshaft, EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        var timed = specification.CamDrives.SelectMany(d => d.CamshaftCodes()).ToArray();
        return timed.Contains(camshaft, StringComparer.Ordinal)
            ? null
            : new FieldFault(field, $"{field} is \"{camshaft}\": the engine model states no timing of it; it does of {Named(timed)}.");
    }

    /// <summary>Nothing where the camshaft, which is timed, is so on that side.</summary>
    public static FieldFault? FaultOfSide(string field, string camshaft, Side side, EngineSpecification specification)
    {
        var sides = LobesOf(specification, camshaft).Select(l => l.Side).ToArray();
        return sides.Contains(side)
            ? null
            : new FieldFault(field, $"{field} is {side.Spoken()}: of \"{camshaft}\" {string.Join(" and ", sides.Select(s => s.Spoken()))} is timed.");
    }

    /// <summary>Nothing where the engine has such a drive.</summary>
    public static FieldFault? FaultOfDrive(string field, string? drive, EngineSpecification specification)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return specification.CamDrives.Any(d => d.Code == drive)
            ? null
            : new FieldFault(field, $"{field} is \"{drive}\": the engine model has {Named([.. specification.CamDrives.Select(d => d.Code)])}.");
    }

    /// <summary>How a camshaft is timed, side by side.</summary>
    public static IReadOnlyList<LobeTiming> LobesOf(EngineSpecification specification, string camshaft)
    {
        ArgumentNullException.ThrowIfNull(specification);
        return [.. specification.CamDrives.SelectMany(d => d.Lobes).Where(l => l.Camshaft == camshaft)];
    }

    /// <summary>The checks that count: the last attempt of each camshaft, stage, method and side.</summary>
    public static IReadOnlyList<CamTimingCheck> Standing(IEnumerable<CamTimingCheck> checks) =>
        [.. Attempts.LastOfEach(checks, c => c.Key)];

    /// <summary>The reading of a drive and stage that counts: the last attempt; nothing where there is none.</summary>
    public static ChainReading? Standing(IEnumerable<ChainReading> readings, string drive, Stage stage) =>
        Attempts.Last(readings.Where(r => r.DriveCode == drive && r.Stage == stage));

    /// <summary>What one stage of a visit showed of a drive, by the checks and readings that count.</summary>
    public static DriveFinding FindingOf(
        EngineSpecification specification, CamDrive drive, Stage stage,
        IEnumerable<CamTimingCheck> checks, IEnumerable<ChainReading> chains)
    {
        ArgumentNullException.ThrowIfNull(specification);
        ArgumentNullException.ThrowIfNull(drive);
        var standing = Standing(checks.Where(c => c.Stage == stage));
        var chain = Standing(chains, drive.Code, stage);
        var cams = drive.CamshaftCodes().Select(code => new CamFinding(
            code,
            specification.Camshafts.FirstOrDefault(c => c.Code == code)?.Name ?? code,
            standing.FirstOrDefault(c => c.CamshaftCode == code && c.Method == TimingMethod.Alignment)?.Passes,
            [.. standing.Where(c => c.CamshaftCode == code && c.Method == TimingMethod.DegreeWheel).OrderBy(c => c.Side)
                .Select(c => Finding(drive, c)).OfType<LobeFinding>()])).ToArray();
        var last = standing.Where(c => c.Method == TimingMethod.DegreeWheel && drive.CamshaftCodes().Contains(c.CamshaftCode)).MaxBy(c => c.MeasuredAt);
        return new DriveFinding(drive, cams, chain?.ExtensionMm, chain?.AtStop ?? false, last?.DeadCentre);
    }

    /// <summary>What a check by degree wheel says of its lobe; nothing where the drive does not time it any more.</summary>
    public static LobeFinding? Finding(CamDrive drive, CamTimingCheck check)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(check);
        return check is { Side: { } side, DeadCentre: not null, LiftMm: { } lift, Station: { } station, Readings.Count: > 0 }
            && drive.Lobes.FirstOrDefault(l => l.Camshaft == check.CamshaftCode && l.Side == side) is { } stated
            ? LobeFinding.Of(stated, WheelSeries.Of(side, check.Readings.OrderBy(r => r.Repeat).Select(r => new CamEvents(r.Opens, r.Closes)), DeadCentreOf(check)), lift, station)
            : null;
    }

    /// <summary>How dead centre was found for a check by degree wheel.</summary>
    public static DeadCentre DeadCentreOf(CamTimingCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new DeadCentre(check.DeadCentre!.Value, check.StopBefore, check.StopAfter);
    }

    private static string Named(string[] codes) => codes.Length == 0 ? "none" : string.Join(", ", codes);
}
