using System.Diagnostics;

namespace Workshop.Benchmarks.Calibration;

/// <summary>The study as a table.</summary>
internal static class CalibrationReport
{
    public static void Write(TextWriter to, int seeds, int valves, int? checks)
    {
        var watch = Stopwatch.StartNew();
        to.WriteLine($"Fleets of {valves} valves, {seeds} of each kind ({4 * seeds} where every engine has had one check). Errors of the 50 % leaving");
        to.WriteLine($"distance are mean absolute, in 10,000 km, distances beyond {10 * SimulatedFleet.Reach},000 km counted as that; \"line - model\" with its standard error.");
        to.WriteLine("\"Mixed\": engines with 1, 2, 3 and 5 checks in one fleet, figures by the engine's own number.");
        to.WriteLine();
        to.WriteLine("| shims | visit effect | step | tau_b | fleet | checks | 90 % slope | 90 % clearance +30,000 km | error | oracle | ratio | line | line - model |");
        to.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (var scenario in FleetScenario.All().Where(s => checks is not { } c || (s.Checks.Count == 1 && s.Checks[0] == c)))
        {
            foreach (var (own, figures) in CalibrationStudy.Run(scenario, scenario.SeedsFor(seeds), valves))
            {
                to.WriteLine(Row(scenario, own, figures));
            }

            to.Flush();
        }

        to.WriteLine();
        to.WriteLine(FormattableString.Invariant($"{watch.Elapsed.TotalSeconds:F0} s"));
    }

    private static string Row(FleetScenario scenario, int checks, ScenarioFigures figures)
    {
        var start = FormattableString.Invariant(
            $"| {(scenario.KnownShims ? "known" : "unknown")} | {scenario.VisitEffect} | {scenario.Step} | {scenario.BetweenValves} | {(scenario.Checks.Count > 1 ? "mixed" : "alike")} | {checks} |");
        if (figures.Valves == 0)
        {
            return $"{start} no fit of {figures.Failures} |";
        }

        var (less, error) = figures.LineLessModel;
        return FormattableString.Invariant(
            $"{start} {figures.SlopeCoverage:P1} | {figures.ClearanceCoverage:P1} | {figures.ModelError:F3} | {figures.OracleError:F3} | {figures.ModelError / figures.OracleError:F3} | {figures.LineError:F3} | {less:F3} +- {error:F3} |")
            + (figures.Failures > 0 ? $" {figures.Failures} fleets without a fit" : "");
    }
}
