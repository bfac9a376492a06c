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
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Orders;

/// <summary>Three oil filters are on the shelf, ten drain rings, two cover gaskets; an oil service takes one filter and one ring.</summary>
public sealed class ProjectedStockTests(WorkshopApp app) : IClassFixture<WorkshopApp>, IAsyncLifetime
{
    private static readonly Dictionary<string, Likelihood> OilOnly = new() { [TestEngines.OilService] = Likelihood.Certain };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        app.Clock.Now = TestWorkshop.Start;
        await app.Look(async db =>
        {
            await db.JobCards.ExecuteUpdateAsync(c => c.SetProperty(x => x.State, JobCardState.Cancelled), Ct);
            return await db.ExpectedDeliveries.ExecuteUpdateAsync(d => d.SetProperty(x => x.ClosedAt, TestWorkshop.Start), Ct);
        });
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task A_part_falls_below_zero_on_the_day_of_the_visit_that_is_short_until_the_working_day_after_the_delivery()
    {
        var advisor = await app.As(Roles.Advisor);
        var visits = new List<TestVisit>();
        foreach (var day in new[] { 1, 3, 8, 9 })
        {
            visits.Add(await BookedIn(day, OilOnly));
        }

        var short1 = Row(await Get(advisor, "/api/v1/stock/projection"), TestEngines.OilFilter);
        await Expect(advisor, TestEngines.OilFilter, 5, "2026-03-13");
        var ordered = Row(await Get(advisor, "/api/v1/stock/projection"), TestEngines.OilFilter);
        var steps = await Get(advisor, $"/api/v1/stock/projection/{TestEngines.OilFilter}");

        Assert.Equal(("2026-03-11", -1m, 4m), (short1.GetProperty("firstBelowZero").GetString(), short1.GetProperty("lowest").GetDecimal(), short1.GetProperty("needed").GetDecimal()));
        var visit = Assert.Single(short1.GetProperty("shortVisits").EnumerateArray());
        Assert.Equal((visits[3].Number, 1m, JsonValueKind.Null), (visit.GetProperty("jobCardNumber").GetInt32(), visit.GetProperty("shortBy").GetDecimal(), visit.GetProperty("until").ValueKind));
        // The 13th is a Friday: work counts on it from Monday on.
        Assert.Equal("2026-03-16", Assert.Single(ordered.GetProperty("shortVisits").EnumerateArray()).GetProperty("until").GetString());
        Assert.Equal(
            [("2026-03-03", 2m), ("2026-03-05", 1m), ("2026-03-10", 0m), ("2026-03-11", -1m), ("2026-03-16", 4m)],
            steps.GetProperty("stock").GetProperty("days").EnumerateArray().Select(d => (d.GetProperty("on").GetString()!, d.GetProperty("level").GetDecimal())));
        Assert.Equal(visits.Select(v => v.Number), steps.GetProperty("visits").EnumerateArray().Select(v => v.GetProperty("jobCardNumber").GetInt32()));
    }

    [Fact]
    public async Task What_only_lies_ready_is_a_line_of_its_own_and_what_is_likely_is_needed()
    {
        var advisor = await app.As(Roles.Advisor);
        await BookedIn(2, TestVisits.UsualItems);
        await BookedIn(3, TestVisits.UsualItems);
        await BookedIn(4, TestVisits.UsualItems);

        var gasket = Row(await Get(advisor, "/api/v1/stock/projection"), TestEngines.CoverGasket);

        Assert.Equal((0m, 3m, 2m), (gasket.GetProperty("needed").GetDecimal(), gasket.GetProperty("haveReady").GetDecimal(), gasket.GetProperty("lowest").GetDecimal()));
        Assert.Equal((JsonValueKind.Null, "2026-03-06"), (gasket.GetProperty("firstBelowZero").ValueKind, gasket.GetProperty("firstBelowZeroIfAllUsed").GetString()));
    }

    [Fact]
    public async Task A_visit_whose_day_has_passed_wants_its_kit_today_and_one_that_is_beyond_the_end_does_not_count()
    {
        var advisor = await app.As(Roles.Advisor);
        var late = await BookedIn(0, OilOnly);
        await BookedIn(40, OilOnly);
        app.Clock.Now = TestWorkshop.Start + Duration.FromDays(2);

        var part = await Get(await app.As(Roles.Advisor), $"/api/v1/stock/projection/{TestEngines.DrainRing}?days=30");

        var visit = Assert.Single(part.GetProperty("visits").EnumerateArray());
        Assert.Equal((late.Number, "2026-03-04"), (visit.GetProperty("jobCardNumber").GetInt32(), visit.GetProperty("on").GetString()));
        Assert.NotNull(advisor);
    }

