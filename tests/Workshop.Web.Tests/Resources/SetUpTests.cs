using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Resources;

/// <summary>A database of its own for each test: hours and absences of one would stand in the way of another.</summary>
public sealed class SetUpTests(PostgresServer server) : IAsyncLifetime
{
    private static readonly string Technician = $"/api/v1/resources/{TestWorkshop.TechnicianResource}";

    private readonly WorkshopApp app = new(server);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => app.InitializeAsync();

    public ValueTask DisposeAsync() => app.DisposeAsync();

    [Fact]
    public async Task An_absence_over_booked_visits_is_accepted_and_names_them_until_it_is_withdrawn()
    {
        var (manager, advisor) = (await app.As(Roles.Manager), await app.As(Roles.Advisor));
        var hit = await (await advisor.Book(await advisor.AddMotorcycle("HIT 1"), Instant.FromUtc(2026, 3, 10, 9, 0))).Number();
        await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 12, 9, 0))).Number();

        var entered = await manager.PostAsJsonAsync($"{Technician}/absences", new { reason = "leave", firstDay = "2026-03-09", lastDay = "2026-03-11" }, Ct);

        Assert.Equal(HttpStatusCode.Created, entered.StatusCode);
        var answer = await entered.Json();
        Assert.Equal("2026-03-08T23:00:00Z", answer.GetProperty("startsAt").GetString());
        var standing = Assert.Single(answer.GetProperty("standing").EnumerateArray());
        Assert.Equal((hit, "HIT 1", "absent"), (
            standing.GetProperty("jobCardNumber").GetInt32(), standing.GetProperty("registration").GetString(), standing.GetProperty("why").GetString()));
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open($"/people/resources/{TestWorkshop.TechnicianResource}");
        Assert.Contains("stands in an absence", page.MainText, StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector($"main a[href='/job-cards/{hit}/plan']"));

        var absence = (await Read(manager, Technician)).GetProperty("absences")[0];
        var withdrawn = await manager.Put(
            $"{Technician}/absences/{absence.GetProperty("id").GetGuid()}/withdrawal", new { }, $"\"{absence.GetProperty("rowVersion").GetUInt32()}\"");
        Assert.Equal(HttpStatusCode.OK, withdrawn.StatusCode);
        var after = await Read(manager, Technician);
        Assert.Empty(after.GetProperty("standing").EnumerateArray());
        Assert.NotEqual(JsonValueKind.Null, after.GetProperty("absences")[0].GetProperty("withdrawnAt").ValueKind);
    }

    [Fact]
    public async Task What_is_wrong_with_an_absence_is_said()
    {
        var manager = await app.As(Roles.Manager);
        async Task<string> Said(object body) => await (await manager.PostAsJsonAsync($"{Technician}/absences", body, Ct)).Sentence();
        (await manager.PostAsJsonAsync($"{Technician}/absences", new { reason = "leave", firstDay = "2026-03-09" }, Ct)).EnsureSuccessStatusCode();

        Assert.Equal("lastDay is 2026-03-08, before firstDay, 2026-03-09; the same or a later day is allowed.",
            await Said(new { reason = "leave", firstDay = "2026-03-09", lastDay = "2026-03-08" }));
        Assert.Equal("untilTime is 09:00, not after fromTime, 10:00, of the same day; a later time is allowed.",
            await Said(new { reason = "leave", firstDay = "2026-03-09", fromTime = "10:00:00", untilTime = "09:00:00" }));
        Assert.Equal("reason is repair: of a technician leave, training, otherAbsence are allowed.",
            await Said(new { reason = "repair", firstDay = "2026-03-19" }));
        Assert.Equal("TN is away already from 2026-03-09 00:00 until 2026-03-10 00:00 (leave); withdraw that one, or give a span beside it.",
            await Said(new { reason = "training", firstDay = "2026-03-09", fromTime = "12:00:00" }));
        Assert.Equal("fromTime is 02:30: on 2026-03-29 the clocks skip that time; give one before or after.",
            await Said(new { reason = "training", firstDay = "2026-03-29", fromTime = "02:30:00" }));
        Assert.Equal("firstDay is empty: give the first day away.", await Said(new { reason = "leave" }));
    }

    [Fact]
    public async Task Hours_and_breaks_are_set_whole_and_visits_that_they_leave_no_room_for_are_named()
    {
        var (manager, advisor) = (await app.As(Roles.Manager), await app.As(Roles.Advisor));
        var hit = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 10, 11, 0))).Number();
        var days = new[] { new { weekday = "tuesday", startsAt = "08:00:00", endsAt = "16:00:00", breaks = new[] { new { startsAt = "12:00:00", endsAt = "12:30:00" } } } };

        var set = await manager.Change($"{Technician}/hours", new { asOpeningHours = false, days }, Technician);
        var stale = await manager.Put($"{Technician}/hours", new { asOpeningHours = true, days = Array.Empty<object>() }, "\"1\"");

        Assert.Equal(hit, Assert.Single((await set.Json()).GetProperty("standing").EnumerateArray()).GetProperty("jobCardNumber").GetInt32());
        Assert.Equal(HttpStatusCode.PreconditionFailed, stale.StatusCode);
        var read = await Read(manager, Technician);
        Assert.Equal("12:30:00", read.GetProperty("days")[0].GetProperty("breaks")[0].GetProperty("endsAt").GetString());
        Assert.Equal("notAtWork", read.GetProperty("standing")[0].GetProperty("why").GetString());
        Assert.Equal(HttpStatusCode.OK, (await manager.Change($"{Technician}/hours", new { asOpeningHours = true, days = Array.Empty<object>() }, Technician)).StatusCode);
    }

    [Fact]
    public async Task By_the_page_a_week_with_a_wrong_break_comes_back_as_it_was_typed()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var address = $"/people/resources/{TestWorkshop.TechnicianResource}";
        var typed = new Dictionary<string, string?>
        {
            ["Hours.Days[0].Breaks[0].StartsAt"] = "12:00", ["Hours.Days[0].Breaks[0].EndsAt"] = "12:30",
            ["Hours.Days[0].Breaks[1].StartsAt"] = "12:15", ["Hours.Days[0].Breaks[1].EndsAt"] = "12:45",
        };

        var refused = await pages.Send(address, typed, "#hours");
        var saved = await pages.Send(refused, address, new() { ["Hours.Days[0].Breaks[1].StartsAt"] = "15:00", ["Hours.Days[0].Breaks[1].EndsAt"] = "15:15" }, "#hours");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Equal("days[0].breaks[1] is 12:15 to 12:45: it overlaps the break 12:00 to 12:30 of that Monday; breaks follow each other.", Assert.Single(refused.Faults));
        Assert.Equal("12:15", refused.ValueOf("Hours.Days[0].Breaks[1].StartsAt"));
        Assert.NotNull(refused.Html.GetElementById(refused.Html.QuerySelector(".faults a")!.GetAttribute("href")![1..]));
        Assert.Equal(HttpStatusCode.Redirect, saved.Status);
        Assert.Equal("15:15", (await pages.Open(address)).ValueOf("Hours.Days[0].Breaks[1].EndsAt"));
    }

    [Fact]
    public async Task Other_opening_hours_another_zone_and_a_holiday_name_the_visits_that_now_lie_outside()
    {
        var (manager, advisor) = (await app.As(Roles.Manager), await app.As(Roles.Advisor));
        var late = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 10, 14, 0))).Number();
        var early = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 11, 7, 30))).Number();
        var profile = new { name = "Test workshop", timeZone = "Europe/Vienna", arrivalMinutes = 15, warmRunMinutes = 15, testRideMinutes = 20, handOverMinutes = 15 };

        var shorter = await manager.Change("/api/v1/workshop/opening-hours", new { days = Week("08:00:00", "16:00:00") }, "/api/v1/workshop");
        Assert.Equal([late], Cards(await shorter.Json()));
        var usual = await manager.Change("/api/v1/workshop/opening-hours", new { days = Week("08:00:00", "17:00:00") }, "/api/v1/workshop");
        Assert.Empty(Cards(await usual.Json()));
        var west = await manager.Change("/api/v1/workshop", profile with { timeZone = "Europe/London" });
        Assert.Equal([early], Cards(await west.Json()));
        var back = await manager.Change("/api/v1/workshop", profile);
        Assert.Empty(Cards(await back.Json()));
        var holiday = await manager.PostAsJsonAsync("/api/v1/workshop/holidays", new { holidays = new[] { new { day = "2026-03-11", name = "Town fair" } } }, Ct);
        Assert.Equal([early], Cards(await holiday.Json()));
        var removed = await manager.Send(HttpMethod.Delete, "/api/v1/workshop/holidays/2026-03-11", null, await manager.Tag("/api/v1/workshop"));
        Assert.Equal(HttpStatusCode.OK, removed.StatusCode);
        Assert.Empty((await Read(manager, "/api/v1/workshop")).GetProperty("holidays").EnumerateArray());
    }

    [Fact]
    public async Task What_is_wrong_with_the_workshop_is_said()
    {
        var manager = await app.As(Roles.Manager);
        var zone = await manager.Change("/api/v1/workshop",
            new { name = "W", timeZone = "Europe/Nowhere", arrivalMinutes = 500, warmRunMinutes = 15, testRideMinutes = 20, handOverMinutes = 15 });
        var hours = await manager.Change("/api/v1/workshop/opening-hours",
            new { days = new[] { new { weekday = "monday", opensAt = "17:00:00", closesAt = "08:00:00" } } }, "/api/v1/workshop");

        var sentence = await zone.Sentence();
        Assert.Contains("timeZone is \"Europe/Nowhere\": a zone of the tz database such as Europe/Vienna is allowed.", sentence, StringComparison.Ordinal);
        Assert.Contains("arrivalMinutes is 500: a whole number from 0 to 480 is allowed.", sentence, StringComparison.Ordinal);
        Assert.Equal("days[0].closesAt is 08:00, which is not after days[0].opensAt, 17:00; a later time of the same day is allowed.", await hours.Sentence());
        Assert.Equal(HttpStatusCode.PreconditionRequired, (await manager.Put("/api/v1/workshop", new { }, null)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await app.As(Roles.Advisor)).Put("/api/v1/workshop", new { }, "\"1\"")).StatusCode);
    }

    [Fact]
    public async Task Holidays_of_several_years_are_pasted_as_a_list_all_of_them_or_none()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var wrong = await pages.Send("/people/workshop", new() { ["HolidayList"] = "2027-01-01 New Year\n\nLabour Day 1 May" }, "#holidays");
        var right = await pages.Send("/people/workshop", new() { ["HolidayList"] = "2027-01-01 New Year\r\n2028-01-01\tNew Year\r\n2027-05-01;Labour Day" }, "#holidays");

        Assert.Equal("Line 3 is \"Labour Day 1 May\": a day and its name, such as 2027-01-01 New Year, are allowed.", Assert.Single(wrong.Faults));
        Assert.Equal("2027-01-01 New Year\n\nLabour Day 1 May", wrong.ValueOf("HolidayList")?.TrimStart());
        Assert.Equal(HttpStatusCode.Redirect, right.Status);
        var page = await pages.Open("/people/workshop");
        Assert.Contains("Holidays: 3 added, 0 renamed, 0 as they were.", page.MainText, StringComparison.Ordinal);
        Assert.Equal(3, page.Html.QuerySelectorAll("form[action*=Remove]").Length);
    }

    [Fact]
    public async Task Resources_are_entered_and_a_technician_is_a_person_and_only_once()
    {
        var manager = await app.As(Roles.Manager);
        async Task<HttpResponseMessage> Post(object body) => await manager.PostAsJsonAsync("/api/v1/resources", body, Ct);

        Assert.Equal(HttpStatusCode.Created, (await Post(new { kind = "bay", name = "Bay 3", capabilities = new[] { "lift", "exhaust extraction" } })).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Post(new { kind = "specialTool", name = "Jig, second copy", capabilities = new[] { "cam-alignment-jig" } })).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Post(new { kind = "technician", name = "AV", personId = TestWorkshop.Advisor, grade = "master" })).StatusCode);
        Assert.Equal("personId is empty: give the person whom the technician is.", await (await Post(new { kind = "technician", name = "ZZ" })).Sentence());
        Assert.Equal($"personId is {TestWorkshop.Technician}, who is the technician TN already; a person is one technician.",
            await (await Post(new { kind = "technician", name = "T2", personId = TestWorkshop.Technician })).Sentence());
        Assert.Equal("name is \"Bay 1\": another bay is called that; choose another name.", await (await Post(new { kind = "bay", name = "Bay 1" })).Sentence());
        Assert.StartsWith("capabilities is empty: give the code", await (await Post(new { kind = "specialTool", name = "Puller" })).Sentence(), StringComparison.Ordinal);
        Assert.Equal("grade is given, but only technicians have one; leave it out.", await (await Post(new { kind = "bay", name = "B", grade = "master" })).Sentence());
        var bays = (await Read(manager, "/api/v1/resources?kind=bay")).GetProperty("resources");
        Assert.Equal(["Bay 1", "Bay 2", "Bay 3"], bays.EnumerateArray().Select(b => b.GetProperty("name").GetString()));
    }

    [Fact]
    public async Task What_is_booked_is_not_retired_and_what_is_retired_comes_back()
    {
        var (manager, advisor) = (await app.As(Roles.Manager), await app.As(Roles.Advisor));
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 10, 9, 0))).Number();
        var (bay1, bay2) = ($"/api/v1/resources/{TestWorkshop.Bay1}", $"/api/v1/resources/{TestWorkshop.Bay2}");

        var refused = await manager.Change(bay1, new { name = "Bay 1", capabilities = new[] { "lift" }, retired = true });
        var retired = await manager.Change(bay2, new { name = "Bay 2", retired = true });
        var restored = await manager.Change(bay2, new { name = "Bay 2 b", retired = false });

        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Equal($"retired: Bay 1 is booked on job card {number}; move or cancel what stands on it first.", await refused.Sentence());
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (retired.StatusCode, restored.StatusCode));
    }

    private static IEnumerable<object> Week(string opensAt, string closesAt) =>
        new[] { "monday", "tuesday", "wednesday", "thursday", "friday" }.Select(weekday => new { weekday, opensAt, closesAt });

    private static List<int> Cards(JsonElement answer) =>
        [.. answer.GetProperty("standing").EnumerateArray().Select(s => s.GetProperty("jobCardNumber").GetInt32()).Distinct()];

    private static async Task<JsonElement> Read(HttpClient client, string address) =>
        await (await client.GetAsync(new Uri(address, UriKind.Relative), Ct)).Json();
}
