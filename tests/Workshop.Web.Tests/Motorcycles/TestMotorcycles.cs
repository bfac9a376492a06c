using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Motorcycles;

/// <summary>Motorcycles made through the API, for tests of what is then done to them.</summary>
internal static class TestMotorcycles
{
    private static int plates;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>In service since 1 March 2024; a registration of its own.</summary>
    public static async Task<Guid> AddMotorcycle(this HttpClient advisor, string unit = "kilometres", string? vin = null)
    {
        var answer = await advisor.PostAsJsonAsync("/api/v1/motorcycles", new
        {
            registration = $"TEST {Interlocked.Increment(ref plates)}",
            vin,
            maker = "Testwerk",
            model = "Twin 600",
            modelYear = 2024,
            engineModelId = TestWorkshop.EngineModel,
            odometerUnit = unit,
            inServiceSince = "2024-03-01",
            ownerName = "Olga Owner",
            ownerPhone = "+43 1 000",
        }, Ct);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (await answer.Json()).GetProperty("id").GetGuid();
    }

    public static Task<HttpResponseMessage> Odometer(
        this HttpClient advisor, Guid motorcycle, int odometer, string readOn, Guid? supersedesId = null, string? reason = null) =>
        advisor.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/odometer-readings", new { odometer, readOn, supersedesId, reason }, Ct);

    public static Task<JsonElement> Motorcycle(this HttpClient client, Guid motorcycle) =>
        client.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{motorcycle}", Ct);

    public static async Task<JsonElement> DueOf(this HttpClient client, Guid motorcycle, string code) =>
        (await client.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{motorcycle}/due", Ct))
            .GetProperty("rows").EnumerateArray().Single(row => row.GetProperty("code").GetString() == code);

    public static Task<JsonElement> Json(this HttpResponseMessage answer) => answer.Content.ReadFromJsonAsync<JsonElement>(Ct);

    public static async Task<string> Detail(this HttpResponseMessage answer) => (await answer.Json()).GetProperty("detail").GetString()!;
}
