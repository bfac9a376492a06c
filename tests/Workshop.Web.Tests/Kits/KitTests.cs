using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Features.Kits;
using Xunit;

namespace Workshop.Web.Tests.Kits;

public sealed class KitTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly Actor Advisor = new(TestWorkshop.Advisor, new HashSet<string> { Roles.Advisor });

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_kit_lists_parts_with_what_is_there_and_why()
    {
        var visit = await app.CheckedIn();

        var kit = await Kit(await app.As(Roles.Advisor), visit);

        Assert.Equal(
            [TestEngines.CoverGasket, TestEngines.Oil, TestEngines.OilFilter, TestEngines.PlugWellRing, TestEngines.DrainRing],
            kit.GetProperty("lines").EnumerateArray().Select(l => l.GetProperty("partCode").GetString()));
        var ring = Line(kit, TestEngines.DrainRing);
        Assert.Equal(1, ring.GetProperty("needed").GetDecimal());
        Assert.Equal("one at the oil drain", Assert.Single(ring.GetProperty("reasons").EnumerateArray()).GetString());
        var oil = Line(kit, TestEngines.Oil);
        Assert.Equal("3200 ml for engine oil and filter", Assert.Single(oil.GetProperty("reasons").EnumerateArray()).GetString());
        Assert.Equal(0, oil.GetProperty("shortBy").GetDecimal());
        Assert.Equal(1, Line(kit, TestEngines.CoverGasket).GetProperty("haveReady").GetDecimal());
    }

    [Fact]
    public async Task A_reservation_holds_the_kit_once_however_often_it_is_asked_for_and_lets_it_go()
    {
        var visit = await app.Booked();

        await Reserve(visit.Number);
        await Reserve(visit.Number);

        Assert.Equal(
            [(TestEngines.CoverGasket, 1m), (TestEngines.Oil, 3200m), (TestEngines.OilFilter, 1m), (TestEngines.PlugWellRing, 2m), (TestEngines.DrainRing, 1m)],
            await HeldBy(visit.Number));
        Assert.Equal(5, await app.Look(db => db.StockMovements.CountAsync(m => m.JobCardNumber == visit.Number, Ct)));

        await app.Look(async db =>
        {
            await KitReservations.Release(db, visit.Number, Advisor, app.Clock, Ct);
            return true;
        });

        Assert.Empty(await HeldBy(visit.Number));
    }

    [Fact]
    public async Task Eight_visits_at_once_never_reserve_more_than_is_there()
    {
        var specification = OneRing("ring-race");
        await Stock("ring-race", 3);
        var visits = new List<TestVisit>();
        for (var i = 0; i < 8; i++)
        {
            visits.Add(await app.Booked(new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain }, specification));
        }

        var advisor = await app.As(Roles.Advisor);
        var answers = await Task.WhenAll(visits.Select(v => advisor.PostAsync(new Uri($"{v.Api}/kit/reservation", UriKind.Relative), null, Ct)));

        Assert.All(answers, a => Assert.Equal(HttpStatusCode.OK, a.StatusCode));
        var balance = await app.Look(db => Balance(db, "ring-race").SingleAsync(Ct));
        Assert.Equal((3m, 3m), (balance.OnHand, balance.Reserved));
        var shorts = new List<decimal>();
        foreach (var visit in visits)
        {
            shorts.Add(Line(await Kit(advisor, visit), "ring-race").GetProperty("shortBy").GetDecimal());
        }

        Assert.Equal(3, shorts.Count(s => s == 0));
        Assert.Equal(5, shorts.Count(s => s == 1));
    }

    [Fact]
    public async Task A_part_that_the_stores_do_not_know_is_short_and_says_so()
    {
        var visit = await app.Booked(
            new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain }, OneRing("ring-nobody-keeps"));

        var ring = Line(await Kit(await app.As(Roles.Advisor), visit), "ring-nobody-keeps");
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open($"{visit.Pages}/kit");

        Assert.Equal(JsonValueKind.Null, ring.GetProperty("name").ValueKind);
        Assert.Equal(1, ring.GetProperty("shortBy").GetDecimal());
        Assert.Contains("not among the parts of the stores", page.MainText, StringComparison.Ordinal);
        Assert.Contains("short by 1", page.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_card_that_was_short_reserves_from_the_page_what_came_in()
    {
        var code = "ring-late";
        await Stock(code, 0);
        var visit = await app.Booked(new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain }, OneRing(code));
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var open = await pages.Open($"{visit.Pages}/kit");
        Assert.Contains("short by 1", open.MainText, StringComparison.Ordinal);
        await Stock(code, 1);

        var sent = await pages.Send(open, $"{visit.Pages}/kit", [], "#reserve");

        Assert.Equal($"{visit.Pages}/kit", sent.Location);
        var after = await pages.Open(sent.Location!);
        Assert.Contains("The whole kit is reserved.", after.MainText, StringComparison.Ordinal);
        Assert.DoesNotContain("short by", after.MainText, StringComparison.Ordinal);
        Assert.Null(after.Html.QuerySelector("#reserve"));
        Assert.Equal([(code, 1m)], (await HeldBy(visit.Number)).Where(h => h.Code == code));
    }

    [Fact]
    public async Task The_same_reservation_sent_again_is_answered_the_same()
    {
        var visit = await app.Booked();
        var advisor = await app.As(Roles.Advisor);

        var answers = new List<string>();
        for (var sent = 0; sent < 2; sent++)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, $"{visit.Api}/kit/reservation");
            request.Headers.Add("Idempotency-Key", "reserve-once");
            var answer = await advisor.SendAsync(request, Ct);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            answers.Add(await answer.Content.ReadAsStringAsync(Ct));
        }

        Assert.Equal(answers[0], answers[1]);
    }

    [Fact]
    public async Task A_closed_card_reserves_nothing()
    {
        var visit = await app.Booked();
        await app.Look(db => db.JobCards.Where(c => c.Number == visit.Number)
            .ExecuteUpdateAsync(c => c.SetProperty(x => x.State, JobCardState.Cancelled), Ct));

        var answer = await (await app.As(Roles.Advisor)).PostAsync(new Uri($"{visit.Api}/kit/reservation", UriKind.Relative), null, Ct);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("is cancelled", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_kit_of_a_visit_that_is_only_thought_of_is_looked_up_too()
    {
        var engine = TestEngines.Twin();
        var items = engine.ServiceItems.ToDictionary(i => i.Code);

        var preview = await app.Look(async db => await KitOnShelf.Read(
            db, await KitCase.Of(db, engine, [items[TestEngines.OilService]], [items[TestEngines.Adjustment]], null, new(2026, 3, 2), Ct),
            null, closed: false, lacking: null, Ct));

        Assert.Contains(preview.Lines, l => l.PartCode == TestEngines.OilFilter && l is { Needed: 1, ShortBy: 0, Name: "Oil filter" });
        Assert.Contains(preview.Lines, l => l.PartCode == TestEngines.CoverGasket && l is { Needed: 0, HaveReady: 1 });
    }

    [Fact]
    public async Task No_such_card_is_not_found_on_page_and_api()
    {
        var answer = await (await app.As(Roles.Advisor)).GetAsync(new Uri("/api/v1/job-cards/999999/kit", UriKind.Relative), Ct);
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open("/job-cards/999999/kit");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, page.Status);
        Assert.Contains("Job card 999999 does not exist.", page.MainText, StringComparison.Ordinal);
    }

    private static EngineSpecification OneRing(string code) => TestEngines.Twin() with
    {
        Joints = [new Joint("sump-drain", "Oil drain", [TestEngines.DrainPlug], [new Seal(code, 1, SealPolicy.ReplaceAlways)])],
        ServiceItems = [TestEngines.Twin().ServiceItems.Single(i => i.Code == TestEngines.OilService) with { Parts = [] }],
    };

    private Task<bool> Reserve(int number) => app.Look(async db =>
    {
        await KitReservations.Reserve(db, number, Advisor, app.Clock, Ct);
        return true;
    });

    private Task<int> Stock(string code, decimal quantity) => app.Look(async db =>
    {
        var part = await db.Parts.SingleOrDefaultAsync(p => p.Code == code, Ct);
        if (part is null)
        {
            part = new Part
            {
                Id = Domain.NewId.At(app.Clock), Code = code, Name = $"Ring {code}", Kind = PartKind.SealingRing, Unit = PartUnit.Piece,
            };
            db.Parts.Add(part);
        }

        if (quantity > 0)
        {
            db.StockMovements.Add(new StockMovement
            {
                Id = Domain.NewId.At(app.Clock), PartId = part.Id, PlaceId = TestWorkshop.Shelf, Kind = MovementKind.Received,
                OnHandChange = quantity, ReservedChange = 0, MovedBy = TestWorkshop.Manager, MovedAt = app.Clock.Now,
            });
        }

        return await db.SaveChangesAsync(Ct);
    });

    private Task<List<(string Code, decimal Quantity)>> HeldBy(int number) => app.Look(async db =>
        (await (from m in db.StockMovements
                join p in db.Parts on m.PartId equals p.Id
                where m.JobCardNumber == number
                group m by p.Code into g
                where g.Sum(m => m.ReservedChange) != 0
                orderby g.Key
                select new { g.Key, Quantity = g.Sum(m => m.ReservedChange) }).ToListAsync(Ct))
        .OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (g.Key, g.Quantity)).ToList());

    private static IQueryable<StockBalance> Balance(WorkshopDbContext db, string code) =>
        from b in db.StockBalances join p in db.Parts on b.PartId equals p.Id where p.Code == code select b;

    private static JsonElement Line(JsonElement kit, string code) =>
        kit.GetProperty("lines").EnumerateArray().Single(l => l.GetProperty("partCode").GetString() == code);

    private static Task<JsonElement> Kit(HttpClient client, TestVisit visit) =>
        client.GetFromJsonAsync<JsonElement>($"{visit.Api}/kit", Ct);
}
