using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Xunit;

namespace Workshop.Web.Tests.Drift;

public sealed class DriftOfMotorcycleTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_API_answers_legs_brackets_line_and_where_it_reaches_a_limit()
    {
        var visit = await Drifting();

        var answer = await Get(visit);

        Assert.Equal(GetDrift.Caution, answer.GetProperty("caution").GetString());
        Assert.Equal(6, answer.GetProperty("lobes").GetArrayLength());
        var lobe = Lobe(answer, "1-exhaust-1");
        var leg = Assert.Single(lobe.GetProperty("legs").EnumerateArray());
        var readings = leg.GetProperty("readings").EnumerateArray().ToList();
        Assert.Equal(7, readings.Count);
        Assert.Equal(
            (0.21m, 0.22m, 0.06m, 0.27m, 0.28m),
            (Number(readings[5], "goMm"), Number(readings[5], "noGoMm"), Number(readings[5], "shimPartMm"),
                Number(readings[5], "yLowerMm"), Number(readings[5], "yUpperMm")));
        var estimate = lobe.GetProperty("estimate");
        Assert.Equal(7, estimate.GetProperty("readings").GetInt32());
        Assert.True(Number(estimate, "driftLower") < Number(estimate, "driftMmPer10000Km"));
        Assert.True(Number(estimate, "driftUpper") < 0);
        var reaches = estimate.GetProperty("reaches");
        Assert.Equal("lower", reaches.GetProperty("end").GetString());
        Assert.Equal(JsonValueKind.String, reaches.GetProperty("on").ValueKind);
        Assert.Equal("ownReadings", reaches.GetProperty("rateBasis").GetString());
        Assert.Equal(JsonValueKind.Null, estimate.GetProperty("reason").ValueKind);
        Assert.Equal("notMeasured", Lobe(answer, "1-intake-1").GetProperty("estimate").GetProperty("reason").GetString());
    }

    [Fact]
    public async Task The_date_is_that_of_the_distance_by_the_odometers_own_rate()
    {
        var visit = await app.ReadOverYears(
            TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m), (0.25m, 0.26m), (0.23m, 0.24m), (0.21m, 0.22m));

        var reaches = Lobe(await Get(visit), "1-exhaust-1").GetProperty("estimate").GetProperty("reaches");

        // 20,000 km further at 20,000 km in 365 days, whole days rounded down: a year after the test's day but one.
        Assert.Equal(20_000, Number(reaches, "furtherKm"));
        Assert.Equal("2027-03-01", reaches.GetProperty("on").GetString());
    }

    [Fact]
    public async Task A_motorcycle_that_is_not_there_is_said_to_be_so()
    {
        var technician = await app.As(Roles.Technician);

        Assert.Equal(HttpStatusCode.NotFound, (await technician.GetAsync($"/api/v1/motorcycles/{Guid.Empty:N}1/drift", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await technician.GetAsync($"/api/v1/motorcycles/{TestWorkshop.Bay1}/drift", Ct)).StatusCode);
    }

    [Fact]
    public async Task The_page_shows_every_valve_with_its_picture_table_and_outlook()
    {
        var visit = await Drifting();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"/drift/{visit.MotorcycleId}");

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Equal(6, page.Html.QuerySelectorAll("section.lobe").Length);
        var lobe = page.Html.QuerySelector("section[aria-labelledby='v-1-exhaust-1']")!;
        Assert.Equal(7, lobe.QuerySelectorAll("tbody tr").Length);
        var picture = lobe.QuerySelector("svg")!;
        Assert.Equal("img", picture.GetAttribute("role"));
        Assert.Contains("Cylinder 1, exhaust 1", picture.QuerySelector("title")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(picture.QuerySelector("path.fan"));
        Assert.NotNull(picture.QuerySelector("path.swap"));
        Assert.Contains("The line reaches the lower limit", lobe.TextContent, StringComparison.Ordinal);
        Assert.Contains(GetDrift.Caution, page.MainText, StringComparison.Ordinal);
        Assert.Empty(page.Html.QuerySelectorAll("[style], style, script:not([src])"));
        Assert.Contains("It was not measured yet.", page.Html.QuerySelector("section[aria-labelledby='v-1-intake-1-2']")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_can_take_the_shims_part_out()
    {
        var visit = await Drifting();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"/drift/{visit.MotorcycleId}?view=shims-out");

        var rows = page.Html.QuerySelectorAll("section[aria-labelledby='v-1-exhaust-1'] tbody tr");
        Assert.Contains("0.27 to 0.28", rows[5].TextContent, StringComparison.Ordinal);
        Assert.Contains("with the shims' part taken out", page.Html.QuerySelector("svg title")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Shims' part taken out", page.Html.QuerySelector("nav.switch [aria-current]")!.TextContent);
    }

    /// <summary>The bar of 100 kB: sixteen valves, eight visits each with a swap, both views.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("?view=shims-out")]
    public async Task A_page_of_sixteen_valves_with_long_histories_stays_under_100_kB(string view)
    {
        var four = TestEngines.Twin() with
        {
            Valves = [.. Enumerable.Range(1, 4).SelectMany(c => new[] { Side.Intake, Side.Exhaust }.SelectMany(
                s => Enumerable.Range(1, 2).Select(p => new Valve(new ValveKey(c, s, p)))))],
        };
        TestVisit? visit = null;
        for (var time = 0; time < 8; time++)
        {
            var km = 20_000 * (time + 1);
            visit = visit is null ? await app.CheckedIn(km, specification: four) : await app.CheckedInAgain(visit, km);
            foreach (var valve in four.Valves.Select(v => v.Key))
            {
                await app.Read(visit, valve, Stage.AsFound, 0.25m - (time * 0.01m), 0.26m - (time * 0.01m));
                if (time == 5)
                {
                    await app.Shim(visit, valve, Stage.AsFound, 2.525m);
                    await app.Shim(visit, valve, Stage.AsLeft, 2.450m);
                    await app.Read(visit, valve, Stage.AsLeft, 0.25m, 0.26m);
                }
            }
        }

        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var html = await pages.Client.GetStringAsync(new Uri($"/drift/{visit!.MotorcycleId}{view}", UriKind.Relative), Ct);

        Assert.Contains("4-exhaust-2", html, StringComparison.Ordinal);
        Assert.InRange(Encoding.UTF8.GetByteCount(html), 20_000, 100_000);
    }

    /// <summary>Six visits; at the last 0.10 mm more shim at a ratio of 0.6 takes 0.06 mm.</summary>
    private async Task<TestVisit> Drifting()
    {
        var valve = TestEngines.Exhaust(1);
        var visit = await app.ReadOverYears(
            valve, (0.32m, 0.33m), (0.31m, 0.32m), (0.295m, 0.305m), (0.28m, 0.29m), (0.27m, 0.28m));
        await app.Shim(visit, valve, Stage.AsFound, 2.50m);
        await app.Shim(visit, valve, Stage.AsLeft, 2.60m);
        await app.Read(visit, valve, Stage.AsLeft, 0.21m, 0.22m);
        var next = await app.CheckedInAgain(visit, 104_000);
        await app.Read(next, valve, Stage.AsFound, 0.21m, 0.22m);
        await app.RewriteForecasts(next);
        return next;
    }

    private async Task<JsonElement> Get(TestVisit visit)
    {
        var technician = await app.As(Roles.Technician);
        return await technician.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{visit.MotorcycleId}/drift", Ct);
    }

    private static JsonElement Lobe(JsonElement answer, string valve) => answer.GetProperty("lobes").EnumerateArray()
        .First(l => l.GetProperty("valve").GetString() == valve);

    private static decimal Number(JsonElement of, string name) => of.GetProperty(name).GetDecimal();
}
