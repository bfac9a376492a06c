using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Workshop.Browser.Tests.Hosting;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Browser.Tests;

/// <summary>
/// Every page of the list of endpoints, with the demo's data: no serious finding of axe in light, in dark and on a narrow
/// screen, nothing wider than the screen, under 100 kB, no fault of a script.
/// </summary>
[Collection(RunningDemo.Name)]
public sealed partial class EveryPageTests(Chromium browser) : IClassFixture<Chromium>
{
    private const int LargestPage = 100_000;
    private const string EditSection = "/engine-models/{id:guid}/edit/{section}/{code?}";

    /// <summary>Seen by other tests, or nothing to see: the sign-out page only posts.</summary>
    private static readonly string[] SeenElsewhere = ["/sign-in", "/sign-out", "/error"];

    /// <summary>Light and wide, dark and narrow at the same time: each waits half of its time for the service.</summary>
    [Fact]
    public async Task Every_page_is_light_and_accessible()
    {
        var faults = await Task.WhenAll(FaultsIn(ColorScheme.Light, 1280), FaultsIn(ColorScheme.Dark, 800));

        Assert.True(faults.All(f => f.Length == 0), string.Join('\n', faults));
    }

    private async Task<string> FaultsIn(ColorScheme scheme, int width)
    {
        var page = await browser.SignedInAs("otto", new BrowserNewContextOptions
        {
            ColorScheme = scheme, ViewportSize = new ViewportSize { Width = width, Height = 1000 },
        });
        var addresses = await Addresses(page);
        var faults = new StringBuilder();
        foreach (var (route, address) in addresses)
        {
            var answer = await page.GotoAsync(address);
            var body = await answer!.BodyAsync();
            await Chromium.Keep(page, $"page-{scheme}-{width}{Unsafe().Replace(route == EditSection ? Guids().Replace(address, "") : route, "-")}".ToLowerInvariant());
            faults.Append(answer.Ok ? "" : $"{address} answered {answer.Status}\n");
            faults.Append(body.Length < LargestPage ? "" : $"{address} has {body.Length} bytes\n");
            faults.Append(await IsWiderThanTheScreen(page) ? $"{address} is wider than {width} pixels in {scheme}\n" : "");
            faults.Append(await Chromium.Findings(page));
        }

        var routes = PageRoutes().Except(SeenElsewhere).ToList();
        Assert.Equal(routes.Order(StringComparer.Ordinal), addresses.Select(a => a.Route).Distinct().Order(StringComparer.Ordinal));
        return faults.ToString();
    }

    [Fact]
    public async Task The_sign_in_and_the_page_of_a_wrong_address_are_accessible()
    {
        var page = await browser.NewPage();
        await page.GotoAsync("/sign-in");
        await Chromium.Keep(page, "sign-in");
        await Chromium.IsAccessible(page);

        var signedIn = await browser.SignedInAs("greta");
        var answer = await signedIn.GotoAsync("/nothing-here");
        Assert.Equal(404, answer!.Status);
        await Chromium.Keep(signedIn, "not-here");
        await Chromium.IsAccessible(signedIn);
        await Assertions.Expect(signedIn.GetByText("name it to whoever looks after the service")).ToBeVisibleAsync();
    }

