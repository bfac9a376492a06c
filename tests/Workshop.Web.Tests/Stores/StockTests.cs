using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

public sealed class StockTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Goods_in_are_one_movement_and_stand_in_the_balance()
    {
        var technician = await app.As(Roles.Technician);
        var before = await OnHand(technician, TestEngines.CoverGasket);

        var answer = await Receive(technician, new { partCode = TestEngines.CoverGasket, placeId = TestWorkshop.Shelf, quantity = 3 });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(before + 3, (await answer.Json()).GetProperty("onHand").GetDecimal());
        Assert.Equal(before + 3, await OnHand(technician, TestEngines.CoverGasket));
        var id = (await answer.Json()).GetProperty("movementId").GetGuid();
        var movement = await app.Look(db => db.StockMovements.SingleAsync(m => m.Id == id, Ct));
        Assert.Equal((MovementKind.Received, 3m, 0m, TestWorkshop.Technician, app.Clock.Now),
            (movement.Kind, movement.OnHandChange, movement.ReservedChange, movement.MovedBy, movement.MovedAt));
    }

    [Fact]
    public async Task Shims_come_in_by_thickness_and_nothing_else_does()
    {
        var advisor = await app.As(Roles.Advisor);

        var shim = await Receive(advisor, new { partCode = TestEngines.ShimPart, placeId = TestWorkshop.ShimBox, quantity = 2, thicknessMm = 2.467 });
        var without = await Receive(advisor, new { partCode = TestEngines.ShimPart, placeId = TestWorkshop.ShimBox, quantity = 2 });
        var half = await Receive(advisor, new { partCode = TestEngines.DrainRing, placeId = TestWorkshop.Shelf, quantity = 1.5, thicknessMm = 2 });

        Assert.Equal(HttpStatusCode.OK, shim.StatusCode);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (without.StatusCode, half.StatusCode));
        Assert.Equal(
            "thicknessMm is empty: Shim 9 mm, disc under finger follower is kept by thickness; give what the micrometer reads.",
            await without.Sentence());
        Assert.Equal(
            "quantity is 1.5: Sealing ring 14 x 18 x 1.5 comes in whole pieces. thicknessMm is 2, but Sealing ring 14 x 18 x 1.5 is no shim; leave it empty.",
            await half.Sentence());
        var box = Assert.Single((await Get(advisor, "/api/v1/stock?kind=shim")).GetProperty("rows").EnumerateArray());
        var lying = Assert.Single(box.GetProperty("at").EnumerateArray(), a => a.GetProperty("thicknessMm").GetDecimal() == 2.467m);
        Assert.Equal((2m, "new", "Shim box"),
            (lying.GetProperty("onHand").GetDecimal(), lying.GetProperty("condition").GetString(), lying.GetProperty("place").GetString()));
    }

    [Fact]
    public async Task A_part_or_place_that_is_none_and_a_quantity_of_nothing_are_refused()
    {
        var advisor = await app.As(Roles.Advisor);

        var part = await Receive(advisor, new { partCode = "no-such", placeId = TestWorkshop.Shelf, quantity = 1 });
        var place = await Receive(advisor, new { partCode = TestEngines.Oil, placeId = TestWorkshop.Bay1, quantity = 1 });
        var nothing = await Receive(advisor, new { partCode = TestEngines.Oil, placeId = TestWorkshop.Shelf, quantity = 0, thicknessMm = 12 });

        Assert.Contains("partCode is \"no-such\"", await part.Sentence(), StringComparison.Ordinal);
        Assert.Contains("choose one of GET /api/v1/stock/places", await place.Sentence(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, nothing.StatusCode);
        Assert.Equal(["quantity", "thicknessMm"], (await nothing.Json()).GetProperty("errors").EnumerateObject().Select(e => e.Name).Order());
        Assert.Contains((await Get(advisor, "/api/v1/stock/places")).GetProperty("places").EnumerateArray(),
            p => p.GetProperty("id").GetGuid() == TestWorkshop.Shelf && p.GetProperty("name").GetString() == "Shelf A");
    }

    [Fact]
    public async Task The_same_receipt_sent_twice_comes_in_once()
    {
        var advisor = await app.As(Roles.Advisor);
        var before = await OnHand(advisor, TestEngines.PlugWellRing);
        for (var i = 0; i < 2; i++)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/stock/receipts")
            {
                Content = JsonContent.Create(new { partCode = TestEngines.PlugWellRing, placeId = TestWorkshop.Shelf, quantity = 5 }),
            };
            request.Headers.Add("Idempotency-Key", "parcel-1");
            (await advisor.SendAsync(request, Ct)).EnsureSuccessStatusCode();
        }

        Assert.Equal(before + 5, await OnHand(advisor, TestEngines.PlugWellRing));
    }

    [Fact]
    public async Task Parts_come_by_code_page_by_page_and_are_found_by_name()
    {
        var advisor = await app.As(Roles.Advisor);

        var codes = new List<string>();
        string? after = null;
        do
        {
            var page = await Get(advisor, $"/api/v1/stock?take=2{(after is null ? "" : $"&after={after}")}");
            codes.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("code").GetString()!));
            after = page.GetProperty("next").GetString();
        }
        while (after is not null);
        var found = await Get(advisor, "/api/v1/stock?search=O-RING");

        Assert.Equal(await app.Look(db => db.Parts.OrderBy(p => p.Code).Select(p => p.Code).ToListAsync(Ct)), codes);
        Assert.Equal([TestEngines.PlugWellRing], found.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("code").GetString()));
    }

    [Fact]
    public async Task By_the_page_goods_come_in_with_a_comma_and_a_refusal_keeps_what_was_typed()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var wrong = await pages.Send("/stores", new()
        {
            ["Input.PartCode"] = TestEngines.ShimPart, ["Input.PlaceId"] = TestWorkshop.ShimBox.ToString(), ["Input.Quantity"] = "4",
        }, "#receive");
        var done = await pages.Send(wrong, "/stores", new() { ["Input.ThicknessMm"] = "2,512" }, "#receive");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        Assert.Equal("#Input_ThicknessMm", wrong.Html.QuerySelector(".faults a")?.GetAttribute("href"));
        Assert.Equal((TestEngines.ShimPart, "4"), (wrong.ValueOf("Input.PartCode"), wrong.ValueOf("Input.Quantity")));
        Assert.Equal(HttpStatusCode.Redirect, done.Status);
        var stores = await pages.Open($"/stores?search=shim&box={TestEngines.ShimPart}");
        Assert.Contains("Took in 4 of Shim 9 mm, disc under finger follower to Shim box; 4 there now.", stores.MainText, StringComparison.Ordinal);
        Assert.Contains(stores.Html.QuerySelectorAll("#box tbody th"), th => th.TextContent == "2.512 mm");
    }

    private static Task<HttpResponseMessage> Receive(HttpClient client, object body) => client.PostAsJsonAsync("/api/v1/stock/receipts", body, Ct);

    private static async Task<JsonElement> Get(HttpClient client, string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }

    private static async Task<decimal> OnHand(HttpClient client, string code) =>
        (await Get(client, $"/api/v1/stock?search={code}")).GetProperty("rows")[0].GetProperty("onHand").GetDecimal();
}
