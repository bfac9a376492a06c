using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests.Hosting;

/// <summary>Real Chromium, headless.</summary>
public sealed class Chromium(DemoService service) : IAsyncLifetime
{
    /// <summary>Debian's place; set WORKSHOP_CHROMIUM for another.</summary>
    private static readonly string Program = Environment.GetEnvironmentVariable("WORKSHOP_CHROMIUM") ?? "/usr/bin/chromium";

    private static readonly string Screenshots = Path.Combine(AcceptedFile.Root, "artifacts", "screenshots");

    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        Directory.CreateDirectory(Screenshots);
        playwright = await Playwright.CreateAsync();
        browser = await Launch(playwright);
    }

    /// <exception cref="InvalidOperationException">There is no Chromium on this machine.</exception>
    internal static Task<IBrowser> Launch(IPlaywright playwright) => !File.Exists(Program)
        ? throw new InvalidOperationException($"{Program} is missing: run apt-get install chromium.")
        : playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Program,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
    }

    /// <summary>A window of its own, signed in through the sign-in page as one of the demo's accounts.</summary>
    public Task<IPage> SignedInAs(string account, BrowserNewContextOptions? options = null) =>
        SignedIn(account, service.Passwords[account], options);

    /// <summary>The same with a password; <c>BaseURL</c> of the options names another service than the demo.</summary>
    public async Task<IPage> SignedIn(string account, string password, BrowserNewContextOptions? options = null)
    {
        var page = await NewPage(options);
        await page.GotoAsync("/sign-in");
        await SignIn(page, account, password);
        return page;
    }

    /// <summary>Signs one of the demo's accounts in on a page that shows the sign-in.</summary>
    public Task SignIn(IPage page, string account) => SignIn(page, account, service.Passwords[account]);

    private static async Task SignIn(IPage page, string account, string password)
    {
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(account);
        await page.GetByLabel("Password").FillAsync(password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.WaitForURLAsync(url => !url.Contains("/sign-in", StringComparison.Ordinal));
    }

    public async Task<IPage> NewPage(BrowserNewContextOptions? options = null)
    {
        options ??= new BrowserNewContextOptions();
        options.BaseURL ??= service.Address.ToString();
        options.ViewportSize ??= new ViewportSize { Width = 1280, Height = 900 };
        var context = await browser!.NewContextAsync(options);
        context.SetDefaultTimeout(20_000);
        var page = await context.NewPageAsync();
        page.PageError += (_, fault) => throw new InvalidOperationException($"Script fault on {page.Url}: {fault}");
        return page;
    }

    /// <summary>A picture of the page under artifacts/screenshots, for people to look at. Not where CI is set: to draw a page takes longer than to serve and read it.</summary>
    public static Task Keep(IPage page, string name) => Environment.GetEnvironmentVariable("CI") is not null
        ? Task.CompletedTask
        : page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Screenshots, $"{name}.png"), FullPage = true });

    /// <summary>No serious or critical finding of axe, by WCAG 2.2 A and AA.</summary>
    public static async Task IsAccessible(IPage page)
    {
        var findings = await Findings(page);
        Assert.True(findings.Length == 0, findings);
    }

    /// <summary>The serious and critical findings, a line each; empty where there are none.</summary>
    public static async Task<string> Findings(IPage page)
    {
        var findings = (await page.RunAxe()).Violations.Where(v => v.Impact is "serious" or "critical");
        return string.Concat(findings.Select(v =>
            $"{page.Url}: {v.Impact} {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}\n"));
    }
}
