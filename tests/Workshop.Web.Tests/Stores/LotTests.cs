using System.Net;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

public sealed class LotTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    [Fact]
    public async Task A_part_that_does_not_keep_for_ever_comes_in_by_lot_and_its_last_day_is_reckoned()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part("sealant", shelfLifeMonths: 24), await desk.Place());

        var without = await desk.Receive(part, place, 1);
        var first = await StoresDesk.Done(await desk.Receive(part, place, 1, "L1"));
        var again = await StoresDesk.Done(await desk.Receive(part, place, 2, "L1"));
        var other = await desk.Receive(part, place, 1, "L1", "2030-01-01");
        var expired = await desk.Receive(part, place, 1, "L0", "2026-03-01");

        Assert.Equal($"lotCode is empty: Part {part} keeps for 24 months; give the lot on its package.", await without.Sentence());
        // The clock of the tests begins on 2026-03-02.
        Assert.Equal("2028-03-02", first.GetProperty("expiresOn").GetString());
        Assert.Equal(3m, again.GetProperty("onHand").GetDecimal());
        Assert.Contains("a lot has one last day", await other.Sentence(), StringComparison.Ordinal);
        Assert.Contains("nothing expired comes in", await expired.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lots_lie_side_by_side_and_must_be_named_to_be_moved()
    {
        var desk = await StoresDesk.Of(app);
        var (part, here, there) = (await desk.Part("sealant", shelfLifeMonths: 24), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, here, 3, "A", "2026-12-31"));
        await StoresDesk.Done(await desk.Receive(part, here, 4, "B", "2027-12-31"));

        var which = await desk.Move(part, here, there, 1);
        await StoresDesk.Done(await desk.Move(part, here, there, 2, "A"));

        Assert.Contains("lies by lot; A or B is allowed", await which.Sentence(), StringComparison.Ordinal);
        var lying = (await desk.PartOf(part)).GetProperty("at").EnumerateArray()
            .Select(l => (l.GetProperty("placeCode").GetString()!, l.GetProperty("lot").GetString()!, l.GetProperty("onHand").GetDecimal())).Order();
        Assert.Equal(new[] { (here, "A", 1m), (here, "B", 4m), (there, "A", 2m) }.Order(), lying);
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task What_expires_is_listed_and_what_is_expired_is_scrapped_from_the_list()
    {
        var desk = await StoresDesk.Of(app);
        var (part, place) = (await desk.Part("fluid", "millilitre", 12), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 500, "OLD", "2026-03-20"));
        await StoresDesk.Done(await desk.Receive(part, place, 700, "NEW", "2026-12-20"));
        var soon = (await desk.Get("/api/v1/stock/expiring?withinDays=30")).GetProperty("rows").EnumerateArray().Where(r => r.GetProperty("partCode").GetString() == part);
        Assert.Equal(["OLD"], soon.Select(r => r.GetProperty("lot").GetString()));
        Assert.Equal([part], (await desk.Get($"/api/v1/stock?show=expiring&search={part}")).GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("code").GetString()));

        var before = app.Clock.Now;
        app.Clock.Now += Duration.FromDays(20);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var gone = await pages.Send("/stores/expiring", [], $"form:has([value='{part}'])");
        var list = await pages.Open(gone.Location!);
        app.Clock.Now = before;

        Assert.Equal(HttpStatusCode.Redirect, gone.Status);
        Assert.Contains("500 ml of", list.MainText, StringComparison.Ordinal);
        Assert.Equal((700m, 0m), await desk.At(part, place));
        Assert.Equal("expired", (await desk.Get($"/api/v1/stock/parts/{part}/ledger?kind=scrapped")).GetProperty("rows")[0].GetProperty("scrapReason").GetString());
    }
}
