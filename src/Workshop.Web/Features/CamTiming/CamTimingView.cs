using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Web.Features.CamTiming;

/// <summary>What one stage of a visit showed of the camshafts' timing, as the API answers and the page shows it. Angles are in crank degrees where nothing else is said.</summary>
public static class CamTimingView
{
    private const int Decimals = 2;

    /// <param name="MeanRetardDegrees">Of all camshafts; absent unless each was measured and can be compared.</param>
    public sealed record DriveState(
        string Code, string Name, string Bank, Stage Stage, IReadOnlyList<CamState> Cams, PairState? Pair, ChainState? Chain,
        decimal? MeanRetardDegrees, CauseKind LikelyCause, IReadOnlyList<string> CauseSentences, IReadOnlyList<ChainChangeKind> Changes);

    /// <param name="AlignmentPasses">Absent where nobody checked.</param>
    /// <param name="AdvanceDegrees">Ahead of what is stated, below 0 behind; absent where it cannot be compared.</param>
    public sealed record CamState(
        string Code, string Name, bool? AlignmentPasses, TimingVerdict Verdict, decimal? AdvanceDegrees, string Words, IReadOnlyList<LobeState> Lobes);

    /// <param name="OpensDegrees">Mean of the turns, told from true dead centre; so are the others.</param>
    /// <param name="ScatterDegrees">Of the lobe centres of the turns; absent with one turn.</param>
    /// <param name="InTeeth">The nearest whole number of teeth with what is left over; absent where less than half a tooth.</param>
    /// <param name="AsksForRepeat">Why it should be measured once more; absent where the turns agree.</param>
    public sealed record LobeState(
        Side Side, string Name, decimal LiftMm, LiftStation Station, int Turns, decimal OpensDegrees, decimal ClosesDegrees, decimal DurationDegrees,
        decimal LobeCentreDegrees, decimal? StatedCentreDegrees, decimal PermittedDegrees, decimal? AdvanceDegrees, decimal? DurationDeviationDegrees,
        decimal? ScatterDegrees, TimingVerdict Verdict, string Words, string? InTeeth, string? AsksForRepeat, string DeadCentre,
        IReadOnlyList<Turn> Readings);

    /// <summary>One turn of the crankshaft, told from true dead centre.</summary>
    public sealed record Turn(decimal OpensDegrees, decimal ClosesDegrees, decimal LobeCentreDegrees);

    /// <summary>Intake and exhaust together.</summary>
    /// <param name="OverlapDegrees">Absent where the two were measured at different lifts or places.</param>
    /// <param name="AdvanceDegrees">Of both together before standing evenly about top dead centre.</param>
    public sealed record PairState(
        decimal SeparationCamDegrees, decimal? OverlapDegrees, decimal AdvanceDegrees, decimal? StatedSeparationCamDegrees);

    public sealed record ChainState(decimal? ExtensionMm, bool AtStop, decimal? LengthMm, bool? IsAtLimit, string Words);

    internal static DriveState Of(EngineSpecification specification, CamDrive drive, Stage stage, TimingRows rows)
    {
        var finding = CamTimingRules.FindingOf(specification, drive, stage, rows.Checks, rows.Chains);
        var standing = CamTimingRules.Standing(rows.Checks.Where(c => c.Stage == stage));
        var cause = LikelyCause.Of(finding);
        return new DriveState(
            drive.Code, drive.Name, drive.Bank, stage,
            [.. finding.Cams.Select(c => Cam(c, drive, standing))],
            Pair(drive, finding),
            Chain(drive, CamTimingRules.Standing(rows.Chains, drive.Code, stage), finding),
            Rounded(finding.MeanRetard), cause.Kind, cause.Sentences,
            [.. rows.Changes.Where(c => c.DriveCode == drive.Code).Select(c => c.Kind)]);
    }

    internal static string NameOf(EngineSpecification specification, string camshaft) =>
        specification.Camshafts.FirstOrDefault(c => c.Code == camshaft)?.Name ?? camshaft;

    internal static decimal? Rounded(CrankAngle? angle) => angle is { } a ? Rounded(a) : null;

    internal static decimal Rounded(CrankAngle angle) => decimal.Round(angle.Degrees, Decimals, MidpointRounding.AwayFromZero);

