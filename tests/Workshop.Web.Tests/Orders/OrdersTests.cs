using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Orders;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Orders;

/// <summary>Suppliers, what they sell, and orders from draft to the last receipt. Monday 2026-03-02, 09:00 in Vienna.</summary>
public sealed class OrdersTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static int suppliers;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_supplier_is_added_changed_under_its_version_and_retired_only_when_nothing_is_open()
    {
        var advisor = await app.As(Roles.Advisor);
        var id = await AddSupplier(advisor);
        var address = $"/api/v1/suppliers/{id}";
        var number = await Draft(advisor, id, (TestEngines.CoverGasket, 2));
        var stale = await advisor.Tag(address);
        object Fields(string name, bool retired = false) => new { name, deliveryDays = 3, deliveryDaysSd = 1.5, smallestOrder = 50, retired };

        var changed = await advisor.Put(address, Fields("Blau Parts"), stale);
        var late = await advisor.Put(address, Fields("Blau Parts"), stale);
        var open = await advisor.Change(address, Fields("Blau Parts", retired: true));
        (await advisor.Change($"/api/v1/orders/{number}/closing", new { }, $"/api/v1/orders/{number}")).EnsureSuccessStatusCode();
        var retired = await advisor.Change(address, Fields("Blau Parts", retired: true));
        var drafted = await advisor.PostAsJsonAsync("/api/v1/orders", new { supplierId = id, lines = new[] { new { partCode = TestEngines.Oil, quantity = 1000 } } }, Ct);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.PreconditionFailed, HttpStatusCode.Conflict), (changed.StatusCode, late.StatusCode, open.StatusCode));
        Assert.Equal($"retired: order {number} is still open with Blau Parts; receive or close what is open first.", await open.Sentence());
        Assert.Equal(HttpStatusCode.OK, retired.StatusCode);
        Assert.Contains("which is retired", await drafted.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_supplier_is_refused_by_field_and_a_technician_spends_nothing()
    {
        var advisor = await app.As(Roles.Advisor);
        var name = await NameOf(advisor, await AddSupplier(advisor));

        var wrong = await advisor.PostAsJsonAsync("/api/v1/suppliers", new { name = "", email = "nobody", deliveryDays = 400, smallestOrder = 0 }, Ct);
        var taken = await advisor.PostAsJsonAsync("/api/v1/suppliers", new { name, deliveryDays = 2 }, Ct);
        var technician = await (await app.As(Roles.Technician)).PostAsJsonAsync("/api/v1/suppliers", new { name = "Mine", deliveryDays = 2 }, Ct);

        Assert.Equal(["deliveryDays", "email", "name", "smallestOrder"], (await wrong.Json()).GetProperty("errors").EnumerateObject().Select(e => e.Name).Order());
        Assert.Equal(HttpStatusCode.Conflict, taken.StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, technician.StatusCode);
    }

    [Fact]
    public async Task Of_two_suppliers_of_a_part_one_is_preferred_and_preferring_the_other_changes_that()
    {
        var advisor = await app.As(Roles.Advisor);
        var (first, second) = (await AddSupplier(advisor), await AddSupplier(advisor));
        var address = $"/api/v1/stock/ordering/{TestEngines.PlugWellRing}";
        await Sells(advisor, first, TestEngines.PlugWellRing, pack: 10, cost: 0.4m);

        var refused = await advisor.PostAsJsonAsync($"{address}/supplies", new { supplierId = first, packQuantity = 1 }, Ct);
        var half = await advisor.PostAsJsonAsync($"{address}/supplies", new { supplierId = second, packQuantity = 2.5 }, Ct);
        await Sells(advisor, second, TestEngines.PlugWellRing, pack: 5, cost: 0.5m);
        var before = await SoldBy(advisor, address);
        var other = before.Single(s => s.GetProperty("supplierId").GetGuid() == second);
        var version = $"\"{other.GetProperty("rowVersion").GetUInt32()}\"";
        var changed = await advisor.Put($"{address}/supplies/{other.GetProperty("id").GetGuid()}", new { packQuantity = 5, unitCost = 0.45, preferred = true }, version);
        var stale = await advisor.Put($"{address}/supplies/{other.GetProperty("id").GetGuid()}", new { packQuantity = 5 }, version);
        var after = await SoldBy(advisor, address);
        var removed = await advisor.Send(HttpMethod.Delete, $"{address}/supplies/{other.GetProperty("id").GetGuid()}", null, $"\"{after[0].GetProperty("rowVersion").GetUInt32()}\"");

        Assert.Contains("sells Plug well O-ring already", await refused.Sentence(), StringComparison.Ordinal);
        Assert.Equal("packQuantity is 2.5: Plug well O-ring comes in whole pieces.", await half.Sentence());
        Assert.Equal([(first, true), (second, false)], before.Select(s => (s.GetProperty("supplierId").GetGuid(), s.GetProperty("preferred").GetBoolean())));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.PreconditionFailed), (changed.StatusCode, stale.StatusCode));
        Assert.Equal([(second, true), (first, false)], after.Select(s => (s.GetProperty("supplierId").GetGuid(), s.GetProperty("preferred").GetBoolean())));
        Assert.Equal(HttpStatusCode.OK, removed.StatusCode);
    }

    [Fact]
    public async Task A_draft_is_changed_placed_received_in_parts_and_closes_when_all_of_it_came()
    {
        var (advisor, technician) = (await app.As(Roles.Advisor), await app.As(Roles.Technician));
        var supplier = await AddSupplier(advisor, days: 4);
        await Sells(advisor, supplier, TestEngines.DrainRing, pack: 5, cost: 0.3m);
        await Sells(advisor, supplier, TestEngines.OilFilter, pack: 1, cost: 8, days: 9);
        var number = await Draft(advisor, supplier, (TestEngines.DrainRing, 10), (TestEngines.OilFilter, 2));
        var address = $"/api/v1/orders/{number}";

        (await advisor.Change(address, new { lines = new object[] { new { partCode = TestEngines.DrainRing, quantity = 15, reason = "many came" }, new { partCode = TestEngines.OilFilter, quantity = 2 }, new { partCode = TestEngines.Oil, quantity = 0 } } })).EnsureSuccessStatusCode();
        var draft = await Get(advisor, address);
        Assert.Equal((20.5m, 2, "draft"), (draft.GetProperty("netSum").GetDecimal(), draft.GetProperty("lines").GetArrayLength(), draft.GetProperty("state").GetString()));
        Assert.Empty(await Expected(number));

        var early = await Receive(technician, number, (Line(draft, TestEngines.DrainRing), 5, null));
        var placed = await advisor.Change($"{address}/placing", new { }, address);
        var twice = await advisor.Change($"{address}/placing", new { }, address);
        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.OK, HttpStatusCode.Conflict), (early.StatusCode, placed.StatusCode, twice.StatusCode));
        Assert.Equal([(new LocalDate(2026, 3, 6), 15m), (new LocalDate(2026, 3, 11), 2m)], await Expected(number));

        var onHand = await OnHand(TestEngines.DrainRing);
        var part = await Receive(technician, number, (Line(draft, TestEngines.DrainRing), 6, 0.35m));
        Assert.Equal((1, 2, "placed"), ((await part.Json()).GetProperty("received").GetInt32(), (await part.Json()).GetProperty("open").GetInt32(), (await part.Json()).GetProperty("state").GetString()));
        Assert.Equal([TestEngines.DrainRing], (await part.Json()).GetProperty("dearerParts").EnumerateArray().Select(p => p.GetString()));
        Assert.Equal([(new LocalDate(2026, 3, 6), 9m), (new LocalDate(2026, 3, 11), 2m)], await Expected(number));
        Assert.Equal(onHand + 6, await OnHand(TestEngines.DrainRing));

        var rest = await Receive(technician, number, (Line(draft, TestEngines.DrainRing), 9, null), (Line(draft, TestEngines.OilFilter), 2, null));
        Assert.Equal("closed", (await rest.Json()).GetProperty("state").GetString());
        var closed = await Get(advisor, address);
        Assert.Equal([(TestEngines.OilFilter, 2m, 8m), (TestEngines.DrainRing, 6m, 0.35m), (TestEngines.DrainRing, 9m, 0.3m)],
            closed.GetProperty("receipts").EnumerateArray().Select(r => (r.GetProperty("partCode").GetString()!, r.GetProperty("quantity").GetDecimal(), r.GetProperty("unitCost").GetDecimal())).OrderBy(r => r.Item1, StringComparer.Ordinal).ThenBy(r => r.Item2));
        Assert.Empty(await Expected(number));
        Assert.Equal(0.35m, (await SoldBy(advisor, $"/api/v1/stock/ordering/{TestEngines.DrainRing}")).Single(s => s.GetProperty("supplierId").GetGuid() == supplier).GetProperty("unitCost").GetDecimal());
    }

    [Fact]
    public async Task More_than_was_ordered_asks_once_and_is_then_kept()
    {
        var (advisor, technician) = (await app.As(Roles.Advisor), await app.As(Roles.Technician));
        var number = await Placed(advisor, await AddSupplier(advisor), (TestEngines.CoverGasket, 2));
        var line = Line(await Get(advisor, $"/api/v1/orders/{number}"), TestEngines.CoverGasket);
        var before = await OnHand(TestEngines.CoverGasket);

        var asked = await Receive(technician, number, (line, 3, null));
        var none = await OnHand(TestEngines.CoverGasket);
        var kept = await Receive(technician, number, keepsSurplus: true, (line, 3, null));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        Assert.Equal(
            "lines[0].quantity is 3: of Head cover gasket 2 are ordered and 0 came before; that is 1 more than ordered. Count again, and confirm that all of it is kept.",
            await asked.Sentence());
        Assert.Equal((before, before + 3), (none, await OnHand(TestEngines.CoverGasket)));
        Assert.Equal("closed", (await kept.Json()).GetProperty("state").GetString());
    }

    [Fact]
    public async Task What_is_wrong_with_the_lines_of_an_order_is_said_all_at_once()
    {
        var advisor = await app.As(Roles.Advisor);
        var supplier = await AddSupplier(advisor);
        await Sells(advisor, supplier, TestEngines.OilFilter, pack: 6, cost: 8);

        var wrong = await advisor.PostAsJsonAsync("/api/v1/orders", new
        {
            supplierId = supplier,
            lines = new object[]
            {
                new { partCode = "no-such", quantity = 1 }, new { partCode = TestEngines.OilFilter, quantity = 7 }, new { partCode = TestEngines.ShimPart, quantity = 1 },
                new { partCode = TestEngines.CoverGasket, quantity = 1, thicknessMm = 2 }, new { partCode = TestEngines.OilFilter, quantity = 6 },
            },
        }, Ct);
        var empty = await advisor.PostAsJsonAsync("/api/v1/orders", new { supplierId = supplier, lines = new[] { new { partCode = TestEngines.Oil, quantity = 0 } } }, Ct);

        Assert.Equal(
            ["lines[0].partCode", "lines[1].quantity", "lines[2].thicknessMm", "lines[3].thicknessMm", "lines[4].partCode"],
            (await wrong.Json()).GetProperty("errors").EnumerateObject().Select(e => e.Name).Order());
        Assert.Contains("sold in packages of 6; 12 is the next that can be had", await wrong.Sentence(), StringComparison.Ordinal);
        Assert.Contains("holds nothing to order", await empty.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shims_are_ordered_by_thickness_and_come_in_as_the_micrometer_reads_them()
    {
        var advisor = await app.As(Roles.Advisor);
        var supplier = await AddSupplier(advisor);
        var drafted = await advisor.PostAsJsonAsync("/api/v1/orders", new
        {
            supplierId = supplier, lines = new object[] { new { partCode = TestEngines.ShimPart, quantity = 2, thicknessMm = 2.6 }, new { partCode = TestEngines.ShimPart, quantity = 1, thicknessMm = 2.65 } },
        }, Ct);
        var number = await drafted.Number();
        (await advisor.Change($"/api/v1/orders/{number}/placing", new { expectedOn = "2026-03-05" }, $"/api/v1/orders/{number}")).EnsureSuccessStatusCode();
        var lines = (await Get(advisor, $"/api/v1/orders/{number}")).GetProperty("lines").EnumerateArray().Select(l => l.GetProperty("id").GetGuid()).ToList();

        var came = await advisor.Send(HttpMethod.Post, $"/api/v1/orders/{number}/receipts", new
        {
            lines = new object[] { new { lineId = lines[0], quantity = 2, placeId = TestWorkshop.ShimBox, thicknessMm = 2.603 }, new { lineId = lines[1], quantity = 1, placeId = TestWorkshop.ShimBox } },
        }, await advisor.Tag($"/api/v1/orders/{number}"));

        came.EnsureSuccessStatusCode();
        var shims = await app.Look(db => db.Shims.Where(s => db.StockMovements.Any(m => m.ShimId == s.Id && lines.Contains(m.OrderLineId!.Value))).ToListAsync(Ct));
        Assert.Equal([2.603m, 2.603m, 2.65m], shims.Select(s => s.Thickness.Millimetres).Order());
    }

    [Fact]
    public async Task What_keeps_only_so_long_comes_in_by_its_lot()
    {
        var advisor = await app.As(Roles.Advisor);
        await app.Look(async db =>
        {
            db.Parts.Add(new Part { Id = NewId.At(app.Clock), Code = "sealant-12", Name = "Sealant", Kind = PartKind.Sealant, Unit = PartUnit.Millilitre, ShelfLifeMonths = 12 });
            return await db.SaveChangesAsync(Ct);
        });
        var number = await Placed(advisor, await AddSupplier(advisor), ("sealant-12", 90));
        var line = Line(await Get(advisor, $"/api/v1/orders/{number}"), "sealant-12");
        async Task<HttpResponseMessage> Came(object came) =>
            await advisor.Send(HttpMethod.Post, $"/api/v1/orders/{number}/receipts", new { lines = new[] { came } }, await advisor.Tag($"/api/v1/orders/{number}"));

        var without = await Came(new { lineId = line, quantity = 90, placeId = TestWorkshop.Shelf });
        var with = await Came(new { lineId = line, quantity = 90, placeId = TestWorkshop.Shelf, lotCode = "L 7" });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, without.StatusCode);
        Assert.Equal(["lines[0].lotCode"], (await without.Json()).GetProperty("errors").EnumerateObject().Select(e => e.Name));
        with.EnsureSuccessStatusCode();
        var lot = await app.Look(db => db.StockLots.SingleAsync(l => l.Code == "L 7", Ct));
        Assert.Equal((new LocalDate(2027, 3, 2), new LocalDate(2026, 3, 2)), (lot.ExpiresOn, lot.ReceivedOn));
        Assert.Equal(90, await OnHand("sealant-12"));
    }

    [Fact]
    public async Task Another_day_moves_what_is_open_and_closing_gives_it_up()
    {
        var advisor = await app.As(Roles.Advisor);
        var number = await Placed(advisor, await AddSupplier(advisor), (TestEngines.Oil, 5000), (TestEngines.PlugWellRing, 20));
        var address = $"/api/v1/orders/{number}";
        var line = Line(await Get(advisor, address), TestEngines.Oil);

        var past = await advisor.Change($"{address}/delivery-day", new { expectedOn = "2026-02-20" }, address);
        (await advisor.Change($"{address}/delivery-day", new { lineId = line, expectedOn = "2026-04-01" }, address)).EnsureSuccessStatusCode();
        var expected = await Expected(number);
        var closed = await advisor.Change($"{address}/closing", new { }, address);
        var received = await Receive(advisor, number, (line, 1000, null));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, past.StatusCode);
        Assert.Contains((new LocalDate(2026, 4, 1), 5000m), expected);
        Assert.Equal(2, (await closed.Json()).GetProperty("givenUp").GetInt32());
        Assert.Empty(await Expected(number));
        Assert.Equal($"Order {number} is closed; goods come in against an order that is placed.", await received.Sentence());
    }

    [Fact]
    public async Task Two_who_place_the_same_draft_at_once_expect_it_once()
    {
        var advisor = await app.As(Roles.Advisor);
        var number = await Draft(advisor, await AddSupplier(advisor), (TestEngines.Oil, 1000));
        var tag = await advisor.Tag($"/api/v1/orders/{number}");

        var both = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => advisor.Put($"/api/v1/orders/{number}/placing", new { }, tag)));

        Assert.Single(both, a => a.StatusCode == HttpStatusCode.OK);
        Assert.Single(await Expected(number));
    }

    [Fact]
    public async Task The_pages_lead_from_a_supplier_over_a_draft_to_the_receipt()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var name = $"Paper trail {Interlocked.Increment(ref suppliers)}";
        var wrong = await pages.Send("/stores/suppliers", new() { ["Input.Name"] = name, ["Input.DeliveryDays"] = "soon" }, "#supplier");
        var added = await pages.Send("/stores/suppliers", new() { ["Input.Name"] = name, ["Input.DeliveryDays"] = "3", ["Input.SmallestOrder"] = "99,50" }, "#supplier");
        var id = added.Location!.Split('/')[^1];
        var sold = await pages.Send($"/stores/ordering/{TestEngines.CoverGasket}", new() { ["Sold.SupplierId"] = id, ["Sold.PackQuantity"] = "2", ["Sold.UnitCost"] = "12,40", ["Sold.SupplierCode"] = "HG-2" }, "#supply-form");
        var level = await pages.Send($"/stores/ordering/{TestEngines.CoverGasket}", new() { ["Level.ServiceLevel"] = "0,3" }, "#level-form");
        var refused = await pages.Send("/stores/orders", new() { ["Input.SupplierId"] = id, ["Input.Lines[0].PartCode"] = TestEngines.CoverGasket, ["Input.Lines[0].Quantity"] = "3" }, "#draft");
        var drafted = await pages.Send("/stores/orders", new() { ["Input.SupplierId"] = id, ["Input.Lines[0].PartCode"] = TestEngines.CoverGasket, ["Input.Lines[0].Quantity"] = "4" }, "#draft");
        var order = drafted.Location!;
        var saved = await pages.Send(order, new() { ["Input.Lines[1].PartCode"] = TestEngines.Oil, ["Input.Lines[1].Quantity"] = "2000" }, "#lines");
        var placed = await pages.Send(order, new() { ["Place.ExpectedOn"] = "2026-03-09" }, "#place");
        var page = await pages.Open(order);
        var over = await pages.Send(page, order, new() { ["Receive.Lines[0].Quantity"] = "5", ["Receive.Lines[0].PlaceId"] = TestWorkshop.Shelf.ToString(), ["Receive.Lines[1].Quantity"] = "" }, "#receive");
        var came = await pages.Send(page, order, new() { ["Receive.Lines[0].PlaceId"] = TestWorkshop.Shelf.ToString(), ["Receive.Lines[1].Quantity"] = "" }, "#receive");
        var closed = await pages.Send(order, [], "#close");

        Assert.Equal((HttpStatusCode.BadRequest, name), (wrong.Status, wrong.ValueOf("Input.Name")));
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (added.Status, sold.Status));
        Assert.Equal((HttpStatusCode.BadRequest, "0,3"), (level.Status, level.ValueOf("Level.ServiceLevel")));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "3"), (refused.Status, refused.ValueOf("Input.Lines[0].Quantity")));
        Assert.Contains("packages of 2; 4 is the next", Assert.Single(refused.Faults), StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (saved.Status, placed.Status));
        Assert.Contains("HG-2", page.Html.QuerySelector(".order-text")!.TextContent, StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "5"), (over.Status, over.ValueOf("Receive.Lines[0].Quantity")));
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (came.Status, closed.Status));
        Assert.Contains("Closed; 1 lines are not expected any more.", (await pages.Open(order)).MainText + closed.MainText, StringComparison.Ordinal);
    }

    private static async Task<Guid> AddSupplier(HttpClient client, int days = 3)
    {
        var answer = await client.PostAsJsonAsync("/api/v1/suppliers", new { name = $"Invented supplier {Interlocked.Increment(ref suppliers)}", deliveryDays = days }, Ct);
        answer.EnsureSuccessStatusCode();
        return (await answer.Json()).GetProperty("id").GetGuid();
    }

    private static async Task<string> NameOf(HttpClient client, Guid id) => (await Get(client, $"/api/v1/suppliers/{id}")).GetProperty("name").GetString()!;

    private static async Task Sells(HttpClient client, Guid supplier, string code, decimal pack, decimal cost, int? days = null) =>
        (await client.PostAsJsonAsync($"/api/v1/stock/ordering/{code}/supplies", new { supplierId = supplier, packQuantity = pack, unitCost = cost, deliveryDays = days }, Ct)).EnsureSuccessStatusCode();

    private static async Task<List<JsonElement>> SoldBy(HttpClient client, string address) =>
        [.. (await Get(client, address)).GetProperty("soldBy").EnumerateArray()];

    private static async Task<int> Draft(HttpClient client, Guid supplier, params (string Code, decimal Quantity)[] lines) =>
        await (await client.PostAsJsonAsync("/api/v1/orders", new { supplierId = supplier, lines = lines.Select(l => new { partCode = l.Code, quantity = l.Quantity }) }, Ct)).Number();

    private static async Task<int> Placed(HttpClient client, Guid supplier, params (string Code, decimal Quantity)[] lines)
    {
        var number = await Draft(client, supplier, lines);
        (await client.Change($"/api/v1/orders/{number}/placing", new { }, $"/api/v1/orders/{number}")).EnsureSuccessStatusCode();
        return number;
    }

    private static Guid Line(JsonElement order, string code) =>
        order.GetProperty("lines").EnumerateArray().Single(l => l.GetProperty("partCode").GetString() == code).GetProperty("id").GetGuid();

    private static Task<HttpResponseMessage> Receive(HttpClient client, int number, params (Guid Line, decimal Quantity, decimal? Cost)[] lines) =>
        Receive(client, number, keepsSurplus: false, lines);

    private static async Task<HttpResponseMessage> Receive(HttpClient client, int number, bool keepsSurplus, params (Guid Line, decimal Quantity, decimal? Cost)[] lines) =>
        await client.Send(HttpMethod.Post, $"/api/v1/orders/{number}/receipts", new
        {
            lines = lines.Select(l => new { lineId = l.Line, quantity = l.Quantity, placeId = TestWorkshop.Shelf, unitCost = l.Cost }), keepsSurplus,
        }, await client.Tag($"/api/v1/orders/{number}"));

    private async Task<List<(LocalDate, decimal)>> Expected(int number) => (await app.Look(db => (
        from delivery in db.ExpectedDeliveries
        join line in db.PurchaseOrderLines on delivery.OrderLineId equals line.Id
        where line.OrderNumber == number && delivery.ClosedAt == null
        orderby delivery.ExpectedOn
        select new { delivery.ExpectedOn, delivery.Quantity }).ToListAsync(Ct))).ConvertAll(d => (d.ExpectedOn, d.Quantity));

    private Task<decimal> OnHand(string code) => app.Look(db =>
        db.StockBalances.Where(b => db.Parts.Any(p => p.Id == b.PartId && p.Code == code)).SumAsync(b => b.OnHand, Ct));

    private static async Task<JsonElement> Get(HttpClient client, string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }
}
