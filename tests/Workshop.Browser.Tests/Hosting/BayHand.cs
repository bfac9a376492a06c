using Microsoft.Playwright;

namespace Workshop.Browser.Tests.Hosting;

/// <summary>Taps on the bay screen as a gloved hand does.</summary>
public sealed class BayHand(IPage page)
{
    public IPage Page { get; } = page;

    public ILocator Answer => Page.Locator("[data-answer]");

    public ILocator Net => Page.Locator("[data-net]");

    public ILocator Queue => Page.Locator("[data-queue]");

    public ILocator ValveNow => Page.Locator(".valve-now");

    private ILocator PositionButton => Page.GetByRole(AriaRole.Button, new() { Name = "Mark right, lobes away" });

    /// <summary>The device has kept this screen, so that a reload without network finds it.</summary>
    public Task IsKept() => Until(
        """
        navigator.serviceWorker.controller && await caches.has("workshop-bay-pages")
          && await (await caches.open("workshop-bay-pages")).match(location.href.split("#")[0])
        """);

    /// <summary>The feeler set in steps of 0.01 mm, and 21 °C.</summary>
    public async Task SetUp()
    {
        // What was said before for this job stands aside, chosen.
        var set = Page.GetByLabel("steps of 0.01 mm");
        await set.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        if (!await set.IsVisibleAsync())
        {
            return;
        }

        await Tap(set);
        for (var i = 0; i < 3; i++)
        {
            await Tap(Page.GetByRole(AriaRole.Button, new() { Name = "Half a degree more" }));
        }

        await Tap(Page.GetByRole(AriaRole.Button, new() { Name = "This is what the probe shows" }));
    }

    /// <summary>Confirms the position where that is asked for.</summary>
    public async Task AtPosition()
    {
        var blade = Page.Locator(".blades button").First;
        await PositionButton.Or(blade).First.WaitForAsync();
        await ConfirmPosition(blade);
    }

    /// <summary>The same, with a reason where the valve is read again.</summary>
    public async Task AtPositionOrReason()
    {
        var reason = Page.GetByRole(AriaRole.Button, new() { Name = "Measured again, another hand" });
        var blade = Page.Locator(".blades button").First;
        await PositionButton.Or(reason).Or(blade).First.WaitForAsync();
        await ConfirmPosition(reason.Or(blade).First);
        if (await reason.IsVisibleAsync())
        {
            await Tap(reason);
            await blade.WaitForAsync();
        }
    }

    /// <summary>Taps a blade and waits until the device has said something of it and gone on to another valve.</summary>
    public async Task Blade(string mark)
    {
        var name = await ValveNow.InnerTextAsync();
        await Page.EvaluateAsync("() => document.querySelector('[data-answer] strong')?.setAttribute('data-earlier', '')");
        await Tap(BladeButton(mark));
        await Assertions.Expect(Answer.Locator("strong:not([data-earlier])")).ToContainTextAsync(name);
        await Assertions.Expect(ValveNow).Not.ToHaveTextAsync(name);
    }

    public ILocator BladeButton(string mark) => Page.Locator(".blades").GetByRole(AriaRole.Button, new() { Name = mark, Exact = true });

    public Task TapValve(string valve) => Page.Locator($"a[data-valve='{valve}']").ClickAsync();

    /// <summary>By the device's own store, since the words on top follow it a moment later.</summary>
    public async Task AllSent()
    {
        await Until("(await (await import('/assets/bay/store.js')).store.all()).every(e => e.state === 'sent')");
        await Assertions.Expect(Net).ToHaveTextAsync("Everything is sent.");
    }

    /// <summary>
    /// Asked within the page, whose promise is waited for; a function that is polled from outside counts as true as soon as it
    /// answers with a promise. A page that is made anew meanwhile, as after the last answer to a form, is asked again.
    /// </summary>
    private async Task Until(string expression)
    {
        bool? came = null;
        while (came is null)
        {
            try
            {
                came = await Came(expression);
            }
            catch (PlaywrightException gone) when (gone.Message.Contains("because of a navigation", StringComparison.Ordinal))
            {
                await Page.WaitForLoadStateAsync();
            }
        }

        if (came == false)
        {
            throw new TimeoutException($"Not within a minute: {expression}");
        }
    }

    private Task<bool> Came(string expression) => Page.EvaluateAsync<bool>(
        $$"""
        async () => {
          const end = Date.now() + 60_000;
          while (!({{expression}})) {
            if (Date.now() > end) {
              return false;
            }
            await new Promise(again => setTimeout(again, 20));
          }
          return true;
        }
        """);

    /// <summary>As a person does it: where the tap fell beside the button, since the screen moved at that moment, it is tapped again.</summary>
    private async Task ConfirmPosition(ILocator then)
    {
        for (var tries = 3; await PositionButton.IsVisibleAsync(); tries--)
        {
            await Tap(PositionButton);
            try
            {
                await then.WaitForAsync(new() { Timeout = 10_000 });
                return;
            }
            catch (TimeoutException) when (tries > 1)
            {
            }
        }
    }

    private static Task Tap(ILocator target) => target.ClickAsync();
}
