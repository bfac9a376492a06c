using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>What most likely lies behind timing that is off; never certain.</summary>
public enum CauseKind
{
    /// <summary>Everything that was measured is within what is permitted.</summary>
    NothingOff,

    /// <summary>All camshafts of one chain late: chain or guides are worn.</summary>
    ChainOrGuideWear,

    /// <summary>All camshafts of one drive early, which wear cannot do; or off by whole teeth alike.</summary>
    ToothMarksOrDeadCentre,

    /// <summary>One camshaft off while the others are right.</summary>
    ItsSprocket,

    /// <summary>Several off, each in its own way.</summary>
    EachForItself,

    /// <summary>The sides of one camshaft are off in opposite directions: readings, clearances or the lobes themselves.</summary>
    LobesOrReadings,

    /// <summary>What was measured does not tell.</summary>
    NotTold,
}

/// <summary>The likely cause with what speaks for it and what should be looked at before anything is moved.</summary>
/// <param name="Kind">By name.</param>
/// <param name="Sentences">The first says the cause; the others what goes with it.</param>
public sealed record LikelyCause(CauseKind Kind, IReadOnlyList<string> Sentences)
{
    private const string Care = "This is what is likely, not what is certain: confirm it before anything is moved.";

    /// <summary>What most likely lies behind the findings of one drive at one stage.</summary>
    public static LikelyCause Of(DriveFinding found)
    {
        ArgumentNullException.ThrowIfNull(found);
        var measured = found.Cams.Where(c => c.Verdict != TimingVerdict.NotCompared).ToArray();
        if (found.Cams.FirstOrDefault(c => c.SidesDisagree) is { } odd)
        {
            return Off(CauseKind.LobesOrReadings, found,
                $"{odd.Name}: its sides are off in opposite directions, which no turning of the shaft explains. Likely the readings or the clearances are off, or a lobe is worn: measure again.");
        }

        var off = measured.Where(c => c.Verdict is TimingVerdict.Early or TimingVerdict.Late).ToArray();
        if (off.Length == 0)
        {
            return WithoutWheel(found, measured);
        }

        if (off.Length < found.Cams.Count && found.Cams.Any(c => c.Verdict is TimingVerdict.NotCompared or TimingVerdict.NotDecided))
        {
            return Partly(found, off);
        }

        var (late, early) = (off.Count(c => c.Verdict == TimingVerdict.Late), off.Count(c => c.Verdict == TimingVerdict.Early));
        if (off.Length < found.Cams.Count)
        {
            return off.Length == 1
                ? Off(CauseKind.ItsSprocket, found, [OneAlone(off[0], found), .. Teeth(found, [off[0]])])
                : Off(CauseKind.EachForItself, found, ["Several camshafts are off while others of the same drive are right: likely each has its own cause at its wheel.", .. Teeth(found, off)]);
        }

        if (late > 0 && early > 0)
        {
            return Off(CauseKind.EachForItself, found,
                ["Camshafts of one drive are off in opposite directions: the chain, its guides and dead centre would move them alike. Likely each has its own cause at its wheel.", .. Teeth(found, off)]);
        }

        return early > 0 ? Early(found, off) : Late(found, off);
    }

    private static LikelyCause WithoutWheel(DriveFinding found, CamFinding[] measured)
    {
        if (found.Cams.Any(c => c.AlignmentPasses == false))
        {
            var failed = string.Join(", ", found.Cams.Where(c => c.AlignmentPasses == false).Select(c => c.Name));
            return Off(CauseKind.NotTold, found,
                $"The alignment check does not pass: {failed}. It does not tell early from late, nor by how much: go round again in running direction, then measure by degree wheel.");
        }

        if (measured.Any(c => c.Verdict == TimingVerdict.NotDecided))
        {
            return new LikelyCause(CauseKind.NotTold, ["Not decided: as near to what is permitted as the readings' own scatter. Measure again."]);
        }

        return found.Cams.All(c => c.IsUnchecked) || (measured.Length == 0 && found.Cams.All(c => c.AlignmentPasses is null))
            ? new LikelyCause(CauseKind.NotTold, ["Nothing was measured yet that can be compared."])
            : new LikelyCause(CauseKind.NothingOff, NothingOff(found));
    }

    private static string[] NothingOff(DriveFinding found)
    {
        var open = found.Cams.Where(c => c.IsUnchecked).Select(c => c.Name).ToArray();
        var right = open.Length == 0
            ? "What was checked is right."
            : $"What was checked is right; still to be checked: {string.Join(", ", open)}.";
        return found.IsAtLimit == true ? [right, Tensioner(found)!] : [right];
    }

