using System.Globalization;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit.MicrosoftTestingPlatform;

namespace Workshop.Browser.Tests.Campaign;

/// <summary>Runs the tests, or, as <c>readings [runs [first seed]]</c>, the campaign of killed sends, and prints its report.</summary>
internal static class CampaignProgram
{
    private const string Readings = "readings";

    private static async Task<int> Main(string[] arguments) => arguments is [Readings, .. var rest]
        ? await RunAsync(Number(rest, 0, 200), Number(rest, 1, 1))
        : await TestPlatformTestFramework.RunAsync(arguments, SelfRegisteredExtensions.AddSelfRegisteredExtensions);

    private static async Task<int> RunAsync(int runs, int firstSeed)
    {
        await using var service = new CrashingService();
        await service.Start();
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await Chromium.Launch(playwright);
        var campaign = new ReadingsCampaign(service, browser);
        await campaign.Prepare();
        var (results, failed) = (new List<RunResult>(), new List<string>());
        for (var seed = firstSeed; seed < firstSeed + runs; seed++)
        {
            try
            {
                results.Add(await campaign.Run(seed));
                await Console.Error.WriteLineAsync($"{(results[^1].IsClean ? "clean" : "NOT CLEAN")}: {results[^1]}, {results[^1].Took.TotalSeconds:0} s");
            }
            catch (Exception fault) when (fault is PlaywrightException or TimeoutException or InvalidOperationException)
            {
                failed.Add($"seed {seed}: {fault.Message.Split('\n')[0]}");
                await Console.Error.WriteLineAsync($"NOT FINISHED, {failed[^1]}");
            }
        }

        Report(results, failed);
        return results.TrueForAll(r => r.IsClean) && failed.Count == 0 ? 0 : 1;
    }

    private static void Report(List<RunResult> results, List<string> failed)
    {
        Console.WriteLine("| fault | runs | tapped | acknowledged on the device | stored | lost | twice | nobody tapped | out of order | shown as conflict |");
        Console.WriteLine("| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: |");
        foreach (var group in results.GroupBy(r => r.Plan.Fault.ToString()).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Row(group.Key, [.. group]);
        }

        Row("all", results);
        Console.WriteLine();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{results.Count} runs finished, {failed.Count} did not. Seconds a run: {results.Average(r => r.Took.TotalSeconds):0.0} on average, {results.Max(r => r.Took.TotalSeconds):0} at most."));
        foreach (var line in results.Where(r => !r.IsClean).Select(r => $"Not clean: {r}").Concat(failed.Select(f => $"Not finished: {f}")))
        {
            Console.WriteLine($"- {line}");
        }
    }

    private static void Row(string name, List<RunResult> of) => Console.WriteLine(
        $"| {name} | {of.Count} | {of.Sum(r => r.Tapped)} | {of.Sum(r => r.Acknowledged)} | {of.Sum(r => r.Stored)} | {of.Sum(r => r.Lost)} "
        + $"| {of.Sum(r => r.Duplicates)} | {of.Sum(r => r.Wrong)} | {of.Sum(r => r.OutOfOrder)} | {of.Sum(r => r.Conflicts)} |");

    private static int Number(string[] arguments, int place, int otherwise) =>
        arguments.Length > place ? int.Parse(arguments[place], CultureInfo.InvariantCulture) : otherwise;
}
