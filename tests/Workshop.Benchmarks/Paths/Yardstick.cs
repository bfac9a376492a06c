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

    public static void Write(TextWriter to, IReadOnlyList<int> sizes)
    {
        to.WriteLine($"Valves with {BenchmarkFleet.ReadingsPerValve} readings each, {Environment.ProcessorCount} processors, seconds, best of {Repetitions}. \"Shared\": the slopes of an");
        to.WriteLine("engine share a part, here and in lmer. \"Left\": log-likelihood that a search to 14 digits still gains.");
        to.WriteLine();
        to.WriteLine("| valves | step mm | slopes | middles | search | standard errors | evaluations | left | lmer | middles / lmer | search / lmer | peak MB |");
        to.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (var valves in sizes)
        {
            foreach (var (shared, step) in (ReadOnlySpan<(bool, double)>)[(false, 0.01), (false, 0.05), (true, 0.01), (true, 0.05)])
            {
                Row(to, valves, step, shared);
                to.Flush();
            }
        }

        to.WriteLine();
        to.WriteLine("The peak is the largest working set of the whole process so far, of the data as of the fit.");
    }

    private static void Row(TextWriter to, int valves, double step, bool shared)
    {
        var data = BenchmarkFleet.Build(valves, step, shared);
        var options = new PathOptions { SharedSlopes = shared, StandardErrors = false };
        var fit = IntervalPaths.Fit(data, options).Value;
        var middles = Best(() => IntervalPaths.FitMiddles(data, options));
        var search = Best(() => IntervalPaths.Fit(data, options));
        var whole = Best(() => IntervalPaths.Fit(data, options with { StandardErrors = true }));
        var top = IntervalPaths.Fit(data, options with { Precision = 1e-12, Start = fit.Parameters }).Value;
        using var process = Process.GetCurrentProcess();
        var lmer = Lmer(valves, step, shared);
        to.WriteLine(FormattableString.Invariant(
            $"| {valves} | {step} | {(shared ? "shared" : "own")} | {middles:F3} | {search:F3} | {whole - search:F3} | {fit.Evaluations} | {top.LogLikelihood - fit.LogLikelihood:E1} | {lmer:F3} | {middles / lmer:F2} | {search / lmer:F2} | {process.PeakWorkingSet64 / 1e6:F0} |"));
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
    private static double? Lmer(int valves, double step, bool shared)
    {
        var table = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        try
        {
            using (var file = new StreamWriter(table))
            {
                BenchmarkFleet.WriteMiddles(file, valves, step, shared);
            }

            var script = Path.Combine(AppContext.BaseDirectory, "Paths", "lmer.R");
            using var process = Process.Start(new ProcessStartInfo("Rscript", [script, table, Repetitions.ToString(CultureInfo.InvariantCulture), shared ? "shared" : "own"])
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
