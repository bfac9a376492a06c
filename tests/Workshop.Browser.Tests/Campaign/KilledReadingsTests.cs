using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests.Campaign;

/// <summary>Ten runs of the campaign that <c>deploy/bench-readings</c> does with two hundred: each fault twice.</summary>
public sealed class KilledReadingsTests : IAsyncLifetime
{
    private const int Runs = 10;

    private readonly CrashingService service = new();
    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        await service.Start();
        playwright = await Playwright.CreateAsync();
        browser = await Chromium.Launch(playwright);
    }

    [Fact]
    public async Task No_reading_that_the_device_has_is_lost_or_written_twice_whatever_is_killed_or_cut()
    {
        var campaign = new ReadingsCampaign(service, browser!);
        await campaign.Prepare();
        var results = new List<RunResult>();
        for (var seed = 1; seed <= Runs; seed++)
        {
            results.Add(await campaign.Run(seed));
        }

        Assert.All(results, r => Assert.True(r.IsClean, r.ToString()));
        Assert.Equal(Enum.GetValues<Fault>().Order(), results.Select(r => r.Plan.Fault).Distinct().Order());
        Assert.True(results.Sum(r => r.Acknowledged) >= Runs * 4, $"{results.Sum(r => r.Acknowledged)} readings were acknowledged");
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        await service.DisposeAsync();
    }
}
