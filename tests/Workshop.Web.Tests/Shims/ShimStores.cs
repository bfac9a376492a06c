using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Xunit;
using static Workshop.Web.Tests.Clearances.ReadingBodies;

namespace Workshop.Web.Tests.Shims;

/// <summary>What tests of the shim box do again and again.</summary>
internal static class ShimStores
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>So many shims of one thickness come in; the ids of their rows.</summary>
    public static async Task<IReadOnlyList<Guid>> Receive(this WorkshopApp app, decimal thicknessMm, int quantity, decimal? nominalMm = null)
    {
        var answer = await (await app.As(Roles.Advisor)).PostAsJsonAsync(
            "/api/v1/shims/receipts", new { partCode = TestEngines.ShimPart, thicknessMm, nominalMm, quantity }, Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return [.. (await answer.Json()).GetProperty("shimIds").EnumerateArray().Select(i => i.GetGuid())];
    }

    /// <summary>Found out of limits, or where a test says, and the shim that came out, measured.</summary>
    public static async Task MeasureOut(this WorkshopApp app, TestVisit visit, string valve, decimal thicknessMm, double go = 0.15)
    {
        var answer = await (await app.As(Roles.Technician)).PostAsJsonAsync($"{visit.Api}/readings", Send(Found(valve, go, Math.Round(go + 0.01, 4)))
            .With("shims", new[] { new { valve, stage = "asFound", thicknessMm } }).With("micrometerId", TestWorkshop.Micrometer), Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    public static async Task<HttpResponseMessage> Fit(this WorkshopApp app, TestVisit visit, params object[] shims) =>
        await (await app.As(Roles.Technician)).PostAsJsonAsync($"{visit.Api}/shims", new { shims, reason = "test" }, Ct);

    public static async Task<HttpResponseMessage> PostShims(this WorkshopApp app, string address, object body, string role = Roles.Advisor) =>
        await (await app.As(role)).PostAsJsonAsync($"/api/v1/shims/{address}", body, Ct);

    public static async Task<JsonElement> GetShims(this WorkshopApp app, string address)
    {
        var answer = await (await app.As(Roles.Advisor)).GetAsync(new Uri($"/api/v1/shims{address}", UriKind.Relative), Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Json();
    }

    public static async Task SetPolicy(this WorkshopApp app, string usedShims) =>
        Assert.Equal(HttpStatusCode.OK, (await app.PostShims("policy", new { usedShims }, Roles.Manager)).StatusCode);

    public static Task<Shim> Shim(this WorkshopApp app, Guid id) => app.Look(db => db.Shims.AsNoTracking().SingleAsync(s => s.Id == id, Ct));

    public static Task<Shim?> ShimIn(this WorkshopApp app, TestVisit visit, string valve) => app.Look(db =>
    {
        var key = Domain.EngineModels.ValveKey.Parse(valve);
        return db.Shims.AsNoTracking().SingleOrDefaultAsync(s => s.EngineId == visit.EngineId && s.Valve == key, Ct);
    });

    /// <summary>The one ledger: what the balances say is what the shims' own rows say, and what the movements add up to.</summary>
    public static Task LedgerAgrees(this WorkshopApp app) => app.Look(async db =>
    {
        var balances = (await db.StockBalances.AsNoTracking().Where(b => b.Thickness != null && b.OnHand != 0).ToListAsync(Ct))
            .Select(b => (b.PartId, b.PlaceId, b.Thickness!.Value, b.Condition, Count: (int)b.OnHand)).Order().ToList();
        var rows = (await db.Shims.AsNoTracking().Where(s => s.PlaceId != null).ToListAsync(Ct))
            .GroupBy(s => (s.PartId, s.PlaceId!.Value, s.Thickness, s.Condition))
            .Select(g => (g.Key.PartId, g.Key.Value, g.Key.Thickness, g.Key.Condition, Count: g.Count())).Order().ToList();
        var moved = (await db.StockMovements.AsNoTracking().Where(m => m.Thickness != null).ToListAsync(Ct))
            .GroupBy(m => (m.PartId, m.PlaceId, m.Thickness!.Value, m.Condition))
            .Select(g => (g.Key.PartId, g.Key.PlaceId, g.Key.Value, g.Key.Condition, Count: (int)g.Sum(m => m.OnHandChange)))
            .Where(g => g.Count != 0).Order().ToList();
        Assert.NotEmpty(rows);
        Assert.Equal(balances, rows);
        Assert.Equal(balances, moved);
        return true;
    });

    public static ShimThickness Mm(decimal mm) => ShimThickness.FromMillimetres(mm);
}
