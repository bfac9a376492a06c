using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>The bay screen in a real browser: few taps, no network, two people at one valve, and without scripts.</summary>
[Collection(RunningDemo.Name)]
public sealed class BayScreenTests(Chromium browser) : IClassFixture<Chromium>
{
    private static readonly ViewportSize Tablet = new() { Width = 800, Height = 1280 };

    [Fact]
    public async Task Sixteen_valves_are_entered_in_at_most_34_taps()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Measure);
        await hand.Page.EvaluateAsync("() => { window.taps = 0; document.addEventListener('pointerdown', () => { window.taps += 1; }, true); }");

        await hand.SetUp();
        for (var valve = 0; valve < 16; valve++)
        {
            await hand.AtPosition();
            await hand.Blade(valve % 2 == 0 ? "0.20 mm" : "0.21 mm");
        }

        await Assertions.Expect(hand.ValveNow).ToHaveTextAsync("All are read");
        var taps = await hand.Page.EvaluateAsync<int>("() => window.taps");
        Assert.InRange(taps, 16, 34);
        await hand.AllSent();
        var readings = await job.Readings();
        var lobes = readings.GetProperty("positions").EnumerateArray().SelectMany(p => p.GetProperty("lobes").EnumerateArray()).ToList();
        Assert.Equal(16, lobes.Count);
        Assert.All(lobes, l => Assert.Equal(1, l.GetProperty("asFound").GetProperty("attempt").GetInt32()));
        await Chromium.Keep(hand.Page, "bay-sixteen-valves");
        await Chromium.IsAccessible(hand.Page);
    }

    [Fact]
    public async Task Without_network_entry_goes_on_through_a_reload_and_is_sent_in_order_when_it_is_back()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Measure);
        await hand.SetUp();
        await hand.AtPosition();
        await hand.IsKept();

        await hand.Page.Context.SetOfflineAsync(true);
        await hand.Blade("0.15 mm");
        await Assertions.Expect(hand.Answer).ToContainTextAsync("Checked on the device, history not asked");
        await Assertions.Expect(hand.Net).ToContainTextAsync("No network");
        await hand.Page.ReloadAsync();
        await Assertions.Expect(hand.Queue).ToContainTextAsync("cylinder 1, intake 1: 0.15 to 0.16 mm");
        await hand.AtPosition();
        await hand.Blade("0.12 mm");
        await Assertions.Expect(hand.Answer).ToContainTextAsync("too tight");
        Assert.Empty(BayJob.HistoryOf(await job.Readings(), "1-intake-1"));

        await hand.Page.Context.SetOfflineAsync(false);
        await hand.AllSent();
        var readings = await job.Readings();
        var (first, second) = (Assert.Single(BayJob.HistoryOf(readings, "1-intake-1")), Assert.Single(BayJob.HistoryOf(readings, "1-intake-2")));
        Assert.True(first.GetProperty("measuredAt").GetDateTimeOffset() < second.GetProperty("measuredAt").GetDateTimeOffset());
        Assert.True(first.GetProperty("enteredAt").GetDateTimeOffset() < second.GetProperty("enteredAt").GetDateTimeOffset());
    }

    [Fact]
    public async Task A_reading_that_somebody_else_overtook_is_shown_with_both_values_and_only_a_person_decides()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Measure);
        await hand.SetUp();
        await hand.AtPosition();
        var other = await Hand("bram", job.Measure);
        await other.SetUp();
        await other.AtPosition();

        await hand.Page.Context.SetOfflineAsync(true);
        await hand.Blade("0.15 mm");
        await hand.Blade("0.16 mm");
        await other.Blade("0.18 mm");
        await other.Blade("0.19 mm");
        await other.AllSent();
        await hand.Page.Context.SetOfflineAsync(false);

        var conflicts = hand.Queue.Locator("[role=alert]");
        await Assertions.Expect(conflicts).ToHaveCountAsync(2);
        await Assertions.Expect(conflicts.First).ToContainTextAsync("0.18 to 0.19 mm, by Bram");
        await Assertions.Expect(conflicts.First).ToContainTextAsync("0.15 to 0.16 mm, by tilda");
        await Chromium.Keep(hand.Page, "bay-conflict");
        await Chromium.IsAccessible(hand.Page);
        Assert.Single(BayJob.HistoryOf(await job.Readings(), "1-intake-1"));

        await conflicts.First.GetByRole(AriaRole.Button, new() { Name = "Let it stand" }).ClickAsync();
        await Assertions.Expect(conflicts).ToHaveCountAsync(1);
        await conflicts.First.GetByRole(AriaRole.Button, new() { Name = "Write mine" }).ClickAsync();
        await Assertions.Expect(conflicts).ToHaveCountAsync(0);
        await hand.AllSent();

        var readings = await job.Readings();
        Assert.Equal(0.18m, Assert.Single(BayJob.HistoryOf(readings, "1-intake-1")).GetProperty("goMm").GetDecimal());
        var second = BayJob.HistoryOf(readings, "1-intake-2");
        Assert.Equal([0.19m, 0.16m], second.Select(r => r.GetProperty("goMm").GetDecimal()));
        Assert.Contains("0.19 to 0.20 mm by Bram", second[1].GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_the_sign_in_ends_nothing_is_lost_and_what_waits_is_sent_after_signing_in_again()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Measure);
        await hand.SetUp();
        await hand.AtPosition();

        await hand.Page.Context.ClearCookiesAsync();
        await hand.Blade("0.17 mm");
        await Assertions.Expect(hand.Net).ToContainTextAsync("Nothing is lost: sign in again");
        await hand.Net.GetByRole(AriaRole.Link).ClickAsync();
        await browser.SignIn(hand.Page, "tilda");

        await hand.AllSent();
        Assert.Single(BayJob.HistoryOf(await job.Readings(), "1-intake-1"));
    }

    [Fact]
    public async Task What_one_person_entered_is_not_sent_in_the_name_of_another_and_signing_out_takes_the_kept_pages_away()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Measure);
        await hand.SetUp();
        await hand.AtPosition();
        await hand.IsKept();
        await hand.Page.RouteAsync("**/api/v1/job-cards/**", route => route.AbortAsync());
        await hand.Blade("0.17 mm");

        await hand.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await hand.Page.WaitForURLAsync("**/sign-in**");
        Assert.False(await hand.Page.EvaluateAsync<bool>("async () => await caches.has('workshop-bay-pages')"));
        await hand.Page.UnrouteAllAsync();
        await browser.SignIn(hand.Page, "bram");
        await hand.Page.GotoAsync(job.Measure);
        await Assertions.Expect(hand.Queue).ToContainTextAsync("waits until tilda signs in here");
        Assert.Empty(BayJob.HistoryOf(await job.Readings(), "1-intake-1"));

        await hand.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await hand.Page.WaitForURLAsync("**/sign-in**");
        await browser.SignIn(hand.Page, "tilda");
        await hand.Page.GotoAsync(job.Measure);
        await hand.AllSent();
        Assert.Single(BayJob.HistoryOf(await job.Readings(), "1-intake-1"));
    }

    [Fact]
    public async Task A_correction_asks_for_a_reason_and_two_blades_can_be_stacked()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Measure);
        await hand.SetUp();
        await hand.AtPosition();
        await hand.Blade("0.17 mm");
        await Assertions.Expect(hand.ValveNow).ToHaveTextAsync("cylinder 1, intake 2");
        await hand.TapValve("1-intake-1");
        await hand.Page.GetByRole(AriaRole.Button, new() { Name = "Blade slipped or was bent" }).ClickAsync();
        await hand.Page.GetByRole(AriaRole.Button, new() { Name = "Two blades" }).ClickAsync();
        await hand.BladeButton("0.04 mm").ClickAsync();
        await hand.Blade("0.15 mm");
        await hand.AllSent();

        var history = BayJob.HistoryOf(await job.Readings(), "1-intake-1");
        Assert.Equal(2, history.Count);
        Assert.Equal(0.19m, history[1].GetProperty("goMm").GetDecimal());
        Assert.Equal(0.20m, history[1].GetProperty("noGoMm").GetDecimal());
        Assert.True(history[1].GetProperty("stacked").GetBoolean());
        Assert.Equal("Blade slipped or was bent", history[1].GetProperty("reason").GetString());
    }

    [Fact]
    public async Task A_cylinder_and_a_plug_are_entered_without_network_and_sent_when_it_is_back()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", await Complains(job));
        await hand.IsKept();

        await hand.Page.Context.SetOfflineAsync(true);
        await hand.Page.GetByText("Test cylinder 2", new() { Exact = true }).ClickAsync();
        await hand.Page.Locator("#cylinder-2-loss").FillAsync("21,5");
        await hand.Page.GetByLabel("Air at the exhaust").And(hand.Page.Locator("#cylinder-2-HeardAtExhaust")).CheckAsync();
        await hand.Page.Locator("form", new() { Has = hand.Page.Locator("#cylinder-2-loss") }).GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await hand.Page.Locator("summary", new() { HasText = "Plug of cylinder 3" }).ClickAsync();
        await hand.Page.Locator("#plug-3-1-looks").SelectOptionAsync("Oily");
        await hand.Page.Locator("#plug-3-1-left").FillAsync("0,85");
        await hand.Page.Locator("form", new() { Has = hand.Page.Locator("#plug-3-1-left") }).GetByRole(AriaRole.Button, new() { Name = "A new one goes in" }).ClickAsync();
        await hand.Page.GetByText("Test cylinder 2 as left", new() { Exact = true }).ClickAsync();
        await hand.Page.Locator("#cylinder-2-left-loss").FillAsync("6,5");
        await hand.Page.Locator("form", new() { Has = hand.Page.Locator("#cylinder-2-left-loss") }).GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Assertions.Expect(hand.Queue).ToContainTextAsync("Plug of cylinder 3");
        await Assertions.Expect(hand.Queue).ToContainTextAsync("Cylinder 2 as left");

        await hand.Page.Context.SetOfflineAsync(false);
        await hand.AllSent();
        var tested = await job.Ask("compression");
        var leak = tested.GetProperty("asFound")[1].GetProperty("leakDown");
        Assert.Equal(6.5m, tested.GetProperty("asLeft")[1].GetProperty("leakDown").GetProperty("lossPercent").GetDecimal());
        Assert.Equal((21.5m, 600m, "exhaust"), (leak.GetProperty("lossPercent").GetDecimal(), leak.GetProperty("atKpa").GetDecimal(), leak.GetProperty("heardAt")[0].GetString()));
        var plug = (await job.Ask("plugs")).GetProperty("plugs")[2];
        Assert.Equal(("oily", true, 0.85m), (plug.GetProperty("condition").GetString(), plug.GetProperty("renewed").GetBoolean(), plug.GetProperty("gapLeftMm").GetDecimal()));
    }

    [Fact]
    public async Task A_level_is_said_by_one_tap_with_and_without_scripts()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Address("Open"));
        await hand.Page.GetByRole(AriaRole.Button, new() { Name = "engine oil low", Exact = true }).ClickAsync();
        await hand.AllSent();
        var plain = await browser.SignedInAs("tilda", new BrowserNewContextOptions { JavaScriptEnabled = false, ViewportSize = Tablet });
        await plain.GotoAsync(job.Address("Open"));
        await plain.GetByRole(AriaRole.Button, new() { Name = "coolant at its mark", Exact = true }).ClickAsync();

        Assert.Equal(["engine oil low", "coolant at its mark"], (await job.Ask("arrival")).GetProperty("standing").EnumerateArray().Select(n => n.GetProperty("said").GetString()));
    }

    [Fact]
    public async Task A_leak_is_noted_by_taps_alone_with_and_without_scripts_and_elsewhere_asks_for_words()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var hand = await Hand("tilda", job.Address("Open"));
        var plain = await browser.SignedInAs("tilda", new BrowserNewContextOptions { JavaScriptEnabled = false, ViewportSize = Tablet });

        await Leaks(hand.Page, "Coolant", "elsewhere", "coolant weeping");
        Assert.True(await hand.Page.Locator("#Leak-Coolant-words").EvaluateAsync<bool>("e => e.required && !e.checkValidity()"));
        await Leaks(hand.Page, "Engine oil", "drain plug", "engine oil dripping");
        await hand.AllSent();
        await plain.GotoAsync(job.Address("Open"));
        await Leaks(plain, "Engine oil", "cam chain tensioner", "engine oil weeping");

        Assert.Equal(
            ["engine oil dripping: drain plug", "engine oil weeping: cam chain tensioner"],
            (await job.Ask("arrival")).GetProperty("standing").EnumerateArray().Select(n => n.GetProperty("said").GetString()));
    }

    private static async Task Leaks(IPage page, string fluid, string place, string state)
    {
        if (!await page.GetByText(fluid, new() { Exact = true }).IsVisibleAsync())
        {
            await page.GetByText("It leaks", new() { Exact = true }).ClickAsync();
        }

        var button = page.GetByRole(AriaRole.Button, new() { Name = state, Exact = true });
        await page.GetByText(fluid, new() { Exact = true }).ClickAsync();
        await page.Locator("form", new() { Has = button }).GetByLabel(place, new() { Exact = true }).CheckAsync();
        await button.ClickAsync();
    }

    [Fact]
    public async Task Without_scripts_the_same_is_entered_by_plain_forms()
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var page = await browser.SignedInAs("tilda", new BrowserNewContextOptions { JavaScriptEnabled = false, ViewportSize = Tablet });
        await page.GotoAsync(job.Measure);
        await page.GetByLabel("steps of 0.01 mm").CheckAsync();
        await page.GetByLabel("Cylinder head, °C").FillAsync("21,5");
        await page.GetByRole(AriaRole.Button, new() { Name = "This is what the probe shows" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Mark right, lobes away" }).ClickAsync();
        await page.Locator(".blades").First.GetByRole(AriaRole.Button, new() { Name = "0.17", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("cylinder 1, intake 1: within 0.14 to 0.22 mm");
        await Assertions.Expect(page.Locator(".valve-now")).ToHaveTextAsync("cylinder 1, intake 2");
        await page.GetByRole(AriaRole.Button, new() { Name = "None enters" }).ClickAsync();
        await Assertions.Expect(page.Locator(".done")).ToContainTextAsync("too tight");

        Assert.Equal(0.17m, Assert.Single(BayJob.HistoryOf(await job.Readings(), "1-intake-1")).GetProperty("goMm").GetDecimal());
    }

    [Theory]
    [InlineData(ColorScheme.Light, 1280, 800)]
    [InlineData(ColorScheme.Dark, 800, 1280)]
    public async Task Every_step_is_accessible_and_no_target_is_smaller_than_a_gloved_thumb(ColorScheme scheme, int width, int height)
    {
        var job = await BayJob.Open(await browser.SignedInAs("otto"));
        var page = await browser.SignedInAs("tilda", new BrowserNewContextOptions
        {
            ColorScheme = scheme, ViewportSize = new ViewportSize { Width = width, Height = height },
        });
        await Complains(job);
        foreach (var step in new[] { "Open", "Measure", "Cylinders", "Adjust", "Tighten", "Close" })
        {
            await page.GotoAsync(job.Address(step));
            await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");
            await Chromium.Keep(page, $"bay-{step}-{scheme}-{width}".ToLowerInvariant());
            await Chromium.IsAccessible(page);
            await NoTargetIsSmall(page);
        }

        var hand = new BayHand(page);
        await page.GotoAsync(job.Measure);
        await hand.SetUp();
        await hand.AtPosition();
        await Chromium.Keep(page, $"bay-blades-{scheme}-{width}".ToLowerInvariant());
        await Chromium.IsAccessible(page);
        await NoTargetIsSmall(page);
    }

    private static async Task NoTargetIsSmall(IPage page)
    {
        var small = await page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll("main button, main a, main summary, main input:not([type=hidden]), main select")]
              .filter(e => e.checkVisibility())
              .map(e => ({ e: e.closest("label") ?? e, text: e.textContent || e.name || e.getAttribute("aria-label") }))
              .map(({ e, text }) => ({ box: e.getBoundingClientRect(), text }))
              .filter(({ box }) => box.height < 48 || box.width < 48)
              .map(({ box, text }) => `${text}: ${box.width} x ${box.height}`)
            """);
        Assert.Empty(small);
    }

    /// <summary>The owner complains of how it runs, which asks for the step of compression and plugs.</summary>
    private static async Task<string> Complains(BayJob job)
    {
        await job.Tell("arrival", new { notes = new[] { new { kind = "complaint", subject = "misfire", state = "noted" } } });
        return job.Address("Cylinders");
    }

    private async Task<BayHand> Hand(string account, string address)
    {
        var page = await browser.SignedInAs(account, new BrowserNewContextOptions { ViewportSize = Tablet });
        await page.GotoAsync(address);
        return new BayHand(page);
    }
}
