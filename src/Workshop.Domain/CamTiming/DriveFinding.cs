using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>All that one stage of a visit showed of one camshaft.</summary>
/// <param name="Code">Of the camshaft.</param>
/// <param name="Name">As the workshop calls it.</param>
/// <param name="AlignmentPasses">By jig or marks; absent where nobody checked.</param>
/// <param name="Lobes">By degree wheel: one for each side that was measured.</param>
public sealed record CamFinding(string Code, string Name, bool? AlignmentPasses, IReadOnlyList<LobeFinding> Lobes)
{
    /// <summary>The mean of what its sides are ahead by; absent where none can be compared. They sit on one shaft.</summary>
    public CrankAngle? Advance => Lobes.Where(l => l.Advance is not null).Select(l => l.Advance!.Value.Degrees).ToArray() is { Length: > 0 } all
        ? CrankAngle.FromDegrees(all.Average())
        : null;

    /// <summary>
    /// Of the camshaft as a whole: beyond what is permitted where its sides are so to one side; not decided where any is not, or
    /// where they are so to both.
    /// </summary>
    public TimingVerdict Verdict
    {
        get
        {
            var said = Lobes.Select(l => l.Verdict).Where(v => v != TimingVerdict.NotCompared).Distinct().ToArray();
            return said.Length == 0 ? TimingVerdict.NotCompared
                : said.Length == 1 ? said[0]
                : said.Contains(TimingVerdict.Early) && !said.Contains(TimingVerdict.Late) ? TimingVerdict.Early
                : said.Contains(TimingVerdict.Late) && !said.Contains(TimingVerdict.Early) ? TimingVerdict.Late
                : TimingVerdict.NotDecided;
        }
    }

    /// <summary>Its sides are beyond what is permitted in opposite directions: no turning of the shaft explains that.</summary>
    public bool SidesDisagree => Lobes.Any(l => l.Verdict == TimingVerdict.Early) && Lobes.Any(l => l.Verdict == TimingVerdict.Late);

    /// <summary>Nobody looked at it.</summary>
    public bool IsUnchecked => AlignmentPasses is null && Lobes.Count == 0;

    /// <summary>The alignment check failed, or a side is beyond what is permitted.</summary>
    public bool IsOff => AlignmentPasses == false || Lobes.Any(l => l.Verdict is TimingVerdict.Early or TimingVerdict.Late);
}

/// <summary>What one stage of a visit showed of a drive and its camshafts.</summary>
/// <param name="Drive">As the maker states it.</param>
/// <param name="Cams">All its camshafts, measured or not.</param>
/// <param name="ExtensionMm">Of the tensioner, where it was read.</param>
/// <param name="AtStop">The tensioner stood as far out as it goes.</param>
/// <param name="DeadCentre">How dead centre was found for the last series; absent without one.</param>
public sealed record DriveFinding(
    CamDrive Drive, IReadOnlyList<CamFinding> Cams, decimal? ExtensionMm, bool AtStop, DeadCentreMethod? DeadCentre)
{
    /// <summary>Mean retard of all camshafts; absent unless each of them was measured and can be compared.</summary>
    public CrankAngle? MeanRetard => Cams.Count > 0 && Cams.All(c => c.Advance is not null)
        ? -CrankAngle.FromDegrees(Cams.Average(c => c.Advance!.Value.Degrees))
        : null;

    /// <summary>Whether the tensioner says that the chain is at its limit; nothing where it was not read or has none.</summary>
    public bool? IsAtLimit => Drive.Tensioner is not { } tensioner ? null
        : AtStop ? true
        : ExtensionMm is { } mm ? mm >= tensioner.LimitMm
        : null;
}
