using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Contacts;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Motorcycles;
using Xunit;

namespace Workshop.Web.Tests.Contacts;

/// <summary>Owners made through the API, with what is needed to reach them.</summary>
internal static class Owners
{
    private static int made;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>An owner of one motorcycle that has been due for service since 2024, with consents.</summary>
    public static async Task<(Guid Owner, Guid Motorcycle)> AddOwner(
        this HttpClient advisor, string name = "Jörg Müßig", string? email = null, params ContactChannel[] channels)
    {
        var number = Interlocked.Increment(ref made);
        var answer = await advisor.PostAsJsonAsync("/api/v1/motorcycles", new
        {
            registration = $"OWN {number}", maker = "Testwerk", model = "Twin 600", modelYear = 2024, engineModelId = TestWorkshop.EngineModel,
            odometerUnit = "kilometres", inServiceSince = "2024-03-01", ownerName = name, ownerPhone = $"000 {number}",
            ownerEmail = email ?? $"owner{number}@example.org",
        }, Ct);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var motorcycle = (await answer.Json()).GetProperty("id").GetGuid();
        var owner = (await advisor.Motorcycle(motorcycle)).GetProperty("owner").GetProperty("id").GetGuid();
        foreach (var channel in channels)
        {
            (await advisor.Consent(owner, channel)).EnsureSuccessStatusCode();
        }

        return (owner, motorcycle);
    }

    public static Task<HttpResponseMessage> Consent(this HttpClient advisor, Guid owner, ContactChannel channel) =>
        advisor.PostAsJsonAsync("/api/v1/consents", new { personId = owner, channel = Word(channel), howGiven = "signed at check-in" }, Ct);

    public static Task<HttpResponseMessage> Contact(
        this HttpClient advisor, Guid owner, string outcome, string? callBackOn = null, string? remark = null) =>
        advisor.PostAsJsonAsync("/api/v1/contacts", new { personId = owner, channel = "phone", outcome, callBackOn, remark }, Ct);

    public static async Task<JsonElement?> CallOf(this HttpClient advisor, Guid owner, string query = "")
    {
        var calls = await advisor.GetFromJsonAsync<JsonElement>($"/api/v1/calls?take=500{query}", Ct);
        var rows = calls.GetProperty("rows").EnumerateArray().Where(r => r.GetProperty("ownerId").GetGuid() == owner).ToList();
        return rows.Count == 0 ? null : Assert.Single(rows);
    }

    public static Task<HttpResponseMessage> Write(
        this HttpClient advisor, Guid motorcycle, string subject = "Service is due", string body = "Please call us.", string channel = "email") =>
        advisor.PostAsJsonAsync("/api/v1/messages", new { motorcycleId = motorcycle, channel, subject, body }, Ct);

    /// <summary>Writes an e-mail and answers its id.</summary>
    public static async Task<Guid> Queue(this HttpClient advisor, Guid motorcycle, string subject = "Service is due", string body = "Please call us.")
    {
        var answer = await advisor.Write(motorcycle, subject, body);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (await answer.Json()).GetProperty("id").GetGuid();
    }

    public static Task<HttpResponseMessage> Decide(this HttpClient advisor, Guid message, string decision) =>
        advisor.Change($"/api/v1/messages/{message}/decision", new { decision }, read: $"/api/v1/messages/{message}");

    public static Task<OutboxMessage> MessageRow(this WorkshopApp app, Guid id) =>
        app.Look(db => db.OutboxMessages.AsNoTracking().SingleAsync(m => m.Id == id, Ct));

    private static string Word(ContactChannel channel) => JsonNamingPolicy.CamelCase.ConvertName(channel.ToString());
}
