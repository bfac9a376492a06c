using System.Diagnostics;
using System.Text.Json;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;

namespace Workshop.Browser.Tests.Campaign;

/// <summary>
/// Enters readings on the bay screen while something is killed or cut, and counts what the device said that it has against what
/// the service has in the end. Every run is a new window on the engine of the demo that lies open.
/// </summary>
public sealed class ReadingsCampaign(CrashingService service, IBrowser browser)
{
    private const int LongestSend = 120_000;
    private const int MostPostgresKills = 4;

    private string address = "";
    private string readings = "";
    private string state = "";
    private IReadOnlyList<string> valves = [];

    /// <summary>Finds the job, acknowledges its cautions and signs the technician in.</summary>
    public async Task Prepare()
    {
        await using var context = await NewContext(null);
        var page = await context.NewPageAsync();
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("tilda");
        await page.GetByLabel("Password").FillAsync(service.PasswordOf("tilda"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains("/sign-in", StringComparison.Ordinal));
        var places = (await BayJob.Get(page, "/api/v1/bays")).GetProperty("places").EnumerateArray();
        var bay = places.First(p => p.GetProperty("kind").GetString() == "bay" && p.GetProperty("stands").ValueKind != JsonValueKind.Null);
        var number = bay.GetProperty("stands").GetProperty("jobCardNumber").GetInt32();
        address = $"/bays/{bay.GetProperty("id").GetString()}?card={number}&step=Measure";
        readings = $"/api/v1/job-cards/{number}/readings";
        valves = [.. (await BayJob.Get(page, readings)).GetProperty("valves").EnumerateArray().Select(v => v.GetProperty("valve").GetString()!)];
        state = await context.StorageStateAsync();
    }

    public async Task<RunResult> Run(int seed)
    {
        var took = Stopwatch.StartNew();
        var plan = RunPlan.Draw(seed, valves);
        if (service.PostgresKills >= MostPostgresKills)
        {
            await service.Kill();
            await service.Start();
        }

        await using var context = await NewContext(state);
        var page = await context.NewPageAsync();
        try
        {
            return await Run(plan, page, took);
        }
        catch (Exception fault) when (fault is PlaywrightException or TimeoutException)
        {
            throw new InvalidOperationException(
                $"seed {seed}, {plan.Fault}: {fault.Message.ReplaceLineEndings(" ")} {page.Url} shows: {await page.Locator("body").InnerTextAsync()}", fault);
        }
    }

    private async Task<RunResult> Run(RunPlan plan, IPage page, Stopwatch took)
    {
        var before = Rows(await BayJob.Get(page, readings)).Select(r => r.Id).ToHashSet();
        var hand = new BayHand(page);
        await page.GotoAsync(address);
        await hand.SetUp();
        await hand.IsKept();

        var acknowledged = new List<(string Valve, int Blade)>();
        var end = Task.CompletedTask;
        for (var i = 0; i < plan.Valves.Count; i++)
        {
            var (valve, blade) = plan.Valves[i];
            await AtBlades(hand, valve);
            await hand.BladeButton(Mark(blade)).ClickAsync();
            if (i == plan.At)
            {
                await Task.Delay(plan.AfterMs);
                end = Break(plan, page);
                await (plan.Fault is Fault.Reload or Fault.ReloadWithoutNetwork ? end : Task.CompletedTask);
            }

            if (await IsAcknowledged(page, valve, blade))
            {
                acknowledged.Add((valve, blade));
            }
        }

        await end;
        await page.Context.SetOfflineAsync(false);
        await service.Ready();
        await page.ReloadAsync();
        await page.WaitForFunctionAsync(
            "() => document.querySelector('[data-net]')?.textContent === 'Everything is sent.' || document.querySelector('[data-queue] [role=alert]')",
            null, new PageWaitForFunctionOptions { Timeout = LongestSend });
        var conflicts = await hand.Queue.Locator("[role=alert]").CountAsync();
        return Count(plan, acknowledged, Rows(await BayJob.Get(page, readings)).Where(r => !before.Contains(r.Id)).ToList(), conflicts, took.Elapsed);
    }

    private static RunResult Count(
        RunPlan plan, List<(string Valve, int Blade)> acknowledged, IReadOnlyList<Row> rows, int conflicts, TimeSpan took)
    {
        var tapped = plan.Valves.ToHashSet();
        var stored = rows.Select(r => (r.Valve, r.Blade)).ToList();
        var order = plan.Valves.Select((v, i) => (v, i)).ToDictionary(v => v.v, v => v.i);
        var outOfOrder = rows.Where(r => tapped.Contains((r.Valve, r.Blade))).GroupBy(r => r.Valve)
            .Sum(g => g.OrderBy(r => r.Attempt).Select(r => order[(r.Valve, r.Blade)]).Pairs().Count(p => p.Second < p.First));

        // Nobody else enters anything, so a conflict would be one with oneself.
        return new RunResult(
            plan, plan.Valves.Count, acknowledged.Count, rows.Count, acknowledged.Count(a => !stored.Contains(a)),
            stored.Count - stored.Distinct().Count(), stored.Distinct().Count(s => !tapped.Contains(s)), conflicts, outOfOrder, took);
    }

    /// <summary>Goes to a valve, as far as the blades: confirms the position and gives a reason where that is asked for.</summary>
    private static async Task AtBlades(BayHand hand, string valve)
    {
        await hand.TapValve(valve);
        await hand.AtPositionOrReason();
    }

    /// <summary>Answers when it is over; a killed service is started again.</summary>
    private async Task Break(RunPlan plan, IPage page)
    {
        switch (plan.Fault)
        {
            case Fault.NetworkCut:
                await page.Context.SetOfflineAsync(true);
                await Task.Delay(plan.LastsMs);
                await page.Context.SetOfflineAsync(false);
                break;
            case Fault.Reload:
                await page.ReloadAsync();
                break;
            case Fault.ReloadWithoutNetwork:
                await page.Context.SetOfflineAsync(true);
                await page.ReloadAsync();
                break;
            case Fault.ServiceKilled:
                await service.Kill();
                await Task.Delay(plan.LastsMs);
                await service.Start();
                break;
            case Fault.PostgresKilled:
                service.KillPostgres();
                await Task.Delay(plan.LastsMs);
                await service.Ready();
                break;
            default:
                throw new InvalidOperationException($"No way to do {plan.Fault}.");
        }
    }

    /// <summary>The device has it: it stands in the table of the screen. After a reload that is read from the disk.</summary>
    private static async Task<bool> IsAcknowledged(IPage page, string valve, int blade)
    {
        var cell = page.Locator($"tr[data-lobe='{valve}'] [data-read]");
        try
        {
            await Assertions.Expect(cell).ToContainTextAsync($"{blade / 100m:0.00} to ", new() { Timeout = 4000 });
            return true;
        }
        catch (PlaywrightException)
        {
            // The page was loaded anew before the tap was kept; a person sees that and taps again.
            return false;
        }
    }

    private Task<IBrowserContext> NewContext(string? storage) => browser.NewContextAsync(new BrowserNewContextOptions
    {
        BaseURL = service.Address.ToString(), StorageState = storage, ViewportSize = new ViewportSize { Width = 800, Height = 1280 },
    });

    private static string Mark(int blade) => FormattableString.Invariant($"{blade / 100m:0.00} mm");

    private static List<Row> Rows(JsonElement answer) => [.. answer.GetProperty("positions").EnumerateArray()
        .SelectMany(p => p.GetProperty("lobes").EnumerateArray())
        .SelectMany(l => l.GetProperty("history").EnumerateArray().Select(r => new Row(
            r.GetProperty("id").GetGuid(), l.GetProperty("valve").GetString()!, (int)(r.GetProperty("goMm").GetDecimal() * 100), r.GetProperty("attempt").GetInt32())))];

    private sealed record Row(Guid Id, string Valve, int Blade, int Attempt);
}

internal static class Sequences
{
    public static IEnumerable<(T First, T Second)> Pairs<T>(this IEnumerable<T> all)
    {
        var list = all.ToList();
        return list.Zip(list.Skip(1));
    }
}
