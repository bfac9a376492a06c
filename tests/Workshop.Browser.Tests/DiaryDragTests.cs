using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>Dragging in the Diary is a convenience: it fills a form in, and leaves the sending to a person.</summary>
[Collection(RunningDemo.Name)]
public sealed partial class DiaryDragTests(Chromium browser) : IClassFixture<Chromium>
{
    private const int WeeksAhead = 6;

    [Fact]
    public async Task A_bar_that_is_dragged_fills_in_the_form_that_moves_the_visit_and_moves_nothing()
    {
        var page = await browser.SignedInAs("greta");
        var bar = await FirstMovable(page);
        var diary = page.Url;
        var before = await page.Locator(".diary-table").InnerTextAsync();
        var box = (await bar.BoundingBoxAsync())!;
        var card = await bar.GetAttributeAsync("data-card");

        await page.Mouse.MoveAsync(box.X + 3, box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + 40, box.Y + (box.Height / 2), new() { Steps = 5 });
        await Assertions.Expect(page.Locator("#drag-said")).ToContainTextAsync($"Job card {card}");
        await page.Mouse.UpAsync();

        await page.WaitForURLAsync(Dropped());
        var asked = Dropped().Match(page.Url);
        Assert.Equal(card, asked.Groups["card"].Value);
        await Assertions.Expect(page.Locator("#Move_Day")).ToHaveValueAsync(asked.Groups["day"].Value);
        await Assertions.Expect(page.Locator("#Move_Time")).ToHaveValueAsync(Uri.UnescapeDataString(asked.Groups["time"].Value));
        await Chromium.IsAccessible(page);
        await page.GotoAsync(diary);
        Assert.Equal(before, await page.Locator(".diary-table").InnerTextAsync());
    }

    [Fact]
    public async Task Escape_lets_a_bar_go_where_it_was()
    {
        var page = await browser.SignedInAs("greta");
        var bar = await FirstMovable(page);
        var box = (await bar.BoundingBoxAsync())!;
        var diary = page.Url;

        await page.Mouse.MoveAsync(box.X + 3, box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + 40, box.Y + (box.Height / 2), new() { Steps = 3 });
        await Assertions.Expect(page.Locator("rect.ghost")).ToHaveCountAsync(1);
        await page.Keyboard.PressAsync("Escape");
        await page.Mouse.UpAsync();

        await Assertions.Expect(page.Locator("rect.ghost")).ToHaveCountAsync(0);
        Assert.Equal(diary, page.Url);
    }

    private static async Task<ILocator> FirstMovable(IPage page)
    {
        await page.GotoAsync("/diary/week?by=technicians");
        for (var week = 0; week < WeeksAhead; week++)
        {
            var bars = page.Locator("rect[data-card]");
            if (await bars.CountAsync() > 0)
            {
                return bars.First;
            }

            await page.GetByRole(AriaRole.Link, new() { Name = "Week after" }).ClickAsync();
        }

        throw new InvalidOperationException($"The demo has no visit to move within {WeeksAhead} weeks.");
    }

    [GeneratedRegex(@"/job-cards/(?<card>\d+)/plan\?day=(?<day>[\d-]+)&time=(?<time>[\d%A-F]+)&technician=[0-9a-f-]{36}#move$")]
    private static partial Regex Dropped();
}
