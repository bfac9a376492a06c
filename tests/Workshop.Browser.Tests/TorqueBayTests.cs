using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>The torque sheet as a step of the bay screen, in a real browser.</summary>
[Collection(RunningDemo.Name)]
public sealed partial class TorqueBayTests(Chromium browser) : IClassFixture<Chromium>
{
    private static readonly ViewportSize Tablet = new() { Width = 800, Height = 1280 };

    [Fact]
    public async Task A_fastener_is_ticked_without_network_with_the_wrench_that_was_chosen_and_the_next_opens()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand(job.Address("Tighten"));
        await hand.IsKept();
        var loose = hand.Page.Locator("details[data-in-turn]");
        var ways = loose.First.Locator("input[name=Way]");
        var chosen = await ways.Last.GetAttributeAsync("value");

        await hand.Page.Context.SetOfflineAsync(true);
        await ways.Last.CheckAsync();
        await loose.First.GetByRole(AriaRole.Button, new() { NameRegex = Tightened() }).ClickAsync();
        await Assertions.Expect(loose.First).Not.ToHaveAttributeAsync("open", "");
        await Assertions.Expect(loose.Nth(1)).ToHaveAttributeAsync("open", "");
        await Assertions.Expect(hand.Queue).ToContainTextAsync("tightened");

        await hand.Page.Context.SetOfflineAsync(false);
        await hand.AllSent();
        var first = FirstOf(await job.Ask("torque-sheet"));
        Assert.Equal("tightened", first.GetProperty("state").GetString());
        var offers = first.GetProperty("steps").EnumerateArray().Last().GetProperty("wrenches").EnumerateArray();
        var used = offers.First(o => chosen!.StartsWith(o.GetProperty("id").GetString()!, StringComparison.Ordinal));
        Assert.Contains($"({used.GetProperty("serialNumber").GetString()})", first.GetProperty("tick").GetProperty("wrench").GetString(), StringComparison.Ordinal);

        var plain = await browser.SignedInAs("tilda", new BrowserNewContextOptions { JavaScriptEnabled = false, ViewportSize = Tablet });
        await plain.GotoAsync(job.Address("Tighten"));
        await plain.Locator("section", new() { HasText = "Tight" }).Last.Locator("summary").First.ClickAsync();
        await plain.GetByRole(AriaRole.Button, new() { Name = "Take the tick back" }).ClickAsync();
        Assert.EndsWith(job.Address("Tighten"), plain.Url, StringComparison.Ordinal);
        Assert.Equal("takenBack", FirstOf(await job.Ask("torque-sheet")).GetProperty("state").GetString());

        static JsonElement FirstOf(JsonElement sheet) => sheet.GetProperty("sections")[0].GetProperty("fasteners")[0];
    }

    private async Task<BayHand> Hand(string address)
    {
        var page = await browser.SignedInAs("tilda", new BrowserNewContextOptions { ViewportSize = Tablet });
        await page.GotoAsync(address);
        return new BayHand(page);
    }

    [GeneratedRegex("^(All \\d+ t|T)ightened$")]
    private static partial Regex Tightened();
}