    private static CamState Cam(CamFinding cam, CamDrive drive, IReadOnlyList<CamTimingCheck> standing)
    {
        var lobes = cam.Lobes.Select(l => Lobe(l, cam, drive, standing.Single(c =>
            c.CamshaftCode == cam.Code && c.Method == TimingMethod.DegreeWheel && c.Side == l.Stated.Side))).ToArray();
        var words = string.Join("; ", new[]
        {
            cam.AlignmentPasses is { } passes ? passes ? "alignment check passes" : "alignment check does not pass" : null,
            cam.Lobes.Count == 0 ? null : cam.Advance is { } advance ? $"{CamTimingWords.Spoken(advance)}, {cam.Verdict.Spoken()}" : cam.Verdict.Spoken(),
        }.OfType<string>());
        return new CamState(cam.Code, cam.Name, cam.AlignmentPasses, cam.Verdict, Rounded(cam.Advance), words.Length == 0 ? "not checked" : words, lobes);
    }

    private static LobeState Lobe(LobeFinding lobe, CamFinding cam, CamDrive drive, CamTimingCheck check)
    {
        var teeth = lobe.Advance is { } advance ? WholeTeeth.Nearest(drive, advance) : null;
        return new LobeState(
            lobe.Stated.Side, $"{cam.Name}, {lobe.Stated.Side.Spoken()}", lobe.LiftMm, check.Station!.Value, lobe.Series.Repeats.Count,
            Rounded(lobe.Series.Mean.Opens), Rounded(lobe.Series.Mean.Closes), Rounded(lobe.Series.Duration), Rounded(lobe.Series.LobeCentre),
            Rounded(lobe.StatedCentre), Rounded(lobe.Stated.PermittedDeviation), Rounded(lobe.Advance), Rounded(lobe.DurationDeviation),
            Rounded(lobe.Series.CentreScatter), lobe.Verdict,
            lobe.WhyNotCompared ?? $"{CamTimingWords.Spoken(lobe.Advance!.Value)}, {lobe.Verdict.Spoken()} ({CamTimingWords.Rounded(lobe.Stated.PermittedDeviation)} to either side)",
            teeth is null ? null : CamTimingWords.Spoken(teeth, drive), lobe.Series.AsksForRepeat, CamTimingRules.DeadCentreOf(check).Sentence,
            [.. lobe.Series.Repeats.Select(r => new Turn(Rounded(r.Opens), Rounded(r.Closes), Rounded(r.LobeCentre(lobe.Stated.Side))))]);
    }

    private static PairState? Pair(CamDrive drive, DriveFinding finding)
    {
        var lobes = finding.Cams.SelectMany(c => c.Lobes).ToArray();
        if (lobes.FirstOrDefault(l => l.Stated.Side == Side.Intake) is not { } intake
            || lobes.FirstOrDefault(l => l.Stated.Side == Side.Exhaust) is not { } exhaust)
        {
            return null;
        }

        var pair = new PairTiming(intake.Series.LobeCentre, exhaust.Series.LobeCentre);
        return new PairState(
            Rounded(pair.Separation), intake.LiftMm == exhaust.LiftMm ? Rounded(pair.Overlap(intake.Series.Duration, exhaust.Series.Duration)) : null,
            Rounded(pair.Advance), StatedPair(drive) is { } stated ? Rounded(stated.Separation) : null);
    }

    /// <summary>What is stated of both sides; nothing where one is not.</summary>
    internal static PairTiming? StatedPair(CamDrive drive) =>
        StatedCentre(drive, Side.Intake) is { } intake && StatedCentre(drive, Side.Exhaust) is { } exhaust ? new PairTiming(intake, exhaust) : null;

    internal static CrankAngle? StatedCentre(CamDrive drive, Side side) => drive.Lobes.FirstOrDefault(l => l.Side == side) is { } lobe
        ? lobe.LobeCentre ?? CamEvents.Of(lobe)?.LobeCentre(side)
        : null;

    private static decimal Rounded(CamAngle angle) => decimal.Round(angle.Degrees, Decimals, MidpointRounding.AwayFromZero);

    private static ChainState? Chain(CamDrive drive, ChainReading? reading, DriveFinding finding)
    {
        if (reading is null)
        {
            return null;
        }

        var words = new[]
        {
            reading.AtStop ? "tensioner at its stop" : reading.ExtensionMm is { } mm ? $"tensioner out by {mm:0.##} mm" : null,
            drive.Tensioner is { } tensioner && (reading.AtStop || reading.ExtensionMm is not null)
                ? $"limit {tensioner.LimitMm:0.##} mm{(finding.IsAtLimit == true ? ": reached" : "")}"
                : null,
            reading.LengthMm is { } length && drive.Chain is { } chain
                ? $"{chain.Links} links are {length:0.##} mm, limit {chain.LimitMm:0.##} mm{(length >= chain.LimitMm ? ": reached" : "")}"
                : null,
        };
        return new ChainState(reading.ExtensionMm, reading.AtStop, reading.LengthMm, finding.IsAtLimit, string.Join("; ", words.OfType<string>()));
    }
}
