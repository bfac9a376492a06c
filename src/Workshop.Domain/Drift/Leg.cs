using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;

namespace Workshop.Domain.Drift;

/// <summary>What is known of a level before any reading of it.</summary>
public enum LegStart
{
    /// <summary>Never opened since new: x counts from 0 km of the engine.</summary>
    New,

    /// <summary>Set at a visit: x counts from that visit.</summary>
    Adjusted,

    /// <summary>Neither: x counts from its first reading.</summary>
    FirstSeen,
}

/// <summary>What ends a leg.</summary>
public enum LegCut
{
    /// <summary>The adjusting screw was turned: the same slope goes on from a new level.</summary>
    ScrewTurned,

    /// <summary>A shim came out or went in that nobody measured: the same slope goes on from a new level.</summary>
    ShimUnmeasured,

    /// <summary>Nobody knows whether the shim was changed: the same slope goes on from a new level.</summary>
    ChangeUnknown,

    /// <summary>A part that the clearance depends on was replaced or ground: a new slope as well.</summary>
    PartChanged,
}

/// <summary>
/// Consecutive readings of one lobe, joined by shims that nobody moved or whose thickness is known, so that
/// y* = clearance + lever ratio x (shim now - first shim of the leg) runs on through every swap.
/// </summary>
/// <param name="Section">Legs of one section share a slope; 1 for the first, and one more after each changed part.</param>
/// <param name="Start">What kind of level it has.</param>
/// <param name="Cut">What ended the leg before; absent for the first.</param>
/// <param name="Origin">What the engine had done where x counts from.</param>
/// <param name="FirstShim">The shim that thickness is counted from; absent where nobody ever measured it.</param>
/// <param name="Readings">In order of distance, as found before as left; at least one.</param>
public sealed record Leg(
    int Section, LegStart Start, LegCut? Cut, Distance Origin, ShimThickness? FirstShim, IReadOnlyList<LegReading> Readings)
{
    /// <summary>The job card on which it was set, where it was and there was one.</summary>
    public int? SetOnCard { get; init; }

    /// <summary>Distance in units of 10,000 km from the leg's own start.</summary>
    public double XAt(Distance engineDistance) => (double)((engineDistance - Origin).Metres / LobeHistory.MetresPerX);

    /// <summary>The way back from <see cref="XAt"/>, to the metre.</summary>
    public Distance DistanceAt(double x) =>
        Origin + Distance.FromMetres(decimal.Round((decimal)x * LobeHistory.MetresPerX));
}

/// <summary>One reading of a leg, with the shims' part taken out.</summary>
/// <param name="Reading">The row, with the bracket as measured.</param>
/// <param name="At">What the engine had done.</param>
/// <param name="X">The same in 10,000 km from the leg's own start.</param>
/// <param name="Shim">The shim that was in, where it is known.</param>
/// <param name="ShimPartMm">Lever ratio x (this shim - first shim of the leg), in mm of clearance.</param>
/// <param name="Swaps">Known swaps since the leg's start; each adds the micrometer's and the ratio's uncertainty.</param>
public sealed record LegReading(
    ClearanceReading Reading, Distance At, double X, ShimThickness? Shim, decimal ShimPartMm, int Swaps)
{
    /// <summary>y* is at least this, in mm; absent where no blade entered.</summary>
    public decimal? LowerMm => Reading.Go?.Millimetres + ShimPartMm;

    /// <summary>y* is below this, in mm; absent where no thicker blade was tried or the thickest was loose.</summary>
    public decimal? UpperMm => Reading.NoGo?.Millimetres + ShimPartMm;

    /// <summary>The middle of the bracket, which only the straight line uses; absent where an end is open.</summary>
    public decimal? MiddleMm => (LowerMm + UpperMm) / 2;
}

/// <summary>Something done to a valve, for the picture of its history.</summary>
/// <param name="At">What the engine had done.</param>
/// <param name="When">When.</param>
/// <param name="Cut">What it cut; absent for a swap of known shims.</param>
/// <param name="CameOut">The shim that came out, where it is known.</param>
/// <param name="WentIn">The shim that went in, where it is known.</param>
public sealed record LobeChange(Distance At, Instant When, LegCut? Cut, ShimThickness? CameOut, ShimThickness? WentIn);

/// <summary>A reading that is kept but does not enter.</summary>
/// <param name="Reading">The row.</param>
/// <param name="At">What the engine had done.</param>
/// <param name="Why">In a few words.</param>
public sealed record LeftOutReading(ClearanceReading Reading, Distance At, string Why);

/// <summary>A level that was begun and not read yet.</summary>
/// <param name="Start">Set, or begun by a change after which nobody set it.</param>
/// <param name="At">What the engine had done.</param>
/// <param name="Card">The job card on which it was set, where it was and there was one.</param>
public sealed record StandingLevel(LegStart Start, Distance At, int? Card);

/// <summary>Everything that is known of one lobe, as legs.</summary>
/// <param name="Lobe">Which.</param>
/// <param name="Legs">In order of time.</param>
/// <param name="Changes">What was done to the valve, in order of time.</param>
/// <param name="LeftOut">Readings that do not enter, with the reason.</param>
/// <param name="CutSinceLastReading">What cut the last leg after its last reading, so that the present level is unknown.</param>
/// <param name="ShimNow">The shim that is in, where it is known.</param>
/// <param name="ShimPartNowMm">Lever ratio x (shim now - first shim of the leg that is open): clearance now = y* - this.</param>
public sealed record LobeHistory(
    LobeKey Lobe,
    IReadOnlyList<Leg> Legs,
    IReadOnlyList<LobeChange> Changes,
    IReadOnlyList<LeftOutReading> LeftOut,
    LegCut? CutSinceLastReading,
    ShimThickness? ShimNow,
    decimal ShimPartNowMm)
{
    /// <summary>What the lobe stands on since <see cref="CutSinceLastReading"/>; absent where nothing cut.</summary>
    public StandingLevel? StandsOn { get; init; }

    /// <summary>x is in units of 10,000 km, the unit in which drift is stated.</summary>
    public const decimal MetresPerX = 10_000_000m;

    /// <summary>The legs that share the present slope; empty where no reading entered.</summary>
    public IReadOnlyList<Leg> LastSection => Legs.Count == 0 ? [] : [.. Legs.Where(l => l.Section == Legs[^1].Section)];
}
