using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.EngineModels;

public sealed class ThreadTorqueTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_absurd_torque_of_a_new_version_is_asked_back_and_stands_when_confirmed()
    {
        var manager = await app.As(Roles.Manager);
        var body = await Changed(manager, fastener =>
        {
            (fastener["propertyClass"], fastener["form"], fastener["into"]) = ("8.8", "solidBolt", new JsonObject { ["material"] = "steel" });
            fastener["torqueNm"] = 40;
        });

        var asked = await Post(manager, body);
        body["confirmUnusual"] = true;
        var made = await Post(manager, body);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        Assert.Contains("above 18 N.m it would exceed the proof load whatever the friction", await asked.Sentence());
        Assert.Contains("confirmUnusual is false", await asked.Sentence());
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        var torques = await manager.GetFromJsonAsync<JsonElement>($"/api/v1/engine-models/{(await made.Json()).GetProperty("id").GetGuid()}/torques", Ct);
        var bolt = torques.GetProperty("fasteners").EnumerateArray().Single(f => f.GetProperty("code").GetString() == TestEngines.CoverBolt);
        Assert.Equal((40m, "exceeds", true), (
            bolt.GetProperty("torqueNm").GetDecimal(), bolt.GetProperty("torque").GetProperty("verdict").GetString(),
            bolt.GetProperty("torque").GetProperty("asksBack").GetBoolean()));
    }

    [Fact]
    public async Task What_is_not_known_of_a_fastener_is_no_check_and_no_question()
    {
        var manager = await app.As(Roles.Manager);
        var made = await Post(manager, await Changed(manager, fastener => fastener["torqueNm"] = 90));

        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
    }

    [Fact]
    public async Task A_class_that_the_standard_lacks_is_refused_by_its_path()
    {
        var manager = await app.As(Roles.Manager);
        var refused = await Post(manager, await Changed(manager, fastener => fastener["propertyClass"] = "8.7"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("specification.fasteners[0].propertyClass is \"8.7\"", await refused.Sentence());
    }

    [Fact]
    public async Task Any_thread_is_compared_by_page_and_route_alike()
    {
        const string Asked = "thread=M6x1&propertyClass=8.8&form=solidBolt&treatment=oiled&into=steel";
        var client = await app.As(Roles.Technician);
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var answer = await client.GetFromJsonAsync<JsonElement>($"/api/v1/thread-torque?{Asked}&torqueNm=9.5", Ct);
        var page = await pages.Open($"/engine-models/threads?{Asked}&torqueNm=9%2C5");
        var refused = await pages.Open("/engine-models/threads?thread=M6&torqueNm=9");

        Assert.Equal("usual", answer.GetProperty("verdict").GetString());
        Assert.Contains(answer.GetProperty("sentence").GetString()!, page.MainText);
        Assert.Equal("9,5", page.ValueOf("torqueNm"));
        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Contains("thread is \"M6\": diameter and pitch by ISO 261 are wanted, for example M6x1.", refused.Faults);
    }

    private static async Task<JsonObject> Changed(HttpClient client, Action<JsonObject> change)
    {
        var known = await client.GetFromJsonAsync<JsonObject>($"/api/v1/engine-models/{TestWorkshop.EngineModel}", Ct);
        var specification = (JsonObject)known!["specification"]!.DeepClone();
        change((JsonObject)specification["fasteners"]![0]!);
        return new JsonObject { ["maker"] = "Invented", ["name"] = Guid.CreateVersion7().ToString(), ["invented"] = true, ["specification"] = specification };
    }

    private static Task<HttpResponseMessage> Post(HttpClient client, JsonObject body) => client.PostAsJsonAsync("/api/v1/engine-models", body, Ct);
}
