using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.CamTiming.TimingBodies;

namespace Workshop.Web.Tests.CamTiming;

public sealed class ChainWearTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Readings_over_visits_tell_when_the_limit_is_reached_and_a_new_chain_begins_anew()
    {
        var visit = await app.CheckedIn(odometerKm: 20_000, items: TimingOnly, specification: Engine);
        await Read(visit, 5.6m);
        Assert.Contains("1 reading at 1 distance", (await Chain(visit)).GetProperty("whyNot").GetString(), StringComparison.Ordinal);

        // 4 mm when new and 0.8 mm in 10,000 km: 14 mm at 125,000 km.
        foreach (var (km, mm) in new[] { (40_000, 7.2m), (60_000, 8.8m), (80_000, 10.4m) })
        {
            visit = await Again(visit, km);
            await Read(visit, mm);
        }

        var forecast = (await Chain(visit)).GetProperty("forecast");
        Assert.Equal(0.8, forecast.GetProperty("perTenThousandKm").GetDouble(), 0.02);
        Assert.InRange(forecast.GetProperty("reachedAt50Km").GetDouble(), 122_000, 128_000);
        Assert.True(forecast.GetProperty("reachedAt10Km").GetDouble() < forecast.GetProperty("reachedAt90Km").GetDouble());

        visit = await Again(visit, 100_000);
        await Sent(await Technician(), visit, new { stage = "asFound", changes = new[] { new { drive = TestEngines.CamChain, kind = "chainRenewed" } } });
        Assert.Contains("not read", (await Chain(visit)).GetProperty("whyNot").GetString(), StringComparison.Ordinal);

        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var model = await app.Look(db => Task.FromResult(db.Engines.Single(e => e.Id == visit.EngineId).EngineModelId));
        Assert.Contains("were read at two distances", (await pages.Open($"/engine-models/{model}/chain-wear")).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_motorcycle_s_page_shows_readings_limit_and_estimate()
    {
        var visit = await app.CheckedIn(odometerKm: 10_000, items: TimingOnly, specification: Engine);
        await Read(visit, 4.8m);
        foreach (var (km, mm) in new[] { (30_000, 6.3m), (50_000, 8.1m) })
        {
            visit = await Again(visit, km);
            await Read(visit, mm);
        }

        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open($"/motorcycles/{visit.MotorcycleId}");

        Assert.Contains("likely reaches its limit of 14 mm", page.MainText, StringComparison.Ordinal);
        Assert.Contains("no promise", page.MainText, StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector("svg.wear .fan"));
        Assert.DoesNotContain("NaN", page.Html.DocumentElement.OuterHtml, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Degree_wheel_readings_tell_the_retard_over_visits()
    {
        var visit = await app.CheckedIn(odometerKm: 20_000, items: TimingOnly, specification: Engine);
        await Sent(await Technician(), visit, Late(0.4m, 0.2m));
        foreach (var (km, late) in new[] { (40_000, 0.6m), (60_000, 0.9m), (80_000, 1.2m) })
        {
            visit = await Again(visit, km);
            await Sent(await Technician(), visit, Late(late + 0.1m, late - 0.1m));
        }

        var wear = await (await Technician()).GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{visit.MotorcycleId}/chain-wear", Ct);
        var retard = wear.GetProperty("chains").EnumerateArray().Single(c => c.GetProperty("measure").GetString() == "meanRetard");

        Assert.Equal([0.3, 0.6, 0.9, 1.2], retard.GetProperty("readings").EnumerateArray().Select(r => r.GetProperty("from").GetDouble()));
        Assert.Equal(0.15, retard.GetProperty("forecast").GetProperty("perTenThousandKm").GetDouble(), 0.03);
    }

    private async Task<TestVisit> Again(TestVisit visit, int km)
    {
        app.Clock.Now += Duration.FromDays(40);
        return await app.CheckedInAgain(visit, km, new Dictionary<string, Likelihood>(TimingOnly));
    }

    private async Task<JsonElement> Read(TestVisit visit, decimal mm) => await Sent(await Technician(), visit, new
    {
        stage = "asFound", chains = new[] { new { drive = TestEngines.CamChain, extensionMm = mm } },
    });

    private async Task<JsonElement> Chain(TestVisit visit) =>
        (await (await Technician()).GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{visit.MotorcycleId}/chain-wear", Ct)).GetProperty("chains")[0];

    /// <summary>Signed in anew: months pass between visits.</summary>
    private Task<HttpClient> Technician() => app.As(Roles.Technician);
}
