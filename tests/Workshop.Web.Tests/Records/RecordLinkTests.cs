using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain.Contacts;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Records;
using Workshop.Web.Http;
using Workshop.Web.Tests.Contacts;
using Workshop.Web.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Workshop.Web.Tests.Motorcycles;
using Workshop.Web.Tests.Paper;
using Xunit;

namespace Workshop.Web.Tests.Records;

public sealed class RecordLinkTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_link_shows_one_record_to_whoever_has_it_and_nothing_else_of_the_workshop()
    {
        var (visit, _, photo) = await app.RichlySignedOff();
        await app.GiveOwner(visit, "Olga Ownerly");
        var (path, _) = await (await app.As(Roles.Advisor)).Link(visit);

        var answer = await app.Anonymous().GetAsync(path, Ct);
        var html = await answer.Content.ReadAsStringAsync(Ct);
        var page = await new HtmlParser().ParseDocumentAsync(html);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(("no-store", "noindex, nofollow, noarchive", "no-referrer"), (
            answer.Headers.CacheControl!.ToString(), answer.Headers.GetValues("X-Robots-Tag").Single(), answer.Headers.GetValues("Referrer-Policy").Single()));
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        Assert.Contains("Within limits as found; set; too wide as left.", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("nav, form, script, button"));
        Assert.DoesNotContain("Olga", html, StringComparison.Ordinal);
        Assert.All(
            page.QuerySelectorAll("[href], [src]").Select(e => e.GetAttribute("href") ?? e.GetAttribute("src")!),
            to => Assert.True(to.StartsWith(path, StringComparison.Ordinal) || to.StartsWith($"http://localhost{path}", StringComparison.Ordinal) || to.StartsWith("/assets/", StringComparison.Ordinal), to));

        using var pdf = new PdfReader(await app.Anonymous().GetByteArrayAsync(new Uri($"{path}?handler=Pdf", UriKind.Relative), Ct));
        Assert.Equal([$"http://localhost{path}"], pdf.Codes(0));
        Assert.Contains("Service record", pdf.Text(), StringComparison.Ordinal);
        var small = await app.Anonymous().GetAsync(page.QuerySelector(".photos img")!.GetAttribute("src"), Ct);
        var large = await app.Anonymous().GetAsync(RecordAddress.OfPhoto(path["/records/".Length..], photo), Ct);
        Assert.Equal((HttpStatusCode.OK, "image/jpeg", HttpStatusCode.OK, "image/png"), (
            small.StatusCode, small.Content.Headers.ContentType!.MediaType, large.StatusCode, large.Content.Headers.ContentType!.MediaType));
    }

    [Fact]
    public async Task The_secret_is_said_once_has_256_bits_and_is_kept_nowhere()
    {
        var visit = await app.SignedOff();
        var advisor = await app.As(Roles.Advisor);
        advisor.DefaultRequestHeaders.Add(Caller.KeyHeader, "one record link");

        var first = await (await advisor.PostAsJsonAsync($"{visit.Api}/record/links", new { days = 3 }, Ct)).Json();
        var again = await (await advisor.PostAsJsonAsync($"{visit.Api}/record/links", new { days = 3 }, Ct)).Json();
        var secret = first.GetProperty("path").GetString()!["/records/".Length..];

        Assert.Equal(32, System.Buffers.Text.Base64Url.DecodeFromChars(secret).Length);
        Assert.Equal((first.GetProperty("id").GetGuid(), JsonValueKind.Null), (again.GetProperty("id").GetGuid(), again.GetProperty("path").ValueKind));
        var link = await app.Look(db => db.RecordLinks.AsNoTracking().SingleAsync(l => l.JobCardNumber == visit.Number, Ct));
        Assert.Equal(SHA256.HashData(Encoding.UTF8.GetBytes(secret)), link.SecretDigest);
        Assert.Equal((app.Clock.Now + Duration.FromDays(3), TestWorkshop.Advisor), (link.ExpiresAt, link.CreatedBy));
        Assert.DoesNotContain(secret, await app.Look(db => db.StoredAnswers.Where(a => a.Key == "one record link").Select(a => a.Answer).SingleAsync(Ct)), StringComparison.Ordinal);
        var listed = await advisor.GetStringAsync(new Uri($"{visit.Api}/record/links", UriKind.Relative), Ct);
        Assert.DoesNotContain(secret, listed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_an_expired_and_a_revoked_link_are_answered_alike()
    {
        var (visit, _, photo) = await app.RichlySignedOff();
        var advisor = await app.As(Roles.Advisor);
        var (expires, _) = await advisor.Link(visit, days: 1);
        var (revoked, id) = await advisor.Link(visit, days: 365);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (await Status(expires), await Status(revoked)));

        app.Clock.Now += Duration.FromDays(1) - Duration.FromMilliseconds(1);
        Assert.Equal(HttpStatusCode.OK, await Status(expires));
        app.Clock.Now += Duration.FromMilliseconds(1);
        advisor = await app.As(Roles.Advisor);
        (await advisor.PostAsync(new Uri($"/api/v1/record-links/{id}/revocation", UriKind.Relative), null, Ct)).EnsureSuccessStatusCode();
        (await advisor.PostAsync(new Uri($"/api/v1/record-links/{id}/revocation", UriKind.Relative), null, Ct)).EnsureSuccessStatusCode();
        Assert.Equal(HttpStatusCode.NotFound, (await advisor.PostAsync(new Uri($"/api/v1/record-links/{photo}/revocation", UriKind.Relative), null, Ct)).StatusCode);

        var bodies = new List<string>();
        foreach (var path in new[] { expires, revoked, "/records/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA", $"/records/{new string('x', 3000)}" })
        {
            foreach (var what in new[] { "", "?handler=Pdf" })
            {
                var answer = await app.Anonymous().GetAsync(path + what, Ct);
                Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
                Assert.Equal("no-store", answer.Headers.CacheControl!.ToString());
                bodies.Add(await answer.Content.ReadAsStringAsync(Ct));
            }

            Assert.Equal(HttpStatusCode.NotFound, await Status($"{path}/photos/{photo}/small"));
        }

        Assert.Contains("This link leads to no record, or no longer. Ask your workshop for a new one.", Assert.Single(bodies.Distinct()), StringComparison.Ordinal);
        var states = (await advisor.GetFromJsonAsync<JsonElement>($"{visit.Api}/record/links", Ct)).GetProperty("links").EnumerateArray().Select(l => l.GetProperty("state").GetString());
        Assert.Equal(["expired", "revoked"], states.Order());
    }

    [Fact]
    public async Task Photos_of_another_card_and_of_nothing_that_was_found_are_not_reached_by_a_link()
    {
        var (_, _, other) = await app.RichlySignedOff();
        var technician = await app.As(Roles.Technician);
        var open = await app.CheckedIn(items: RecordedVisits.CheckOnly);
        var finding = await technician.Find(open, "watch");
        var own = await technician.AddPhoto(open, finding, "Own");
        await app.Finish(open, technician);
        await RecordedVisits.SignOff(technician, open, 24_000);
        var (path, _) = await (await app.As(Roles.Advisor)).Link(open);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.NotFound), (await Status($"{path}/photos/{own}"), await Status($"{path}/photos/{other}")));
        Assert.NotEqual(HttpStatusCode.OK, await Status($"/photos/{own}"));

        // A picture that the manager takes out is gone from the record as well.
        var manager = await app.As(Roles.Manager);
        var version = (await manager.GetFromJsonAsync<JsonElement>($"/api/v1/findings/{finding}", Ct)).GetProperty("photos")[0].GetProperty("rowVersion").GetUInt32();
        (await manager.Put($"/api/v1/photos/{own}/removal", new { reason = "a face" }, $"\"{version}\"")).EnsureSuccessStatusCode();
        Assert.Equal(HttpStatusCode.NotFound, await Status($"{path}/photos/{own}"));
        Assert.Equal(HttpStatusCode.OK, await Status(path));
    }

    [Fact]
    public async Task Openings_of_page_and_file_are_counted_and_asking_for_the_head_is_none()
    {
        var visit = await app.SignedOff();
        var advisor = await app.As(Roles.Advisor);
        var (path, _) = await advisor.Link(visit);
        await app.Anonymous().GetAsync(path, Ct);
        await app.Anonymous().GetAsync($"{path}?handler=Pdf", Ct);
        using var head = new HttpRequestMessage(HttpMethod.Head, path);
        Assert.Equal(HttpStatusCode.OK, (await app.Anonymous().SendAsync(head, Ct)).StatusCode);

        var link = (await advisor.GetFromJsonAsync<JsonElement>($"{visit.Api}/record/links", Ct)).GetProperty("links")[0];

        Assert.Equal((2, "open", "Ada Visor"), (link.GetProperty("opened").GetInt32(), link.GetProperty("state").GetString(), link.GetProperty("madeBy").GetString()));
        var revive = await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(
            app.Database.Connections.Direct, $"update record_links set expires_at = expires_at + interval '1 day' where job_card_number = {visit.Number}", Ct));
        Assert.Equal("23001", revive.SqlState);
    }

    [Fact]
    public async Task Days_are_limited_who_measures_makes_no_links_and_what_is_wrong_is_named()
    {
        var visit = await app.SignedOff();
        var (advisor, technician) = (await app.As(Roles.Advisor), await app.As(Roles.Technician));

        var tooLong = await advisor.PostAsJsonAsync($"{visit.Api}/record/links", new { days = 366 }, Ct);
        var never = await advisor.PostAsJsonAsync($"{visit.Api}/record/links", new { days = 0 }, Ct);
        var forbidden = await technician.PostAsJsonAsync($"{visit.Api}/record/links", new { days = 3 }, Ct);
        var open = await advisor.PostAsJsonAsync($"{(await app.CheckedIn()).Api}/record/links", new { days = 3 }, Ct);

        Assert.Equal(
            (HttpStatusCode.BadRequest, HttpStatusCode.BadRequest, HttpStatusCode.Forbidden, HttpStatusCode.Conflict),
            (tooLong.StatusCode, never.StatusCode, forbidden.StatusCode, open.StatusCode));
        Assert.Contains("days is 366: 1 to 365 days are allowed.", await tooLong.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);

        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var again = await pages.Send($"{visit.Pages}/record", new() { ["Input.Days"] = "400" }, "form[action*='Link']");
        Assert.Equal((HttpStatusCode.BadRequest, "400"), (again.Status, again.ValueOf("Input.Days")));
        Assert.Contains(again.Faults, f => f.Contains("1 to 365 days are allowed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_page_makes_a_link_shows_it_once_and_revokes_it()
    {
        var visit = await app.SignedOff();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var page = await pages.Open($"{visit.Pages}/record");

        var made = await pages.Send(page, $"{visit.Pages}/record", new() { ["Input.Days"] = "7" }, "form[action*='Link']");
        var path = new Uri(made.Html.QuerySelector("#link")!.GetAttribute("value")!).AbsolutePath;
        Assert.Equal(HttpStatusCode.OK, await Status(path));
        var later = await pages.Open($"{visit.Pages}/record");
        Assert.Null(later.Html.QuerySelector("#link"));
        var revoked = await pages.Send(later, $"{visit.Pages}/record", [], "form[action*='Revoke']");

        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.NotFound), (revoked.Status, await Status(path)));
        Assert.Contains("revoked", (await pages.Open($"{visit.Pages}/record")).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_message_brings_the_owner_a_link_that_works_and_only_where_the_text_says_so()
    {
        var visit = await app.SignedOff();
        var advisor = await app.As(Roles.Advisor);
        var owner = await app.GiveOwner(visit, "Olga Ownerly", "olga@example.org");
        (await advisor.Consent(owner, ContactChannel.Email)).EnsureSuccessStatusCode();
        var draft = await advisor.GetFromJsonAsync<JsonElement>($"{visit.Api}/record/message", Ct);
        Assert.Contains("{record}", draft.GetProperty("body").GetString(), StringComparison.Ordinal);
        Assert.Equal(("email", true, "Olga Ownerly"), (draft.GetProperty("channel").GetString(), draft.GetProperty("agreed").GetBoolean(), draft.GetProperty("owner").GetString()));

        var without = await advisor.PostAsJsonAsync($"{visit.Api}/record/messages", new { channel = "email", subject = "Record", body = "No link" }, Ct);
        Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
        Assert.Contains("body has no {record}: write it where the link is to stand.", await without.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        var letter = await advisor.PostAsJsonAsync($"{visit.Api}/record/messages", new { channel = "letter", subject = "Record", body = "{record}" }, Ct);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, letter.StatusCode);
        Assert.Equal(0, await app.Look(db => db.RecordLinks.CountAsync(l => l.JobCardNumber == visit.Number, Ct)));

        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var sent = await pages.Send($"{visit.Pages}/record/send", new() { ["Input.Days"] = "5" }, "#message");
        Assert.Equal(HttpStatusCode.Redirect, sent.Status);
        var message = await app.Look(db => db.OutboxMessages.AsNoTracking().SingleAsync(m => m.PersonId == owner, Ct));
        var path = message.Body.Split('\n').Single(l => l.StartsWith("http://localhost/records/", StringComparison.Ordinal))["http://localhost".Length..];
        Assert.Equal(HttpStatusCode.OK, await Status(path));
        Assert.Equal(app.Clock.Now + Duration.FromDays(5), await app.Look(db => db.RecordLinks.Where(l => l.JobCardNumber == visit.Number).Select(l => l.ExpiresAt).SingleAsync(Ct)));
    }

    [Fact]
    public async Task An_erasure_ends_the_links_and_empties_what_people_wrote_on_the_record()
    {
        var (visit, finding, _) = await app.RichlySignedOff();
        var (advisor, manager) = (await app.As(Roles.Advisor), await app.As(Roles.Manager));
        var owner = await app.GiveOwner(visit, "Wilma Weg");
        var (path, _) = await advisor.Link(visit);
        var other = await app.SignedOff();
        var (stays, _) = await advisor.Link(other);

        (await manager.PostAsJsonAsync($"/api/v1/people/{owner}/erasure", new { confirmName = "Wilma Weg" }, Ct)).EnsureSuccessStatusCode();

        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.OK), (await Status(path), await Status(stays)));
        var record = await advisor.GetFromJsonAsync<JsonElement>($"{visit.Api}/record", Ct);
        Assert.Empty(record.GetProperty("words").EnumerateObject());
        Assert.Equal(finding, record.GetProperty("record").GetProperty("findings")[0].GetProperty("id").GetGuid());
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open($"{visit.Pages}/record");
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.DoesNotContain("does it himself", page.MainText, StringComparison.Ordinal);
    }

    /// <summary>Whoever guesses is soon stopped: page, file and photos of one address count together.</summary>
    [Fact]
    public async Task Who_asks_too_often_waits()
    {
        await using var copy = app.Copy();
        await using var strict = copy.WithWebHostBuilder(host => host.UseSetting("Workshop:RecordsPerMinute", "3"));
        using var client = strict.CreateClient();
        var statuses = new List<HttpStatusCode>();
        foreach (var address in new[] { "/records/a", "/records/b?handler=Pdf", $"/records/c/photos/{TestWorkshop.Shelf}", "/records/d", $"/records/e/photos/{TestWorkshop.Shelf}/small" })
        {
            statuses.Add((await client.GetAsync(new Uri(address, UriKind.Relative), Ct)).StatusCode);
        }

        Assert.Equal([HttpStatusCode.NotFound, HttpStatusCode.NotFound, HttpStatusCode.NotFound, HttpStatusCode.TooManyRequests, HttpStatusCode.TooManyRequests], statuses);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(new Uri("/sign-in", UriKind.Relative), Ct)).StatusCode);
    }

    private async Task<HttpStatusCode> Status(string path) => (await app.Anonymous().GetAsync(path, Ct)).StatusCode;
}
