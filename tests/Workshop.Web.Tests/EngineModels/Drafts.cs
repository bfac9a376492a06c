using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Http;
using Xunit;

namespace Workshop.Web.Tests.EngineModels;

/// <summary>A manager at the drafts of the API, who sends with each change the version that the last one answered.</summary>
internal sealed class Drafts(HttpClient client, Guid id)
{
    public const string Models = "/api/v1/engine-models";

    private static int made;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public Guid Id { get; } = id;

    public HttpClient Client { get; } = client;

    public string Address => $"{Models}/{Id}/draft";

    /// <summary>An engine model of the test's own, and a manager at it.</summary>
    public static async Task<Drafts> OfNewModel(WorkshopApp app)
    {
        var manager = await app.As(Roles.Manager);
        var answer = await manager.PostAsJsonAsync(Models, new
        {
            maker = "Testwerk", name = $"Drafted {Interlocked.Increment(ref made)}", invented = true,
            specification = JsonSerializer.SerializeToElement(TestEngines.Twin(), WorkshopJson.Options),
        }, Ct);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Ct));
        return new Drafts(manager, (await Json(answer)).GetProperty("id").GetGuid());
    }

    public async Task<JsonElement> Read() => await Client.GetFromJsonAsync<JsonElement>(Address, Ct);

    /// <summary>A section or an entry as it stands in the draft, to be changed and sent back.</summary>
    public async Task<JsonNode> Part(string member, string? code = null)
    {
        var part = JsonNode.Parse((await Read()).GetProperty("specification").GetRawText())![member]!;
        return (code is null ? part : part.AsArray().Single(e => e!["code"]!.ToString() == code)!).DeepClone();
    }

    public async Task<HttpResponseMessage> Put(string place, JsonNode content, string? tag = null) =>
        await Send(HttpMethod.Put, $"{Address}/{place}", new JsonObject { ["content"] = content }, tag);

    /// <summary>Changes one figure of an entry of the draft.</summary>
    public async Task<JsonElement> Set(string list, string code, string section, string figure, JsonNode? value)
    {
        var entry = await Part(list, code);
        entry[figure] = value;
        return await Json(await Put($"{section}/{code}", entry));
    }

    public Task<HttpResponseMessage> Post(string what, object body, string? tag = null) =>
        Send(HttpMethod.Post, $"{Address}/{what}", body, tag);

    public Task<HttpResponseMessage> Publish(string note = "As in sheet 12", string? tag = null) => Post("publish", new { note }, tag);

    public Task<HttpResponseMessage> Delete(string place = "", string? tag = null) =>
        Send(HttpMethod.Delete, Address + place, null, tag);

    private async Task<HttpResponseMessage> Send(HttpMethod method, string address, object? body, string? tag)
    {
        tag ??= $"\"{(await Read()).GetProperty("rowVersion").GetUInt32()}\"";
        using var request = new HttpRequestMessage(method, address) { Content = body is null ? null : JsonContent.Create(body) };
        request.Headers.TryAddWithoutValidation("If-Match", tag);
        return await Client.SendAsync(request, Ct);
    }

    public static async Task<JsonElement> Json(HttpResponseMessage answer)
    {
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
    }

    public static async Task<IReadOnlyDictionary<string, string>> Errors(HttpResponseMessage answer) =>
        (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("errors").EnumerateObject()
            .ToDictionary(e => e.Name, e => e.Value[0].GetString()!);
}
