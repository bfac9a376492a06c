using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>The floor in a real browser: live by server-sent events, under the strict content policy, and without scripts.</summary>
[Collection(RunningDemo.Name)]
public sealed partial class FloorOnTheWallTests(Chromium browser) : IClassFixture<Chromium>
{
    [Fact]
    public async Task What_is_moved_elsewhere_stands_elsewhere_on_the_wall_and_the_page_is_not_loaded_again()
    {
        var wall = await browser.SignedInAs("otto", new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 1920, Height = 1080 } });
        await wall.GotoAsync("/bays?wall=true");
        await Assertions.Expect(wall.Locator("[data-live-state]")).ToHaveTextAsync("Live.");
        var link = await wall.Locator("main td a[href*='/progress']").First.GetAttributeAsync("href");
        var card = Number().Match(link!).Value;
        var stand = await FreeStand(wall);
        await wall.EvaluateAsync("() => { window.sameDocument = true; }");

        var moved = await wall.APIRequest.PostAsync($"/api/v1/job-cards/{card}/moves", new APIRequestContextOptions
        {
            DataObject = new { resourceId = stand.Id, tag = "Battery out", until = stand.Now.AddMinutes(20) },
            Headers = new Dictionary<string, string> { ["Idempotency-Key"] = $"wall-{card}-{stand.Id}", ["X-Workshop-Request"] = "1" },
        });

        Assert.True(moved.Ok, await moved.TextAsync());
        var row = wall.Locator("tbody tr").Filter(new() { Has = wall.Locator("th", new() { HasText = stand.Name }) });
        await Assertions.Expect(row).ToContainTextAsync(card);
        await Assertions.Expect(wall.Locator("svg.floor")).ToContainTextAsync("Battery out");
        Assert.True(await wall.EvaluateAsync<bool>("() => window.sameDocument === true"));
        await Chromium.Keep(wall, "wall");
        await Chromium.IsAccessible(wall);
    }

    [Fact]
    public async Task Without_scripts_the_page_asks_to_be_loaded_again_by_itself()
    {
        var page = await browser.SignedInAs("greta", new BrowserNewContextOptions { JavaScriptEnabled = false });

        await page.GotoAsync("/bays");

        Assert.Equal("30", await page.Locator("meta[http-equiv=refresh]").GetAttributeAsync("content"));
        await Assertions.Expect(page.Locator("svg.floor")).ToBeVisibleAsync();
    }

    /// <summary>Empty now; the hour at which the next visit has it depends on the hour of the day, so it is the one that is wanted last.</summary>
    private static async Task<(string Id, string Name, DateTimeOffset Now)> FreeStand(IPage page)
    {
        var answer = await page.APIRequest.GetAsync("/api/v1/bays");
        var floor = JsonElement.Parse(await answer.TextAsync());
        var free = floor.GetProperty("places").EnumerateArray()
            .Where(p => p.GetProperty("kind").GetString() == "parkingPlace" && p.GetProperty("stands").ValueKind == JsonValueKind.Null)
            .MaxBy(p => p.GetProperty("next") is { ValueKind: JsonValueKind.Object } next ? next.GetProperty("from").GetDateTimeOffset() : DateTimeOffset.MaxValue);
        return (free.GetProperty("id").GetString()!, free.GetProperty("name").GetString()!, floor.GetProperty("at").GetDateTimeOffset());
    }

    [GeneratedRegex("\\d+")]
    private static partial Regex Number();
}
