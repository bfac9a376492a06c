using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;

namespace Workshop.Web.Features.Drift;

/// <summary>What is known of a lobe, said as a person says it. Rounded for reading; nothing here is computed with.</summary>
internal static class DriftWords
{
    /// <summary>The picture in words, for those who do not see it; the outlook stands above it in words anyway.</summary>
    public static string Describe(DriftOfLobe lobe, OdometerUnit unit)
    {
        var readings = lobe.Legs.SelectMany(l => l.Readings).ToList();
        var seen = readings.Count == 0
            ? "No reading enters."
            : $"{Count(readings.Count, "reading")} from {Far(readings[0].EngineKm, unit)} ({Bracket(readings[0].GoMm, readings[0].NoGoMm)}) "
                + $"to {Far(readings[^1].EngineKm, unit)} ({Bracket(readings[^1].GoMm, readings[^1].NoGoMm)}).";
        return $"{seen} Limits {lobe.LowerLimitMm.Millimetres:0.00##} to {lobe.UpperLimitMm}.";
    }

    /// <summary>"Drift -0.0085 mm per 10,000 km (95 %: -0.0093 to -0.0077)."</summary>
    public static string Drift(DriftOfLobe.Line line) => line.DriftMmPer10000Km is not { } drift
        ? ""
        : line.DriftLower is { } lower && line.DriftUpper is { } upper
            ? $"Drift {Signed(drift)} mm per 10,000 km ({Percent(line.Confidence)}: {Signed(lower)} to {Signed(upper)})."
            : $"Drift {Signed(drift)} mm per 10,000 km, with no telling how far to trust it.";

    /// <summary>Where the line reaches a limit, or why nothing is foretold.</summary>
    public static string Outlook(DriftOfLobe.Line line, OdometerUnit unit) => line.Reaches switch
    {
        null => line.ReasonSentence ?? "",
        { Passed: true } passed => $"It was outside its {Word(passed.End)} limit of {passed.LimitMm:0.00##} mm at the last reading.",
        { } open when open.FurtherKm < Distance.Zero =>
            $"By the line it passed the {Word(open.End)} limit of {open.LimitMm:0.00##} mm when the engine had done about {About(open.EngineKm, unit)} "
            + $"({Percent(line.Confidence)}: {About(open.EarliestEngineKm, unit)} to {Latest(open, unit)}); the last reading leaves it open.",
        { } reaches => $"The line reaches the {Word(reaches.End)} limit of {reaches.LimitMm:0.00##} mm after about {About(reaches.FurtherKm, unit)} more, "
            + $"when the engine has done {About(reaches.EngineKm, unit)} ({Percent(line.Confidence)}: {About(reaches.EarliestEngineKm, unit)} to {Latest(reaches, unit)}){Day(reaches)}.",
    };

    private static string Day(DriftOfLobe.Limit reaches) => reaches is { On: { } on, RateBasis: { } basis }
        ? $", about {on.ToString("MMMM uuuu", CultureInfo.InvariantCulture)} {basis.Spoken()}"
        : "";

    /// <summary>"0.20 to 0.21", "0.20 or more", "below 0.05".</summary>
    public static string Bracket(Clearance? go, Clearance? noGo) => Bracket(go?.Millimetres, noGo?.Millimetres);

    /// <summary>The same of two ends in mm.</summary>
    public static string Bracket(decimal? lower, decimal? upper) => (lower, upper) switch
    {
        ({ } l, { } u) => $"{l:0.00##} to {u:0.00##}",
        ({ } l, null) => $"{l:0.00##} or more",
        (null, { } u) => $"below {u:0.00##}",
        _ => "",
    };

    public static string Far(Distance distance, OdometerUnit unit) => $"{unit.CountOf(distance):#,0} {unit.Symbol()}";

    /// <summary>An estimate: to the hundred, as more digits would claim too much.</summary>
    public static string About(Distance distance, OdometerUnit unit) =>
        $"{Math.Round(unit.CountOf(distance) / 100.0) * 100:#,0} {unit.Symbol()}";

    public static string Signed(decimal value) => value.ToString("+0.0000;-0.0000;0", CultureInfo.InvariantCulture);

    public static string Percent(double confidence) => $"{100 * confidence:0.##} %";

    public static string Word(LimitEnd end) => end == LimitEnd.Lower ? "lower" : "upper";

    public static string Words(Stage stage) => stage == Stage.AsFound ? "as found" : "as left";

    public static string Words(LegStart start) => start switch
    {
        LegStart.New => "never opened since new",
        LegStart.Adjusted => "set at a visit",
        _ => "first seen",
    };

    public static string Words(LegCut cut) => cut switch
    {
        LegCut.ScrewTurned => "screw turned",
        LegCut.ShimUnmeasured => "a shim that nobody measured",
        LegCut.ChangeUnknown => "changed or not: unknown",
        _ => "a part replaced or ground: new slope",
    };

    private static string Latest(DriftOfLobe.Limit reaches, OdometerUnit unit) =>
        reaches.LatestEngineKm > reaches.EngineKm + StraightLineDrift.Reach ? "far beyond" : About(reaches.LatestEngineKm, unit);

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";
}
