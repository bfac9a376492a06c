using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Http;

public sealed class IdempotencyTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_key_that_is_still_being_worked_on_is_a_conflict()
    {
        var advisor = await app.As(Roles.Advisor);
        await using var source = NpgsqlDataSource.Create(app.Database.Connections.Direct);
        await using var other = await source.OpenConnectionAsync(Ct);
        await using var holding = await other.BeginTransactionAsync(Ct);
        await using var command = new NpgsqlCommand(
            $"select pg_advisory_xact_lock(hashtextextended('{TestWorkshop.Advisor}/AddMotorcycle/slow', 0))", other);
        await command.ExecuteNonQueryAsync(Ct);

        var during = await Send(advisor, "slow", "SLOW 1");
        await holding.RollbackAsync(Ct);
        var after = await Send(advisor, "slow", "SLOW 1");

        Assert.Equal(HttpStatusCode.Conflict, during.StatusCode);
        Assert.Equal("request-in-flight", await Code(during));
        Assert.Equal(HttpStatusCode.Created, after.StatusCode);
    }

    [Fact]
    public async Task Of_many_sends_of_one_key_at_once_exactly_one_writes()
    {
        var advisor = await app.As(Roles.Advisor);

        var answers = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => Send(advisor, "many", "MANY 1")));

        Assert.All(answers, a => Assert.Contains(a.StatusCode, new[] { HttpStatusCode.Created, HttpStatusCode.Conflict }));
        Assert.Contains(answers, a => a.StatusCode == HttpStatusCode.Created);
        Assert.Equal(1, await app.Look(db => db.Motorcycles.CountAsync(m => m.Registration == "MANY 1", Ct)));
    }

    [Fact]
    public async Task A_refused_write_keeps_no_answer_so_that_it_may_be_mended_under_the_same_key()
    {
        var advisor = await app.As(Roles.Advisor);

        var unknown = await Send(advisor, "mended", "MENDED", engineModel: TestWorkshop.Bay1);
        var mended = await Send(advisor, "mended", "MENDED");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, unknown.StatusCode);
        Assert.Equal(HttpStatusCode.Created, mended.StatusCode);
    }

    [Fact]
    public async Task A_post_without_a_key_is_told_what_to_send()
    {
        var advisor = await app.As(Roles.Advisor);
        using var bare = app.Anonymous();
        bare.DefaultRequestHeaders.Authorization = advisor.DefaultRequestHeaders.Authorization;

        var answer = await bare.PostAsJsonAsync("/api/v1/motorcycles", new { }, Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("Idempotency-Key", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
    }

    private static async Task<HttpResponseMessage> Send(HttpClient client, string key, string registration, Guid? engineModel = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/motorcycles")
        {
            Content = JsonContent.Create(new
            {
                registration, maker = "Testwerk", model = "Twin 600", modelYear = 2021,
                engineModelId = engineModel ?? TestWorkshop.EngineModel, odometerUnit = "miles", inServiceSince = "2021-04-01",
            }),
        };
        request.Headers.Add("Idempotency-Key", key);
        return await client.SendAsync(request, Ct);
    }

    private static async Task<string> Code(HttpResponseMessage answer) =>
        (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("code").GetString()!;
}
