using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>How cam timing is said on page and paper.</summary>
public static class CamTimingWords
{
    /// <summary>"a positive stop".</summary>
    public static string Spoken(this DeadCentreMethod method) => method switch
    {
        DeadCentreMethod.PositiveStop => "a positive stop",
        DeadCentreMethod.DialGauge => "dial gauge",
        DeadCentreMethod.Marks => "marks",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, null),
    };

    /// <summary>"at the valve".</summary>
    public static string Spoken(this LiftStation station) => station switch
    {
        LiftStation.Valve => "at the valve",
        LiftStation.Follower => "at the bucket or follower",
        LiftStation.Cam => "at the cam",
        _ => throw new ArgumentOutOfRangeException(nameof(station), station, null),
    };

    /// <summary>"chain".</summary>
    public static string Spoken(this DriveKind kind) => kind switch
    {
        DriveKind.Chain => "chain",
        DriveKind.Belt => "belt",
        DriveKind.Gear => "gears",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>"late by more than is permitted".</summary>
    public static string Spoken(this TimingVerdict verdict) => verdict switch
    {
        TimingVerdict.Within => "within what is permitted",
        TimingVerdict.Early => "early by more than is permitted",
        TimingVerdict.Late => "late by more than is permitted",
        TimingVerdict.NotDecided => "not decided: as near to what is permitted as its own scatter",
        TimingVerdict.NotCompared => "not compared",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, null),
    };

    /// <summary>"chain renewed".</summary>
    public static string Spoken(this ChainChangeKind kind) => kind switch
    {
        ChainChangeKind.ChainRenewed => "chain or belt renewed",
        ChainChangeKind.GuideRenewed => "guide renewed",
        ChainChangeKind.TensionerRenewed => "tensioner renewed",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>"2.5° early", "4° late", "right".</summary>
    public static string Spoken(CrankAngle advance) =>
        advance == CrankAngle.Zero ? "right" : $"{Rounded(advance.Abs())} {(advance > CrankAngle.Zero ? "early" : "late")}";

    /// <summary>"1 tooth late at the crankshaft's wheel (24°), 0.5° left over".</summary>
    public static string Spoken(WholeTeeth teeth, CamDrive drive)
    {
        ArgumentNullException.ThrowIfNull(teeth);
        ArgumentNullException.ThrowIfNull(drive);
        var count = Math.Abs(teeth.Teeth);
        var where = drive.IsDirect() ? "" : $" in the stage {drive.Stages[teeth.Stage].Name}";
        var left = teeth.Remainder == CrankAngle.Zero ? "nothing left over" : $"{Rounded(teeth.Remainder.Abs())} {(teeth.Remainder > CrankAngle.Zero ? "early" : "late")} left over";
        return $"{count} {(count == 1 ? "tooth" : "teeth")} {(teeth.Teeth > 0 ? "early" : "late")}{where} (one is {Rounded(teeth.Tooth)}), {left}";
    }

    /// <summary>To a tenth of a degree, half away from zero.</summary>
    public static string Rounded(CrankAngle angle) => $"{decimal.Round(angle.Degrees, 1, MidpointRounding.AwayFromZero):0.#}°";

    /// <summary>To a tenth of a degree, half away from zero.</summary>
    public static string Rounded(CamAngle angle) => $"{decimal.Round(angle.Degrees, 1, MidpointRounding.AwayFromZero):0.#}°";
}
