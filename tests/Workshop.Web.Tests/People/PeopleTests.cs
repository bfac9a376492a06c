using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.People;

public sealed class PeopleTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static int made;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whoever_is_added_signs_in_with_the_password_that_is_shown_once_and_kept_nowhere()
    {
        var manager = await app.As(Roles.Manager);
        var body = Body("Nora Newcomer", Roles.Advisor, Roles.Technician);
        using var first = Post(body, "one-key");
        using var again = Post(body, "one-key");

        var shown = await (await manager.SendAsync(first, Ct)).Json();
        var repeated = await (await manager.SendAsync(again, Ct)).Json();

        var password = shown.GetProperty("password").GetString()!;
        Assert.Equal(20, password.Length);
        Assert.Equal(JsonValueKind.Null, repeated.GetProperty("password").ValueKind);
        Assert.Equal(shown.GetProperty("id").GetGuid(), repeated.GetProperty("id").GetGuid());
        var session = await SignIn(body.userName, password);
        Assert.Equal(["advisor", "technician"], session.GetProperty("roles").EnumerateArray().Select(r => r.GetString()).Order());
        Assert.DoesNotContain(await app.Look(db => db.StoredAnswers.Select(a => a.Answer).ToListAsync(Ct)), a => a.Contains(password, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_locked_account_is_out_at_once_and_comes_back_when_it_is_unlocked()
    {
        var manager = await app.As(Roles.Manager);
        var (id, userName, password) = await Add(manager, "Lou Lockable", Roles.Advisor);
        var own = app.Anonymous();
        own.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue(
            "Bearer", (await SignIn(userName, password)).GetProperty("token").GetString());
        Assert.Equal(HttpStatusCode.OK, (await own.GetAsync(new Uri("/api/v1/people", UriKind.Relative), Ct)).StatusCode);

        await Change(manager, id, new { name = "Lou Lockable", userName, roles = new[] { "advisor" }, locked = true });

        Assert.Equal(HttpStatusCode.Unauthorized, (await own.GetAsync(new Uri("/api/v1/people", UriKind.Relative), Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TrySignIn(userName, password)).StatusCode);
        await Change(manager, id, new { name = "Lou Lockable", userName, roles = new[] { "advisor" }, locked = false });
        Assert.Equal(HttpStatusCode.OK, (await TrySignIn(userName, password)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await own.GetAsync(new Uri("/api/v1/people", UriKind.Relative), Ct)).StatusCode);
    }

    [Fact]
    public async Task A_new_password_ends_the_old_one_and_every_open_sign_in()
    {
        var manager = await app.As(Roles.Manager);
        var (id, userName, password) = await Add(manager, "Rea Setter", Roles.Technician);
        await SignIn(userName, password);

        var reset = await manager.Change($"/api/v1/people/{id}/password", new { }, $"/api/v1/people/{id}");

        var next = (await reset.Json()).GetProperty("password").GetString()!;
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TrySignIn(userName, password)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await TrySignIn(userName, next)).StatusCode);
        Assert.Equal(1, await app.Look(db => (
            from s in db.Sessions join a in db.Users on s.AccountId equals a.Id
            where a.PersonId == id && s.RevokedAt == null select s.Id).CountAsync(Ct)));
    }

    [Fact]
    public async Task The_only_manager_stays_one_and_cannot_lock_the_door_from_outside()
    {
        var manager = await app.As(Roles.Manager);

        var demoted = await TryChange(manager, TestWorkshop.Manager, new { name = "Mana Ger", userName = "manager", roles = new[] { "advisor" } });
        var locked = await TryChange(manager, TestWorkshop.Manager, new { name = "Mana Ger", userName = "manager", roles = new[] { "manager" }, locked = true });

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (demoted.StatusCode, locked.StatusCode));
        Assert.Equal("Mana Ger is the only manager who can sign in; make somebody else a manager first.", await demoted.Sentence());
    }

    [Fact]
    public async Task A_role_that_is_given_counts_from_the_next_request_on()
    {
        var manager = await app.As(Roles.Manager);
        var (id, userName, password) = await Add(manager, "Ron Roller", Roles.Technician);
        var own = app.Anonymous();
        own.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue(
            "Bearer", (await SignIn(userName, password)).GetProperty("token").GetString());

        var before = await own.GetAsync(new Uri("/api/v1/people", UriKind.Relative), Ct);
        await Change(manager, id, new { name = "Ron Roller", userName, roles = new[] { "technician", "advisor" } });
        var after = await own.GetAsync(new Uri("/api/v1/people", UriKind.Relative), Ct);

        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.OK), (before.StatusCode, after.StatusCode));
    }

    [Fact]
    public async Task Wrong_fields_are_named_with_what_is_allowed()
    {
        var manager = await app.As(Roles.Manager);

        var empty = await (await manager.PostAsJsonAsync("/api/v1/people", new { }, Ct)).Json();
        var king = await manager.PostAsJsonAsync("/api/v1/people", new { name = "K", userName = "k", roles = new[] { "king" } }, Ct);
        var taken = await manager.PostAsJsonAsync("/api/v1/people", new { name = "M", userName = "MANAGER", roles = new[] { "advisor" } }, Ct);

        Assert.Equal(["name", "roles", "userName"], empty.GetProperty("errors").EnumerateObject().Select(e => e.Name).Order());
        Assert.Equal("roles holds \"king\": advisor, technician, manager are allowed.", await king.Sentence());
        Assert.Equal((HttpStatusCode.Conflict, "userName is \"MANAGER\": another account has it already; choose another."), (taken.StatusCode, await taken.Sentence()));
    }

    [Fact]
    public async Task An_advisor_sees_people_and_changes_nobody_and_a_technician_does_not_see_them()
    {
        var advisor = await app.As(Roles.Advisor);
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var list = await pages.Open("/people");
        var person = await pages.Open($"/people/{TestWorkshop.Technician}");

        Assert.Contains("Tek Nician", list.MainText, StringComparison.Ordinal);
        Assert.Null(person.Html.QuerySelector("main form[method=post]"));
        Assert.Equal(HttpStatusCode.Forbidden, (await pages.Open("/people/new")).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await advisor.PostAsJsonAsync("/api/v1/people", Body("X", Roles.Advisor), Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await TestPages.SignedIn(app, Roles.Technician)).Open("/people")).Status);
    }

    [Fact]
    public async Task By_the_pages_a_person_is_added_and_a_reload_does_not_show_the_password_again()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var form = await pages.Open("/people/new");
        var typed = new Dictionary<string, string?> { ["Input.Name"] = "Pia Page", ["Input.UserName"] = "pia", ["Input.Roles"] = "technician" };

        var shown = await pages.Send(form, "/people/new", typed);
        var reloaded = await pages.Send(form, "/people/new", typed);

        var password = shown.Html.QuerySelector("code.password")!.TextContent;
        Assert.Equal(HttpStatusCode.OK, (await TrySignIn("pia", password)).StatusCode);
        Assert.Null(reloaded.Html.QuerySelector("code.password"));
        Assert.Contains("shown once already", reloaded.MainText, StringComparison.Ordinal);
        var id = shown.Html.QuerySelectorAll("main a").Select(a => a.GetAttribute("href")!).First(h => h.StartsWith("/people/0", StringComparison.Ordinal));
        var reset = await pages.Send(id, [], "#password");
        Assert.NotEqual(password, reset.Html.QuerySelector("code.password")!.TextContent);
        var stale = await pages.Open(id);
        await pages.Send(id, new() { ["Input.Phone"] = "+43 1" }, "#edit");
        var refused = await pages.Send(stale, id, new() { ["Input.Phone"] = "+43 2" }, "#edit");
        Assert.Equal((HttpStatusCode.PreconditionFailed, "+43 2"), (refused.Status, refused.ValueOf("Input.Phone")));
        Assert.Equal(HttpStatusCode.Redirect, (await pages.Send(refused, id, [], "#edit")).Status);
    }

    private sealed record NewPerson(string name, string userName, string[] roles);

    private static NewPerson Body(string name, params string[] roles) => new(name, $"account {Interlocked.Increment(ref made)}", roles);

    private static HttpRequestMessage Post(object body, string key) =>
        new(HttpMethod.Post, "/api/v1/people") { Content = JsonContent.Create(body), Headers = { { "Idempotency-Key", key } } };

    private static async Task<(Guid Id, string UserName, string Password)> Add(HttpClient manager, string name, params string[] roles)
    {
        var body = Body(name, roles);
        var shown = await (await manager.PostAsJsonAsync("/api/v1/people", body, Ct)).Json();
        return (shown.GetProperty("id").GetGuid(), body.userName, shown.GetProperty("password").GetString()!);
    }

    private static Task<HttpResponseMessage> TryChange(HttpClient manager, Guid id, object body) => manager.Change($"/api/v1/people/{id}", body);

    private static async Task Change(HttpClient manager, Guid id, object body) => (await TryChange(manager, id, body)).EnsureSuccessStatusCode();

    private Task<HttpResponseMessage> TrySignIn(string userName, string password) =>
        app.Anonymous().PostAsJsonAsync("/api/v1/session", new { userName, password }, Ct);

    private async Task<JsonElement> SignIn(string userName, string password) => await (await TrySignIn(userName, password)).Json();
}
