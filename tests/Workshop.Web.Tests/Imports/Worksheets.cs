using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Imports;

/// <summary>Files of old worksheets and the ways to send them.</summary>
internal static class Worksheets
{
    public const string Header = "motorcycle,date,odometer,valve,stage,go,no-go,shim";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static string File(params IEnumerable<string> lines) => string.Join('\n', lines.Prepend(Header)) + "\n";

    /// <summary>A motorcycle of the test engine in the books.</summary>
    public static async Task<Guid> Motorcycle(this WorkshopApp app, string registration, string inServiceSince = "1980-01-01") =>
        await (await app.As(Roles.Advisor)).AddMotorcycle(registration, inServiceSince);

    /// <summary>The same with a client that is signed in.</summary>
    public static async Task<Guid> AddMotorcycle(this HttpClient advisor, string registration, string inServiceSince = "1980-01-01")
    {
        var answer = await advisor.PostAsJsonAsync("/api/v1/motorcycles", new
        {
            registration, maker = "Testwerk", model = "Twin 600", modelYear = 1980, engineModelId = TestWorkshop.EngineModel,
            odometerUnit = "kilometres", inServiceSince,
        }, Ct);
        answer.EnsureSuccessStatusCode();
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("id").GetGuid();
    }

    public static async Task<HttpResponseMessage> SendCsv(this HttpClient client, string csv, string query = "")
    {
        using var content = new StringContent(csv, Encoding.UTF8, "text/csv");
        return await client.PostAsync(new Uri($"/api/v1/imports/readings{query}", UriKind.Relative), content, Ct);
    }

    public static Task<HttpResponseMessage> SendJson(this HttpClient client, object body) =>
        client.PostAsJsonAsync("/api/v1/imports/readings", body, Ct);

    /// <summary>The faults of a refused file, in order: "line 3, go" and its sentence.</summary>
    public static async Task<IReadOnlyList<(string At, string Sentence)>> Faults(this HttpResponseMessage answer)
    {
        var problem = await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
        return [.. problem.GetProperty("errors").EnumerateObject()
            .SelectMany(place => place.Value.EnumerateArray().Select(s => (place.Name, s.GetString()!)))];
    }

    public static async Task<JsonElement> Json(this HttpResponseMessage answer) =>
        await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
}
