using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>What follows the work, tapped on the bay screen with the network cut: counted, looked at, sent in order when it is back.</summary>
[Collection(RunningDemo.Name)]
public sealed class AfterWorkBayTests(Chromium browser) : IClassFixture<Chromium>
{
    private static readonly ViewportSize Tablet = new() { Width = 800, Height = 1280 };

    [Fact]
    public async Task Taps_without_network_are_counted_on_the_screen_through_a_reload_and_once_only_by_the_service()
    {
        var manager = await browser.SignedInAs("otto");
        var job = await BayJob.Open(manager);
        var hand = await Hand(job.Address("Open"));
        await hand.IsKept();
        var (more, less, shown) = (
            hand.Page.GetByRole(AriaRole.Button, new() { Name = "One more Rags and cloths went in" }),
            hand.Page.GetByRole(AriaRole.Button, new() { Name = "One Rags and cloths less went in" }),
            hand.Page.Locator("tr[data-counted=rags] output[data-number=wentIn]"));

        await more.ClickAsync();
        await Assertions.Expect(shown).ToHaveTextAsync("1");
        await hand.Page.Context.SetOfflineAsync(true);
        for (var tap = 0; tap < 3; tap++)
        {
            await more.ClickAsync();
        }

        await less.ClickAsync();
        await Assertions.Expect(shown).ToHaveTextAsync("3");
        await Assertions.Expect(hand.Page.Locator("tr[data-counted=rags] [data-said]")).ToHaveTextAsync("3 not back");
        await hand.Page.ReloadAsync();
        await Assertions.Expect(shown).ToHaveTextAsync("3");

        await hand.Page.Context.SetOfflineAsync(false);
        await hand.AllSent();
        await Assertions.Expect(shown).ToHaveTextAsync("3");
        var rags = (await After(manager, job)).GetProperty("things").EnumerateArray().Single(t => t.GetProperty("code").GetString() == "rags");
        Assert.Equal(3, rags.GetProperty("wentIn").GetInt32());
        await hand.Page.ReloadAsync();
        await Assertions.Expect(shown).ToHaveTextAsync("3");
        await Chromium.IsAccessible(hand.Page);
    }

    [Fact]
    public async Task A_leak_check_place_by_place_waits_on_the_device_with_its_words()
    {
        var manager = await browser.SignedInAs("otto");
        var job = await BayJob.Open(manager);
        var hand = await Hand(job.Address("Close"));
        await hand.IsKept();

        await hand.Page.Context.SetOfflineAsync(true);
        await hand.Page.GetByText("Place by place").ClickAsync();
        var head = hand.Page.GetByRole(AriaRole.Group, new() { Name = "Head cover" });
        await head.GetByLabel("weeping").CheckAsync();
        await head.GetByLabel("What is seen").FillAsync("Damp at the left rear corner");
        await hand.Page.GetByRole(AriaRole.Group, new() { Name = "The engine as a whole" }).GetByLabel("dry").CheckAsync();
        await hand.Page.GetByRole(AriaRole.Button, new() { Name = "Write what was seen" }).ClickAsync();
        await Assertions.Expect(hand.Queue).ToContainTextAsync("Leak check");

        await hand.Page.Context.SetOfflineAsync(false);
        await hand.AllSent();
        var places = (await After(manager, job)).GetProperty("places").EnumerateArray().Where(p => p.GetProperty("state").ValueKind != System.Text.Json.JsonValueKind.Null)
            .Select(p => (p.GetProperty("name").GetString(), p.GetProperty("state").GetString(), p.GetProperty("words").GetString())).ToArray();
        Assert.Equal([("Head cover", "weeping", "Damp at the left rear corner"), ("The engine as a whole, from below too", "dry", null)], places);
    }

    private static Task<System.Text.Json.JsonElement> After(IPage page, BayJob job) => BayJob.Get(page, $"/api/v1/job-cards/{job.Number}/after-work");

    private async Task<BayHand> Hand(string address)
    {
        var page = await browser.SignedInAs("tilda", new BrowserNewContextOptions { ViewportSize = Tablet });
        await page.GotoAsync(address);
        return new BayHand(page);
    }
}
