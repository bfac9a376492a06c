using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using AngleSharp.Dom;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Diary;

/// <summary>A database of its own for each test: what stands in a week is counted.</summary>
public sealed class DiaryTests(PostgresServer server) : IAsyncLifetime
{
    private readonly WorkshopApp app = new(server);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => app.InitializeAsync();

    public ValueTask DisposeAsync() => app.DisposeAsync();

    [Fact]
    public async Task A_visit_stands_in_the_day_by_bay_and_by_technician_in_drawing_and_table_with_a_link_that_moves_it()
    {
        var advisor = await app.As(Roles.Advisor);
        var number = await (await advisor.Book(await advisor.AddMotorcycle("DIARY 1"), Instant.FromUtc(2026, 3, 10, 8, 0))).Number();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        foreach (var by in new[] { "bays", "technicians" })
        {
            var page = await pages.Open($"/diary?date=2026-03-10&by={by}");
            Assert.NotEmpty(page.Html.QuerySelectorAll($"svg rect[data-card='{number}']"));
            var row = Assert.Single(page.Html.QuerySelectorAll(".diary-table tbody tr"), r => r.TextContent.Contains("DIARY 1", StringComparison.Ordinal));
            Assert.Contains("work", row.TextContent, StringComparison.Ordinal);
            Assert.NotNull(row.QuerySelector($"a[href='/job-cards/{number}/plan']"));
        }
    }

    [Fact]
    public async Task A_technician_reads_the_diary_and_moves_nothing()
    {
        var advisor = await app.As(Roles.Advisor);
        await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 10, 8, 0))).Number();

        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open("/diary/week?week=2026-W11&by=technicians");

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.NotEmpty(page.Html.QuerySelectorAll("svg rect.bar"));
        Assert.Empty(page.Html.QuerySelectorAll("svg rect[data-card]"));
        Assert.Empty(page.Html.QuerySelectorAll("main a[href$='/plan']"));
        Assert.Empty(page.Html.QuerySelectorAll("script[src*=diary]"));
    }

    [Fact]
    public async Task What_stands_in_an_absence_says_so_in_drawing_table_and_api_until_it_is_withdrawn()
    {
        var (advisor, manager) = (await app.As(Roles.Advisor), await app.As(Roles.Manager));
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 10, 8, 0))).Number();
        (await manager.PostAsJsonAsync($"/api/v1/resources/{TestWorkshop.TechnicianResource}/absences", new { reason = "training", firstDay = "2026-03-10" }, Ct))
            .EnsureSuccessStatusCode();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var page = await pages.Open("/diary?date=2026-03-10&by=technicians");

        Assert.Contains(page.Html.QuerySelectorAll(".diary-table strong"), s => s.TextContent == "stands in an absence");
        Assert.NotEmpty(page.Html.QuerySelectorAll("svg rect.bar.marked"));
        Assert.Contains("training", page.Html.QuerySelector("svg.phase-bars")!.TextContent, StringComparison.Ordinal);
        var technician = await Technician(advisor, "2026-03-10", "2026-03-11");
        Assert.Empty(technician.GetProperty("works").EnumerateArray());
        Assert.All(technician.GetProperty("taken").EnumerateArray(), t => Assert.Equal("absent", t.GetProperty("why").GetString()));
        Assert.Equal(number, technician.GetProperty("taken")[0].GetProperty("jobCardNumber").GetInt32());
    }

    [Fact]
    public async Task Breaks_are_ground_and_hours_are_those_of_the_technician()
    {
        var manager = await app.As(Roles.Manager);
        var address = $"/api/v1/resources/{TestWorkshop.TechnicianResource}";
        var days = new[] { new { weekday = "tuesday", startsAt = "07:00:00", endsAt = "16:00:00", breaks = new[] { new { startsAt = "12:00:00", endsAt = "12:30:00" } } } };
        (await manager.Change($"{address}/hours", new { asOpeningHours = false, days }, address)).EnsureSuccessStatusCode();

        var week = await Technician(manager, "2026-03-09", "2026-03-16");

        Assert.Equal(
            ["2026-03-10T06:00:00Z to 2026-03-10T11:00:00Z", "2026-03-10T11:30:00Z to 2026-03-10T15:00:00Z"],
            week.GetProperty("works").EnumerateArray().Select(w => $"{w.GetProperty("from").GetString()} to {w.GetProperty("until").GetString()}"));
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open("/diary?date=2026-03-10&by=technicians");
        Assert.Contains("works 07:00 to 12:00, 12:30 to 16:00", page.MainText, StringComparison.Ordinal);
        Assert.Contains("07:00", page.Html.QuerySelector("svg.phase-bars")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_visit_whose_motorcycle_has_not_come_is_marked_by_word()
    {
        var advisor = await app.As(Roles.Advisor);
        await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 10, 8, 0))).Number();
        app.Clock.Now = Instant.FromUtc(2026, 3, 10, 8, 30);

        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open("/diary?date=2026-03-10");

        Assert.Contains(page.Html.QuerySelectorAll(".diary-table strong"), s => s.TextContent == "late: not here yet");
    }

    [Fact]
    public async Task Weeks_are_turned_by_their_number_across_the_new_year()
    {
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var last = await pages.Open("/diary/week?week=2026-W53");

        Assert.Contains("Diary, week 53 of 2026", last.MainText, StringComparison.Ordinal);
        Assert.Equal("/diary/week?week=2027-W01&by=bays", last.Html.QuerySelector("a[rel=next]")!.GetAttribute("href"));
        Assert.Equal("/diary/week?week=2026-W52&by=bays", last.Html.QuerySelector("a[rel=prev]")!.GetAttribute("href"));
        Assert.Contains("Diary, week 10 of 2026", (await pages.Open("/diary/week")).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_day_and_no_week_is_said_and_today_is_shown()
    {
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var advisor = await app.As(Roles.Advisor);

        var day = await pages.Open("/diary?date=tomorrow");
        var week = await pages.Open("/diary/week?week=2025-W53");
        var spans = await advisor.GetAsync(new Uri("/api/v1/diary?from=2026-03-10&until=2026-03-10", UriKind.Relative), Ct);

        Assert.Equal((HttpStatusCode.BadRequest, "Day is \"tomorrow\": a day such as 2026-03-02 is allowed."), (day.Status, Assert.Single(day.Faults)));
        Assert.Equal((HttpStatusCode.BadRequest, "Week is \"2025-W53\": a week of that year such as 2026-W49 is allowed."), (week.Status, Assert.Single(week.Faults)));
        Assert.Contains("Diary, Monday 2026-03-02", day.MainText, StringComparison.Ordinal);
        Assert.Equal("until is 2026-03-10: a day after 2026-03-10, at most 35 days on, is allowed.", await spans.Sentence());
    }

    private static async Task<JsonElement> Technician(HttpClient client, string from, string until) =>
        (await (await client.GetAsync(new Uri($"/api/v1/diary?from={from}&until={until}", UriKind.Relative), Ct)).Json())
            .GetProperty("resources").EnumerateArray().Single(r => r.GetProperty("kind").GetString() == "technician");
}
