using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;
using static Workshop.Web.Tests.Bookings.Counter;

namespace Workshop.Web.Tests.Comebacks;

/// <summary>Each test books a week of its own.</summary>
public sealed class ComebackTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_comeback_is_a_new_card_and_both_cards_the_motorcycle_and_the_managers_list_show_it()
    {
        var earlier = await Signed();
        var advisor = await app.As(Roles.Advisor);

        var answer = await Book(advisor, earlier.MotorcycleId, Instant.FromUtc(2026, 3, 10, 8, 0), earlier.Number, "Ticks since the visit.");
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Ct));
        var number = (await answer.Json()).GetProperty("number").GetInt32();
        await Found(number, 24_130);

        var card = await Get(advisor, $"/api/v1/job-cards/{number}");
        Assert.Equal((earlier.Number, "Ticks since the visit."),
            (card.GetProperty("comebackOf").GetProperty("number").GetInt32(), card.GetProperty("comebackOf").GetProperty("reason").GetString()));
        var old = await Get(advisor, earlier.Api);
        Assert.Equal("signedOff", old.GetProperty("state").GetString());
        Assert.Equal(number, Assert.Single(old.GetProperty("comebacks").EnumerateArray()).GetProperty("number").GetInt32());
        var row = Assert.Single((await Get(await app.As(Roles.Manager), "/api/v1/comebacks")).GetProperty("rows").EnumerateArray(), r => r.GetProperty("number").GetInt32() == number);
        Assert.Equal((earlier.Number, 0, 130m, "Head cover: A clip was loose."),
            (row.GetProperty("ofNumber").GetInt32(), row.GetProperty("daysSince").GetInt32(), row.GetProperty("kmSince").GetDecimal(), row.GetProperty("found")[0].GetString()));

        var pages = await TestPages.SignedIn(app, Roles.Manager);
        Assert.Contains($"Came back on job card {number}", Text(await pages.Open(earlier.Pages)), StringComparison.Ordinal);
        Assert.Contains($"Comeback of job card {earlier.Number}", Text(await pages.Open($"/job-cards/{number}")), StringComparison.Ordinal);
        Assert.Contains($"comeback of {earlier.Number}: Ticks since the visit.", Text(await pages.Open($"/motorcycles/{earlier.MotorcycleId}")), StringComparison.Ordinal);
        Assert.Contains("Head cover: A clip was loose.", Text(await pages.Open("/job-cards/comebacks")), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, (await advisor.GetAsync(new Uri("/api/v1/comebacks", UriKind.Relative), Ct)).StatusCode);
    }

    [Fact]
    public async Task A_comeback_of_an_open_card_of_another_motorcycle_or_of_none_is_refused_and_nothing_is_booked()
    {
        var advisor = await app.As(Roles.Advisor);
        var earlier = await Signed();
        var open = await app.CheckedIn();
        var other = await advisor.AddMotorcycle();
        var start = Instant.FromUtc(2026, 3, 17, 8, 0);
        var cards = await Count();

        var ofOpen = await Book(advisor, open.MotorcycleId, start, open.Number, "Leaks.");
        var ofOther = await Book(advisor, other, start, earlier.Number, "Leaks.");
        var ofNone = await Book(advisor, other, start, 999_999, "Leaks.");
        var without = await Book(advisor, earlier.MotorcycleId, start, earlier.Number, " ");
        var loose = await Book(advisor, earlier.MotorcycleId, start, null, "Leaks.");

        Assert.Equal((HttpStatusCode.Conflict, $"Job card {open.Number} is not signed off yet: what is wrong is put right on it, not on a new card."),
            (ofOpen.StatusCode, await ofOpen.Sentence()));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, $"comebackOf is {earlier.Number}: that job card is of another motorcycle; a comeback is of the same one."),
            (ofOther.StatusCode, await ofOther.Sentence()));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "comebackOf is 999999: there is no such job card."), (ofNone.StatusCode, await ofNone.Sentence()));
        Assert.Equal("comebackReason is empty: give why it comes back.", Clearances.ReadingBodies.Fault(await without.Json(), "comebackReason"));
        Assert.StartsWith("comebackOf is empty", Clearances.ReadingBodies.Fault(await loose.Json(), "comebackOf"), StringComparison.Ordinal);
        Assert.Equal(cards, await Count());
    }

    [Fact]
    public async Task The_database_keeps_a_comeback_to_a_signed_card_of_the_same_motorcycle_and_never_changes_it()
    {
        var earlier = await Signed();
        var open = await app.CheckedIn();
        var again = await app.Look(async db =>
        {
            var first = await db.JobCards.AsNoTracking().SingleAsync(c => c.Number == earlier.Number, Ct);
            var card = new JobCard
            {
                MotorcycleId = first.MotorcycleId, EngineId = first.EngineId, EngineModelVersionId = first.EngineModelVersionId,
                BookedBy = first.BookedBy, BookedAt = first.BookedAt, StartsAt = first.EndsAt + Duration.FromDays(90), EndsAt = first.EndsAt + Duration.FromDays(91),
            };
            db.JobCards.Add(card);
            await db.SaveChangesAsync(Ct);
            return card.Number;
        });

        async Task<string?> Insert(int card, int of) => (await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct,
            $"""
            with remark as (insert into remarks (id, text, written_by, written_at) select gen_random_uuid(), 'x', id, now() from people where is_staff limit 1 returning id, written_by)
            insert into comebacks (job_card_number, of_job_card_number, reason_remark_id, entered_by, entered_at) select {card}, {of}, id, written_by, now() from remark
            """, Ct))).ConstraintName;

        Assert.Equal("ck_comebacks_same_motorcycle", await Insert(open.Number, earlier.Number));
        Assert.Equal("ck_comebacks_signed", await Insert(earlier.Number, again));
    }

    [Fact]
    public async Task The_advisor_books_it_from_the_old_cards_page()
    {
        var earlier = await Signed();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var link = (await pages.Open(earlier.Pages)).Html.QuerySelector("main a[href*=comebackOf]")!.GetAttribute("href")!;

        var page = await pages.Open($"{link}&comebackReason=Smokes&shown=true&take={TestEngines.OilService}%3Acertain&day=2026-03-24");
        var booked = await pages.Send(page, link, new()
        {
            ["Input.BayId"] = TestWorkshop.Bay1.ToString(), ["Input.TechnicianId"] = TestWorkshop.TechnicianResource.ToString(), ["Input.Time"] = "10:00",
        }, "#book");

        Assert.True(booked.Status == HttpStatusCode.Redirect, string.Join(" ", booked.Faults));
        var number = int.Parse(booked.Location!.Split('/')[^1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(earlier.Number, await app.Look(db => db.Comebacks.Where(c => c.JobCardNumber == number).Select(c => c.OfJobCardNumber).SingleAsync(Ct)));
        // An open card offers no comeback.
        Assert.Null((await pages.Open($"/job-cards/{number}")).Html.QuerySelector("main a[href*=comebackOf]"));
    }

    private async Task<TestVisit> Signed()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.Finish(await app.CheckedIn(24_000, new Dictionary<string, Likelihood> { [TestEngines.ValveCheck] = Likelihood.Certain }), technician);
        var signed = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_000 }, Ct);
        Assert.True(signed.IsSuccessStatusCode, await signed.Content.ReadAsStringAsync(Ct));
        return visit;
    }

    /// <summary>It comes, and something is found.</summary>
    private async Task Found(int number, int odometer)
    {
        var technician = await app.As(Roles.Technician);
        var checkedIn = await technician.PostAsJsonAsync($"/api/v1/job-cards/{number}/check-in", new { odometerCount = odometer, engineStoppedAt = "2026-03-02T07:30:00Z" }, Ct);
        Assert.True(checkedIn.IsSuccessStatusCode, await checkedIn.Content.ReadAsStringAsync(Ct));
        (await technician.PostAsJsonAsync($"/api/v1/job-cards/{number}/findings", new { place = "Head cover", text = "A clip was loose.", gravity = "watch" }, Ct)).EnsureSuccessStatusCode();
    }

    private static Task<HttpResponseMessage> Book(HttpClient advisor, Guid motorcycle, Instant start, int? comebackOf, string? reason) =>
        advisor.PostAsJsonAsync("/api/v1/bookings", new
        {
            motorcycleId = motorcycle, items = new[] { Item(TestEngines.OilService) }, bayId = TestWorkshop.Bay1, technicianId = TestWorkshop.TechnicianResource,
            startsAt = start.ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", null), comebackOf, comebackReason = reason,
        }, Ct);

    private static async Task<JsonElement> Get(HttpClient client, string address) => await (await client.GetAsync(new Uri(address, UriKind.Relative), Ct)).Json();

    private Task<int> Count() => app.Look(db => db.JobCards.CountAsync(Ct));

    private static string Text(TestPage page) => string.Join(' ', page.Html.Body!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
