using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>How near to whole teeth of a drive an advance or a retard comes.</summary>
/// <param name="Stage">Counted from the crankshaft, from 0.</param>
/// <param name="Tooth">One tooth of that stage, in crank degrees.</param>
/// <param name="Teeth">Whole teeth, the nearest number: above 0 ahead, below 0 behind, 0 where half a tooth or less.</param>
/// <param name="Remainder">What is left over: the advance less the whole teeth.</param>
public sealed record WholeTeeth(int Stage, CrankAngle Tooth, int Teeth, CrankAngle Remainder)
{
    private const int FullTurn = 360;

    /// <summary>
    /// One tooth of a stage, in crank degrees: 360 / teeth of the driving wheel, times the turns of the crankshaft for one turn of
    /// that wheel. On a direct drive 360 / teeth on the crankshaft.
    /// </summary>
    /// <param name="drive">The stages from the crankshaft on.</param>
    /// <param name="stage">Which, from 0.</param>
    public static CrankAngle ToothOf(CamDrive drive, int stage)
    {
        ArgumentNullException.ThrowIfNull(drive);
        var (numerator, denominator) = ((decimal)FullTurn, (decimal)drive.Stages[stage].DrivingTeeth);
        foreach (var before in drive.Stages.Take(stage))
        {
            numerator *= before.DrivenTeeth;
            denominator *= before.DrivingTeeth;
        }

        return CrankAngle.FromDegrees(numerator / denominator);
    }

    /// <summary>The nearest whole number of teeth of one stage; half a tooth goes away from none.</summary>
    /// <param name="drive">The stages from the crankshaft on.</param>
    /// <param name="stage">Which, from 0.</param>
    /// <param name="advance">Above 0 ahead, below 0 behind.</param>
    public static WholeTeeth AtStage(CamDrive drive, int stage, CrankAngle advance)
    {
        var tooth = ToothOf(drive, stage);
        var teeth = (int)decimal.Round(advance.Degrees / tooth.Degrees, MidpointRounding.AwayFromZero);
        return new WholeTeeth(stage, tooth, teeth, advance - (tooth * teeth));
    }

    /// <summary>
    /// The best explanation by whole teeth of any one stage: the one that leaves least over, and of those alike the fewest teeth;
    /// nothing where no stage is off by as much as half a tooth.
    /// </summary>
    public static WholeTeeth? Nearest(CamDrive drive, CrankAngle advance)
    {
        ArgumentNullException.ThrowIfNull(drive);
        return Enumerable.Range(0, drive.Stages.Count)
            .Select(stage => AtStage(drive, stage, advance))
            .Where(t => t.Teeth != 0)
            .OrderBy(t => t.Remainder.Abs()).ThenBy(t => Math.Abs(t.Teeth))
            .FirstOrDefault();
    }
}
