using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.CamTiming;

/// <summary>How a measured lobe centre stands to what the maker states.</summary>
public enum TimingVerdict
{
    /// <summary>Within the permitted deviation.</summary>
    Within,

    /// <summary>Ahead by more than is permitted.</summary>
    Early,

    /// <summary>Behind by more than is permitted.</summary>
    Late,

    /// <summary>So near to the permitted deviation that the readings' own scatter decides.</summary>
    NotDecided,

    /// <summary>Nothing that is stated can be compared with what was measured.</summary>
    NotCompared,
}

/// <summary>One side of one camshaft as measured by degree wheel, beside what is stated.</summary>
public sealed record LobeFinding
{
    public required LobeTiming Stated { get; init; }

    public required WheelSeries Series { get; init; }

    public required decimal LiftMm { get; init; }

    public required TimingVerdict Verdict { get; init; }

    /// <summary>The lobe centre that holds for the maker's document; absent where it cannot be compared.</summary>
    public CrankAngle? StatedCentre { get; init; }

    /// <summary>Ahead of what is stated, below 0 behind; absent where it cannot be compared.</summary>
    public CrankAngle? Advance { get; init; }

    /// <summary>Measured less stated duration, where both are at the same lift and place.</summary>
    public CrankAngle? DurationDeviation { get; init; }

    /// <summary>Why it is not compared, in a sentence.</summary>
    public string? WhyNotCompared { get; init; }

    /// <summary>
    /// Ahead by: a later intake centre is further after top dead centre, a later exhaust centre is nearer before it.
    /// </summary>
    /// <param name="side">Intake or exhaust.</param>
    /// <param name="stated">Lobe centre as stated.</param>
    /// <param name="measured">Lobe centre as measured.</param>
    public static CrankAngle AdvanceOf(Side side, CrankAngle stated, CrankAngle measured) =>
        side == Side.Intake ? stated - measured : measured - stated;

    /// <summary>Compares a series with what is stated of its lobe.</summary>
    /// <param name="stated">What the maker states.</param>
    /// <param name="series">What the wheel showed.</param>
    /// <param name="liftMm">The lift at which it was read.</param>
    /// <param name="station">Where lift was measured.</param>
    public static LobeFinding Of(LobeTiming stated, WheelSeries series, decimal liftMm, LiftStation station)
    {
        ArgumentNullException.ThrowIfNull(stated);
        ArgumentNullException.ThrowIfNull(series);
        var found = new LobeFinding { Stated = stated, Series = series, LiftMm = liftMm, Verdict = TimingVerdict.NotCompared };
        if (stated.MeasuredAt is { } at && at != station)
        {
            return found with { WhyNotCompared = $"It is stated for lift {at.Spoken()}, and was measured {station.Spoken()}: the two differ; measure it there." };
        }

        var sameLift = stated.AtLiftMm == liftMm;
        if ((stated.LobeCentre ?? (sameLift ? CamEvents.Of(stated)?.LobeCentre(stated.Side) : null)) is not { } centre)
        {
            return found with { WhyNotCompared = $"Opening and closing are stated at {stated.AtLiftMm:0.###} mm of lift, and were read at {liftMm:0.###} mm: read them at that lift." };
        }

        var advance = AdvanceOf(stated.Side, centre, series.LobeCentre);
        return found with
        {
            StatedCentre = centre,
            Advance = advance,
            DurationDeviation = sameLift && CamEvents.Of(stated) is { } events ? series.Duration - events.Duration : null,
            Verdict = Judge(advance, stated.PermittedDeviation, (series.CentreScatter ?? CrankAngle.Zero) / 2),
        };
    }

    /// <summary>Within, beyond, or nearer to the permitted deviation than half the scatter.</summary>
    public static TimingVerdict Judge(CrankAngle advance, CrankAngle permitted, CrankAngle uncertain)
    {
        var off = advance.Abs();
        return off + uncertain <= permitted ? TimingVerdict.Within
            : off - uncertain <= permitted ? TimingVerdict.NotDecided
            : advance > CrankAngle.Zero ? TimingVerdict.Early
            : TimingVerdict.Late;
    }
}
