using Microsoft.Playwright;

namespace Workshop.Browser.Tests.Hosting;

/// <summary>
/// Uses a page as somebody without a mouse does: Tab until the thing wanted has the focus, then type or press. What Tab does
/// not reach fails the test.
/// </summary>
public sealed class Hands(IPage page)
{
    private const int MostTabs = 600;

    public IPage Page { get; } = page;

    /// <summary>Types over what a field holds.</summary>
    public async Task Type(string label, string text) => await Type(Page.GetByLabel(label, new() { Exact = true }), text);

    public async Task Type(ILocator field, string text)
    {
        await TabTo(field);
        await Page.Keyboard.PressAsync("Control+A");
        await Page.Keyboard.TypeAsync(text);
    }

    /// <summary>A date or time field takes digits in the order of the browser's language (here English, United States).</summary>
    public async Task TypeDigits(string label, string digits)
    {
        await TabTo(Page.GetByLabel(label, new() { Exact = true }));
        await Page.Keyboard.TypeAsync(digits);
    }

    /// <summary>Goes down a list until the option that holds <paramref name="words"/> stands in it.</summary>
    public Task Choose(string label, string words) => Choose(Page.GetByLabel(label, new() { Exact = true }), words);

    public async Task Choose(ILocator list, string words)
    {
        await TabTo(list);
        await Page.Keyboard.PressAsync("Home");
        for (var i = 0; i < 100; i++)
        {
            var chosen = await list.EvaluateAsync<string>("e => e.selectedOptions[0]?.textContent ?? ''");
            if (chosen.Contains(words, StringComparison.Ordinal))
            {
                return;
            }

            await Page.Keyboard.PressAsync("ArrowDown");
        }

        throw new InvalidOperationException($"{list} on {Page.Url} offers nothing with \"{words}\".");
    }

    public Task Press(string button) => Press(Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }));

    /// <summary>Presses a button or a link and waits for the page that follows.</summary>
    public async Task Press(ILocator button)
    {
        await TabTo(button);
        await Page.EvaluateAsync("() => { window.pageBefore = true; }");
        await Page.Keyboard.PressAsync("Enter");
        await Page.WaitForFunctionAsync("() => !window.pageBefore && document.readyState === 'complete'");
    }

    public async Task Follow(string link) =>
        await Press(Page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).First);

    public async Task Tick(ILocator box)
    {
        await TabTo(box);
        await Page.Keyboard.PressAsync("Space");
    }

    private async Task TabTo(ILocator wanted)
    {
        await wanted.WaitForAsync();
        for (var i = 0; i < MostTabs; i++)
        {
            if (await wanted.EvaluateAsync<bool>("e => e === document.activeElement"))
            {
                return;
            }

            await Page.Keyboard.PressAsync("Tab");
        }

        throw new InvalidOperationException($"Tab does not reach {wanted} on {Page.Url}.");
    }
}
