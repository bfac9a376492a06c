using System.Globalization;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Web.Features.Intervals;

namespace Workshop.Web.Features.Drift;

/// <summary>What is known of a lobe, said as a person says it. Rounded for reading; nothing here is computed with.</summary>
internal static class DriftWords
{
    private const double Even = 0.5;

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

    /// <summary>"Drift -0.0085 mm per 10,000 km (90 %: -0.0093 to -0.0077)."</summary>
    public static string Drift(DriftOfLobe.Outlook outlook) =>
        $"Drift {Signed(outlook.DriftMmPer10000Km)} mm per 10,000 km (90 %: {Signed(outlook.DriftLower)} to {Signed(outlook.DriftUpper)}).";

    /// <summary>When it leaves its limits, and how likely it is outside at the next check.</summary>
    public static string Leaves(DriftOfLobe.Outlook outlook, OdometerUnit unit)
    {
        var (early, even, late) = (outlook.Leaves[0], outlook.Leaves[1], outlook.Leaves[2]);
        var next = outlook.OutsideAtNextCheck is { } p ? $" Outside at the next check: {Chance(p)}." : "";
        if (outlook.OutsideNow >= Even)
        {
            return $"Outside its limits now, by all that was read: {Chance(outlook.OutsideNow)}.";
        }

        return even.EngineKm is { } at
            ? $"As likely as not it leaves its limits by {About(at, unit)}{Day(even)}; {Place(early)}, {Place(late)}.{next}"
            : $"More likely than not it stays within its limits for {Furthest()}; {Place(early)}.{next}";

        string Place(DriftOfLobe.Leaving leaving) => leaving.EngineKm is { } there
            ? $"with {100 * leaving.Probability:0} % by {About(there, unit)}"
            : $"less than {100 * leaving.Probability:0} % that it does {(even.EngineKm is null ? "by then" : $"within {Furthest()}")}";

        string Furthest() => $"{Far(EngineForecast.Reach, unit)} from {About(outlook.FromKm, unit)} on";
    }

    /// <summary>The next check as Due says it: "overdue, at 68,210 km, 2,000 km ago, by its drift before the interval; expected 2026-04-20".</summary>
    public static string NextCheck(DueLine line) => string.Join(
        "; ",
        new[]
        {
            string.Join(", ", new[] { line.State.Spoken(), line.ByDistance }.Where(words => !string.IsNullOrEmpty(words))),
            line.ByDate,
            line.State == DueState.Overdue ? null : $"expected {line.Expected}",
        }.Where(words => !string.IsNullOrEmpty(words)));

    /// <summary>Where the engine passes the manager's threshold.</summary>
    public static string Passes(GetDrift.Answer drift) => drift switch
    {
        { Lobes: var lobes } when lobes.All(l => l.Forecast is null) => "Nothing is foretold.",
        { PassesThresholdKm: { } at, PassesThresholdOn: { } on } =>
            $"About {on.ToString("MMMM uuuu", CultureInfo.InvariantCulture)}, engine at about {About(at, drift.OdometerUnit)}, "
                + $"the dates {drift.RateBasis?.Spoken() ?? "by no rate"}.",
        { PassesThresholdKm: { } at } => $"Engine at about {About(at, drift.OdometerUnit)}, which its rate does not reach within twenty years.",
        _ => $"Not within {Far(EngineForecast.Reach, drift.OdometerUnit)} of its last readings.",
    };

    /// <summary>What a motorcycle's forecasts rest on.</summary>
    public static string RestsOn(GetDrift.FitBehind fit) => fit.Source switch
    {
        FitSource.OwnReadings => $"Fit {fit.Version} of the engine model, {fit.Readings:#,0} readings of its own.",
        FitSource.Borrowed =>
            $"Fit {fit.Version} of the engine model, {Count(fit.Readings, "reading")} of its own and what it borrows from others of its valve-train kind.",
        FitSource.Pooled => $"Fit {fit.Version}: what other engine models of its valve-train kind show, borrowed as a whole.",
        _ => $"Fit {fit.Version} of the engine model came to nothing.",
    };

    /// <summary>Why nothing is foretold, in a sentence.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="ofModel">What the fit of the engine model lacks, where there is none.</param>
    public static string WhyNot(NoForecastReason reason, string? ofModel) => reason switch
    {
        NoForecastReason.NoFit when ofModel is not null =>
            $"No forecast: its engine model tells too little, and there is no other of its kind. {ofModel}",
        NoForecastReason.NoFit => "No forecast yet: the drift of its engine model has not been worked out.",
        NoForecastReason.SideNotKnown => "No forecast: no valve of this side was read in any engine of the model.",
        NoForecastReason.NotMeasured => "No forecast: it was not measured yet, and what was done to it before is not known.",
        NoForecastReason.ChangeUnknown => "No forecast: it may have been changed since it was measured; measure it again.",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, null),
    };

    /// <summary>"less than 1 %", "4 %", "more than 99 %".</summary>
    public static string Chance(double probability) => probability switch
    {
        < 0.01 => "less than 1 %",
        > 0.99 => "more than 99 %",
        _ => $"{100 * probability:0} %",
    };

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

    private static string Day(DriftOfLobe.Leaving leaving) =>
        leaving.On is { } on ? $", about {on.ToString("MMMM uuuu", CultureInfo.InvariantCulture)}" : "";

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";
}
