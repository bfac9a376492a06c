using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Tests.Bookings;
using Xunit;
using static Workshop.Web.Tests.Bookings.Counter;

namespace Workshop.Web.Tests.Stores;

/// <summary>The clock stands at Monday 2026-03-02, 09:00 in Vienna.</summary>
public sealed class DeliveriesTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_delivery_is_expected_listed_by_its_day_and_closed_once()
    {
        var technician = await app.As(Roles.Technician);
        var later = await Expect(technician, TestEngines.Oil, 4000, "2026-03-20");
        var sooner = await Expect(technician, TestEngines.DrainRing, 10, "2026-03-10");

        var listed = await Mine(technician, later, sooner);
        var closed = await technician.PostAsync(new Uri($"/api/v1/stock/deliveries/{sooner}/closing", UriKind.Relative), null, Ct);
        var again = await technician.PostAsync(new Uri($"/api/v1/stock/deliveries/{sooner}/closing", UriKind.Relative), null, Ct);
        var none = await technician.PostAsync(new Uri($"/api/v1/stock/deliveries/{Guid.CreateVersion7()}/closing", UriKind.Relative), null, Ct);

        Assert.Equal([(TestEngines.DrainRing, 10m, "2026-03-10"), (TestEngines.Oil, 4000m, "2026-03-20")], listed);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.NotFound), (closed.StatusCode, again.StatusCode, none.StatusCode));
        Assert.Equal("That delivery is closed already.", await again.Sentence());
        Assert.Equal([(TestEngines.Oil, 4000m, "2026-03-20")], await Mine(technician, later, sooner));
        var row = await app.Look(db => db.ExpectedDeliveries.SingleAsync(d => d.Id == sooner, Ct));
        Assert.Equal((app.Clock.Now, TestWorkshop.Technician), (row.ClosedAt, row.EnteredBy));
    }

    [Fact]
    public async Task What_closes_a_delivery_takes_nothing_in()
    {
        var advisor = await app.As(Roles.Advisor);
        var before = await app.Look(db => db.StockMovements.CountAsync(Ct));
        var id = await Expect(advisor, TestEngines.CoverGasket, 2, "2026-03-09");

        (await advisor.PostAsync(new Uri($"/api/v1/stock/deliveries/{id}/closing", UriKind.Relative), null, Ct)).EnsureSuccessStatusCode();

        Assert.Equal(before, await app.Look(db => db.StockMovements.CountAsync(Ct)));
    }

    [Fact]
    public async Task An_unknown_part_a_shim_a_day_that_is_past_and_a_quantity_of_nothing_are_refused()
    {
        var advisor = await app.As(Roles.Advisor);
        Task<HttpResponseMessage> Try(object body) => advisor.PostAsJsonAsync("/api/v1/stock/deliveries", body, Ct);

        var unknown = await Try(new { partCode = "no-such", quantity = 1, expectedOn = "2026-03-10" });
        var shim = await Try(new { partCode = TestEngines.ShimPart, quantity = 1, expectedOn = "2026-03-10" });
        var past = await Try(new { partCode = TestEngines.Oil, quantity = 1000, expectedOn = "2026-03-01" });
        var half = await Try(new { partCode = TestEngines.OilFilter, quantity = 1.5, expectedOn = "2026-03-10" });
        var empty = await Try(new { quantity = 0 });

        Assert.Contains("partCode is \"no-such\": no part has it", await unknown.Sentence(), StringComparison.Ordinal);
        Assert.Contains("a shim: a kit holds none", await shim.Sentence(), StringComparison.Ordinal);
        Assert.Equal("expectedOn is 2026-03-01, which is past; 2026-03-02 or a later day is allowed.", await past.Sentence());
        Assert.Equal("quantity is 1.5: Oil filter comes in whole pieces.", await half.Sentence());
        Assert.Equal(HttpStatusCode.BadRequest, empty.StatusCode);
        Assert.Equal(["expectedOn", "partCode", "quantity"], (await empty.Json()).GetProperty("errors").EnumerateObject().Select(e => e.Name).Order());
    }

    [Fact]
    public async Task The_page_expects_a_delivery_keeps_what_was_typed_when_it_is_refused_and_closes_it()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        Dictionary<string, string?> Typed(string day) => new()
        {
            ["Expected.PartCode"] = TestEngines.OilFilter, ["Expected.Quantity"] = "12", ["Expected.ExpectedOn"] = day,
        };

        var refused = await pages.Send("/stores", Typed("2026-02-27"), "#expect");
        var expected = await pages.Send("/stores", Typed("2026-03-11"), "#expect");
        var shown = await pages.Open("/stores");
        var row = shown.Html.QuerySelectorAll("tr").Single(r => r.TextContent.Contains("12", StringComparison.Ordinal) && r.TextContent.Contains("2026-03-11", StringComparison.Ordinal));
        var closed = await pages.Send(shown, "/stores", [], $"form[action='{row.QuerySelector("form")!.GetAttribute("action")}']");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains("Expected on is 2026-02-27, which is past", Assert.Single(refused.Faults), StringComparison.Ordinal);
        Assert.Equal(("12", TestEngines.OilFilter), (refused.ValueOf("Expected.Quantity"), refused.ValueOf("Expected.PartCode")));
        Assert.Equal(HttpStatusCode.Redirect, expected.Status);
        Assert.Contains("12 of Oil filter expected on 2026-03-11.", shown.MainText, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, closed.Status);
        Assert.DoesNotContain("2026-03-11", (await pages.Open("/stores")).Html.QuerySelector("#deliveries + table")?.TextContent ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_search_waits_for_the_delivery_that_brings_enough_and_for_none_of_which_the_day_is_unknown()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await app.Look(db => db.ExpectedDeliveries.ExecuteUpdateAsync(d => d.SetProperty(x => x.ClosedAt, app.Clock.Now), Ct));
        await app.Look(db => TakeAway(db, TestEngines.Oil));

        var unknown = await Parts(advisor, motorcycle);
        await Expect(advisor, TestEngines.Oil, 2000, "2026-03-04");
        var half = await Parts(advisor, motorcycle);
        await Expect(advisor, TestEngines.Oil, 2000, "2026-03-12");
        var enough = await Parts(advisor, motorcycle);

        Assert.Equal((JsonValueKind.Null, JsonValueKind.Null), (unknown.Part.GetProperty("expectedOn").ValueKind, unknown.Part.GetProperty("from").ValueKind));
        Assert.EndsWith(
            "on no order that brings enough, and nobody has entered how long it takes; the starts do not wait for it. Order it before you promise a time.",
            unknown.Part.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        Assert.Equal("2026-03-02", unknown.FirstStart[..10]);
        Assert.Equal((JsonValueKind.Null, "2026-03-02"), (half.Part.GetProperty("expectedOn").ValueKind, half.FirstStart[..10]));
        Assert.Equal(("2026-03-12", true), (enough.Part.GetProperty("expectedOn").GetString(), enough.Part.GetProperty("ordered").GetBoolean()));
        Assert.Equal("2026-03-13T07:00:00Z", enough.FirstStart);
    }

    private static async Task<(JsonElement Part, string FirstStart)> Parts(HttpClient advisor, Guid motorcycle)
    {
        var answer = await advisor.PostAsJsonAsync("/api/v1/bookings/slots", new { motorcycleId = motorcycle, items = new[] { Item(TestEngines.OilService) } }, Ct);
        answer.EnsureSuccessStatusCode();
        var found = await answer.Json();
        return (Assert.Single(found.GetProperty("parts").GetProperty("parts").EnumerateArray()), found.GetProperty("slots")[0].GetProperty("startsAt").GetString()!);
    }

    private static async Task<bool> TakeAway(WorkshopDbContext db, string code)
    {
        var part = await db.Parts.SingleAsync(p => p.Code == code, Ct);
        var there = await db.StockBalances.SingleAsync(b => b.PartId == part.Id, Ct);
        db.StockMovements.Add(new StockMovement
        {
            Id = NewId.At(TestWorkshop.Start), PartId = part.Id, PlaceId = there.PlaceId, Kind = MovementKind.Scrapped, OnHandChange = -there.OnHand,
            ReservedChange = 0, MovedBy = TestWorkshop.Manager, MovedAt = TestWorkshop.Start,
        });
        await db.SaveChangesAsync(Ct);
        return true;
    }

    private static async Task<Guid> Expect(HttpClient client, string code, decimal quantity, string day)
    {
        var answer = await client.PostAsJsonAsync("/api/v1/stock/deliveries", new { partCode = code, quantity, expectedOn = day }, Ct);
        answer.EnsureSuccessStatusCode();
        return (await answer.Json()).GetProperty("id").GetGuid();
    }

    private static async Task<IEnumerable<(string?, decimal, string?)>> Mine(HttpClient client, params Guid[] ids)
    {
        var listed = await (await client.GetAsync(new Uri("/api/v1/stock/deliveries", UriKind.Relative), Ct)).Json();
        return listed.GetProperty("rows").EnumerateArray().Where(r => ids.Contains(r.GetProperty("id").GetGuid()))
            .Select(r => (r.GetProperty("partCode").GetString(), r.GetProperty("quantity").GetDecimal(), r.GetProperty("expectedOn").GetString())).ToList();
    }
}
