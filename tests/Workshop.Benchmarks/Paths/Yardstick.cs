using System.Diagnostics;
using System.Globalization;
using Workshop.Domain.Statistics.Paths;

namespace Workshop.Benchmarks.Paths;

/// <summary>
/// The fit timed beside lmer of R's lme4, which solves the easier problem of the brackets' middles, in one run on one machine.
/// Without R the column of lmer is empty.
/// </summary>
internal static class Yardstick
{
    private const int Repetitions = 5;

    public static void Write(TextWriter to, int valves)
    {
        to.WriteLine($"{valves} valves with {BenchmarkFleet.ReadingsPerValve} readings each, {Environment.ProcessorCount} processors, seconds, best of {Repetitions}");
        to.WriteLine();
        to.WriteLine("| step mm | middles | search | standard errors | evaluations | lmer | search / lmer |");
        to.WriteLine("|---|---|---|---|---|---|---|");
        foreach (var step in (ReadOnlySpan<double>)[0.01, 0.05])
        {
            var data = BenchmarkFleet.Build(valves, step);
            var evaluations = 0;
            var middles = Best(() => IntervalPaths.FitMiddles(data));
            var search = Best(() => evaluations = IntervalPaths.Fit(data, new PathOptions { StandardErrors = false }).Value.Evaluations);
            var whole = Best(() => IntervalPaths.Fit(data));
            var lmer = Lmer(valves, step);
            to.WriteLine(FormattableString.Invariant(
                $"| {step} | {middles:F3} | {search:F3} | {whole - search:F3} | {evaluations} | {lmer:F3} | {search / lmer:F1} |"));
        }

        to.WriteLine();
        to.WriteLine(FormattableString.Invariant(
            $"Largest working set: {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:F0} MB"));
    }

    private static double Best(Action action)
    {
        action();
        var best = double.PositiveInfinity;
        for (var i = 0; i < Repetitions; i++)
        {
            var watch = Stopwatch.StartNew();
            action();
            best = Math.Min(best, watch.Elapsed.TotalSeconds);
        }

        return best;
    }

    /// <summary>Seconds of lmer on the same middles; null where R or lme4 is missing.</summary>
    private static double? Lmer(int valves, double step)
    {
        var table = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        try
        {
            using (var file = new StreamWriter(table))
            {
                BenchmarkFleet.WriteMiddles(file, valves, step);
            }

            var script = Path.Combine(AppContext.BaseDirectory, "Paths", "lmer.R");
            using var process = Process.Start(new ProcessStartInfo("Rscript", [script, table, Repetitions.ToString(CultureInfo.InvariantCulture)])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            var said = process.StandardOutput.ReadToEndAsync();
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? double.Parse(said.Result, CultureInfo.InvariantCulture) : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
        finally
        {
            File.Delete(table);
        }
    }
}
