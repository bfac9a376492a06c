using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.SignIn;

public sealed class SessionTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_token_is_kept_only_as_its_hash()
    {
        var token = await Token(Roles.Advisor);

        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(token));
        Assert.Equal(1, await app.Look(db => db.Sessions.CountAsync(s => s.TokenHash == hash && s.Kind == SessionKind.Bearer, Ct)));
        Assert.True(token.Length >= 43, "256 bits are 43 characters of base 64");
    }

    [Fact]
    public async Task A_revoked_token_ends_at_once()
    {
        using var client = WithToken(await Token(Roles.Advisor));
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/api/v1/motorcycles", Ct)).StatusCode);

        Assert.Equal(HttpStatusCode.NoContent, (await client.DeleteAsync("/api/v1/session", Ct)).StatusCode);

        var after = await client.GetAsync("/api/v1/motorcycles", Ct);
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
        Assert.Equal("application/problem+json", after.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task A_token_expires_by_the_clock()
    {
        using var client = WithToken(await Token(Roles.Advisor));
        var now = app.Clock.Now;
        try
        {
            app.Clock.Now = now + Sessions.BearerLife - Duration.FromSeconds(1);
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/api/v1/motorcycles", Ct)).StatusCode);
            app.Clock.Now = now + Sessions.BearerLife;
            Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/api/v1/motorcycles", Ct)).StatusCode);
        }
        finally
        {
            app.Clock.Now = now;
        }
    }

    [Fact]
    public async Task A_wrong_password_and_an_unknown_name_get_the_same_answer()
    {
        var wrong = await app.Anonymous().PostAsJsonAsync("/api/v1/session", new { userName = "manager", password = "not the password" }, Ct);
        var unknown = await app.Anonymous().PostAsJsonAsync("/api/v1/session", new { userName = "nobody", password = "not the password" }, Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Equal(wrong.StatusCode, unknown.StatusCode);
        Assert.Equal(await Detail(wrong), await Detail(unknown));
    }

    [Fact]
    public async Task A_page_sends_the_stranger_to_the_sign_in_and_the_api_says_unauthorised()
    {
        var page = await app.Anonymous().GetAsync("/motorcycles", Ct);
        var api = await app.Anonymous().GetAsync("/api/v1/motorcycles", Ct);

        Assert.Equal(HttpStatusCode.Redirect, page.StatusCode);
        Assert.Contains("/sign-in?returnTo=%2Fmotorcycles", page.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, api.StatusCode);
    }

    [Fact]
    public async Task A_write_to_the_api_signed_in_by_cookie_needs_the_header_that_a_foreign_page_cannot_send()
    {
        using var client = app.Anonymous();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/motorcycles") { Content = JsonContent.Create(new { }) };
        request.Headers.Add("Cookie", "workshop=anything");

        var answer = await client.SendAsync(request, Ct);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Contains(Guards.ApiHeader, await Detail(answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/api/v1/motorcycles")]
    [InlineData("/assets/workshop.css")]
    public async Task Every_answer_carries_the_strict_headers(string address)
    {
        var answer = await app.Anonymous().GetAsync(address, Ct);

        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.NotEmpty(answer.Headers.GetValues("X-Request-Id"));
    }

    [Fact]
    public async Task A_body_of_the_wrong_type_names_the_field()
    {
        var answer = await app.Anonymous().PostAsync("/api/v1/session",
            new StringContent("""{"userName": "manager", "password": 5}""", Encoding.UTF8, "application/json"), Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.StartsWith("password (line 1", await Detail(answer), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/v1/due?take=abc", HttpStatusCode.BadRequest, "malformed", "take is \"abc\": a whole number is allowed.")]
    [InlineData("/api/v1/nope", HttpStatusCode.NotFound, "no-such-address", "/api/v1/nope is no address of the API; /api/workshop.v1.json lists those that there are.")]
    public async Task An_address_that_cannot_be_read_is_refused_in_words_with_code_and_request(string address, HttpStatusCode status, string code, string sentence)
    {
        using var client = WithToken(await Token(Roles.Advisor));

        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        var problem = await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal((code, sentence), (problem.GetProperty("code").GetString(), problem.GetProperty("detail").GetString()));
        Assert.NotEqual("", problem.GetProperty("requestId").GetString());
    }

    [Theory]
    [InlineData("""{"userName": "manager", "password": 5}""", "password (line 1, byte 38) is 5: a text is allowed.")]
    [InlineData("""{"userName": "manager", "pasword": "x"}""", "there is no field pasword; userName, password is allowed.")]
    [InlineData("abc", "this is no JSON that can be read")]
    public async Task A_body_that_cannot_be_read_is_refused_in_our_words(string body, string says)
    {
        var answer = await app.Anonymous().PostAsync("/api/v1/session", new StringContent(body, Encoding.UTF8, "application/json"), Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var detail = await Detail(answer);
        Assert.Contains(says, detail, StringComparison.Ordinal);
        Assert.DoesNotContain("LineNumber", detail, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_field_that_nobody_knows_is_refused_by_name()
    {
        var answer = await app.Anonymous().PostAsync("/api/v1/session",
            new StringContent("""{"userName": "manager", "pasword": "x"}""", Encoding.UTF8, "application/json"), Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("pasword", await Detail(answer), StringComparison.Ordinal);
    }

    private async Task<string> Token(string role)
    {
        var answer = await app.Anonymous().PostAsJsonAsync("/api/v1/session", new { userName = role, password = TestWorkshop.Password }, Ct);
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("token").GetString()!;
    }

    private HttpClient WithToken(string token)
    {
        var client = app.Anonymous();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return client;
    }

    private static async Task<string> Detail(HttpResponseMessage answer) =>
        (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("detail").GetString()!;
}
