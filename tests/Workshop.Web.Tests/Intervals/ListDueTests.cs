using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Intervals;

/// <summary>At the test's clock it is 2 March 2026.</summary>
public sealed class ListDueTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly LocalDate Today = new(2026, 3, 2);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_row_says_distance_date_and_expectation_in_words_and_in_figures()
    {
        var motorcycle = await Add("DUE A", OdometerUnit.Miles, lastMiles: 9_000, new DueItem
        {
            MotorcycleId = default, ServiceItemCode = "chain", Name = "Chain", DueOn = Today.PlusDays(63), DueAt = Distance.FromMiles(10_000),
            ExpectedOn = Today.PlusDays(28), EarliestOn = Today.PlusDays(21), LatestOn = Today.PlusDays(40), RateBasis = RateBasis.OwnReadings,
            LastDoneOn = Today.PlusDays(-300), LastDoneAt = Distance.FromMiles(4_000), ComputedAt = app.Clock.Now,
            Left = Distance.FromMiles(1_000), ComesOn = Today.PlusDays(28), Advice = DueAdvice.First,
        });

        var row = Assert.Single(await Rows($"/api/v1/motorcycles/{motorcycle}/due"));

        Assert.Equal("at 10,000 mi, in 1,000 mi", row.GetProperty("byDistance").GetString());
        Assert.Equal("2026-05-04, in 9 weeks", row.GetProperty("byDate").GetString());
        Assert.Equal("2026-03-30 (2026-03-23 to 2026-04-11), by its own readings", row.GetProperty("expected").GetString());
        Assert.Equal("2025-05-06 at 4,000 mi", row.GetProperty("lastDone").GetString());
        Assert.Equal(16_093.44m, row.GetProperty("dueAtKm").GetDecimal());
        Assert.Equal(1_609.344m, row.GetProperty("leftKm").GetDecimal());
        Assert.Equal("ahead", row.GetProperty("state").GetString());
        Assert.Equal("Olga Owner", row.GetProperty("owner").GetString());
    }

    [Fact]
    public async Task Pages_follow_each_other_without_gap_or_repetition_soonest_first()
    {
        for (var i = 0; i < 5; i++)
        {
            // Two items of one day, so that the key must go on by motorcycle and item.
            await Add($"PAGE {i}", OdometerUnit.Kilometres, 0, Plain("a", 5 + (i / 3)), Plain("b", 5 + (i / 3)));
        }

        var seen = new List<string>();
        for (string? next = null, address = "/api/v1/due?take=3"; ;)
        {
            var page = await Json(address + (next is null ? "" : $"&after={Uri.EscapeDataString(next)}"));
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(Key));
            next = page.GetProperty("next").GetString();
            if (next is null)
            {
                break;
            }
        }

        Assert.True(seen.Count >= 10);
        Assert.Equal(seen.Distinct(), seen);
        Assert.Equal(seen.Order(StringComparer.Ordinal), seen);
        Assert.Equal((await Rows("/api/v1/due?take=500")).Select(Key), seen);
    }

    [Fact]
    public async Task Overdue_and_within_days_choose_by_the_workshops_day()
    {
        var motorcycle = await Add("WHEN", OdometerUnit.Kilometres, 0, Plain("yesterday", -1), Plain("today", 0), Plain("in-30", 30), Plain("in-31", 31));

        Assert.Equal(["yesterday"], Codes(await Rows("/api/v1/due?take=500&overdue=true"), motorcycle));
        Assert.Equal(["yesterday", "today", "in-30"], Codes(await Rows("/api/v1/due?take=500&withinDays=30"), motorcycle));
        Assert.Equal(["yesterday", "today", "in-30", "in-31"], Codes(await Rows("/api/v1/due?take=500"), motorcycle));
    }

    [Theory]
    [InlineData("after=nonsense", "after is \"nonsense\": send what an earlier page gave as next.")]
    [InlineData("withinDays=-1", "withinDays is -1: a whole number from 0 to 36525 is allowed.")]
    [InlineData("take=501", "take is 501: a whole number from 1 to 500 is allowed.")]
    public async Task Bad_input_names_field_value_and_what_is_allowed(string query, string sentence)
    {
        var answer = await (await app.As(Roles.Technician)).GetAsync($"/api/v1/due?{query}", Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(sentence, (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("detail").GetString());
    }

    [Fact]
    public async Task An_unknown_motorcycle_is_not_found() => Assert.Equal(
        HttpStatusCode.NotFound,
        (await (await app.As(Roles.Advisor)).GetAsync($"/api/v1/motorcycles/{TestWorkshop.Bay1}/due", Ct)).StatusCode);

    [Fact]
    public async Task What_a_bigger_item_swallows_is_said_with_its_motorcycle_only()
    {
        var small = Plain("small", 12);
        var motorcycle = await Add("SWALLOW", OdometerUnit.Kilometres, 0, Plain("big", 10), new DueItem
        {
            MotorcycleId = default, ServiceItemCode = "small", Name = "Small service", DueOn = small.DueOn, ExpectedOn = small.ExpectedOn,
            ComesOn = small.ComesOn, IncludedIn = "big", Advice = DueAdvice.Included, ComputedAt = app.Clock.Now,
        });

        Assert.Equal(["big"], Codes(await Rows("/api/v1/due?take=500"), motorcycle));
        var row = (await Rows($"/api/v1/motorcycles/{motorcycle}/due")).Single(r => r.GetProperty("code").GetString() == "small");
        Assert.Equal("done with big", row.GetProperty("proposal").GetString());
    }

    [Fact]
    public async Task The_front_door_leads_to_the_due_page() =>
        Assert.Equal("/due", (await (await TestPages.SignedIn(app, Roles.Advisor)).Open("/")).Location);

    private DueItem Plain(string code, int inDays) => new()
    {
        MotorcycleId = default, ServiceItemCode = code, Name = code, DueOn = Today.PlusDays(inDays), ExpectedOn = Today.PlusDays(inDays),
        ComesOn = Today.PlusDays(inDays), Advice = DueAdvice.Later, ComputedAt = app.Clock.Now,
    };

    private static string Key(JsonElement row) =>
        $"{row.GetProperty("expectedOn")} {row.GetProperty("motorcycleId")} {row.GetProperty("code")}";

    private static IEnumerable<string> Codes(IEnumerable<JsonElement> rows, Guid motorcycle) => rows
        .Where(row => row.GetProperty("motorcycleId").GetGuid() == motorcycle).Select(row => row.GetProperty("code").GetString()!);

    private async Task<IReadOnlyList<JsonElement>> Rows(string address) => [.. (await Json(address)).GetProperty("rows").EnumerateArray()];

    private async Task<JsonElement> Json(string address) =>
        await (await app.As(Roles.Advisor)).GetFromJsonAsync<JsonElement>(address, Ct);

    private Task<Guid> Add(string registration, OdometerUnit unit, int lastMiles, params DueItem[] items) => app.Look(async db =>
    {
        var now = app.Clock.Now;
        var (id, owner) = (NewId.At(now), NewId.At(now));
        var odometer = new Odometer { Id = NewId.At(now), MotorcycleId = id, Unit = unit, FittedOn = new LocalDate(2020, 1, 1) };
        db.Add(new Person { Id = owner, Name = "Olga Owner" });
        db.Add(new Motorcycle { Id = id, Registration = registration, Maker = "Testwerk", Model = "Twin", ModelYear = 2020, OwnerId = owner });
        db.Add(odometer);
        db.Add(new OdometerReading
        {
            Id = NewId.At(now), OdometerId = odometer.Id, MotorcycleId = id, ReadOn = Today.PlusDays(-10), Count = lastMiles, Unit = unit,
            Distance = odometer.DistanceAt(lastMiles), MeasuredBy = TestWorkshop.Advisor, EnteredBy = TestWorkshop.Advisor, EnteredAt = now,
        });
        foreach (var item in items)
        {
            var row = db.Entry(item);
            row.Property(i => i.MotorcycleId).CurrentValue = id;
            row.State = Microsoft.EntityFrameworkCore.EntityState.Added;
        }

        await db.SaveChangesAsync(Ct);
        return id;
    });
}
