using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Orders;

/// <summary>
/// One supplier, five days, drain rings in packages of ten and filters one by one; a year in which a visit a week took two rings and
/// every fourth week six, and one gasket. Monday 2026-03-02, 09:00 in Vienna.
/// </summary>
public sealed class ProposalsTests(WorkshopApp app) : IClassFixture<WorkshopApp>, IAsyncLifetime
{
    private const string Supplier = "Invented rings";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        app.Clock.Now = TestWorkshop.Start;
        if (await app.Look(db => db.Suppliers.AnyAsync(Ct)))
        {
            return;
        }

        var advisor = await app.As(Roles.Advisor);
        var made = await advisor.PostAsJsonAsync("/api/v1/suppliers", new { name = Supplier, deliveryDays = 5, smallestOrder = 100 }, Ct);
        var id = (await made.Json()).GetProperty("id").GetGuid();
        await Sells(advisor, id, TestEngines.DrainRing, 10, 0.2m);
        await Sells(advisor, id, TestEngines.OilFilter, 1, 8);
        await Sells(advisor, id, TestEngines.CoverGasket, 1, 20);
        await app.Look(async db =>
        {
            var ring = await db.Parts.SingleAsync(p => p.Code == TestEngines.DrainRing, Ct);
            var gasket = await db.Parts.SingleAsync(p => p.Code == TestEngines.CoverGasket, Ct);
            Move(db, ring.Id, MovementKind.Received, 200, 364);
            Move(db, gasket.Id, MovementKind.Received, 55, 364);
            await db.SaveChangesAsync(Ct);
            for (var week = 0; week < 52; week++)
            {
                Move(db, gasket.Id, MovementKind.Issued, -1, (week * 7) + 3);
                Move(db, ring.Id, MovementKind.Issued, week % 4 == 0 ? -6 : -2, (week * 7) + 3);
            }

            Move(db, ring.Id, MovementKind.Scrapped, -48, 1);
            await db.SaveChangesAsync(Ct);
            return true;
        });
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task What_weeks_took_and_what_is_booked_make_a_proposal_that_says_why()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.Booked(new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain });

        var ring = Line(await Proposals(advisor), TestEngines.DrainRing);
        await app.Look(db => db.JobCards.Where(c => c.Number == visit.Number).ExecuteUpdateAsync(c => c.SetProperty(x => x.State, JobCardState.Cancelled), Ct));
        var without = Line(await Proposals(advisor), TestEngines.DrainRing);

        var why = ring.GetProperty("why").GetString();
        Assert.Contains("booked visits want 1 and about 3.0 more is to be expected, as 156 went out in 52 weeks (negative binomial: the weeks scatter more than chance does)", why, StringComparison.Ordinal);
        Assert.Equal(0, ring.GetProperty("quantity").GetDecimal() % 10);
        Assert.Equal(1, ring.GetProperty("reorderPoint").GetDecimal() - without.GetProperty("reorderPoint").GetDecimal());
        Assert.Contains("Enough with 95 %", why, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Below_the_smallest_order_it_says_so_and_what_could_be_added()
    {
        var proposed = (await Proposals(await app.As(Roles.Advisor))).GetProperty("suppliers")[0];

        Assert.Equal(100 - proposed.GetProperty("netSum").GetDecimal(), proposed.GetProperty("missingToSmallest").GetDecimal());
        var added = Assert.Single(proposed.GetProperty("additions").EnumerateArray());
        Assert.Equal(TestEngines.CoverGasket, added.GetProperty("partCode").GetString());
        Assert.Equal(20 * added.GetProperty("quantity").GetDecimal(), added.GetProperty("netCost").GetDecimal());
    }

    [Fact]
    public async Task The_workshops_service_level_moves_every_reorder_point_and_a_parts_own_stands_before_it()
    {
        var (manager, advisor) = (await app.As(Roles.Manager), await app.As(Roles.Advisor));
        async Task<decimal> Point() => (await Get(advisor, $"/api/v1/stock/ordering/{TestEngines.DrainRing}")).GetProperty("today").GetProperty("reorderPoint").GetDecimal();

        var usual = await Point();
        (await manager.Change("/api/v1/orders/service-level", new { serviceLevel = 0.999 })).EnsureSuccessStatusCode();
        var sure = await Point();
        var forbidden = await advisor.Change("/api/v1/orders/service-level", new { serviceLevel = 0.5 });
        var wrong = await manager.Change("/api/v1/orders/service-level", new { serviceLevel = 1 });
        (await advisor.Change($"/api/v1/stock/ordering/{TestEngines.DrainRing}", new { stocked = true, serviceLevel = 0.5 })).EnsureSuccessStatusCode();
        var own = await Point();
        (await advisor.Change($"/api/v1/stock/ordering/{TestEngines.DrainRing}", new { stocked = true })).EnsureSuccessStatusCode();
        (await manager.Change("/api/v1/orders/service-level", new { serviceLevel = 0.95 })).EnsureSuccessStatusCode();

        Assert.True(own < usual && usual < sure, $"{own} {usual} {sure}");
        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.BadRequest), (forbidden.StatusCode, wrong.StatusCode));
        Assert.StartsWith("serviceLevel is 1", await wrong.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_on_order_is_proposed_no_more_and_a_reorder_point_by_hand_is_kept_to()
    {
        var advisor = await app.As(Roles.Advisor);
        async Task<JsonElement> Filter() => (await Get(advisor, $"/api/v1/stock/ordering/{TestEngines.OilFilter}")).GetProperty("today");
        (await advisor.Change($"/api/v1/stock/ordering/{TestEngines.OilFilter}", new { stocked = true, reorderPoint = 5 })).EnsureSuccessStatusCode();

        var before = await Filter();
        (await advisor.PostAsJsonAsync("/api/v1/stock/deliveries", new { partCode = TestEngines.OilFilter, quantity = 4, expectedOn = "2026-03-09" }, Ct)).EnsureSuccessStatusCode();
        var after = await Filter();

        Assert.Equal((5m, 3m), (before.GetProperty("reorderPoint").GetDecimal(), before.GetProperty("quantity").GetDecimal()));
        Assert.Equal(0, after.GetProperty("quantity").GetDecimal());
        Assert.Contains("on order 4. That is enough.", after.GetProperty("why").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_makes_a_draft_of_what_was_left_in_with_the_reasons_reckoned_anew()
    {
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var page = await pages.Open("/stores/orders/proposed");
        var at = page.Html.QuerySelectorAll("#order-0 input[type=hidden][name$=PartCode]").Index().Single(i => i.Item.GetAttribute("value") == TestEngines.DrainRing).Index;

        var refused = await pages.Send(page, "/stores/orders/proposed", new() { [$"Input.Lines[{at}].Quantity"] = "25" }, "#order-0");
        var drafted = await pages.Send(page, "/stores/orders/proposed", new() { [$"Input.Lines[{at}].Quantity"] = "30" }, "#order-0");
        var technician = await (await TestPages.SignedIn(app, Roles.Technician)).Open("/stores/orders/proposed");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains("packages of 10; 30 is the next that can be had", Assert.Single(refused.Faults), StringComparison.Ordinal);
        Assert.Equal("25", refused.ValueOf($"Input.Lines[{at}].Quantity"));
        Assert.Equal(HttpStatusCode.Redirect, drafted.Status);
        var number = int.Parse(drafted.Location!.Split('/')[^1], System.Globalization.CultureInfo.InvariantCulture);
        var line = await app.Look(db => db.PurchaseOrderLines.SingleAsync(l => l.OrderNumber == number && db.Parts.Any(p => p.Id == l.PartId && p.Code == TestEngines.DrainRing), Ct));
        Assert.Equal(30, line.Quantity);
        Assert.Contains("went out in 52 weeks", line.Reason, StringComparison.Ordinal);
        Assert.Contains($"In draft {number} already.", (await pages.Open("/stores/orders/proposed")).MainText, StringComparison.Ordinal);
        Assert.Null(technician.Html.QuerySelector("#order-0 button"));
    }

    [Fact]
    public async Task A_search_for_slots_counts_with_the_days_of_whoever_sells_a_part()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await app.Look(async db =>
        {
            var ring = await db.Parts.SingleAsync(p => p.Code == TestEngines.DrainRing, Ct);
            var there = await db.StockBalances.Where(b => b.PartId == ring.Id).SumAsync(b => b.OnHand, Ct);
            Move(db, ring.Id, MovementKind.Scrapped, -there, 0);
            return await db.SaveChangesAsync(Ct);
        });

        var answer = await advisor.PostAsJsonAsync("/api/v1/bookings/slots", new { motorcycleId = motorcycle, items = new[] { Counter.Item(TestEngines.OilService) } }, Ct);
        var part = (await answer.Json()).GetProperty("parts").GetProperty("parts").EnumerateArray().Single(p => p.GetProperty("partCode").GetString() == TestEngines.DrainRing);

        Assert.Equal(("2026-03-07", false), (part.GetProperty("expectedOn").GetString(), part.GetProperty("ordered").GetBoolean()));
        Assert.EndsWith("not on order; ordered today it comes on 2026-03-07, work from 2026-03-09 08:00 on.", part.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        await app.Look(async db =>
        {
            var ring = await db.Parts.SingleAsync(p => p.Code == TestEngines.DrainRing, Ct);
            Move(db, ring.Id, MovementKind.Received, 6, 0);
            return await db.SaveChangesAsync(Ct);
        });
    }

    private static void Move(WorkshopDbContext db, Guid part, MovementKind kind, decimal change, int daysAgo) => db.StockMovements.Add(new StockMovement
    {
        Id = NewId.At(TestWorkshop.Start), PartId = part, PlaceId = TestWorkshop.Shelf, Kind = kind, OnHandChange = change, ReservedChange = 0,
        MovedBy = TestWorkshop.Manager, MovedAt = TestWorkshop.Start - Duration.FromDays(daysAgo),
    });

    private static async Task Sells(HttpClient client, Guid supplier, string code, decimal pack, decimal cost) =>
        (await client.PostAsJsonAsync($"/api/v1/stock/ordering/{code}/supplies", new { supplierId = supplier, packQuantity = pack, unitCost = cost }, Ct)).EnsureSuccessStatusCode();

    private static Task<JsonElement> Proposals(HttpClient client) => Get(client, "/api/v1/orders/proposals");

    private static JsonElement Line(JsonElement proposals, string code) => proposals.GetProperty("suppliers").EnumerateArray()
        .SelectMany(s => s.GetProperty("lines").EnumerateArray()).Single(l => l.GetProperty("partCode").GetString() == code);

    private static async Task<JsonElement> Get(HttpClient client, string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }
}
