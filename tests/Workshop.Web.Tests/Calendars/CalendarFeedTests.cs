using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Http;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Calendars;

public sealed class CalendarFeedTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_booking_stands_in_the_calendars_of_its_technician_and_its_bay_without_the_owners_name()
    {
        var card = await Book("KAL 1", Instant.FromUtc(2026, 3, 3, 8, 0));

        var technician = await Read(await Link(TestWorkshop.TechnicianResource));
        var bay = await Read(await Link(TestWorkshop.Bay1));

        var work = Of(technician, card, "work");
        Assert.Equal(Instant.FromUtc(2026, 3, 3, 8, 0).ToDateTimeUtc(), work.One("DTSTART").Utc);
        Assert.Equal($"Work: KAL 1, job card {card}", work.One("SUMMARY").Text);
        Assert.Equal("Engine oil and filter", work.One("DESCRIPTION").Text);
        Assert.Equal("Bay 1", work.One("LOCATION").Text);
        Assert.Equal(("CONFIRMED", 0), (work.Status, work.Sequence));
        Assert.Equal("TN", Of(bay, card, "work").One("LOCATION").Text);
        Assert.DoesNotContain(technician.Events.SelectMany(e => e.Properties), p => p.Value.Contains("Olga", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task A_change_of_plan_updates_the_same_event_and_a_cancellation_says_so()
    {
        var card = await Book("KAL 2", Instant.FromUtc(2026, 3, 4, 8, 0));
        var link = await Link(TestWorkshop.TechnicianResource);
        var before = Of(await Read(link), card, "work");

        app.Clock.Now += Duration.FromMinutes(5);
        await Replan(card, TestWorkshop.TechnicianResource, Instant.FromUtc(2026, 3, 4, 12, 0));
        var moved = Of(await Read(link), card, "work");
        app.Clock.Now += Duration.FromMinutes(5);
        await (await app.As(Roles.Advisor)).PostAsJsonAsync($"/api/v1/job-cards/{card}/cancel", new { reason = "owner ill" }, Ct);
        var cancelled = Of(await Read(link), card, "work");

        Assert.Equal(before.Uid, moved.Uid);
        Assert.Equal(Instant.FromUtc(2026, 3, 4, 12, 0).ToDateTimeUtc(), moved.One("DTSTART").Utc);
        Assert.True(moved.Sequence > before.Sequence);
        Assert.True(moved.One("LAST-MODIFIED").Utc > before.One("LAST-MODIFIED").Utc);
        Assert.Equal((before.Uid, "CANCELLED"), (cancelled.Uid, cancelled.Status));
        Assert.True(cancelled.Sequence > moved.Sequence);
        Assert.True(cancelled.One("LAST-MODIFIED").Utc > moved.One("LAST-MODIFIED").Utc);
    }

    [Fact]
    public async Task A_visit_that_goes_to_another_technician_is_cancelled_in_the_first_ones_calendar()
    {
        var other = await app.AddResource(ResourceKind.Technician, "KV", capabilities: "valve work");
        var card = await Book("KAL 3", Instant.FromUtc(2026, 3, 5, 8, 0));
        var (first, second) = (await Link(TestWorkshop.TechnicianResource), await Link(other));

        app.Clock.Now += Duration.FromMinutes(5);
        await Replan(card, other, Instant.FromUtc(2026, 3, 5, 8, 0));

        var gone = Of(await Read(first), card, "work");
        Assert.Equal(("CANCELLED", 1), (gone.Status, gone.Sequence));
        Assert.Equal(("CONFIRMED", 1), (Of(await Read(second), card, "work").Status, Of(await Read(second), card, "work").Sequence));
    }

    [Fact]
    public async Task An_unchanged_calendar_is_not_sent_again_and_a_changed_one_is()
    {
        var link = await Link(TestWorkshop.Bay2);
        var first = await app.Anonymous().GetAsync(link, Ct);

        var again = await AskWith(link, first.Headers.ETag!.Tag);
        var card = await Book("KAL 4", Instant.FromUtc(2026, 3, 6, 8, 0), TestWorkshop.Bay2);
        var changed = await AskWith(link, first.Headers.ETag.Tag);

        Assert.Equal("text/calendar; charset=utf-8", first.Content.Headers.ContentType!.ToString());
        Assert.Equal((HttpStatusCode.NotModified, 0), (again.StatusCode, (await again.Content.ReadAsByteArrayAsync(Ct)).Length));
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        Assert.NotNull(Of(StrictCalendar.Read(await changed.Content.ReadAsByteArrayAsync(Ct)), card, "work"));
        Assert.Equal("private, no-cache", string.Join(", ", first.Headers.CacheControl!.ToString().Split(", ").OrderDescending()));
    }

    [Fact]
    public async Task A_revoked_link_and_a_wrong_one_are_not_found()
    {
        var manager = await app.As(Roles.Manager);
        var made = await (await manager.PostAsJsonAsync("/api/v1/calendar-feeds", new { resourceId = TestWorkshop.Bay1 }, Ct)).Json();
        var link = made.GetProperty("path").GetString()!;

        var before = await app.Anonymous().GetAsync(link, Ct);
        var revoked = await manager.PostAsJsonAsync($"/api/v1/calendar-feeds/{made.GetProperty("id").GetGuid()}/revocation", new { }, Ct);
        var after = await app.Anonymous().GetAsync(link, Ct);
        var wrong = await app.Anonymous().GetAsync("/calendar/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA.ics", Ct);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (before.StatusCode, revoked.StatusCode));
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (after.StatusCode, wrong.StatusCode));
    }

    [Fact]
    public async Task The_secret_is_said_once_and_kept_nowhere()
    {
        var manager = await app.As(Roles.Manager);
        manager.DefaultRequestHeaders.Add(Caller.KeyHeader, "one-key");
        var first = await (await manager.PostAsJsonAsync("/api/v1/calendar-feeds", new { resourceId = TestWorkshop.Bay1 }, Ct)).Json();
        var again = await (await manager.PostAsJsonAsync("/api/v1/calendar-feeds", new { resourceId = TestWorkshop.Bay1 }, Ct)).Json();
        var secret = first.GetProperty("path").GetString()!.Split('/', '.')[2];

        Assert.Equal(first.GetProperty("id").GetGuid(), again.GetProperty("id").GetGuid());
        Assert.Equal(System.Text.Json.JsonValueKind.Null, again.GetProperty("path").ValueKind);
        var stored = await app.Look(db => db.StoredAnswers.Where(a => a.Key == "one-key").Select(a => a.Answer).SingleAsync(Ct));
        Assert.DoesNotContain(secret, stored, StringComparison.Ordinal);
        var digest = await app.Look(db => db.CalendarFeeds.Where(f => f.Id == first.GetProperty("id").GetGuid()).Select(f => f.SecretDigest).SingleAsync(Ct));
        Assert.Equal(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(secret)), digest);
    }

    [Fact]
    public async Task A_technician_makes_links_to_the_own_calendar_only()
    {
        var technician = await app.As(Roles.Technician);

        var own = await technician.PostAsJsonAsync("/api/v1/calendar-feeds", new { resourceId = TestWorkshop.TechnicianResource }, Ct);
        var bay = await technician.PostAsJsonAsync("/api/v1/calendar-feeds", new { resourceId = TestWorkshop.Bay1 }, Ct);
        var tool = await (await app.As(Roles.Manager)).PostAsJsonAsync("/api/v1/calendar-feeds", new { resourceId = TestWorkshop.AlignmentJig }, Ct);
        var listed = await (await technician.GetAsync("/api/v1/calendar-feeds", Ct)).Json();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Forbidden, HttpStatusCode.UnprocessableEntity), (own.StatusCode, bay.StatusCode, tool.StatusCode));
        Assert.Equal("TN", Assert.Single(listed.GetProperty("resources").EnumerateArray()).GetProperty("name").GetString());
    }

    [Fact]
    public async Task The_page_makes_a_link_shows_it_once_and_revokes_it()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open("/calendars");

        var made = await pages.Send(page, "/calendars", [], "form[action*='Make']");
        var address = made.Html.QuerySelector("#link")!.GetAttribute("value")!;
        var read = await app.Anonymous().GetAsync(new Uri(address).AbsolutePath, Ct);
        var later = await pages.Open("/calendars");
        var revoked = await pages.Send(later, "/calendars", [], "form[action*='Revoke']");

        Assert.Equal(HttpStatusCode.OK, read.StatusCode);
        Assert.Null(later.Html.QuerySelector("#link"));
        Assert.Equal(HttpStatusCode.Redirect, revoked.Status);
        Assert.Contains("is revoked", (await pages.Open(revoked.Location!)).Html.Body!.TextContent, StringComparison.Ordinal);
    }

    private static StrictCalendar.Event Of(StrictCalendar calendar, int card, string phase) =>
        calendar.Events.Single(e => e.Uid.StartsWith($"{card}-{phase}-0-", StringComparison.Ordinal));

    private async Task<int> Book(string registration, Instant at, Guid? bay = null)
    {
        var advisor = await app.As(Roles.Advisor);
        return await (await advisor.Book(await advisor.AddMotorcycle(registration), at, bay)).Number();
    }

    private async Task<string> Link(Guid resource)
    {
        var made = await (await app.As(Roles.Manager)).PostAsJsonAsync("/api/v1/calendar-feeds", new { resourceId = resource }, Ct);
        return (await made.Json()).GetProperty("path").GetString()!;
    }

    private async Task<StrictCalendar> Read(string link) =>
        StrictCalendar.Read(await app.Anonymous().GetByteArrayAsync(link, Ct));

    private async Task<HttpResponseMessage> AskWith(string link, string tag)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, link);
        request.Headers.TryAddWithoutValidation("If-None-Match", tag);
        return await app.Anonymous().SendAsync(request, Ct);
    }

    /// <summary>As the plan's writer does it: what stood is kept, not live; the new rows and the count are written with it.</summary>
    private Task<int> Replan(int card, Guid technician, Instant start) => app.Look(async db =>
    {
        var rows = await db.Occupancies.Where(o => o.JobCardNumber == card && o.Live).ToListAsync(Ct);
        var shift = start - rows.Min(r => r.Span.Start);
        foreach (var row in rows)
        {
            row.Live = false;
        }

        await db.SaveChangesAsync(Ct);
        db.Occupancies.AddRange(rows.Select(row => new Occupancy
        {
            Id = NewId.At(app.Clock), JobCardNumber = card, Phase = row.Phase,
            ResourceId = row.ResourceId == TestWorkshop.TechnicianResource ? technician : row.ResourceId,
            Span = new Interval(row.Span.Start + shift, row.Span.End + shift),
        }));
        (await db.JobCards.SingleAsync(c => c.Number == card, Ct)).PlanRevision++;
        return await db.SaveChangesAsync(Ct);
    });
}
