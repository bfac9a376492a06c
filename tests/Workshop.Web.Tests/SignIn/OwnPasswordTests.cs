using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.SignIn;

/// <summary>
/// The own password, changed on the page and over the API. What is asked of a new one, and that the present one is asked for and other
/// sign-ins end: NIST SP 800-63B, sections 5.1.1.2 and 7.1, and the common practice of sign-ins.
/// </summary>
public sealed class OwnPasswordTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Address = "/api/v1/session/password";
    private const string New = "four words of a poem";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_changed_password_ends_every_other_sign_in_and_is_kept_nowhere()
    {
        using var here = await Bearer(Roles.Technician, TestWorkshop.Password);
        using var elsewhere = await Bearer(Roles.Technician, TestWorkshop.Password);
        using var somebodyElse = await Bearer(Roles.Manager, TestWorkshop.Password);
        var screen = await TestPages.SignedIn(app, Roles.Technician);
        var stamp = await Stamp(Roles.Technician);

        here.DefaultRequestHeaders.Add("Idempotency-Key", "own-password-1");
        var changed = await here.PutAsJsonAsync(Address, new { currentPassword = TestWorkshop.Password, newPassword = New }, Ct);

        Assert.Equal("""{"othersEnded":2}""", await changed.Content.ReadAsStringAsync(Ct));
        Assert.Equal(HttpStatusCode.OK, (await here.GetAsync("/api/v1/motorcycles", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await elsewhere.GetAsync("/api/v1/motorcycles", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await screen.Open("/motorcycles")).Status);
        Assert.Equal(HttpStatusCode.OK, (await somebodyElse.GetAsync("/api/v1/motorcycles", Ct)).StatusCode);
        Assert.NotEqual(stamp, await Stamp(Roles.Technician));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Open(Roles.Technician, TestWorkshop.Password)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Open(Roles.Technician, New)).StatusCode);
        Assert.Equal(0, await app.Look(db => db.StoredAnswers.CountAsync(a => a.Key == "own-password-1", Ct)));
        Assert.Equal(0, await app.Look(db => db.Database.SqlQuery<int>(
            $"select count(*)::int as \"Value\" from audit_rows a where position({New} in a::text) > 0 or position({TestWorkshop.Password} in a::text) > 0").SingleAsync(Ct)));
        (await here.PutAsJsonAsync(Address, new { currentPassword = New, newPassword = TestWorkshop.Password }, Ct)).EnsureSuccessStatusCode();
    }

    [Theory]
    [InlineData("not my password", New, "currentPassword", HttpStatusCode.UnprocessableEntity)]
    [InlineData(null, New, "currentPassword", HttpStatusCode.BadRequest)]
    [InlineData(TestWorkshop.Password, "eleven char", "newPassword", HttpStatusCode.BadRequest)]
    [InlineData(TestWorkshop.Password, "ababababababab", "newPassword", HttpStatusCode.BadRequest)]
    [InlineData(TestWorkshop.Password, TestWorkshop.Password, "newPassword", HttpStatusCode.BadRequest)]
    public async Task What_is_wrong_is_named_and_no_password_is_said_or_changed(string? present, string changed, string field, HttpStatusCode status)
    {
        using var client = await Bearer(Roles.Advisor, TestWorkshop.Password);
        using var other = await Bearer(Roles.Advisor, TestWorkshop.Password);

        var answer = await client.PutAsJsonAsync(Address, new { currentPassword = present, newPassword = changed }, Ct);

        var body = await answer.Content.ReadAsStringAsync(Ct);
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal(field, Assert.Single(JsonDocument.Parse(body).RootElement.GetProperty("errors").EnumerateObject()).Name);
        Assert.DoesNotContain(changed, body, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await other.GetAsync("/api/v1/motorcycles", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Open(Roles.Advisor, TestWorkshop.Password)).StatusCode);
    }

    [Fact]
    public async Task Too_many_wrong_ones_rest_the_account_even_for_the_right_one()
    {
        using var client = await Bearer(Roles.Advisor, TestWorkshop.Password);
        for (var i = 0; i < 8; i++)
        {
            await client.PutAsJsonAsync(Address, new { currentPassword = $"wrong {i}", newPassword = New }, Ct);
        }

        var right = await client.PutAsJsonAsync(Address, new { currentPassword = TestWorkshop.Password, newPassword = New }, Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, right.StatusCode);
        await app.Look(db => db.Users.Where(u => u.UserName == Roles.Advisor).ExecuteUpdateAsync(u => u
            .SetProperty(x => x.LockoutEnd, (DateTimeOffset?)null).SetProperty(x => x.AccessFailedCount, 0), Ct));
    }

    [Fact]
    public void It_is_asked_for_as_seldom_as_the_sign_in() => Assert.Equal(
        [("api/v1/session/password", Guards.SignInLimit), ("own-password", Guards.SignInLimit)],
        app.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.RoutePattern.RawText!.EndsWith("password", StringComparison.Ordinal) && !e.RoutePattern.RawText.Contains("people", StringComparison.Ordinal))
            .Select(e => (e.RoutePattern.RawText!.Trim('/'), e.Metadata.GetMetadata<EnableRateLimitingAttribute>()?.PolicyName ?? "")).Distinct().Order());

    [Fact]
    public async Task The_page_comes_back_empty_with_what_is_wrong_and_changes_the_password()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        Assert.Equal("/own-password", (await pages.Open("/due")).Html.QuerySelector(".who a")?.GetAttribute("href"));

        var differs = await Send(pages, TestWorkshop.Password, New, "four words of a pond");
        Assert.Equal((HttpStatusCode.BadRequest, "newPasswordAgain differs from the new password: type both again."), (differs.Status, Assert.Single(differs.Faults)));
        var unsaid = await Send(pages, TestWorkshop.Password, New, "");
        Assert.Single(unsaid.Faults);
        Assert.All(new[] { differs, unsaid }, page =>
        {
            Assert.DoesNotContain(New, page.Html.DocumentElement.OuterHtml, StringComparison.Ordinal);
            Assert.DoesNotContain(TestWorkshop.Password, page.Html.DocumentElement.OuterHtml, StringComparison.Ordinal);
            Assert.All(page.Html.QuerySelectorAll("main input[type=password]"), i => Assert.Null(i.GetAttribute("value")));
        });

        Assert.Equal("/own-password", (await Send(pages, TestWorkshop.Password, New, New)).Location);
        Assert.Contains("Your password is changed", (await pages.Open("/own-password")).MainText, StringComparison.Ordinal);
        Assert.Equal("/own-password", (await Send(pages, New, TestWorkshop.Password, TestWorkshop.Password)).Location);
    }

    private static Task<TestPage> Send(TestPages pages, string present, string changed, string again) => pages.Send("/own-password", new()
    {
        ["Input.CurrentPassword"] = present, ["Input.NewPassword"] = changed, ["Input.NewPasswordAgain"] = again,
    });

    private Task<HttpResponseMessage> Open(string role, string password) =>
        app.Anonymous().PostAsJsonAsync("/api/v1/session", new { userName = role, password }, Ct);

    private Task<string?> Stamp(string role) => app.Look(db => db.Users.Where(u => u.UserName == role).Select(u => u.SecurityStamp).SingleAsync(Ct));

    private async Task<HttpClient> Bearer(string role, string password)
    {
        var token = (await (await Open(role, password)).EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("token").GetString();
        var client = app.Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return client;
    }
}
