using System.Text.Json.Serialization;
using Workshop.Domain.Measures;

namespace Workshop.Domain.EngineModels;

/// <summary>What carries the crankshaft's turning to a camshaft.</summary>
public enum DriveKind
{
    Chain,
    Belt,
    Gear,
}

/// <summary>Where lift is measured.</summary>
public enum LiftStation
{
    /// <summary>At the valve or its spring retainer.</summary>
    Valve,

    /// <summary>At the bucket or follower.</summary>
    Follower,

    /// <summary>At the cam itself.</summary>
    Cam,
}

/// <summary>
/// What drives the camshafts of a bank, and what the engine maker states about their timing. Whatever a drive has in common
/// (its chain, its guides, its tensioner, its place at the crankshaft) moves all its camshafts alike.
/// </summary>
/// <param name="Bank">The bank of cylinders, as the layout names it; its dead centre is that of its first cylinder.</param>
/// <param name="Stages">From the crankshaft to the camshafts; one where the drive is direct.</param>
/// <param name="Lobes">Each side of each camshaft, as they are timed.</param>
/// <param name="AlignmentCheck">How the maker wants the alignment checked: jig, marks, what lines up with what.</param>
/// <param name="SprocketBolts">Fasteners, by code, that hold wheel or sprocket to the camshaft.</param>
public sealed record CamDrive(
    string Code,
    string Name,
    string Bank,
    IReadOnlyList<DriveStage> Stages,
    IReadOnlyList<LobeTiming> Lobes,
    string AlignmentCheck,
    IReadOnlyList<string> SprocketBolts,
    Provenance Provenance)
{
    /// <summary>How many marks must be right at once; absent where only a jig tells.</summary>
    public int? AlignmentMarks { get; init; }

    /// <summary>The maker allows holding against the alignment jig while tightening; else it only shows a position.</summary>
    public bool JigIsCounterHold { get; init; }

    /// <summary>Fasteners, by code, that hold the tensioner.</summary>
    public IReadOnlyList<string> TensionerFasteners { get; init; } = [];

    /// <summary>The sprocket bolts' torque is checked once more after the tensioner was fitted and released.</summary>
    public bool RecheckSprocketBolts { get; init; }

    /// <summary>Absent where there is none, as with gears.</summary>
    public ChainTensioner? Tensioner { get; init; }

    /// <summary>Absent where the maker states no length at which the chain is worn.</summary>
    public ChainLength? Chain { get; init; }

    /// <summary>Camshafts, by code, each once.</summary>
    public IEnumerable<string> CamshaftCodes() => Lobes.Select(l => l.Camshaft).Distinct(StringComparer.Ordinal);

    /// <summary>One wheel on the crankshaft drives the camshafts.</summary>
    public bool IsDirect() => Stages.Count == 1;
}

/// <param name="Name">From where to where: "crankshaft to intermediate wheel".</param>
/// <param name="DrivingTeeth">Teeth of the wheel nearer to the crankshaft.</param>
/// <param name="DrivenTeeth">Teeth of the wheel nearer to the camshaft.</param>
public sealed record DriveStage(string Name, DriveKind Kind, int DrivingTeeth, int DrivenTeeth);

/// <summary>
/// One side of one camshaft: the middle of its lobe, or when its valves open and close at one stated lift, or both. Intake:
/// centre after top dead centre, opens before top, closes after bottom. Exhaust: centre before top dead centre, opens before
/// bottom, closes after top. An event on the other side is negative.
/// </summary>
/// <param name="Camshaft">By code.</param>
/// <param name="PermittedDeviation">How far the lobe centre may be off, to either side.</param>
public sealed record LobeTiming(
    string Camshaft,
    Side Side,
    [property: JsonPropertyName("permittedDeviationDegrees")] CrankAngle PermittedDeviation)
{
    [JsonPropertyName("lobeCentreDegrees")]
    public CrankAngle? LobeCentre { get; init; }

    [JsonPropertyName("opensDegrees")]
    public CrankAngle? Opens { get; init; }

    [JsonPropertyName("closesDegrees")]
    public CrankAngle? Closes { get; init; }

    /// <summary>The lift at which opening and closing are stated.</summary>
    public decimal? AtLiftMm { get; init; }

    /// <summary>Where that lift is measured; absent where only the lobe centre is stated and the place makes no difference.</summary>
    public LiftStation? MeasuredAt { get; init; }
}

/// <summary>A tensioner whose extension tells how long the chain has become.</summary>
/// <param name="LimitMm">At this extension the maker wants chain and guides renewed.</param>
public sealed record ChainTensioner(decimal LimitMm)
{
    /// <summary>Its extension with a new chain, where the maker states it.</summary>
    public decimal? NewMm { get; init; }

    /// <summary>From notch to notch, where it moves in steps: between two notches nothing is seen.</summary>
    public decimal? StepMm { get; init; }

    /// <summary>As far as it goes; a longer chain is slack.</summary>
    public decimal? StopMm { get; init; }
}

/// <summary>The length of so many links, pulled straight, at which the chain is worn.</summary>
public sealed record ChainLength(int Links, decimal LimitMm);
