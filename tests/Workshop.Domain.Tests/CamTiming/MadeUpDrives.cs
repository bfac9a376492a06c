using Workshop.Domain.CamTiming;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Tests.CamTiming;

/// <summary>Drives made up for tests: one chain with two camshafts, intake centre 105 after, exhaust centre 107 before top dead centre, 2 degrees permitted.</summary>
internal static class MadeUpDrives
{
    public const string Intake = "intake-cam";
    public const string Exhaust = "exhaust-cam";

    public static readonly Provenance Source = new("Invented for tests", "1");

    public static CrankAngle Degrees(decimal degrees) => CrankAngle.FromDegrees(degrees);

    public static CamDrive Chain(int crankTeeth = 15, ChainTensioner? tensioner = null) => new(
        "chain", "cam chain", "only", [new("crankshaft to camshafts", DriveKind.Chain, crankTeeth, 2 * crankTeeth)],
        [Lobe(Intake, Side.Intake, 105), Lobe(Exhaust, Side.Exhaust, 107)], "Marks level with the head", [], Source)
        { Tensioner = tensioner };

    /// <summary>Gears to an intermediate shaft, from there a chain: 36 to 54 and 24 to 32.</summary>
    public static CamDrive InTwoStages() => Chain() with
    {
        Stages = [new("crankshaft to intermediate shaft", DriveKind.Gear, 36, 54), new("intermediate shaft to camshafts", DriveKind.Chain, 24, 32)],
    };

    public static LobeTiming Lobe(string camshaft, Side side, decimal centre) =>
        new(camshaft, side, Degrees(2)) { LobeCentre = Degrees(centre) };

    /// <summary>A lobe as measured by two turns of the wheel, ahead of what is stated by so much.</summary>
    public static LobeFinding Measured(LobeTiming stated, decimal advance, decimal scatter = 0)
    {
        var events = CamEvents.About(stated.Side, stated.LobeCentre!.Value, Degrees(230)).Advanced(Degrees(advance));
        return LobeFinding.Of(
            stated,
            WheelSeries.Of(stated.Side, [events.Advanced(Degrees(scatter / 2)), events.Advanced(Degrees(-scatter / 2))], new DeadCentre(DeadCentreMethod.PositiveStop, Degrees(30), Degrees(30))),
            1m, LiftStation.Follower);
    }

    /// <summary>The drive as found, its two camshafts ahead by so much; absent where one was not measured.</summary>
    public static DriveFinding Found(CamDrive drive, decimal? intake, decimal? exhaust, decimal? extensionMm = null, bool atStop = false, DeadCentreMethod method = DeadCentreMethod.PositiveStop) => new(
        drive,
        [
            new CamFinding(Intake, "Intake camshaft", null, intake is { } i ? [Measured(drive.Lobes[0], i)] : []),
            new CamFinding(Exhaust, "Exhaust camshaft", null, exhaust is { } e ? [Measured(drive.Lobes[1], e)] : []),
        ],
        extensionMm, atStop, method);
}
