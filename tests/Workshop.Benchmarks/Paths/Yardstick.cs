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

    public static void Write(TextWriter to, IReadOnlyList<int> sizes)
    {
        to.WriteLine($"Valves with {BenchmarkFleet.ReadingsPerValve} readings each, {Environment.ProcessorCount} processors, seconds, the best of some repetitions. \"Shared\": the slopes of an");
        to.WriteLine("engine share a part, here and in lmer. \"Left\": log-likelihood that a longer search still gains.");
        to.WriteLine("Wall-clock times; CPU times of all threads beside them, which others on the machine disturb less.");
        to.WriteLine();
        to.WriteLine("| valves | step mm | slopes | middles | search | standard errors | evaluations | left | lmer | middles / lmer | search / lmer | CPU of search | CPU of lmer | peak MB |");
        to.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|---|---|---|");
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
        var repetitions = valves > 20_000 ? 2 : 5;
        var (middles, _) = Best(repetitions, () => IntervalPaths.FitMiddles(data, options));
        var (search, searchCpu) = Best(repetitions, () => IntervalPaths.Fit(data, options));
        var (whole, _) = Best(repetitions, () => IntervalPaths.Fit(data, options with { StandardErrors = true }));
        var top = IntervalPaths.Fit(data, options with { Precision = 1e-12, Start = fit.Parameters }).Value;
        using var process = Process.GetCurrentProcess();
        var lmer = Lmer(valves, step, shared, repetitions);
        to.WriteLine(FormattableString.Invariant(
            $"| {valves} | {step} | {(shared ? "shared" : "own")} | {middles:F3} | {search:F3} | {whole - search:F3} | {fit.Evaluations} | {top.LogLikelihood - fit.LogLikelihood:E1} | {lmer?.Wall:F3} | {middles / lmer?.Wall:F2} | {search / lmer?.Wall:F2} | {searchCpu:F3} | {lmer?.Cpu:F3} | {process.PeakWorkingSet64 / 1e6:F0} |"));
    }

    private static (double Wall, double Cpu) Best(int repetitions, Action action)
    {
        action();
        var (wall, cpu) = (double.PositiveInfinity, double.PositiveInfinity);
        using var process = Process.GetCurrentProcess();
        for (var i = 0; i < repetitions; i++)
        {
            process.Refresh();
            var (watch, before) = (Stopwatch.StartNew(), process.TotalProcessorTime);
            action();
            wall = Math.Min(wall, watch.Elapsed.TotalSeconds);
            process.Refresh();
            cpu = Math.Min(cpu, (process.TotalProcessorTime - before).TotalSeconds);
        }

        return (wall, cpu);
    }

    /// <summary>Seconds of lmer on the same middles; null where R or lme4 is missing.</summary>
    private static (double Wall, double Cpu)? Lmer(int valves, double step, bool shared, int repetitions)
    {
        var table = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        try
        {
            using (var file = new StreamWriter(table))
            {
                BenchmarkFleet.WriteMiddles(file, valves, step, shared);
            }

            var script = Path.Combine(AppContext.BaseDirectory, "Paths", "lmer.R");
            using var process = Process.Start(new ProcessStartInfo("Rscript", [script, table, repetitions.ToString(CultureInfo.InvariantCulture), shared ? "shared" : "own"])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            var said = process.StandardOutput.ReadToEndAsync();
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode != 0)
            {
                return null;
            }

            var times = said.Result.Split(' ').Select(time => double.Parse(time, CultureInfo.InvariantCulture)).ToArray();
            return (times[0], times[1]);
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
