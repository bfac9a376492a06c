using Workshop.Domain.EngineModels;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Domain.Drift;

/// <summary>Whose readings the figures of an engine model rest on.</summary>
public enum FitSource
{
    /// <summary>Its own alone.</summary>
    OwnReadings,

    /// <summary>Its own, held near those of all models of the same valve-train kind, because they are few.</summary>
    Borrowed,

    /// <summary>Those of all models of the same valve-train kind; its own tell nothing yet.</summary>
    Pooled,
}

/// <summary>A fitted parameter.</summary>
/// <param name="Value">The estimate, in the unit that its place states.</param>
/// <param name="StandardError">From the observed information; absent where the readings do not tell one, or it stands at 0.</param>
public sealed record FittedFigure(double Value, double? StandardError);

/// <summary>Where levels of one kind lie.</summary>
/// <param name="Legs">How many legs tell of it.</param>
/// <param name="OffsetMm">Mean of the level less the clearance aimed at.</param>
/// <param name="DeviationMm">Standard deviation of levels about that.</param>
public sealed record LevelFigures(Side Side, LegStart Start, int Legs, FittedFigure OffsetMm, FittedFigure DeviationMm);

/// <summary>How the valves of a side drift, in mm of clearance per 10,000 km.</summary>
/// <param name="Valves">How many valves and lobes tell of it.</param>
/// <param name="MeanMm">Mean slope; negative where clearances close up.</param>
/// <param name="DeviationMm">Standard deviation of slopes from valve to valve of one engine.</param>
/// <param name="Curvature">Whether the lines are curved; absent where it cannot be told.</param>
public sealed record SlopeFigures(
    Side Side, int Valves, FittedFigure MeanMm, FittedFigure DeviationMm, CurvatureFigures? Curvature = null);

/// <summary>One fixed term in the square of the distance for a side, against none.</summary>
/// <param name="CoefficientMm">In mm per (10,000 km)^2.</param>
/// <param name="LikelihoodRatio">Twice the gain of log-likelihood.</param>
/// <param name="PValue">Of chi squared on one degree of freedom.</param>
public sealed record CurvatureFigures(FittedFigure CoefficientMm, double LikelihoodRatio, double PValue);

/// <summary>The lever ratio as the readings about changes of shim tell it, as a share of what the specification states.</summary>
/// <param name="Share">1 where it is as stated.</param>
/// <param name="Lower">Lower end of the 95 % profile interval.</param>
/// <param name="Upper">Upper end of it.</param>
/// <param name="Changes">Known changes of shim that tell of it.</param>
public sealed record LeverRatioFigures(double Share, double Lower, double Upper, int Changes)
{
    /// <summary>How far the 99 % interval reaches, of the 95 % one: the ratio of the normal quantiles.</summary>
    private const double Wider = 2.575829 / 1.959964;

    /// <summary>The stated ratio lies outside what the readings allow, with 99 %.</summary>
    public bool Disagrees => Share - (Wider * (Share - Lower)) > 1 || Share + (Wider * (Upper - Share)) < 1;
}

/// <summary>What is worth knowing about a fit before anyone trusts it.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Sentence">In plain words, with its figures.</param>
public sealed record DriftWarning(DriftWarningKind Kind, string Sentence);

/// <summary>See <see cref="DriftWarning"/>.</summary>
public enum DriftWarningKind
{
    /// <summary>The readings are few, so that other engine models' are leant on.</summary>
    Borrows,

    /// <summary>Lines are curved: a straight line will mislead.</summary>
    Curved,

    /// <summary>The readings disagree with the lever ratio of the specification.</summary>
    LeverRatio,

    /// <summary>Valves show no difference in drift beyond the errors of reading.</summary>
    SlopesAlike,

    /// <summary>Readings of one visit lie off together.</summary>
    VisitsLieOff,

    /// <summary>The readings do not tell some parameter.</summary>
    NotTold,
}

/// <summary>
/// How the valves of one engine model drift: the parameters of the drift model by maximum marginal likelihood. For valve v,
/// leg g and distance x in 10,000 km from the leg's own start,
/// y*(v,g,k) = a(v,g) + b(v) x(v,k) + e, a ~ N(aim + offset, tau_a^2) by side and kind of start,
/// b ~ N(mu_b + c, tau_b^2) by side with c ~ N(0, tau_c^2) shared by an engine, e ~ N(0, sigma^2); seen is lo &lt;= y* &lt; hi.
/// </summary>
public sealed record DriftFit
{
    /// <summary>Whose readings it rests on.</summary>
    public required FitSource Source { get; init; }

    /// <summary>One for each side and kind of start that has readings.</summary>
    public required IReadOnlyList<LevelFigures> Levels { get; init; }

    /// <summary>One for each side that has readings.</summary>
    public required IReadOnlyList<SlopeFigures> Slopes { get; init; }

    /// <summary>Standard deviation of one reading, in mm: hand, blade, temperature.</summary>
    public required FittedFigure SigmaMm { get; init; }

    /// <summary>Standard deviation of what an engine's slopes share, in mm per 10,000 km.</summary>
    public required FittedFigure BetweenEnginesMm { get; init; }

    /// <summary>At the estimates, without what is borrowed; absent where nothing of its own was fitted.</summary>
    public double? LogLikelihood { get; init; }

    /// <summary>Readings that entered.</summary>
    public required int Readings { get; init; }

    /// <summary>Valves and lobes that have any.</summary>
    public required int Valves { get; init; }

    /// <summary>Engines that have any.</summary>
    public required int Engines { get; init; }

    /// <summary>
    /// Parameters with weights that stand for what the fit leaves open: of all six classes of levels and both of slopes, in the
    /// order of <see cref="DriftClasses"/>.
    /// </summary>
    public required IReadOnlyList<PlausibleParameters> Plausible { get; init; }

    /// <summary>The lever ratio; absent where too few changes of shim are known, or clearances are set by screw.</summary>
    public LeverRatioFigures? LeverRatio { get; init; }

    /// <summary>Standard deviation in mm of what all readings of a visit have in common; absent where too few visits tell.</summary>
    public double? VisitEffectMm { get; init; }

    /// <summary>In plain words.</summary>
    public IReadOnlyList<DriftWarning> Warnings { get; init; } = [];

    /// <summary>Whether something can be said of the valves of a side.</summary>
    public bool Knows(Side side) => Slopes.Any(s => s.Side == side);
}

/// <summary>Where the classes of levels and slopes stand in the parameters of <see cref="DriftFit.Plausible"/>.</summary>
public static class DriftClasses
{
    /// <summary>Kinds of level: three starts for each side.</summary>
    public const int Levels = 6;

    /// <summary>Kinds of slope: one for each side.</summary>
    public const int Slopes = 2;

    private const int Starts = 3;

    /// <summary>The place of a kind of level.</summary>
    public static int Level(Side side, LegStart start) => (Starts * (int)side) + (int)start;

    /// <summary>The place of a side's slopes.</summary>
    public static int Slope(Side side) => (int)side;

    /// <summary>Where a place stands among those that a fit has; -1 where it has not.</summary>
    internal static int IndexOf(IReadOnlyList<int> places, int place)
    {
        for (var i = 0; i < places.Count; i++)
        {
            if (places[i] == place)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>The way back from <see cref="Level"/>.</summary>
    public static (Side Side, LegStart Start) OfLevel(int level) => ((Side)(level / Starts), (LegStart)(level % Starts));
}
