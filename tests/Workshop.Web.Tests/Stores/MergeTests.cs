using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Orders;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

public sealed class MergeTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task All_that_lies_under_a_part_and_whoever_holds_it_goes_over_and_its_code_means_the_other_one()
    {
        var desk = await StoresDesk.Of(app);
        var (part, other, here, there) = (await desk.Part(), await desk.Part(), await desk.Place(), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, here, 5));
        await StoresDesk.Done(await desk.Receive(part, there, 2));
        await StoresDesk.Done(await desk.Receive(other, here, 1));
        var visit = await desk.Reserved(part, 3);

        var merged = await StoresDesk.Done(await desk.Merge(part, other));

        Assert.Equal((7m, visit.Number), (merged.GetProperty("onHand").GetDecimal(), merged.GetProperty("cards")[0].GetInt32()));
        Assert.Equal((6m, 2m), ((await desk.At(other, here)).OnHand, (await desk.At(other, there)).OnHand));
        Assert.Equal(3, await desk.HeldBy(visit, other));
        var byOldCode = await desk.PartOf(part);
        Assert.Equal((other, part), (byOldCode.GetProperty("code").GetString(), byOldCode.GetProperty("mergedCodes")[0].GetString()));
        await StoresDesk.Done(await desk.Receive(part, here, 1));
        Assert.Equal(7m, (await desk.At(other, here)).OnHand);
        Assert.Equal([other], (await desk.Get($"/api/v1/stock?search={part}")).GetProperty("rows").EnumerateArray()
            .Select(r => r.GetProperty("code").GetString()).Where(c => c == other || c == part));
        var old = await desk.Get($"/api/v1/stock/parts/{part}/ledger");
        Assert.Equal((other, 0m), (old.GetProperty("mergedInto").GetString(), old.GetProperty("rows").EnumerateArray().Sum(r => r.GetProperty("onHandChange").GetDecimal())));
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task Merging_flattens_chains_so_that_every_old_code_means_the_last_part()
    {
        var desk = await StoresDesk.Of(app);
        var (a, b, c) = (await desk.Part(), await desk.Part(), await desk.Part());

        await StoresDesk.Done(await desk.Merge(a, b));
        await StoresDesk.Done(await desk.Merge(b, c));

        Assert.Equal((c, c), ((await desk.PartOf(a)).GetProperty("code").GetString(), (await desk.PartOf(b)).GetProperty("code").GetString()));
        Assert.False(await app.Look(db => db.Parts.AnyAsync(p => db.Parts.Any(q => q.Id == p.MergedIntoId && q.MergedIntoId != null), Ct)));
        var again = await desk.Put($"/api/v1/stock/parts/{a}/merging", new { into = c }, "\"1\"");
        Assert.Contains($"{a} was merged into {c}", await again.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Codes_on_packages_alternatives_lots_suppliers_and_open_orders_follow_and_closed_ones_stay()
    {
        var desk = await StoresDesk.Of(app);
        var (part, other, third, place) = (await desk.Part("sealant", shelfLifeMonths: 12), await desk.Part("sealant", shelfLifeMonths: 12), await desk.Part("sealant"), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 2, "L1", "2026-12-31"));
        await StoresDesk.Done(await desk.Receive(other, place, 3, "L1", "2026-12-31"));
        await StoresDesk.Done(await desk.Receive(part, place, 4, "L2", "2027-12-31"));
        await StoresDesk.Done(await desk.Put($"/api/v1/stock/parts/{part}/packages", new { packages = new[] { new { scanCode = "MERGE-1", quantity = 6 } } }, await desk.Version($"/api/v1/stock/parts/{part}")));
        await StoresDesk.Done(await desk.Put($"/api/v1/stock/parts/{part}/alternatives",
            new { alternatives = new[] { new { partCode = other }, new { partCode = third } } }, await desk.Version($"/api/v1/stock/parts/{part}")));
        var (open, both, closed) = await Orders(part, other);

        await StoresDesk.Done(await desk.Merge(part, other));

        Assert.Equal(other, (await desk.Get("/api/v1/stock/codes/MERGE-1")).GetProperty("partCode").GetString());
        var survivor = await desk.PartOf(other);
        Assert.Equal([third], survivor.GetProperty("alternatives").EnumerateArray().Select(a => a.GetProperty("code").GetString()));
        Assert.Equal([("L1", 5m), ("L2", 4m)], survivor.GetProperty("at").EnumerateArray().Select(l => (l.GetProperty("lot").GetString()!, l.GetProperty("onHand").GetDecimal())).Order());
        var lines = await app.Look(async db => (await (
            from line in db.PurchaseOrderLines join p in db.Parts on line.PartId equals p.Id select new { line.OrderNumber, p.Code, line.Quantity }).ToListAsync(Ct))
            .Where(l => l.Code == part || l.Code == other).Select(l => (l.OrderNumber, l.Code, l.Quantity)).Order().ToList());
        Assert.Equal(new[] { (open, other, 10m), (both, other, 12m), (closed, part, 10m) }.Order(), lines);
        Assert.Equal([other], survivor.GetProperty("expected").EnumerateArray().Select(_ => other));
        var supply = Assert.Single(survivor.GetProperty("supplies").EnumerateArray());
        Assert.True(supply.GetProperty("preferred").GetBoolean());
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task Other_units_kinds_shims_discontinued_parts_and_the_part_itself_are_refused_in_sentences()
    {
        var desk = await StoresDesk.Of(app);
        var (ring, oil, gasket, gone) = (await desk.Part(), await desk.Part("fluid", "millilitre"), await desk.Part("gasket"), await desk.Part());
        await StoresDesk.Done(await desk.Put($"/api/v1/stock/parts/{gone}/discontinuation", new { discontinued = true }, await desk.Version($"/api/v1/stock/parts/{gone}")));

        Assert.Equal($"into is \"{oil}\", kept by the millilitre, but {ring} is kept by the piece.", await Refused(oil));
        Assert.Equal($"into is \"{gasket}\", a gasket, but {ring} is a sealing ring.", await Refused(gasket));
        Assert.Contains("they are never merged", await Refused(TestEngines.ShimPart), StringComparison.Ordinal);
        Assert.Contains("which is discontinued", await Refused(gone), StringComparison.Ordinal);
        Assert.Contains("the part itself", await Refused(ring), StringComparison.Ordinal);
        Assert.Contains("no part has it", await Refused("nobody"), StringComparison.Ordinal);
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var page = await pages.Send($"/stores/parts/{ring}/edit", new() { ["Merge.Into"] = oil }, "#merge");
        Assert.Equal((HttpStatusCode.UnprocessableEntity, oil, "#Merge_Into"), (page.Status, page.ValueOf("Merge.Into"), page.Html.QuerySelector(".faults a")?.GetAttribute("href")));

        async Task<string> Refused(string into)
        {
            var answer = await desk.Merge(ring, into);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            return await answer.Sentence();
        }
    }

    [Fact]
    public async Task A_part_that_a_count_holds_or_whose_lot_has_another_day_is_merged_later()
    {
        var desk = await StoresDesk.Of(app);
        var (part, other, place) = (await desk.Part("sealant", shelfLifeMonths: 12), await desk.Part("sealant", shelfLifeMonths: 12), await desk.Place());
        await StoresDesk.Done(await desk.Receive(part, place, 2, "L", "2026-12-31"));
        await StoresDesk.Done(await desk.Receive(other, place, 2, "L", "2026-11-30"));
        var days = await desk.Merge(part, other);
        await StoresDesk.Done(await desk.Scrap(part, place, 2, "L"));
        var count = await desk.Count(place);
        await StoresDesk.Done(await desk.CountLine(count, part, 0, "L"));

        var counted = await desk.Merge(part, other);
        await StoresDesk.Done(await desk.Close(count));

        Assert.Contains("with different last days (2026-12-31 and 2026-11-30)", await days.Sentence(), StringComparison.Ordinal);
        Assert.Contains("is counted in a count of", await counted.Sentence(), StringComparison.Ordinal);
        await StoresDesk.Done(await desk.Merge(part, other));
    }

    /// <summary>One open order of the part, one of both parts, and one that is closed.</summary>
    private Task<(int Open, int Both, int Closed)> Orders(string part, string other) => app.Look(async db =>
    {
        var (partId, otherId) = (await db.Parts.Where(p => p.Code == part).Select(p => p.Id).SingleAsync(Ct), await db.Parts.Where(p => p.Code == other).Select(p => p.Id).SingleAsync(Ct));
        var supplier = new Supplier { Id = Domain.NewId.At(app.Clock), Name = $"Supplier of {part}" };
        db.Suppliers.Add(supplier);
        db.PartSupplies.Add(new PartSupply { Id = Domain.NewId.At(app.Clock), PartId = partId, SupplierId = supplier.Id, Preferred = true });
        var orders = new[] { PurchaseOrderState.Placed, PurchaseOrderState.Draft, PurchaseOrderState.Closed }
            .Select(state => new PurchaseOrder { SupplierId = supplier.Id, State = state, MadeBy = TestWorkshop.Manager, MadeAt = app.Clock.Now }).ToList();
        db.PurchaseOrders.AddRange(orders);
        await db.SaveChangesAsync(Ct);
        PurchaseOrderLine Line(int order, Guid of, decimal quantity) => new() { Id = Domain.NewId.At(app.Clock), OrderNumber = order, PartId = of, Quantity = quantity };
        var lines = orders.Select(o => Line(o.Number, partId, 10)).ToList();
        db.PurchaseOrderLines.AddRange(lines);
        db.PurchaseOrderLines.Add(Line(orders[1].Number, otherId, 2));
        await db.SaveChangesAsync(Ct);
        db.ExpectedDeliveries.Add(new ExpectedDelivery
        {
            Id = Domain.NewId.At(app.Clock), PartId = partId, Quantity = 10, ExpectedOn = new LocalDate(2026, 4, 1), OrderLineId = lines[1].Id,
            EnteredBy = TestWorkshop.Manager, EnteredAt = app.Clock.Now,
        });
        await db.SaveChangesAsync(Ct);
        return (orders[0].Number, orders[1].Number, orders[2].Number);
    });
}
