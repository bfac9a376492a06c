using System.Net;
using System.Text.Json;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Bookings.Counter;

namespace Workshop.Web.Tests.Bookings;

public sealed class ListBookingsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Visits_come_by_start_page_by_page_each_once()
    {
        var advisor = await app.As(Roles.Advisor);
        var monday = Instant.FromUtc(2026, 6, 1, 6, 0);
        var booked = new List<int>();
        foreach (var half in new[] { 3, 0, 4, 1, 2 })
        {
            var answer = await advisor.Book(await advisor.AddMotorcycle(), monday + Duration.FromMinutes(65 * half));
            booked.Add(await answer.Number());
        }

        // Two at the same minute, told apart by their numbers.
        var other = await app.AddResource(Domain.Bookings.ResourceKind.Technician, "T3");
        booked.Add(await (await advisor.Book(await advisor.AddMotorcycle(), monday, TestWorkshop.Bay2, other)).Number());

        var read = new List<(string StartsAt, int Number)>();
        string? after = null;
        do
        {
            var page = await Get(advisor, $"/api/v1/bookings?from=2026-06-01&take=2{(after is null ? "" : $"&after={Uri.EscapeDataString(after)}")}");
            read.AddRange(page.GetProperty("rows").EnumerateArray()
                .Select(r => (r.GetProperty("startsAt").GetString()!, r.GetProperty("number").GetInt32())));
            after = page.GetProperty("next").GetString();
        }
        while (after is not null);

        // Other tests of this class book in the same database, in any order.
        Assert.Equal(booked.Order(), read.Select(r => r.Number).Where(booked.Contains).Order());
        Assert.Distinct(read);
        Assert.Equal(read.OrderBy(r => r.StartsAt, StringComparer.Ordinal).ThenBy(r => r.Number), read);
    }

    [Fact]
    public async Task A_page_that_never_was_and_a_day_that_is_none_are_refused()
    {
        var advisor = await app.As(Roles.Advisor);

        var cursor = await advisor.GetAsync(new Uri("/api/v1/bookings?after=yesterday", UriKind.Relative), Ct);
        var day = await advisor.GetAsync(new Uri("/api/v1/bookings/availability?date=2026-02-30", UriKind.Relative), Ct);
        var none = await advisor.GetAsync(new Uri("/api/v1/bookings/availability", UriKind.Relative), Ct);

        Assert.Equal((HttpStatusCode.BadRequest, HttpStatusCode.BadRequest, HttpStatusCode.BadRequest), (cursor.StatusCode, day.StatusCode, none.StatusCode));
        var state = await advisor.GetAsync(new Uri("/api/v1/bookings?state=done", UriKind.Relative), Ct);
        Assert.Equal("state is \"done\": one of booked, checkedIn, signedOff, cancelled, noShow is allowed.", await state.Sentence());
        Assert.Contains("date is \"2026-02-30\"", await day.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Availability_says_what_is_taken_by_what_and_what_is_free()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle("FREE 1");
        var number = await (await advisor.Book(motorcycle, Instant.FromUtc(2026, 6, 9, 8, 0))).Number();

        var day = await Get(advisor, "/api/v1/bookings/availability?date=2026-06-09");

        Assert.Equal("2026-06-09T06:00:00Z", day.GetProperty("opensAt").GetString());
        var bay = day.GetProperty("resources").EnumerateArray().Single(r => r.GetProperty("name").GetString() == "Bay 1");
        var taken = bay.GetProperty("taken").EnumerateArray().ToList();
        Assert.All(taken, t => Assert.Equal((number, "FREE 1, Testwerk Twin 600"),
            (t.GetProperty("jobCardNumber").GetInt32(), t.GetProperty("motorcycle").GetString())));
        Assert.Equal(
            [("work", "2026-06-09T08:30:00Z"), ("warmRun", "2026-06-09T08:45:00Z"), ("testRide", "2026-06-09T09:05:00Z")],
            taken.Select(t => (t.GetProperty("phase").GetString(), t.GetProperty("until").GetString())));
        Assert.Equal(
            ["2026-06-09T06:00:00Z", "2026-06-09T09:05:00Z"],
            bay.GetProperty("free").EnumerateArray().Select(f => f.GetProperty("from").GetString()));
    }

    [Fact]
    public async Task On_a_closed_day_availability_says_why()
    {
        var advisor = await app.As(Roles.Advisor);

        var day = await Get(advisor, "/api/v1/bookings/availability?date=2026-06-07");

        Assert.Equal((JsonValueKind.Null, "Sunday"), (day.GetProperty("opensAt").ValueKind, day.GetProperty("closedBecause").GetString()));
    }

    private static async Task<JsonElement> Get(HttpClient client, string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }
}
