using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Motorcycles;
using Xunit;

namespace Workshop.Web.Tests.Intervals;

/// <summary>At the test's clock it is 2 March 2026; every motorcycle is in service since 1 March 2024.</summary>
public sealed class DueVisitsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_motorcycle_is_one_visit_with_what_is_done_in_it_first()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await advisor.Odometer(motorcycle, 20_000, "2026-03-01");

        var visit = (await Visits(advisor, "take=500")).Single(v => Id(v) == motorcycle);

        Assert.Equal(["first", "later"], visit.GetProperty("items").EnumerateArray().Select(i => i.GetProperty("advice").GetString()));
        Assert.Equal("2024-04-06", visit.GetProperty("comesOn").GetString());
        Assert.Equal(30, visit.GetProperty("labourMinutes").GetInt32());
        Assert.Equal(-19_000, visit.GetProperty("leftKm").GetDecimal());
    }

    [Fact]
    public async Task Filters_choose_by_week_distance_and_engine_model()
    {
        var advisor = await app.As(Roles.Advisor);
        var (soon, later) = (await advisor.AddMotorcycle(), await advisor.AddMotorcycle());
        foreach (var motorcycle in new[] { soon, later })
        {
            await Did(advisor, motorcycle, TestEngines.OilService, "2026-02-01", 1_000);
        }

        await advisor.Odometer(soon, 10_600, "2026-03-01");

        Assert.Contains(soon, (await Visits(advisor, "withinKm=400")).Select(Id));
        Assert.DoesNotContain(later, (await Visits(advisor, "withinKm=400")).Select(Id));
        Assert.Contains(later, (await Visits(advisor, "withinWeeks=60")).Select(Id));
        Assert.DoesNotContain(later, (await Visits(advisor, "withinWeeks=4")).Select(Id));
        Assert.Contains(later, (await Visits(advisor, $"engineModelId={TestWorkshop.EngineModel}")).Select(Id));
        Assert.Empty(await Visits(advisor, $"engineModelId={TestWorkshop.Bay1}"));
        Assert.Empty(await Visits(advisor, "tool=any"));
    }

    [Fact]
    public async Task Pages_of_visits_follow_each_other_without_gap_or_repetition()
    {
        var advisor = await app.As(Roles.Advisor);
        for (var i = 0; i < 5; i++)
        {
            await advisor.AddMotorcycle();
        }

        var (seen, next) = (new List<Guid>(), (string?)"");
        while (next is not null)
        {
            var page = await advisor.GetFromJsonAsync<JsonElement>($"/api/v1/due/visits?take=2&after={Uri.EscapeDataString(next)}", Ct);
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(Id));
            next = page.GetProperty("next").GetString();
        }

        Assert.True(seen.Count >= 5);
        Assert.Equal(seen.Distinct(), seen);
        Assert.Equal((await Visits(advisor, "take=500")).Select(Id), seen);
    }

    [Theory]
    [InlineData("after=2026-01-01", "after is \"2026-01-01\": send what an earlier page gave as next.")]
    [InlineData("withinWeeks=521", "withinWeeks is 521: a whole number from 0 to 520 is allowed.")]
    [InlineData("withinKm=-1", "withinKm is -1: a whole number from 0 to 1000000 is allowed.")]
    public async Task Bad_input_names_field_value_and_what_is_allowed(string query, string sentence)
    {
        var answer = await (await app.As(Roles.Technician)).GetAsync($"/api/v1/due/visits?{query}", Ct);

        Assert.Equal((HttpStatusCode.BadRequest, sentence), (answer.StatusCode, await answer.Detail()));
    }

    [Fact]
    public async Task What_was_put_off_comes_up_on_its_day_with_reason_and_name_and_is_overdue_all_the_same()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var off = await PutOff(advisor, motorcycle, TestEngines.OilService, "2026-06-01", "The owner wants it after the journey");

        Assert.Equal(HttpStatusCode.OK, off.StatusCode);
        var row = await advisor.DueOf(motorcycle, TestEngines.OilService);
        Assert.Equal(("2026-06-01", "overdue"), (row.GetProperty("comesOn").GetString(), row.GetProperty("state").GetString()));
        Assert.Equal(
            "until 2026-06-01: The owner wants it after the journey (Ada Visor, 2026-03-02)", row.GetProperty("putOff").GetProperty("spoken").GetString());
        Assert.DoesNotContain(motorcycle, (await Visits(advisor, "overdue=true&take=500")).Select(Id));

        app.Clock.Now += NodaTime.Duration.FromMinutes(1);
        await PutOff(advisor, motorcycle, TestEngines.OilService, null, "Changed his mind");
        Assert.Equal(JsonValueKind.Null, (await advisor.DueOf(motorcycle, TestEngines.OilService)).GetProperty("putOff").ValueKind);
        Assert.Contains(motorcycle, (await Visits(advisor, "overdue=true&take=500")).Select(Id));
        app.Clock.Now = TestWorkshop.Start;
    }

    [Fact]
    public async Task What_is_done_after_it_was_put_off_is_no_longer_put_off()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await PutOff(advisor, motorcycle, TestEngines.OilService, "2026-06-01", "No time");

        await Did(advisor, motorcycle, TestEngines.OilService, "2026-03-02", 5_000);

        var row = await advisor.DueOf(motorcycle, TestEngines.OilService);
        Assert.Equal(JsonValueKind.Null, row.GetProperty("putOff").ValueKind);
        Assert.Equal("2027-03-02", row.GetProperty("dueOn").GetString());
    }

    [Theory]
    [InlineData("nothing", "2026-06-01", "Why", "item is \"nothing\": the motorcycle is due for")]
    [InlineData(TestEngines.OilService, "2026-03-02", "Why", "until is 2026-03-02: a day after today, 2026-03-02,")]
    [InlineData(TestEngines.OilService, "2029-06-01", "Why", "until is 2029-06-01: a day after today, 2026-03-02, and not after 2028-03-02")]
    [InlineData(TestEngines.OilService, null, "Why", "until is empty, but the item was not put off")]
    [InlineData(TestEngines.OilService, "2026-06-01", "", "reason is empty: give why it is done later.")]
    public async Task A_put_off_that_cannot_be_says_why(string item, string? until, string reason, string says)
    {
        var advisor = await app.As(Roles.Advisor);

        var answer = await PutOff(advisor, await advisor.AddMotorcycle(), item, until, reason);

        Assert.StartsWith(says, await answer.Detail(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_groups_by_motorcycle_offers_a_visit_and_a_put_off_and_gives_the_list_as_a_file()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var registration = (await advisor.Motorcycle(motorcycle)).GetProperty("registration").GetString()!;
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var put = await pages.Send($"/motorcycles/{motorcycle}/put-off", new()
        {
            ["Input.Item"] = TestEngines.ValveCheck, ["Input.Until"] = "2026-09-01", ["Input.Reason"] = "With the tyres",
        }, "form.fields");
        var page = await pages.Open("/due?show=overdue");
        var group = page.Html.QuerySelectorAll("tbody").Single(b => b.QuerySelector($"a[href='/motorcycles/{motorcycle}']") is not null);
        var file = await (await app.As(Roles.Advisor)).GetAsync("/due?handler=Csv", Ct);

        Assert.Equal($"/motorcycles/{motorcycle}#due", put.Location);
        Assert.Contains("put off until 2026-09-01: With the tyres", (await pages.Open($"/motorcycles/{motorcycle}")).MainText, StringComparison.Ordinal);
        Assert.Contains("One visit, 30 min of labour", group.TextContent, StringComparison.Ordinal);
        Assert.NotNull(group.QuerySelector($"a[href='/book?motorcycle={motorcycle}']"));
        Assert.Contains("overdue", group.TextContent, StringComparison.Ordinal);
        Assert.Equal("text/csv", file.Content.Headers.ContentType!.MediaType);
        Assert.Contains($"{registration},Testwerk Twin 600,Olga Owner,Engine oil and filter,2024-05-13,first,2024-09-01,km,1000,1000,", await file.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await pages.Open("/due?after=nonsense")).Status);
    }

    [Fact]
    public async Task The_intervals_of_an_engine_model_are_answered_in_figures_and_in_words()
    {
        var answer = await (await app.As(Roles.Technician)).GetFromJsonAsync<JsonElement>($"/api/v1/engine-models/{TestWorkshop.EngineModel}/intervals", Ct);

        var oil = answer.GetProperty("items").EnumerateArray().Single(i => i.GetProperty("code").GetString() == TestEngines.OilService);
        Assert.Equal("every 10,000 km or 12 months, first at 1,000 km or 6 months", oil.GetProperty("spoken").GetString());
        Assert.Equal(10_000, oil.GetProperty("interval").GetProperty("everyKm").GetDecimal());
        Assert.Equal("fromLastDone", oil.GetProperty("interval").GetProperty("counting").GetString());
    }

    private static Guid Id(JsonElement visit) => visit.GetProperty("motorcycleId").GetGuid();

    private static async Task<List<JsonElement>> Visits(HttpClient client, string query) =>
        [.. (await client.GetFromJsonAsync<JsonElement>($"/api/v1/due/visits?{query}", Ct)).GetProperty("rows").EnumerateArray()];

    private static Task<HttpResponseMessage> PutOff(HttpClient client, Guid motorcycle, string item, string? until, string reason) =>
        client.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/put-offs", new { item, until, reason }, Ct);

    private static async Task Did(HttpClient client, Guid motorcycle, string item, string doneOn, int odometer) => Assert.Equal(
        HttpStatusCode.OK,
        (await client.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/done-items", new { items = new[] { item }, doneOn, odometer }, Ct)).StatusCode);
}
