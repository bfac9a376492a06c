using Workshop.Domain.EngineModels;

namespace Workshop.Domain.JobCards;

/// <summary>Cautions that go with opening what holds a camshaft's drive, whatever the service item is called.</summary>
public static class DriveCautions
{
    private static readonly string[] AtTensioner = ["tensioner-first", "tensioner-released"];
    private static readonly string[] AtSprockets = ["cam-chain-taut"];

    /// <summary>The codes of the cautions, each once.</summary>
    /// <param name="drives">Of the engine model.</param>
    /// <param name="opened">Codes of the fasteners that are opened.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<CamDrive> drives, IReadOnlySet<string> opened)
    {
        ArgumentNullException.ThrowIfNull(drives);
        ArgumentNullException.ThrowIfNull(opened);
        var tensioner = drives.Any(d => d.TensionerFasteners.Any(opened.Contains));
        var sprockets = drives.Any(d => d.SprocketBolts.Any(opened.Contains) && d.Stages.Any(s => s.Kind != DriveKind.Gear));
        var any = tensioner || drives.Any(d => d.SprocketBolts.Any(opened.Contains));
        return (tensioner ? AtTensioner : []).Concat(sprockets ? AtSprockets : []).Concat(any ? ["turn-by-hand"] : []).ToArray();
    }
}
