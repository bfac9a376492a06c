using System.Diagnostics;

namespace Workshop.Benchmarks.Calibration;

/// <summary>The study as a table.</summary>
internal static class CalibrationReport
{
    public static void Write(TextWriter to, int seeds, int valves, int? checks)
    {
        var watch = Stopwatch.StartNew();
        to.WriteLine($"Fleets of {valves} valves, seeds 1 to {seeds}. Errors of the 50 % leaving distance are mean absolute, in 10,000 km,");
        to.WriteLine($"distances beyond {10 * SimulatedFleet.Reach},000 km counted as that.");
        to.WriteLine();
        to.WriteLine("| shims | visit effect | step | between valves | checks | 90 % slope | 90 % clearance +30,000 km | error | oracle | ratio | line | line - model |");
        to.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (var scenario in FleetScenario.All().Where(s => checks is null || s.Checks == checks))
        {
            var figures = CalibrationStudy.Run(scenario, seeds, valves);
            var start = $"| {(scenario.KnownShims ? "known" : "unknown")} | {scenario.VisitEffect} | {scenario.Step} | {scenario.BetweenValves} | {scenario.Checks} |";
            if (figures.Valves == 0)
            {
                to.WriteLine($"{start} no fit of {figures.Failures} |");
                continue;
            }

            var (less, error) = figures.LineLessModel;
            to.WriteLine(FormattableString.Invariant(
                $"{start} {figures.SlopeCoverage:P1} | {figures.ClearanceCoverage:P1} | {figures.ModelError:F3} | {figures.OracleError:F3} | {figures.ModelError / figures.OracleError:F3} | {figures.LineError:F3} | {less:F3} +- {error:F3} |")
                + (figures.Failures > 0 ? $" {figures.Failures} without a fit" : ""));
            to.Flush();
        }

        to.WriteLine();
        to.WriteLine(FormattableString.Invariant($"{watch.Elapsed.TotalSeconds:F0} s"));
    }
}
