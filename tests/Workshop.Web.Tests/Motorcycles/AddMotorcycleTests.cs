using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Motorcycles;

public sealed class AddMotorcycleTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_motorcycle_comes_with_engine_odometer_and_owner()
    {
        var advisor = await app.As(Roles.Advisor);

        var answer = await advisor.PostAsJsonAsync("/api/v1/motorcycles", Body("WK 100"), Ct);

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var id = (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("id").GetGuid();
        Assert.Equal($"/api/v1/motorcycles/{id}", answer.Headers.Location?.ToString());
        Assert.Equal(1, await app.Look(db => db.EngineFittings.CountAsync(f => f.MotorcycleId == id, Ct)));
        Assert.Equal(1, await app.Look(db => db.Odometers.CountAsync(o => o.MotorcycleId == id, Ct)));
        Assert.Equal("Olga Owner", await app.Look(db => (
            from m in db.Motorcycles join p in db.People on m.OwnerId equals p.Id where m.Id == id select p.Name).SingleAsync(Ct)));
    }

    [Fact]
    public async Task An_empty_body_names_every_field_that_is_wanted()
    {
        var advisor = await app.As(Roles.Advisor);

        var answer = await advisor.PostAsJsonAsync("/api/v1/motorcycles", new { }, Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var errors = (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("errors");
        foreach (var field in new[] { "registration", "maker", "model", "modelYear", "engineModelId", "inServiceSince" })
        {
            Assert.Contains($"{field} is empty", errors.GetProperty(field)[0].GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_same_key_again_answers_the_same_and_writes_nothing_twice()
    {
        var advisor = await app.As(Roles.Advisor);

        var first = await Send(advisor, "once", Body("WK 200"));
        var second = await Send(advisor, "once", Body("WK 200"));
        var other = await Send(advisor, "once", Body("WK 201"));

        Assert.Equal(HttpStatusCode.Created, second.StatusCode);
        Assert.Equal(await first.Content.ReadAsStringAsync(Ct), await second.Content.ReadAsStringAsync(Ct));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
        Assert.Equal(1, await app.Look(db => db.Motorcycles.CountAsync(m => m.Registration.StartsWith("WK 20"), Ct)));
    }

    [Fact]
    public async Task A_technician_may_not_add_one()
    {
        var technician = await app.As(Roles.Technician);

        var answer = await technician.PostAsJsonAsync("/api/v1/motorcycles", Body("WK 300"), Ct);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    private static async Task<HttpResponseMessage> Send(HttpClient client, string key, object body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/motorcycles") { Content = JsonContent.Create(body) };
        request.Headers.Add("Idempotency-Key", key);
        return await client.SendAsync(request, Ct);
    }

    private static object Body(string registration) => new
    {
        registration,
        maker = "Testwerk",
        model = "Twin 600",
        modelYear = 2021,
        engineModelId = TestWorkshop.EngineModel,
        odometerUnit = "kilometres",
        inServiceSince = "2021-04-01",
        ownerName = "Olga Owner",
    };
}
