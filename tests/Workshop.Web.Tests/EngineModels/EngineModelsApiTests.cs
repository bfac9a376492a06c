using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.EngineModels;

public sealed class EngineModelsApiTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Address = "/api/v1/engine-models";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private static string Known => $"{Address}/{TestWorkshop.EngineModel}";

    [Fact]
    public async Task Everybody_signed_in_reads_the_list_and_a_model_with_its_tag()
    {
        var technician = await app.As(Roles.Technician);

        var list = await technician.GetFromJsonAsync<JsonElement>(Address, Ct);
        var answer = await technician.GetAsync(Known, Ct);
        var model = await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);

        Assert.Contains(list.GetProperty("rows").EnumerateArray(), r => r.GetProperty("name").GetString() == "Twin 600");
        Assert.NotNull(answer.Headers.ETag);
        Assert.Equal("shimUnderFingerFollower", model.GetProperty("specification").GetProperty("valveTrain").GetString());
        Assert.Equal(0.6m, model.GetProperty("specification").GetProperty("limits")[0].GetProperty("leverRatio").GetDecimal());
    }

    [Fact]
    public async Task The_list_comes_a_page_at_a_time()
    {
        var manager = await app.As(Roles.Manager);
        await Made(await manager.PostAsJsonAsync(Address, Body("Paged A", Specification()), Ct));
        await Made(await manager.PostAsJsonAsync(Address, Body("Paged B", Specification()), Ct));

        var seen = new List<string>();
        for (string? after = ""; after is not null;)
        {
            var page = await manager.GetFromJsonAsync<JsonElement>($"{Address}?take=1{(after.Length > 0 ? $"&after={after}" : "")}", Ct);
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("name").GetString()!));
            after = page.GetProperty("next").GetString();
        }

        Assert.Equal(seen.Order(StringComparer.Ordinal), seen);
        Assert.Superset(new HashSet<string> { "Paged A", "Paged B", "Twin 600" }, seen.ToHashSet());
    }

    [Fact]
    public async Task What_a_model_answers_can_be_sent_as_a_new_one()
    {
        var manager = await app.As(Roles.Manager);
        var known = await manager.GetFromJsonAsync<JsonElement>(Known, Ct);

        var id = (await Made(await manager.PostAsJsonAsync(
            Address, Body("Sent back", JsonNode.Parse(known.GetProperty("specification").GetRawText())!), Ct))).GetProperty("id").GetGuid();

        var copy = await manager.GetFromJsonAsync<JsonElement>($"{Address}/{id}", Ct);
        Assert.True(JsonElement.DeepEquals(known.GetProperty("specification"), copy.GetProperty("specification")));
        Assert.Equal(1, copy.GetProperty("version").GetInt32());
    }

    [Fact]
    public async Task Only_a_manager_adds_models_and_versions()
    {
        foreach (var role in new[] { Roles.Advisor, Roles.Technician })
        {
            var client = await app.As(role);
            Assert.Equal(HttpStatusCode.Forbidden, (await client.PostAsJsonAsync(Address, Body("Nobody's", Specification()), Ct)).StatusCode);
            Assert.Equal(HttpStatusCode.Forbidden, (await client.PostAsJsonAsync($"{Known}/versions", Version(1, Specification()), Ct)).StatusCode);
        }
    }

    [Theory]
    [InlineData("limits/0/setToMm", "0.5", HttpStatusCode.UnprocessableEntity, "specification.limits[0].setToMm", "within the limits")]
    [InlineData("serviceItems/0/cautions/0", "\"beware\"", HttpStatusCode.UnprocessableEntity, "specification.serviceItems[0].cautions[0]", "no such caution")]
    [InlineData("limits/0/lowerMm", "5", HttpStatusCode.BadRequest, "specification.limits[0].lowerMm", "5 is not allowed")]
    [InlineData("limits/0/lowerMm", "\"wide\"", HttpStatusCode.BadRequest, "specification.limits[0].lowerMm", "\"wide\": it is not of the form")]
    [InlineData("fasteners/1/treatment", "\"greasy\"", HttpStatusCode.BadRequest, "specification.fasteners[1].treatment", "\"greasy\": dry, oiled, locked are allowed")]
    [InlineData("fasteners/0/colour", "\"red\"", HttpStatusCode.BadRequest, "specification.fasteners[0].colour", "'colour' is not known there")]
    [InlineData("valveTrain", "\"hydraulic\"", HttpStatusCode.UnprocessableEntity, "specification.valveTrain", "Positively closed trains")]
    public async Task A_fault_of_the_document_is_named_with_its_path(
        string place, string json, HttpStatusCode status, string field, string says)
    {
        var manager = await app.As(Roles.Manager);
        var specification = Specification();
        Plant(specification, place, JsonNode.Parse(json));

        var answer = await manager.PostAsJsonAsync(Address, Body("Faulty", specification), Ct);

        Assert.Equal(status, answer.StatusCode);
        var errors = (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("errors");
        Assert.Contains(says, errors.GetProperty(field)[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_missing_is_named()
    {
        var manager = await app.As(Roles.Manager);
        var specification = Specification();
        ((JsonObject)specification["fasteners"]![0]!).Remove("torqueNm");

        var answer = await manager.PostAsJsonAsync(Address, Body("Without torque", specification), Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("it lacks 'torqueNm'", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await manager.PostAsJsonAsync(Address, new { maker = "Testwerk", name = "Bare" }, Ct)).StatusCode);
    }

    [Fact]
    public async Task An_unusual_lever_ratio_stands_once_it_is_confirmed()
    {
        var manager = await app.As(Roles.Manager);
        var specification = Specification();
        specification["limits"]![0]!["leverRatio"] = 1.2m;

        var asked = await manager.PostAsJsonAsync(Address, Body("Unusual", specification), Ct);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        Assert.Contains("0.4 to 1 is usual", await asked.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);

        var body = Body("Unusual", specification);
        body["confirmUnusual"] = true;
        await Made(await manager.PostAsJsonAsync(Address, body, Ct));
    }

    [Fact]
    public async Task A_new_version_is_current_and_old_job_cards_keep_theirs()
    {
        var manager = await app.As(Roles.Manager);
        var id = (await Made(await manager.PostAsJsonAsync(Address, Body("Versioned", Specification()), Ct))).GetProperty("id").GetGuid();
        var changed = Specification();
        changed["limits"]![0]!["setToMm"] = 0.14m;

        var made = await Made(await manager.PostAsJsonAsync($"{Address}/{id}/versions", Version(1, changed), Ct));
        var stale = await manager.PostAsJsonAsync($"{Address}/{id}/versions", Version(1, changed), Ct);

        Assert.Equal(2, made.GetProperty("version").GetInt32());
        Assert.Equal(HttpStatusCode.PreconditionFailed, stale.StatusCode);
        var current = await manager.GetFromJsonAsync<JsonElement>($"{Address}/{id}", Ct);
        var first = await manager.GetFromJsonAsync<JsonElement>($"{Address}/{id}?version=1", Ct);
        Assert.Equal(0.14m, current.GetProperty("specification").GetProperty("limits")[0].GetProperty("setToMm").GetDecimal());
        Assert.Equal(0.15m, first.GetProperty("specification").GetProperty("limits")[0].GetProperty("setToMm").GetDecimal());
        Assert.Equal(HttpStatusCode.NotFound, (await manager.GetAsync($"{Address}/{id}?version=3", Ct)).StatusCode);
    }

    [Fact]
    public async Task A_new_version_moves_what_is_due()
    {
        var manager = await app.As(Roles.Manager);
        var id = (await Made(await manager.PostAsJsonAsync(Address, Body("Due sooner", Specification()), Ct))).GetProperty("id").GetGuid();
        var motorcycle = (await Made(await manager.PostAsJsonAsync("/api/v1/motorcycles", new
        {
            registration = "VERSION 1", maker = "Testwerk", model = "Twin 600", modelYear = 2024, engineModelId = id,
            odometerUnit = "kilometres", inServiceSince = "2024-05-01",
        }, Ct))).GetProperty("id").GetGuid();
        var sooner = Specification();
        sooner["serviceItems"]![0]!["interval"]!["everyKm"] = 12_000;

        await Made(await manager.PostAsJsonAsync($"{Address}/{id}/versions", Version(1, sooner), Ct));

        Assert.Equal(12_000, await app.Look(async db => (await db.DueItems.SingleAsync(
            d => d.MotorcycleId == motorcycle && d.ServiceItemCode == TestEngines.ValveCheck, Ct)).DueAt!.Value.Kilometres));
    }

    [Fact]
    public async Task A_version_may_not_lose_a_valve()
    {
        var manager = await app.As(Roles.Manager);
        var id = (await Made(await manager.PostAsJsonAsync(Address, Body("Keeps its valves", Specification()), Ct))).GetProperty("id").GetGuid();
        var lost = Specification();
        foreach (var valve in lost["valves"]!.AsArray())
        {
            valve!["lobes"] = 1;
        }

        ((JsonArray)lost["limits"]!).RemoveAt(1);
        foreach (var position in lost["measuringPositions"]!.AsArray())
        {
            ((JsonArray)position!["lobes"]!).RemoveAt(1);
        }

        var answer = await manager.PostAsJsonAsync($"{Address}/{id}/versions", Version(1, lost), Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("1-intake-1/2", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_name_twice_is_refused()
    {
        var manager = await app.As(Roles.Manager);
        await Made(await manager.PostAsJsonAsync(Address, Body("Once", Specification()), Ct));

        Assert.Equal(HttpStatusCode.Conflict, (await manager.PostAsJsonAsync(Address, Body("Once", Specification()), Ct)).StatusCode);
    }

    private static JsonNode Specification() => JsonSerializer.SerializeToNode(TestEngines.Twin(), WorkshopJson.Options)!;

    private static JsonObject Body(string name, JsonNode specification) => new()
    {
        ["maker"] = "Testwerk", ["name"] = name, ["invented"] = true, ["specification"] = specification.DeepClone(),
    };

    private static JsonObject Version(int basedOn, JsonNode specification) => new()
    {
        ["basedOnVersion"] = basedOn, ["specification"] = specification.DeepClone(),
    };

    private static void Plant(JsonNode root, string place, JsonNode? value)
    {
        var steps = place.Split('/');
        var parent = steps[..^1].Aggregate(root, (node, step) => int.TryParse(step, out var index) ? node[index]! : node[step]!);
        if (int.TryParse(steps[^1], out var at))
        {
            parent[at] = value;
        }
        else
        {
            parent[steps[^1]] = value;
        }
    }

    private static async Task<JsonElement> Made(HttpResponseMessage answer)
    {
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Ct));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
    }
}
