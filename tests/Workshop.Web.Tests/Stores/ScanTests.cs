using System.Net;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Stores;

/// <summary>Each scan is one form that is sent, as a scanner does that ends with the enter key; there is no script.</summary>
public sealed class ScanTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    [Fact]
    public async Task Place_package_and_quantity_one_after_the_other_take_goods_in()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        await StoresDesk.Done(await desk.Put($"/api/v1/stock/parts/{part}/packages", new { packages = new[] { new { scanCode = "SCAN-50", quantity = 50 } } }, await desk.Version($"/api/v1/stock/parts/{part}")));
        var scanner = new Scanner(await TestPages.SignedIn(app, Roles.Technician));

        await scanner.Reads(place, "SCAN-50", "", "SCAN-50", "SCAN-50", "", part, "7");

        // One package, then two, then seven by the part's own code; the place stays.
        Assert.Equal((157m, 0m), await desk.At(part, place));
        Assert.Contains("Took in 7 of", scanner.Page.MainText, StringComparison.Ordinal);
        Assert.Equal(3, scanner.Page.Html.QuerySelectorAll($"[aria-labelledby=latest-caption] a[href$='/{part}']").Length);
    }

    [Fact]
    public async Task A_part_that_does_not_keep_for_ever_is_asked_for_its_lot_and_last_day()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part("sealant", shelfLifeMonths: 12), await desk.Place());
        var scanner = new Scanner(await TestPages.SignedIn(app, Roles.Technician));

        await scanner.Reads(place, part, "2", "LOT-9", "2026-12-24", part, "1", "LOT-10", "");

        var lots = (await desk.PartOf(part)).GetProperty("at").EnumerateArray()
            .Select(l => (l.GetProperty("lot").GetString()!, l.GetProperty("expiresOn").GetString()!, l.GetProperty("onHand").GetDecimal()));
        Assert.Equal([("LOT-9", "2026-12-24", 2m), ("LOT-10", "2027-03-02", 1m)], lots);
    }

    [Fact]
    public async Task A_scan_that_means_nothing_here_stays_in_the_field_and_loses_nothing()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        var scanner = new Scanner(await TestPages.SignedIn(app, Roles.Technician));

        await scanner.Reads(part);
        Assert.Contains("scan a place first", Assert.Single(scanner.Page.Faults), StringComparison.Ordinal);
        await scanner.Reads(place, "no-such-thing");
        Assert.Contains("no part, package or place has it", Assert.Single(scanner.Page.Faults), StringComparison.Ordinal);
        Assert.Equal("no-such-thing", scanner.Page.ValueOf("Input.Scan"));
        await scanner.Reads(TestEngines.ShimPart);
        Assert.Contains("by its measured thickness", Assert.Single(scanner.Page.Faults), StringComparison.Ordinal);
        await scanner.Reads(part, place);
        Assert.Contains($"how many of {part} came is open", Assert.Single(scanner.Page.Faults), StringComparison.Ordinal);
        await scanner.Reads("3");

        Assert.Equal((3m, 0m), await desk.At(part, place));
    }

    [Fact]
    public async Task A_quantity_that_the_part_cannot_have_is_refused_by_the_rule_of_goods_in()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part(), await desk.Place());
        var scanner = new Scanner(await TestPages.SignedIn(app, Roles.Technician));

        await scanner.Reads(place, part, "1,5");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, scanner.Page.Status);
        Assert.Contains("comes in whole pieces", Assert.Single(scanner.Page.Faults), StringComparison.Ordinal);
        await scanner.Reads("2");
        Assert.Equal((2m, 0m), await desk.At(part, place));
    }

    private sealed class Scanner(TestPages pages)
    {
        private const string Address = "/stores/scan";

        public TestPage Page { get; private set; } = null!;

        public async Task Reads(params string[] scans)
        {
            Page ??= await pages.Open(Address);
            foreach (var scan in scans)
            {
                Page = await pages.Send(Page, Address, new() { ["Input.Scan"] = scan }, "#scan");
                if (Page.Location is { } next)
                {
                    Page = await pages.Open(next);
                }
            }
        }
    }
}
