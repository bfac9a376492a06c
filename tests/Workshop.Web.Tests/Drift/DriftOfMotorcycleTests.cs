using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Shared.Drawings;
using Xunit;

namespace Workshop.Web.Tests.Drift;

public sealed partial class DriftOfMotorcycleTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_API_answers_legs_brackets_forecast_and_when_it_leaves_its_limits()
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
        var forecast = lobe.GetProperty("forecast");
        Assert.Equal(7, forecast.GetProperty("readings").GetInt32());
        Assert.True(Number(forecast, "driftLower") < Number(forecast, "driftMmPer10000Km"));
        Assert.True(Number(forecast, "driftUpper") < 0);
        Assert.InRange(Number(forecast, "presentMm"), 0.20m, 0.22m);
        var leaves = forecast.GetProperty("leaves").EnumerateArray().ToList();
        Assert.Equal([0.1, 0.5, 0.9], leaves.Select(l => l.GetProperty("probability").GetDouble()));
        Assert.True(Number(leaves[0], "engineKm") <= Number(leaves[1], "engineKm") && Number(leaves[1], "engineKm") < Number(leaves[2], "engineKm"));
        Assert.Equal(JsonValueKind.Null, lobe.GetProperty("whyNot").ValueKind);
        Assert.Equal("notMeasured", Lobe(answer, "1-intake-1").GetProperty("noForecast").GetString());
        Assert.Equal(6, answer.GetProperty("visits").GetArrayLength());
        Assert.InRange(answer.GetProperty("outsideAtNextCheck").GetDouble(), forecast.GetProperty("outsideAtNextCheck").GetDouble() - 1e-6, 1);
    }

    [Fact]
    public async Task The_date_is_that_of_the_distance_by_the_odometers_own_rate()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var visit = await app.ReadOverYears(
            TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m), (0.25m, 0.26m), (0.23m, 0.24m), (0.21m, 0.22m));

        var even = Lobe(await Get(visit), "1-exhaust-1").GetProperty("forecast").GetProperty("leaves")[1];

        // 20,000 km in 365 days since the last reading, which was today's.
        var days = ((double)Number(even, "engineKm") - 100_000) / 20_000 * 365;
        Assert.Equal(days, (even.GetProperty("on").GetDateTime() - new DateTime(2026, 3, 2)).TotalDays, 2.0);
    }

    [Fact]
    public async Task A_motorcycle_that_is_not_there_is_said_to_be_so()
    {
        var technician = await app.As(Roles.Technician);
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Equal(HttpStatusCode.NotFound, (await technician.GetAsync($"/api/v1/motorcycles/{TestWorkshop.Bay1}/drift", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open($"/drift/{TestWorkshop.Bay1}")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open($"/drift/{TestWorkshop.Bay1}?handler=Csv")).Status);
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
        foreach (var sign in new[] { "fan-90", "fan-50", "swap", "limit", "set-to", "found", "left" })
        {
            Assert.NotNull(picture.QuerySelector($"path.{sign}"));
        }

        Assert.Contains("As likely as not it leaves its limits by", lobe.TextContent, StringComparison.Ordinal);
        Assert.Contains("Next check", page.MainText, StringComparison.Ordinal);
        Assert.Contains("that any valve of the engine is outside its limits", page.MainText, StringComparison.Ordinal);
        Assert.Contains("300 readings of its own", page.MainText, StringComparison.Ordinal);
        Assert.Contains(GetDrift.Caution, page.MainText, StringComparison.Ordinal);
        Assert.Empty(page.Html.QuerySelectorAll("[style], style, script:not([src])"));
        Assert.Contains(
            "it was not measured yet", page.Html.QuerySelector("section[aria-labelledby='v-1-intake-1-2']")!.TextContent, StringComparison.Ordinal);
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

    /// <summary>The bar of 100 kB: sixteen valves, eight visits each with a swap, both views, with the manager's forms.</summary>
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

        await app.Knows(await ModelOf(visit!));
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var html = await pages.Client.GetStringAsync(new Uri($"/drift/{visit!.MotorcycleId}{view}", UriKind.Relative), Ct);

        Assert.Contains("4-exhaust-2", html, StringComparison.Ordinal);
        Assert.Equal(16 + 1, Regex.Count(html, "class=\"fan-90\""));
        Assert.InRange(Encoding.UTF8.GetByteCount(html), 20_000, 100_000);
    }

    [Theory]
    [InlineData("", "as measured")]
    [InlineData("&view=shims-out", "shims' part taken out")]
    public async Task A_picture_is_a_file_that_stands_alone(string view, string says)
    {
        var visit = await Drifting();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var answer = await pages.Client.GetAsync(new Uri($"/drift/{visit.MotorcycleId}?handler=Picture&lobe=1-exhaust-1{view}", UriKind.Relative), Ct);

        Assert.Equal(("image/svg+xml", "attachment"), (answer.Content.Headers.ContentType!.MediaType, answer.Content.Headers.ContentDisposition!.DispositionType));
        Assert.EndsWith("-1-exhaust-1.svg", answer.Content.Headers.ContentDisposition.FileName, StringComparison.Ordinal);
        var picture = XDocument.Parse(await answer.Content.ReadAsStringAsync(Ct)).Root!;
        Assert.Equal(Svg + "svg", picture.Name);
        Assert.All(picture.Descendants(), e => Assert.Equal(Svg, e.Name.Namespace));
        Assert.Contains("cylinder 1, exhaust 1", picture.Element(Svg + "title")!.Value, StringComparison.Ordinal);
        Assert.Contains(says, picture.Element(Svg + "title")!.Value, StringComparison.Ordinal);
        Assert.Contains(GetDrift.Caution, picture.Element(Svg + "desc")!.Value, StringComparison.Ordinal);
        var ground = picture.Elements(Svg + "rect").First();
        Assert.Contains($".{ground.Attribute("class")!.Value} {{ fill: #ffffff; }}", DriftPicture.Style, StringComparison.Ordinal);
        Assert.Equal(picture.Attribute("viewBox")!.Value.Split(' ')[3], ground.Attribute("height")!.Value);
        Assert.All(picture.Descendants(Svg + "text"), t => Assert.InRange(t.Value.Length, 1, 84));
        // Nothing is fetched from elsewhere, nothing runs, and every class has its look in the file.
        Assert.DoesNotContain(picture.DescendantsAndSelf(), e => e.Name.LocalName is "script" or "image" or "a" or "use");
        Assert.DoesNotContain(picture.DescendantsAndSelf().Attributes(), a => a.Name.LocalName is "style" or "href" or "onload");
        Assert.All(
            picture.Descendants().Attributes("class").Select(a => a.Value).Where(c => c is not ("" or "second")).Distinct(),
            c => Assert.Contains($".{c} {{", DriftPicture.Style, StringComparison.Ordinal));
        Assert.True(picture.Descendants(Svg + "path").Attributes("d").All(d => PathData().IsMatch(d.Value)));
    }

    [Theory]
    [InlineData("9-exhaust-1")]
    [InlineData("1-intake-1")]
    [InlineData("")]
    public async Task A_lobe_that_is_not_there_or_was_never_read_has_no_picture(string lobe)
    {
        var visit = await Drifting();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open($"/drift/{visit.MotorcycleId}?handler=Picture&lobe={lobe}")).Status);
    }

    [Fact]
    public async Task The_file_holds_readings_and_what_is_foretold()
    {
        var visit = await Drifting();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var answer = await pages.Client.GetAsync(new Uri($"/drift/{visit.MotorcycleId}?handler=Csv", UriKind.Relative), Ct);

        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        var lines = CsvText.Read(await answer.Content.ReadAsStringAsync(Ct));
        var exhaust = lines.Where(l => l["valve"] == "1-exhaust-1").ToLookup(l => l["line"]);
        Assert.Equal(7, exhaust["reading"].Count());
        var left = exhaust["reading"].Single(l => l["stage"] == "as left");
        Assert.Equal(("100000", "0.21", "0.22", "2.6", "0.27", "0.28"), (
            left["engine km"], left["go mm"], left["no-go mm"], left["shim mm"], left["shims out from mm"], left["shims out to mm"]));
        Assert.Matches(@"^\d{4}-\d\d-\d\d$", left["date"]);
        Assert.Equal(["0.1", "0.5", "0.9"], exhaust["has left its limits"].Select(l => l["probability"]));
        Assert.All(exhaust["true clearance"], l => Assert.True(Parse(l["5 % mm"]) < Parse(l["25 % mm"]) && Parse(l["75 % mm"]) < Parse(l["95 % mm"])));
        Assert.Equal(5, lines.Count(l => l["line"] == "no forecast"));

        static decimal Parse(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>Six visits; at the fifth 0.10 mm more shim at a ratio of 0.6 takes 0.06 mm.</summary>
    private async Task<TestVisit> Drifting()
    {
        await app.Knows(TestWorkshop.EngineModel);
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

    private Task<Guid> ModelOf(TestVisit visit) => app.Look(async db => (await db.Engines.FindAsync([visit.EngineId], Ct))!.EngineModelId);

    private async Task<JsonElement> Get(TestVisit visit)
    {
        var technician = await app.As(Roles.Technician);
        return await technician.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{visit.MotorcycleId}/drift", Ct);
    }

    private static JsonElement Lobe(JsonElement answer, string valve) => answer.GetProperty("lobes").EnumerateArray()
        .First(l => l.GetProperty("valve").GetString() == valve);

    private static decimal Number(JsonElement of, string name) => of.GetProperty(name).GetDecimal();

    [GeneratedRegex(@"^[MLHVhvmzZ0-9 .\-]+$")]
    private static partial Regex PathData();
}