    private static LikelyCause Partly(DriveFinding found, CamFinding[] off)
    {
        var rest = string.Join(", ", found.Cams.Where(c => c.Verdict is TimingVerdict.NotCompared or TimingVerdict.NotDecided).Select(c => c.Name));
        return Off(CauseKind.NotTold, found,
            [$"{string.Join(", ", off.Select(Said))}. Whether it is the drive or its own wheel is told by what is not decided yet: measure {rest}.", .. Teeth(found, off)]);
    }

    private static LikelyCause Early(DriveFinding found, CamFinding[] off) => Off(CauseKind.ToothMarksOrDeadCentre, found,
    [
        $"{All(found, off)} early ({Amounts(off)}). Wear makes late, not early: likely a tooth at assembly, marks that were taken for others, or dead centre found wrongly.",
        .. Teeth(found, off),
    ]);

    private static LikelyCause Late(DriveFinding found, CamFinding[] off)
    {
        if (found.Drive.Stages.All(s => s.Kind == DriveKind.Gear))
        {
            return Off(CauseKind.ToothMarksOrDeadCentre, found,
                [$"{All(found, off)} late ({Amounts(off)}). Gears do not stretch: likely a tooth at assembly, marks that were taken for others, or dead centre found wrongly.", .. Teeth(found, off)]);
        }

        var alone = found.Cams.Count == 1 ? " With one camshaft on the drive its own wheel is as possible." : "";
        return Off(CauseKind.ChainOrGuideWear, found,
            [$"{All(found, off)} late ({Amounts(off)}): likely chain or guides are worn.{alone}", Tensioner(found)!, .. Teeth(found, off)]);
    }

    private static LikelyCause Off(CauseKind kind, DriveFinding found, params IEnumerable<string> sentences)
    {
        var marks = found.DeadCentre == DeadCentreMethod.Marks ? new DeadCentre(DeadCentreMethod.Marks, null, null).Sentence : null;
        return new LikelyCause(kind, [.. sentences.OfType<string>(), .. marks is null ? (IEnumerable<string>)[] : [marks], Care]);
    }

    private static string OneAlone(CamFinding cam, DriveFinding found) =>
        $"{Said(cam)} while the {(found.Cams.Count == 2 ? "other is" : "others are")} right: likely its own wheel: a tooth, its bolts, its dowel, or a mark that was taken for another.";

    private static string? Tensioner(DriveFinding found) => found.Drive.Tensioner is not { } tensioner ? null
        : found.AtStop ? $"The tensioner stands at its stop, beyond its limit of {tensioner.LimitMm:0.##} mm: that speaks for a worn chain, which is slack from there on."
        : found.ExtensionMm is not { } mm ? $"The tensioner's extension was not read; its limit is {tensioner.LimitMm:0.##} mm."
        : mm >= tensioner.LimitMm ? $"The tensioner is out by {mm:0.##} mm, at its limit of {tensioner.LimitMm:0.##} mm: that speaks for a worn chain."
        : $"The tensioner is out by {mm:0.##} mm, below its limit of {tensioner.LimitMm:0.##} mm: look at guides, marks and dead centre as well before the chain is blamed.";

    /// <summary>Where whole teeth come near, or do not, of each.</summary>
    private static IEnumerable<string> Teeth(DriveFinding found, IEnumerable<CamFinding> off) =>
        off.Where(c => c.Advance is not null).Select(c => $"{c.Name}: {ByTeeth(found.Drive, c)}");

    private static string ByTeeth(CamDrive drive, CamFinding cam)
    {
        if (WholeTeeth.Nearest(drive, cam.Advance!.Value) is not { } nearest)
        {
            var smallest = Enumerable.Range(0, drive.Stages.Count).Select(s => WholeTeeth.ToothOf(drive, s)).Min();
            return $"less than half a tooth (one is {CamTimingWords.Rounded(smallest)}), so no whole tooth explains it.";
        }

        return nearest.Remainder.Abs() <= cam.Lobes.Max(l => l.Stated.PermittedDeviation)
            ? $"{CamTimingWords.Spoken(nearest, drive)}. A whole tooth would explain it."
            : $"nearest is {CamTimingWords.Spoken(nearest, drive)}, more than is permitted. Whole teeth alone do not explain it.";
    }

    private static string All(DriveFinding found, CamFinding[] off) => found.Cams.Count switch
    {
        1 => $"{off[0].Name} is",
        2 => $"Both camshafts of the {found.Drive.Name} are",
        _ => $"All camshafts of the {found.Drive.Name} are",
    };

    private static string Amounts(IEnumerable<CamFinding> off) =>
        string.Join(", ", off.Select(c => CamTimingWords.Rounded(c.Advance!.Value.Abs())));

    private static string Said(CamFinding cam) => $"{cam.Name} is {CamTimingWords.Spoken(cam.Advance!.Value)}";
}
