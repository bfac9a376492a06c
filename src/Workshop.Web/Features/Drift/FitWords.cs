using System.Globalization;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Features.Drift;

/// <summary>What is known of an engine model's drift, said as a person says it.</summary>
internal static class FitWords
{
    /// <summary>How far a refit is.</summary>
    public static string Progress(GetDriftFit.Progress? refit) => refit switch
    {
        null => "Never asked for.",
        { UnderWay: true, EnginesWritten: 0 } => "Being worked out.",
        { UnderWay: true } => Text($"Forecasts are being written: {refit.EnginesWritten} of {refit.Engines} engines."),
        { Wanted: true } => "Asked for; it begins when no more readings come.",
        _ => "Up to date.",
    };

    /// <summary>Whose readings the figures rest on.</summary>
    public static string RestsOn(GetDriftFit.Figures fit) => fit.Source switch
    {
        FitSource.OwnReadings => Text(
            $"Rests on its own {fit.Readings:#,0} readings of {fit.Valves:#,0} valves in {fit.Engines:#,0} engines."),
        FitSource.Borrowed => Text(
            $"Borrows: its own {fit.Readings:#,0} readings of {fit.Valves:#,0} valves in {fit.Engines:#,0} engines are few, so it leans on other models of the same valve-train kind."),
        _ => "Borrows everything: nothing is known of this model itself; the figures are those of other models of the same valve-train kind.",
    };

    /// <summary>The error of one reading.</summary>
    public static string Sigma(FittedFigure sigma) => sigma.Value == 0
        ? "The blades are too coarse to tell an error of reading: every reading fits its line within its blade."
        : Text($"One reading is off by {sigma.Value:0.0000} mm (standard deviation{Error(sigma)}): hand, blades and temperature, beyond the width of a blade.");

    /// <summary>The drift of a side.</summary>
    /// <param name="slope">Of the side.</param>
    /// <param name="betweenEngines">What an engine's valves share.</param>
    public static string Slope(SlopeFigures slope, FittedFigure betweenEngines)
    {
        var (from, to) = SpanOf(slope, betweenEngines);
        var way = slope.MeanMm.Value < 0 ? "close up" : "open";
        return Text(
            $"{Capital(slope.Side)} valves {way} by {Math.Abs(slope.MeanMm.Value):0.0000} mm per 10,000 km on average; nine of ten lie between {from:+0.0000;-0.0000;0} and {to:+0.0000;-0.0000;0}.");
    }

    /// <summary>Where nine of ten slopes of a side lie by the fit, whatever the engine.</summary>
    public static (double From, double To) SpanOf(SlopeFigures slope, FittedFigure betweenEngines)
    {
        var deviation = DeviationOf(slope, betweenEngines);
        return (slope.MeanMm.Value - (DriftFigures.NineInTen * deviation), slope.MeanMm.Value + (DriftFigures.NineInTen * deviation));
    }

    /// <summary>Of slopes from valve to valve, whatever the engine.</summary>
    public static double DeviationOf(SlopeFigures slope, FittedFigure betweenEngines) =>
        Math.Sqrt((slope.DeviationMm.Value * slope.DeviationMm.Value) + (betweenEngines.Value * betweenEngines.Value));

    /// <summary>What an engine's valves share: oil, rider, climate.</summary>
    public static string BetweenEngines(FittedFigure shared) => shared.Value == 0
        ? "Engines show no difference beyond that of their valves."
        : Text($"What the valves of one engine share (oil, rider, climate) differs from engine to engine by {shared.Value:0.0000} mm per 10,000 km (standard deviation{Error(shared)}).");

    /// <summary>Whether the specification's lever ratio agrees with what changes of shim did.</summary>
    public static string LeverRatio(LeverRatioFigures? ratio) => ratio is null
        ? "Too few known changes of shim to tell the lever ratio from the readings."
        : Text($"{ratio.Changes} known changes of shim say {ratio.Share:0.000} times the stated lever ratio (95 %: {ratio.Lower:0.000} to {ratio.Upper:0.000}). ")
            + (ratio.Disagrees
                ? "This disagrees with the specification: check the maker's document, and how shims are measured."
                : "The specification agrees.");

    /// <summary>Whether the lines of a side are straight.</summary>
    public static string Curvature(SlopeFigures slope) => slope.Curvature is { } curve
        ? Text($"{Capital(slope.Side)}: {curve.CoefficientMm.Value:+0.00000;-0.00000;0} mm per (10,000 km) squared, p = {curve.PValue:0.000}{(curve.PValue < 0.01 ? "; the lines are curved, and a straight one will mislead" : "; no sign of a curve")}.")
        : Text($"{Capital(slope.Side)}: too few valves were read often enough to tell a curve.");

    /// <summary>What all readings of a visit have in common.</summary>
    public static string VisitEffect(double? millimetres) => millimetres switch
    {
        null => "Too few engines have a visit with a history to tell whether whole visits lie off.",
        0 => "Readings of one visit show nothing in common beyond their own errors.",
        { } mm => Text($"Readings of one visit lie off together by {mm:0.0000} mm (standard deviation over visits); the forecasts do not count that."),
    };

    /// <summary>"-0.0100 ± 0.0005", the second the standard error; without it where there is none.</summary>
    public static string Figure(FittedFigure figure, string format = "0.0000") =>
        figure.Value.ToString(format, CultureInfo.InvariantCulture)
        + (figure.StandardError is { } error ? $" ± {error.ToString("0.0000", CultureInfo.InvariantCulture)}" : "");

    private static string Error(FittedFigure figure) =>
        figure.StandardError is { } error ? Text($" ± {error:0.0000}") : "";

    private static string Capital(Side side) => side == Side.Intake ? "Intake" : "Exhaust";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
