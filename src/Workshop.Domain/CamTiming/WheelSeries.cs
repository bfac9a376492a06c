using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>
/// Readings of a degree wheel at one lift, taken several times, always in running direction. Each repeat is one opening and
/// one closing, told from true dead centre.
/// </summary>
public sealed record WheelSeries
{
    /// <summary>
    /// Openings or closings that differ by more than this, in crank degrees, ask for another turn: a wheel is read to half a degree and
    /// lift to a hundredth of a millimetre (common practice, no source).
    /// </summary>
    public const decimal LargestScatterDegrees = 2m;

    private WheelSeries(Side side, IReadOnlyList<CamEvents> repeats) => (Side, Repeats) = (side, repeats);

    public Side Side { get; }

    public IReadOnlyList<CamEvents> Repeats { get; }

    /// <summary>The mean of the repeats.</summary>
    public CamEvents Mean => new(
        CrankAngle.FromDegrees(Repeats.Average(r => r.Opens.Degrees)), CrankAngle.FromDegrees(Repeats.Average(r => r.Closes.Degrees)));

    public CrankAngle LobeCentre => Mean.LobeCentre(Side);

    public CrankAngle Duration => Mean.Duration;

    /// <summary>From the smallest to the largest lobe centre of the repeats; nothing where there is one alone.</summary>
    public CrankAngle? CentreScatter => Scatter(r => r.LobeCentre(Side));

    /// <summary>The larger scatter of openings and closings; nothing where there is one repeat alone.</summary>
    public CrankAngle? EventScatter => Scatter(r => r.Opens) is { } opens && Scatter(r => r.Closes) is { } closes
        ? opens > closes ? opens : closes
        : null;

    /// <summary>The repeats differ by more than reading a wheel explains.</summary>
    public bool Disagrees => EventScatter is { Degrees: > LargestScatterDegrees };

    /// <summary>What asks for another turn; nothing where the repeats agree.</summary>
    public string? AsksForRepeat => EventScatter switch
    {
        null => "One reading tells no scatter: turn round and read it once more.",
        { Degrees: > LargestScatterDegrees } scatter =>
            $"The readings differ by {scatter}, more than {LargestScatterDegrees:0.#}°: look whether the wheel slipped, the gauge sits in line with the lift, and the crankshaft was turned in running direction only; then measure again.",
        _ => null,
    };

    /// <summary>A series of repeats that the wheel showed, corrected for where its zero stands.</summary>
    /// <param name="side">Intake or exhaust.</param>
    /// <param name="shown">As the wheel showed them; one at least.</param>
    /// <param name="deadCentre">How dead centre was found.</param>
    /// <exception cref="ArgumentException">There are no readings.</exception>
    public static WheelSeries Of(Side side, IEnumerable<CamEvents> shown, DeadCentre deadCentre)
    {
        ArgumentNullException.ThrowIfNull(shown);
        ArgumentNullException.ThrowIfNull(deadCentre);
        var repeats = shown.Select(deadCentre.Corrected).ToArray();
        return repeats.Length > 0 ? new WheelSeries(side, repeats) : throw new ArgumentException("A series has one reading at least.", nameof(shown));
    }

    private CrankAngle? Scatter(Func<CamEvents, CrankAngle> of) =>
        Repeats.Count < 2 ? null : Repeats.Max(of) - Repeats.Min(of);
}
