using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace Workshop.Browser.Tests.Hosting;

/// <summary>A sixteen-valve engine that is checked in with nothing measured yet, seen on the screen of the first bay.</summary>
public sealed class BayJob
{
    private static int plates;

    private readonly IPage manager;

    private BayJob(IPage manager, int number, string bay) => (this.manager, Number, Bay) = (manager, number, bay);

    public int Number { get; }

    public string Bay { get; }

    public string Measure => $"/bays/{Bay}?card={Number}&step=Measure";

    public string Address(string step) => $"/bays/{Bay}?card={Number}&step={step}";

    /// <param name="manager">A page that is signed in as the manager.</param>
    public static async Task<BayJob> Open(IPage manager)
    {
        var models = await Get(manager, "/api/v1/engine-models");
        var model = models.GetProperty("rows").EnumerateArray().First(m => m.GetProperty("name").GetString()!.StartsWith("Ledger", StringComparison.Ordinal));
        var motorcycle = (await Post(manager, "/api/v1/motorcycles", new
        {
            registration = $"BAY {Interlocked.Increment(ref plates)} {Guid.CreateVersion7().ToString("N")[^4..]}", maker = "Brindlequist", model = "Ledger Quill", modelYear = 2022,
            engineModelId = model.GetProperty("id").GetString(), engineSerialNumber = Guid.CreateVersion7().ToString("N")[^8..], odometerUnit = "kilometres",
            inServiceSince = "2022-03-01", ownerName = "Invented Owner",
        })).GetProperty("id").GetString();
        object[] items = [new { code = "valve-clearance-check", likelihood = "certain" }];
        var slot = (await Post(manager, "/api/v1/bookings/slots", new { motorcycleId = motorcycle, items, count = 1 })).GetProperty("slots")[0];
        var number = (await Post(manager, "/api/v1/bookings", new
        {
            motorcycleId = motorcycle, items, bayId = slot.GetProperty("bayId").GetString(), technicianId = slot.GetProperty("technicianId").GetString(),
            startsAt = slot.GetProperty("startsAt").GetString(),
        })).GetProperty("number").GetInt32();
        await Post(manager, $"/api/v1/job-cards/{number}/check-in", new { odometerCount = 24_000, engineStoppedAt = TimeProvider.System.GetUtcNow().AddHours(-14).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture) });
        var bay = (await Get(manager, "/api/v1/bays")).GetProperty("places").EnumerateArray()
            .First(p => p.GetProperty("kind").GetString() == "bay").GetProperty("id").GetString()!;
        return new BayJob(manager, number, bay);
    }

    /// <summary>The readings as the service has them.</summary>
    public Task<JsonElement> Readings() => Get(manager, $"/api/v1/job-cards/{Number}/readings");

    /// <summary>What the service has of the card, by the address's end.</summary>
    public Task<JsonElement> Ask(string what) => Get(manager, $"/api/v1/job-cards/{Number}/{what}");

    /// <summary>Somebody else writes to the card.</summary>
    public Task<JsonElement> Tell(string what, object body) => Post(manager, $"/api/v1/job-cards/{Number}/{what}", body);

    /// <summary>Every attempt at one lobe, in order: what the blades said.</summary>
    public static IReadOnlyList<JsonElement> HistoryOf(JsonElement readings, string valve) => [.. readings.GetProperty("positions").EnumerateArray()
        .SelectMany(p => p.GetProperty("lobes").EnumerateArray()).Single(l => l.GetProperty("valve").GetString() == valve)
        .GetProperty("history").EnumerateArray()];

    /// <summary>A write through the API, as whoever the page is signed in as.</summary>
    public static async Task<JsonElement> Post(IPage page, string path, object body)
    {
        var answer = await page.APIRequest.PostAsync(path, new APIRequestContextOptions
        {
            DataObject = body,
            Headers = new Dictionary<string, string> { ["Idempotency-Key"] = Guid.CreateVersion7().ToString("N"), ["X-Workshop-Request"] = "1" },
        });
        var text = await answer.TextAsync();
        Assert.True(answer.Ok, $"{path} answered {answer.Status}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }

    public static async Task<JsonElement> Get(IPage page, string path)
    {
        var answer = await page.APIRequest.GetAsync(path);
        var text = await answer.TextAsync();
        Assert.True(answer.Ok, $"{path} answered {answer.Status}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }
}
