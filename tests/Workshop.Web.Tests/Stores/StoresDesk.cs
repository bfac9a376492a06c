using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Stores;

/// <summary>Whoever keeps the stores, by the API: parts and places with codes of their own, and what happens to them.</summary>
internal sealed class StoresDesk(WorkshopApp app, HttpClient client)
{
    private static int made;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public HttpClient Client => client;

    public static async Task<StoresDesk> Of(WorkshopApp app) => new(app, await app.As(Roles.Manager));

    /// <summary>A part that no other test knows.</summary>
    public async Task<string> Part(string kind = "sealingRing", string unit = "piece", int? shelfLifeMonths = null)
    {
        var code = $"part-{Interlocked.Increment(ref made)}";
        await Done(await client.PostAsJsonAsync("/api/v1/stock/parts", new { code, name = $"Part {code}", kind, unit, shelfLifeMonths }, Ct));
        return code;
    }

    public async Task<string> Place()
    {
        var answer = await client.PostAsJsonAsync("/api/v1/stock/places", new { name = $"Place {Interlocked.Increment(ref made)}" }, Ct);
        return (await Done(answer)).GetProperty("code").GetString()!;
    }

    public Task<HttpResponseMessage> Receive(string partCode, string placeCode, decimal quantity, string? lotCode = null, string? expiresOn = null) =>
        client.PostAsJsonAsync("/api/v1/stock/receipts", new { partCode, placeCode, quantity, lotCode, expiresOn }, Ct);

    public Task<HttpResponseMessage> Move(string partCode, string fromPlaceCode, string toPlaceCode, decimal quantity, string? lotCode = null) =>
        client.PostAsJsonAsync("/api/v1/stock/moves", new { partCode, fromPlaceCode, toPlaceCode, quantity, lotCode }, Ct);

    public Task<HttpResponseMessage> Scrap(string partCode, string placeCode, decimal quantity, string? lotCode = null, string reason = "damaged") =>
        client.PostAsJsonAsync("/api/v1/stock/scrappings", new { partCode, placeCode, quantity, lotCode, reason, remark = "seen by a test" }, Ct);

    public async Task<Guid> Count(string placeCode) =>
        (await Done(await client.PostAsJsonAsync("/api/v1/stock/counts", new { placeCode }, Ct))).GetProperty("id").GetGuid();

    public Task<HttpResponseMessage> CountLine(Guid count, string code, decimal counted, string? lotCode = null) =>
        client.PostAsJsonAsync($"/api/v1/stock/counts/{count}/lines", new { code, counted, lotCode }, Ct);

    /// <summary>Says the same reason for every difference that has none.</summary>
    public async Task ExplainAll(Guid count)
    {
        foreach (var line in (await Get($"/api/v1/stock/counts/{count}")).GetProperty("lines").EnumerateArray()
            .Where(l => l.GetProperty("difference").GetDecimal() != 0 && l.GetProperty("reason").ValueKind == JsonValueKind.Null))
        {
            await Done(await client.PostAsJsonAsync(
                $"/api/v1/stock/counts/{count}/reasons", new { lineId = line.GetProperty("id").GetGuid(), reason = "damagedOrLost" }, Ct));
        }
    }

    public async Task<HttpResponseMessage> Close(Guid count, bool giveUp = false) =>
        await Put($"/api/v1/stock/counts/{count}/closing", new { giveUp }, await Version($"/api/v1/stock/counts/{count}"));

    public async Task<HttpResponseMessage> Merge(string code, string into) =>
        await Put($"/api/v1/stock/parts/{code}/merging", new { into }, await Version($"/api/v1/stock/parts/{code}"));

    public async Task<HttpResponseMessage> Put(string address, object body, string? version)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, address) { Content = JsonContent.Create(body) };
        if (version is not null)
        {
            request.Headers.IfMatch.Add(EntityTagHeaderValue.Parse(version));
        }

        return await client.SendAsync(request, Ct);
    }

    public async Task<string> Version(string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        answer.EnsureSuccessStatusCode();
        return answer.Headers.ETag!.ToString();
    }

    public async Task<JsonElement> Get(string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        return await Done(answer);
    }

    public Task<JsonElement> PartOf(string code) => Get($"/api/v1/stock/parts/{code}");

    /// <summary>On hand and reserved at a place, of all lots.</summary>
    public async Task<(decimal OnHand, decimal Reserved)> At(string code, string place)
    {
        var at = (await PartOf(code)).GetProperty("at").EnumerateArray().Where(l => l.GetProperty("placeCode").GetString() == place).ToList();
        return (at.Sum(l => l.GetProperty("onHand").GetDecimal()), at.Sum(l => l.GetProperty("reserved").GetDecimal()));
    }

    /// <summary>A visit whose kit is so many of the part.</summary>
    public Task<TestVisit> Booked(string code, decimal quantity = 1) => app.Booked(
        new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain },
        TestEngines.Twin() with
        {
            Joints = [new Joint("sump-drain", "Oil drain", [TestEngines.DrainPlug], [])],
            ServiceItems = [TestEngines.Twin().ServiceItems.Single(i => i.Code == TestEngines.OilService) with { Parts = [new ItemPart(code, quantity)] }],
        });

    /// <summary>The same, reserved as far as there is.</summary>
    public async Task<TestVisit> Reserved(string code, decimal quantity = 1)
    {
        var visit = await Booked(code, quantity);
        await Reserve(visit);
        return visit;
    }

    public async Task<HttpResponseMessage> Reserve(TestVisit visit)
    {
        var answer = await client.PostAsync(new Uri($"{visit.Api}/kit/reservation", UriKind.Relative), null, Ct);
        await Done(answer);
        return answer;
    }

    /// <summary>What the card holds of the part, by the part's page.</summary>
    public async Task<decimal> HeldBy(TestVisit visit, string code) => (await PartOf(code)).GetProperty("reservedFor").EnumerateArray()
        .Where(r => r.GetProperty("jobCardNumber").GetInt32() == visit.Number).Sum(r => r.GetProperty("quantity").GetDecimal());

    /// <summary>No row of the database's own check.</summary>
    public static async Task LedgerAgrees(WorkshopApp app)
    {
        var differences = await app.Look(db => db.Database.SqlQuery<long>($"select count(*) as \"Value\" from stock_differences").SingleAsync(Ct));
        Assert.Equal(0, differences);
    }

    public static async Task<JsonElement> Done(HttpResponseMessage answer)
    {
        var body = await answer.Content.ReadAsStringAsync(Ct);
        Assert.True(answer.IsSuccessStatusCode, $"{answer.RequestMessage!.Method} {answer.RequestMessage.RequestUri}: {answer.StatusCode} {body}");
        return answer.StatusCode == HttpStatusCode.NoContent ? default : await answer.Json();
    }
}