    [Fact]
    public async Task What_was_issued_to_a_visit_is_wanted_no_more()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await BookedIn(1, OilOnly);
        var before = Row(await Get(advisor, "/api/v1/stock/projection"), TestEngines.Oil);
        await app.Look(async db =>
        {
            var oil = await db.Parts.SingleAsync(p => p.Code == TestEngines.Oil, Ct);
            db.StockMovements.Add(new StockMovement
            {
                Id = NewId.At(app.Clock), PartId = oil.Id, PlaceId = TestWorkshop.Shelf, Kind = MovementKind.Issued, OnHandChange = -1200, ReservedChange = 0,
                JobCardNumber = visit.Number, MovedBy = TestWorkshop.Technician, MovedAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });

        var after = Row(await Get(advisor, "/api/v1/stock/projection"), TestEngines.Oil);

        Assert.Equal((3200m, 2000m), (before.GetProperty("needed").GetDecimal(), after.GetProperty("needed").GetDecimal()));
        Assert.Equal(before.GetProperty("lowest").GetDecimal(), after.GetProperty("lowest").GetDecimal());
    }

    [Fact]
    public async Task What_is_beyond_its_last_day_is_not_there()
    {
        var advisor = await app.As(Roles.Advisor);
        await BookedIn(1, OilOnly);
        await app.Look(async db =>
        {
            var ring = await db.Parts.SingleAsync(p => p.Code == TestEngines.DrainRing, Ct);
            var lot = new StockLot { Id = NewId.At(app.Clock), PartId = ring.Id, Code = "OLD", ExpiresOn = new LocalDate(2026, 3, 1), ReceivedOn = new LocalDate(2025, 1, 1) };
            db.StockLots.Add(lot);
            db.StockMovements.Add(new StockMovement
            {
                Id = NewId.At(app.Clock), PartId = ring.Id, PlaceId = TestWorkshop.Shelf, LotId = lot.Id, Kind = MovementKind.Received, OnHandChange = 7, ReservedChange = 0,
                MovedBy = TestWorkshop.Technician, MovedAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });

        var row = Row(await Get(advisor, "/api/v1/stock/projection"), TestEngines.DrainRing);

        Assert.Equal((10m, 7m), (row.GetProperty("onHand").GetDecimal(), row.GetProperty("expired").GetDecimal()));
    }

    [Fact]
    public async Task Parts_unknown_to_the_stores_and_shims_are_said()
    {
        var advisor = await app.As(Roles.Advisor);
        var specification = TestEngines.Twin();
        specification = specification with
        {
            ServiceItems = [.. specification.ServiceItems.Select(i => i.Code == TestEngines.OilService ? i with { Parts = [new Domain.EngineModels.ItemPart("no-such-filter", 1)] } : i)],
        };
        var booked = await app.Booked(OilOnly, specification);

        var unknown = Assert.Single((await Get(advisor, "/api/v1/stock/projection")).GetProperty("unknown").EnumerateArray());
        var none = await advisor.GetAsync(new Uri("/api/v1/stock/projection/no-such-filter", UriKind.Relative), Ct);
        var shim = await advisor.GetAsync(new Uri($"/api/v1/stock/projection/{TestEngines.ShimPart}", UriKind.Relative), Ct);
        var days = await advisor.GetAsync(new Uri("/api/v1/stock/projection?days=0", UriKind.Relative), Ct);

        Assert.Equal(("no-such-filter", booked.Number), (unknown.GetProperty("partCode").GetString(), unknown.GetProperty("jobCardNumbers")[0].GetInt32()));
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.UnprocessableEntity, HttpStatusCode.BadRequest), (none.StatusCode, shim.StatusCode, days.StatusCode));
        Assert.Equal("days is 0: a whole number from 1 to 366 is allowed.", await days.Sentence());
    }

    [Fact]
    public async Task The_pages_name_what_is_short_and_draw_it_with_a_table_beside()
    {
        foreach (var day in new[] { 1, 2, 3, 4 })
        {
            await BookedIn(day, OilOnly);
        }

        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var list = await pages.Open("/stores/projected");
        var part = await pages.Open($"/stores/projected/{TestEngines.OilFilter}");
        var wrong = await pages.Open("/stores/projected?days=many");
        var wrongOfPart = await pages.Open($"/stores/projected/{TestEngines.OilFilter}?days=900");

        Assert.Contains("Oil filter", list.Html.QuerySelector("[aria-labelledby=short-caption]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Not enough from 2026-03-06 on.", part.MainText, StringComparison.Ordinal);
        Assert.NotNull(part.Html.QuerySelector("svg.stock-steps .short"));
        Assert.Equal(4, part.Html.QuerySelectorAll("[aria-labelledby=days-caption] tbody tr").Length);
        Assert.Equal((HttpStatusCode.BadRequest, HttpStatusCode.BadRequest), (wrong.Status, wrongOfPart.Status));
        Assert.Equal("Days from today is 900: a whole number from 1 to 366 is allowed.", Assert.Single(wrongOfPart.Faults));
    }

    private async Task<TestVisit> BookedIn(int days, IReadOnlyDictionary<string, Likelihood> items)
    {
        var visit = await app.Booked(items);
        await app.Look(db => db.JobCards.Where(c => c.Number == visit.Number).ExecuteUpdateAsync(
            c => c.SetProperty(x => x.StartsAt, TestWorkshop.Start + Duration.FromDays(days))
                .SetProperty(x => x.EndsAt, TestWorkshop.Start + Duration.FromDays(days) + Duration.FromHours(4)), Ct));
        return visit;
    }

    private static async Task Expect(HttpClient client, string code, decimal quantity, string day) =>
        (await client.PostAsJsonAsync("/api/v1/stock/deliveries", new { partCode = code, quantity, expectedOn = day }, Ct)).EnsureSuccessStatusCode();

    private static JsonElement Row(JsonElement list, string code) =>
        list.GetProperty("rows").EnumerateArray().Single(r => r.GetProperty("partCode").GetString() == code);

    private static async Task<JsonElement> Get(HttpClient client, string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }
}