    /// <summary>What the browser prints of the record's page, and the service's own file of it.</summary>
    [Fact]
    public async Task The_record_prints_from_its_page_with_the_headings_of_its_file_and_on_as_many_sheets_but_one()
    {
        var page = await browser.SignedInAs("otto");
        var record = $"/job-cards/{await LastSigned(page)}/record";
        await page.GotoAsync(record);
        var headings = await page.Locator("main h1, main h2").EvaluateAllAsync<string[]>("all => all.filter(h => !h.closest('.no-print')).map(h => h.textContent.trim())");
        Assert.True(headings.Length >= 6, string.Join("; ", headings));

        var printed = await PrintedSheets.Of(await page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true }));
        var file = await PrintedSheets.Of(await (await page.APIRequest.GetAsync($"{record}?handler=Pdf")).BodyAsync());

        Assert.InRange(printed.Count, file.Count - 1, file.Count + 1);
        Assert.All(headings, h => Assert.Contains(printed, sheet => sheet.Contains(h, StringComparison.Ordinal)));
        Assert.All(headings, h => Assert.Contains(file, sheet => sheet.Contains(h, StringComparison.Ordinal)));
        Assert.DoesNotContain(printed, sheet => sheet.Contains("Make a link", StringComparison.Ordinal));
    }

    /// <summary>An address of the demo for each route of a page: the richest motorcycle, a finished card, an engine model.</summary>
    private static async Task<List<(string Route, string Address)>> Addresses(IPage page)
    {
        var motorcycle = await FirstLink(page, "/drift", Motorcycle());
        var card = await FirstLink(page, "/job-cards", Card());
        var model = await FirstLink(page, "/engine-models", EngineModel());
        var shim = await FirstLink(page, "/stores/shims", Shim());
        var box = await FirstLink(page, "/stores/shims", ShimBox());
        var person = await FirstLink(page, "/people", Person());
        var technician = await FirstLink(page, "/people", Resource());
        var message = await FirstLink(page, "/messages", Message());
        var supplier = await FirstLink(page, "/stores/suppliers", Supplier());
        var order = await FirstLink(page, "/stores/orders", PurchaseOrder());
        var part = await FirstLink(page, "/stores/projected", ProjectedPart());
        var instrument = await FirstLink(page, "/tooling", Instrument());
        var adapter = await FirstLink(page, "/tooling/adapters", Adapter());
        var finding = await FirstLink(page, "/findings", Finding());
        var estimate = await FirstLink(page, $"/findings/{finding}", Estimate());
        var bay = await FirstLink(page, "/bays", Bay());
        var storesPart = await FirstLink(page, "/stores/expiring", StoresPart());
        var place = await FirstLink(page, "/stores/places", StoresPlace());
        var count = await FirstLink(page, "/stores/counts", StoresCount());
        var study = await FirstLink(page, "/tooling/gauge-studies", GaugeStudy());
        var set = await FirstLink(page, "/tooling", FeelerSet());
        var signed = await LastSigned(page);
        var record = await RecordLink(page, signed);
        var addresses = PageRoutes().Except(SeenElsewhere).Select(route => (route, route switch
        {
            "/job-cards/{number:int}/record" => $"/job-cards/{signed}/record",
            "/job-cards/{number:int}/record/send" => $"/job-cards/{signed}/record/send",
            "/records/{secret}" => record,
            EditSection => $"/engine-models/{model}/edit/limits",
            "/messages/new" => $"/messages/new?motorcycle={motorcycle}",
            "/messages/{id:guid}" => $"/messages/{message}",
            "/book" => $"/book?motorcycle={motorcycle}",
            "/stores/counts/{id:guid}" => $"/stores/counts/{count}",
            "/stores/places/{code}" => $"/stores/places/{place}",
            "/stores/labels/sheet" => "/stores/labels/sheet?of=places&stock=a4-3x8",
            "/job-cards/{number:int}/papers/{paper}" => $"/job-cards/{card}/papers/worksheet",
            "/stores/sizes" => "/stores/sizes?size=25x2.5&groove=true",
            "/stores/sizes/equivalents" => "/stores/sizes/equivalents?part=AS568-214",
            "/stores/sizes/gland" => "/stores/sizes/gland?kind=radialOnPiston&ring=AS568-214&grooveMm=25.5&counterpartMm=31.2&widthMm=4.8",
            "/engine-models/threads" => "/engine-models/threads?thread=M6x1&propertyClass=8.8&form=solidBolt&into=steel&torqueNm=40",
            "/stores/shims/count" => $"/stores/shims/count?box={box}",
            "/job-cards/{number:int}/torque-sheet/{code}" => $"/job-cards/{card}/torque-sheet/oil-drain-plug",
            "/bays/{bay:guid}" => $"/bays/{bay}",
            _ => route.Replace("{number:int}", card, StringComparison.Ordinal)
                .Replace("/parts/{code}", $"/parts/{storesPart}", StringComparison.Ordinal)
                .Replace("{motorcycleId:guid}", motorcycle, StringComparison.Ordinal)
                .Replace("{shimId:guid}", shim, StringComparison.Ordinal)
                .Replace("{studyId:guid}", study, StringComparison.Ordinal)
                .Replace("{setId:guid}", set, StringComparison.Ordinal)
                .Replace("{personId:guid}", person, StringComparison.Ordinal)
                .Replace("{resourceId:guid}", technician, StringComparison.Ordinal)
                .Replace("{supplierId:guid}", supplier, StringComparison.Ordinal)
                .Replace("{orderNumber:int}", order, StringComparison.Ordinal)
                .Replace("{partCode}", part, StringComparison.Ordinal)
                .Replace("{instrumentId:guid}", instrument, StringComparison.Ordinal)
                .Replace("{adapterId:guid}", adapter, StringComparison.Ordinal)
                .Replace("{estimateId:guid}", estimate, StringComparison.Ordinal)
                .Replace("{findingId:guid}", finding, StringComparison.Ordinal)
                .Replace("{id:guid}", route.StartsWith("/engine-models", StringComparison.Ordinal) ? model : motorcycle, StringComparison.Ordinal),
        })).ToList();

        addresses.Add(("/job-cards/{number:int}/papers/{paper}", $"/job-cards/{card}/papers/torque-sheet"));
        addresses.Add(("/job-cards/{number:int}/papers/{paper}", $"/job-cards/{card}/papers/pick-list"));

        // Two more forms of the same route: the longest, and one with rows of its own.
        foreach (var section in new[] { "service-items", "fasteners" })
        {
            addresses.Add((EditSection, await FirstLink(page, $"/engine-models/{model}/edit", new Regex($"^(/engine-models/[0-9a-f-]+/edit/{section}/.+)$"))));
        }

        return addresses;
    }

    /// <summary>The card that was signed off last: the demo's richest record.</summary>
    private static async Task<string> LastSigned(IPage page)
    {
        await page.GotoAsync("/job-cards");
        var link = await page.Locator("xpath=//h2[.='Recently signed off']/following::a[starts-with(@href, '/job-cards/')][1]").GetAttributeAsync("href");
        return Card().Match(link!).Groups[1].Value;
    }

    /// <summary>The address of a link to its record, made for this look.</summary>
    private static async Task<string> RecordLink(IPage page, string card)
    {
        await page.GotoAsync($"/job-cards/{card}/record");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        return new Uri(await page.Locator("#link").InputValueAsync()).AbsolutePath;
    }

    private static async Task<string> FirstLink(IPage page, string list, Regex form)
    {
        await page.GotoAsync(list);
        var links = await page.Locator("main a").EvaluateAllAsync<string[]>("links => links.map(l => l.getAttribute('href'))");
        return links.Select(l => form.Match(l ?? "")).First(m => m.Success).Groups[1].Value;
    }

    private static IEnumerable<string> PageRoutes() =>
        File.ReadLines(Path.Combine(AcceptedFile.Root, "tests", "Workshop.Web.Tests", "Http", "endpoints.txt"))
            .Select(line => line.Split(' ')).Where(words => words[0] == "PAGE").Select(words => words[1]);

    private static Task<bool> IsWiderThanTheScreen(IPage page) =>
        page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth > window.innerWidth");

    [GeneratedRegex("^/(?:drift|motorcycles)/([0-9a-f-]{36})")]
    private static partial Regex Motorcycle();

    [GeneratedRegex("^/tooling/instruments/([0-9a-f-]{36})$")]
    private static partial Regex Instrument();

    [GeneratedRegex("^/tooling/adapters/([0-9a-f-]{36})$")]
    private static partial Regex Adapter();

    [GeneratedRegex("^/job-cards/(\\d+)")]
    private static partial Regex Card();

    [GeneratedRegex("^/bays/([0-9a-f-]{36})$")]
    private static partial Regex Bay();

    [GeneratedRegex("^/engine-models/([0-9a-f-]{36})$")]
    private static partial Regex EngineModel();

    [GeneratedRegex("^/stores/shims/([0-9a-f-]{36})")]
    private static partial Regex Shim();

    [GeneratedRegex("^/stores/shims/count\\?box=(.+)")]
    private static partial Regex ShimBox();

    [GeneratedRegex("^/people/([0-9a-f-]{36})")]
    private static partial Regex Person();

    [GeneratedRegex("^/people/resources/([0-9a-f-]{36})")]
    private static partial Regex Resource();

    [GeneratedRegex("^/stores/parts/([^/]+)$")]
    private static partial Regex StoresPart();

    [GeneratedRegex("^/stores/places/([^/]+)$")]
    private static partial Regex StoresPlace();

    [GeneratedRegex("^/stores/counts/([0-9a-f-]{36})$")]
    private static partial Regex StoresCount();
    [GeneratedRegex("^/tooling/gauge-studies/([0-9a-f-]{36})$")]
    private static partial Regex GaugeStudy();

    [GeneratedRegex("^/tooling/([0-9a-f-]{36})/blades$")]
    private static partial Regex FeelerSet();

    [GeneratedRegex("^/messages/([0-9a-f-]{36})$")]
    private static partial Regex Message();

    [GeneratedRegex("^/stores/suppliers/([0-9a-f-]{36})$")]
    private static partial Regex Supplier();

    [GeneratedRegex("^/stores/orders/(\\d+)$")]
    private static partial Regex PurchaseOrder();

    [GeneratedRegex("^/stores/projected/([^?]+)")]
    private static partial Regex ProjectedPart();

    [GeneratedRegex("^/estimates/([0-9a-f-]{36})$")]
    private static partial Regex Estimate();

    [GeneratedRegex("^/findings/([0-9a-f-]{36})$")]
    private static partial Regex Finding();

    [GeneratedRegex("[^a-zA-Z0-9]+")]
    private static partial Regex Unsafe();

    [GeneratedRegex("[0-9a-f-]{36}")]
    private static partial Regex Guids();
}
