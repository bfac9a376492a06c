using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Bookings;

/// <summary>What the advisor does at the counter, by the API.</summary>
internal static class Counter
{
    private static int plates;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>Takes a new motorcycle into the books.</summary>
    public static async Task<Guid> AddMotorcycle(this HttpClient advisor, string? registration = null)
    {
        var answer = await advisor.PostAsJsonAsync("/api/v1/motorcycles", new
        {
            registration = registration ?? $"BOOK {Interlocked.Increment(ref plates)}",
            maker = "Testwerk",
            model = "Twin 600",
            modelYear = 2021,
            engineModelId = TestWorkshop.EngineModel,
            odometerUnit = "kilometres",
            inServiceSince = "2021-04-01",
            ownerName = "Olga Owner",
        }, Ct);
        answer.EnsureSuccessStatusCode();
        return (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("id").GetGuid();
    }

    /// <summary>One bay, technician or tool more.</summary>
    public static Task<Guid> AddResource(
        this WorkshopApp app, ResourceKind kind, string name, bool retired = false, params string[] capabilities) => app.Look(async db =>
    {
        var resource = new Resource
        {
            Id = NewId.At(app.Clock), Kind = kind, Name = name, Retired = retired, Capabilities = [.. capabilities],
        };
        db.Resources.Add(resource);
        await db.SaveChangesAsync(Ct);
        return resource.Id;
    });

    /// <summary>Books a visit; what is not said is as usual: oil service, bay 1, the one technician.</summary>
    public static Task<HttpResponseMessage> Book(
        this HttpClient advisor, Guid motorcycle, Instant startsAt, Guid? bay = null, Guid? technician = null, params object[] items) =>
        advisor.PostAsJsonAsync("/api/v1/bookings", new
        {
            motorcycleId = motorcycle,
            items = items.Length > 0 ? items : [Item(TestEngines.OilService)],
            bayId = bay ?? TestWorkshop.Bay1,
            technicianId = technician ?? TestWorkshop.TechnicianResource,
            startsAt = startsAt.ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", null),
        }, Ct);

    public static object Item(string code, string likelihood = "certain") => new { code, likelihood };

    public static async Task<JsonElement> Json(this HttpResponseMessage answer) =>
        JsonElement.Parse(await answer.Content.ReadAsStringAsync(Ct));

    public static async Task<string> Sentence(this HttpResponseMessage answer) =>
        (await answer.Json()).GetProperty("detail").GetString()!;

    public static async Task<int> Number(this HttpResponseMessage answer)
    {
        answer.EnsureSuccessStatusCode();
        return (await answer.Json()).GetProperty("number").GetInt32();
    }
}
