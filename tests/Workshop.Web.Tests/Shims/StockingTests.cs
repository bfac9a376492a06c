using System.Net;
using System.Text.Json;
using Workshop.Domain.Clearances;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.Drift;
using Xunit;

namespace Workshop.Web.Tests.Shims;

/// <summary>
/// Exhaust of the test engine: 0.20 to 0.30 mm, set to 0.25, ratio 0.6; its series has steps of 0.025 mm. Read at 0.14 to
/// 0.15 mm, a little wider by what is known of such valves, with a shim of 2.100 in it a valve wants 2.100 - 0.104 / 0.6 = 1.927 mm.
/// </summary>
public sealed class StockingTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_booked_valve_that_is_foretold_outside_asks_for_its_size_and_the_order_fills_the_box()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var before = await Stocking("?months=6");
        for (var i = 0; i < 4; i++)
        {
            var visit = await app.CheckedIn();
            await app.MeasureOut(visit, "1-exhaust-1", 2.1m, go: 0.14);
        }

        var after = await Stocking("?months=6");

        Assert.Equal(4, after.GetProperty("expectedDemand").GetDouble() - before.GetProperty("expectedDemand").GetDouble(), 2);
        Assert.Equal(4, after.GetProperty("valvesForetold").GetInt32() - before.GetProperty("valvesForetold").GetInt32());
        Assert.True(after.GetProperty("valvesWithoutShim").GetInt32() >= 12);
        var most = after.GetProperty("sizes").EnumerateArray().MaxBy(s => s.GetProperty("expected").GetDouble());
        Assert.Equal(1.925m, most.GetProperty("size").GetDecimal());
        Assert.Equal(2, most.GetProperty("onHand").GetInt32());
        Assert.True(most.GetProperty("hold").GetInt32() > 2);
        Assert.Equal(most.GetProperty("hold").GetInt32() - 2, most.GetProperty("order").GetInt32());
        var steps = after.GetProperty("steps").EnumerateArray().ToDictionary(s => s.GetProperty("stepMm").GetDecimal());
        Assert.Equal([0.01m, 0.02m, 0.025m, 0.04m, 0.05m], steps.Keys);
        Assert.True(steps[0.02m].GetProperty("meanDistanceMm").GetDouble() < steps[0.04m].GetProperty("meanDistanceMm").GetDouble());
        Assert.True(steps[0.02m].GetProperty("leastLifeKm").GetDouble() > steps[0.04m].GetProperty("leastLifeKm").GetDouble());

        // A higher level holds no less, and costs say a level: 19 to 1 is 0.95.
        var sure = await Stocking("?months=6&serviceLevel=0.99");
        Assert.True(HoldAll(sure) > HoldAll(after));
        Assert.Equal(0.95, (await Stocking("?missingCosts=19&leftCosts=1")).GetProperty("serviceLevel").GetDouble(), 12);
    }

    [Fact]
    public async Task A_valve_inside_its_limits_or_whose_shim_is_not_known_asks_for_nothing()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var before = await Stocking("");
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.1m, go: 0.25);
        await app.Read(visit, TestEngines.Exhaust(2), Stage.AsFound, 0.14m, 0.15m);

        var after = await Stocking("");

        Assert.Equal(0, after.GetProperty("expectedDemand").GetDouble() - before.GetProperty("expectedDemand").GetDouble(), 3);
        Assert.True(after.GetProperty("valvesForetold").GetInt32() > before.GetProperty("valvesForetold").GetInt32());
    }

    [Fact]
    public async Task Only_the_manager_sees_it_and_what_is_asked_must_make_sense()
    {
        var technician = await (await app.As(Roles.Technician)).GetAsync(new Uri("/api/v1/shims/stocking", UriKind.Relative), Ct);
        var manager = await app.As(Roles.Manager);
        var wrong = await manager.GetAsync(new Uri("/api/v1/shims/stocking?months=0&serviceLevel=1&missingCosts=3", UriKind.Relative), Ct);
        var nothing = await manager.GetAsync(new Uri("/api/v1/shims/stocking?partCode=none", UriKind.Relative), Ct);

        Assert.Equal(HttpStatusCode.Forbidden, technician.StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
        var faults = await wrong.Json();
        Assert.Contains("1 to 36", faults.Fault("months"), StringComparison.Ordinal);
        Assert.Contains("0.5 to 0.999", faults.Fault("serviceLevel"), StringComparison.Ordinal);
        Assert.Contains("belong together", faults.Fault("missingCosts"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, nothing.StatusCode);
    }

    [Fact]
    public async Task The_page_shows_what_to_order_and_says_what_is_wrong()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.6m, go: 0.11);
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var page = await pages.Open("/stores/stocking?level=99,5");
        var wrong = await pages.Open("/stores/stocking?months=99");

        Assert.Contains("To order", page.MainText, StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector("#steps-caption"));
        Assert.Contains("1 to 36 is allowed", Assert.Single(wrong.Faults), StringComparison.Ordinal);
    }

    private static int HoldAll(JsonElement answer) => answer.GetProperty("sizes").EnumerateArray().Sum(s => s.GetProperty("hold").GetInt32());

    private async Task<JsonElement> Stocking(string query)
    {
        var answer = await (await app.As(Roles.Manager)).GetAsync(new Uri($"/api/v1/shims/stocking{query}", UriKind.Relative), Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Json();
    }
}
