using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Kits;

public sealed class ShortagesTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_shortage_says_how_many_expected_when_and_which_visits_wait_until_which_day()
    {
        var ring = await app.Ring("scarce", 1);
        await Expect(ring, 1, new LocalDate(2026, 3, 4));
        await Expect(ring, 2, new LocalDate(2026, 3, 6));
        var visits = new[] { await app.DrainVisit(("scarce", 1)), await app.DrainVisit(("scarce", 1)), await app.DrainVisit(("scarce", 2)), await app.DrainVisit(("scarce", 1)) };
        var advisor = await app.As(Roles.Advisor);

        var all = await advisor.Get("/api/v1/kits/shortages");
        var part = all.GetProperty("parts").EnumerateArray().Single(p => p.GetProperty("partCode").GetString() == "scarce");
        var waiting = all.GetProperty("visits").EnumerateArray().ToDictionary(v => v.GetProperty("jobCardNumber").GetInt32());

        Assert.Equal(4, part.GetProperty("shortBy").GetDecimal());
        Assert.Equal(
            [(visits[1].Number, "2026-03-04"), (visits[2].Number, "2026-03-06"), (visits[3].Number, null)],
            part.GetProperty("visits").EnumerateArray().Select(v => (v.GetProperty("jobCardNumber").GetInt32(), v.GetProperty("comesOn").GetString())));
        Assert.DoesNotContain(visits[0].Number, waiting.Keys);
        // Work goes on the working day after a delivery; the 6th is a Friday.
        Assert.Equal("2026-03-05", waiting[visits[1].Number].GetProperty("earliestOn").GetString());
        Assert.Equal("2026-03-09", waiting[visits[2].Number].GetProperty("earliestOn").GetString());
        Assert.Equal(JsonValueKind.Null, waiting[visits[3].Number].GetProperty("earliestOn").ValueKind);
        Assert.Equal(
            "Lacks 1 of Ring scarce (expected on 2026-03-04); planned on 2026-03-02, can be done on 2026-03-05 at the earliest.",
            waiting[visits[1].Number].GetProperty("sentence").GetString());

        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        foreach (var address in new[] { "/kits/shortages", $"{visits[1].Pages}/kit", visits[1].Pages })
        {
            Assert.Contains("can be done on 2026-03-05 at the earliest.", (await pages.Open(address)).MainText, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_only_lies_ready_is_named_and_delays_nobody()
    {
        // The test workshop has two head cover gaskets, and each check has one ready.
        var visits = new[] { await app.CheckedIn(), await app.CheckedIn(), await app.CheckedIn() };
        var advisor = await app.As(Roles.Advisor);

        var all = await advisor.Get("/api/v1/kits/shortages");

        var gasket = all.GetProperty("parts").EnumerateArray().Single(p => p.GetProperty("partCode").GetString() == TestEngines.CoverGasket);
        Assert.Equal((0m, 1m), (gasket.GetProperty("shortBy").GetDecimal(), gasket.GetProperty("readyShortBy").GetDecimal()));
        Assert.Equal(visits[2].Number, gasket.GetProperty("visits")[0].GetProperty("jobCardNumber").GetInt32());
        Assert.DoesNotContain(visits[2].Number, all.GetProperty("visits").EnumerateArray().Select(v => v.GetProperty("jobCardNumber").GetInt32()));
    }

    /// <summary>What is not there now is asked on one page, what will not be there on the day on the other; what both say is the same.</summary>
    [Fact]
    public async Task Shortages_projected_stock_and_kit_say_the_same_of_each_visit()
    {
        var ring = await app.Ring("asked", 2, lot: "SOON", expiresOn: new LocalDate(2026, 3, 6));
        await app.Ring("asked", 3);
        await Expect(ring, 4, new LocalDate(2026, 3, 11));
        var visits = new List<TestVisit>();
        foreach (var (day, quantity) in new[] { (1, 1m), (3, 2m), (8, 3m), (9, 2m), (14, 2m), (23, 1m) })
        {
            visits.Add(await BookedIn(day, "asked", quantity));
        }

        await Reserve(ring, visits[^1].Number, 1);
        var advisor = await app.As(Roles.Advisor);
        var asked = (await advisor.Get("/api/v1/kits/shortages")).GetProperty("parts").EnumerateArray().Single(p => p.GetProperty("partCode").GetString() == "asked")
            .GetProperty("visits").EnumerateArray().ToDictionary(v => v.GetProperty("jobCardNumber").GetInt32());
        var projected = await Short(advisor, "/api/v1/stock/projection?days=90");

        // Two of five end on the 6th, one is reserved for the 25th: the visit of the 3rd and one of the 5th take those that end.
        Assert.Equal(
            [(visits[2].Number, 2m, 2m), (visits[3].Number, 2m, 2m), (visits[4].Number, 2m, 2m)],
            asked.Values.Select(v => (v.GetProperty("jobCardNumber").GetInt32(), v.GetProperty("shortBy").GetDecimal(), v.GetProperty("shortOnDay").GetDecimal())));
        Assert.Equal(asked.Values.Select(v => (v.GetProperty("jobCardNumber").GetInt32(), v.GetProperty("shortOnDay").GetDecimal())), projected);
        Assert.Equal(projected.Take(1), await Short(advisor, "/api/v1/stock/projection?days=8"));
        const string Ends = "5 there, of which 2 (to be used by 2026-03-06) expire before the visit";
        Assert.Equal(Ends, asked[visits[2].Number].GetProperty("ends").GetString());
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        foreach (var address in new[] { "/kits/shortages", "/stores/projected/asked", $"{visits[2].Pages}/kit", $"{visits[5].Pages}/kit" })
        {
            Assert.Contains(Ends, (await pages.Open(address)).MainText, StringComparison.Ordinal);
        }

        foreach (var visit in visits)
        {
            var line = Assert.Single((await advisor.Get($"{visit.Api}/kit/")).GetProperty("lines").EnumerateArray());
            Assert.Equal(asked.TryGetValue(visit.Number, out var lacks) ? lacks.GetProperty("shortBy").GetDecimal() : 0, line.GetProperty("shortBy").GetDecimal());
        }
    }

    private static async Task<IEnumerable<(int Number, decimal ShortBy)>> Short(HttpClient client, string address) =>
        (await client.Get(address)).GetProperty("rows").EnumerateArray().Single(p => p.GetProperty("partCode").GetString() == "asked")
            .GetProperty("shortVisits").EnumerateArray().Select(v => (v.GetProperty("jobCardNumber").GetInt32(), v.GetProperty("shortBy").GetDecimal())).ToList();

    private async Task<TestVisit> BookedIn(int days, string code, decimal quantity)
    {
        var visit = await app.Booked(KitStock.OilOnly, KitStock.Drain((code, quantity)));
        await app.Look(db => db.JobCards.Where(c => c.Number == visit.Number).ExecuteUpdateAsync(
            c => c.SetProperty(x => x.StartsAt, TestWorkshop.Start + Duration.FromDays(days))
                .SetProperty(x => x.EndsAt, TestWorkshop.Start + Duration.FromDays(days) + Duration.FromHours(4)), Ct));
        return visit;
    }

    /// <summary>Of what keeps.</summary>
    private Task<int> Reserve(Guid part, int card, decimal quantity) => app.Look(db =>
    {
        db.StockMovements.Add(new StockMovement
        {
            Id = NewId.At(app.Clock), PartId = part, PlaceId = TestWorkshop.Shelf, Kind = MovementKind.Reserved, OnHandChange = 0, ReservedChange = quantity,
            JobCardNumber = card, MovedBy = TestWorkshop.Manager, MovedAt = app.Clock.Now,
        });
        return db.SaveChangesAsync(Ct);
    });

    [Fact]
    public async Task However_many_visits_there_are_it_is_read_in_as_many_statements()
    {
        await app.Ring("counted", 0);
        await app.DrainVisit(("counted", 1));
        var advisor = await app.As(Roles.Advisor);
        await advisor.Get("/api/v1/kits/shortages");
        var few = await Statements(advisor);
        for (var i = 0; i < 5; i++)
        {
            await app.DrainVisit(("counted", 1));
        }

        Assert.Equal(few, await Statements(advisor));
    }

    private async Task<int> Statements(HttpClient client)
    {
        using var counted = new CountedCommands(app);
        await client.Get("/api/v1/kits/shortages");
        return counted.Count;
    }

    private Task<int> Expect(Guid part, decimal quantity, LocalDate on) => app.Look(db =>
    {
        db.ExpectedDeliveries.Add(new ExpectedDelivery
        {
            Id = NewId.At(app.Clock), PartId = part, Quantity = quantity, ExpectedOn = on, EnteredBy = TestWorkshop.Manager, EnteredAt = app.Clock.Now,
        });
        return db.SaveChangesAsync(Ct);
    });
}
