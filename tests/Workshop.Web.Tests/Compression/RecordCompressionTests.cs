using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Npgsql;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Compression;

public sealed class RecordCompressionTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_weak_cylinder_comes_back_with_its_verdict_and_where_it_likely_leaks()
    {
        var (visit, technician) = await Visit();

        var answer = await Sent(technician, visit, Warm(new { cylinder = 1, dryBar = 11.8m, tries = 6 }, new { cylinder = 2, dryBar = 8.1m, wetKpa = 950 }));

        Assert.Equal(3, answer.GetProperty("written").GetInt32());
        var card = await Get(visit);
        var (first, second) = (card.GetProperty("asFound")[0], card.GetProperty("asFound")[1]);
        Assert.Equal(("within", "1180 kPa (11.8 bar, 171 psi)"), (first.GetProperty("verdict").GetString(), first.GetProperty("dry").GetProperty("said").GetString()));
        Assert.Equal("below", second.GetProperty("verdict").GetString());
        Assert.Contains("With oil it rises from 810 to 950 kPa: likely piston rings or bore.", Sentences(second));
        Assert.Contains("It is 370 kPa behind cylinder 1; 100 kPa is allowed.", Sentences(second));
        var entry = card.GetProperty("history")[0];
        Assert.Equal(("engine warm, throttle open, 6 turns", "Compression gauge, C-1; in use; no calibration day set"),
            (entry.GetProperty("how").GetString(), entry.GetProperty("instrument").GetString()));
        Assert.StartsWith("at least 1000 kPa (10.0 bar, 145 psi) with a warm engine", card.GetProperty("stated").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Leak_down_says_how_much_and_where_it_is_heard()
    {
        var (visit, technician) = await Visit();

        await Sent(technician, visit, new
        {
            stage = "asFound", warmth = "cold", leakDownTesterId = TestWorkshop.LeakDownTester, testBar = 6,
            cylinders = new object[] { new { cylinder = 1, lossPercent = 30, heardAtExhaust = true } },
        });

        var first = (await Get(visit)).GetProperty("asFound")[0];
        Assert.Equal(("leaks", "30 % of 600 kPa (6.0 bar, 87 psi), heard at exhaust"),
            (first.GetProperty("verdict").GetString(), first.GetProperty("leakDown").GetProperty("said").GetString()));
        Assert.Contains("Air at the exhaust: likely an exhaust valve.", Sentences(first));
    }

    [Fact]
    public async Task What_is_measured_again_supersedes_with_a_reason_and_every_entry_stays()
    {
        var (visit, technician) = await Visit();
        await Sent(technician, visit, Warm(new { cylinder = 1, dryBar = 7 }));

        var without = await Send(technician, visit, Warm(new { cylinder = 1, dryBar = 11 }));
        Assert.Equal("reason is empty: say why cylinder 1, dry is entered again.", (await without.Json()).Fault("reason"));
        await Sent(technician, visit, Warm("The hose was not tight.", new { cylinder = 1, dryBar = 11 }));

        var history = (await Get(visit)).GetProperty("history").EnumerateArray().ToList();
        Assert.Equal([false, true], history.Select(h => h.GetProperty("counts").GetBoolean()));
        Assert.Equal("The hose was not tight.", history[1].GetProperty("reason").GetString());
        await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, "update cylinder_tests set pressure_kpa = 1", Ct));
        await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, "delete from cylinder_tests", Ct));
    }

    [Fact]
    public async Task What_is_wrong_is_named_with_its_field_and_nothing_is_written()
    {
        var (visit, technician) = await Visit();

        var shape = await Send(technician, visit, new
        {
            stage = "asFound", cylinders = new object[] { new { cylinder = 1, dryBar = 11, dryKpa = 1100 }, new { cylinder = 2, dryBar = 200 }, new { cylinder = 2 } },
        });
        Assert.Equal(HttpStatusCode.BadRequest, shape.StatusCode);
        var faults = await shape.Json();
        Assert.Equal("cylinders[0].dryBar is given twice: in kPa or in bar is allowed.", faults.Fault("cylinders[0].dryBar"));
        Assert.Equal("cylinders[1].dryBar is 200 bar: 0 to 100 bar with at most 3 decimals is allowed.", faults.Fault("cylinders[1].dryBar"));
        Assert.Contains("give what was measured of the cylinder", faults.Fault("cylinders[2].lossPercent"), StringComparison.Ordinal);
        Assert.Equal("gaugeId is empty: give the compression gauge.", faults.Fault("gaugeId"));
        Assert.Equal("warmth is empty: give warm or cold: how warm the engine was.", faults.Fault("warmth"));

        var state = await Send(technician, visit, new
        {
            stage = "asFound", warmth = "warm", gaugeId = TestWorkshop.OldCompressionGauge, cylinders = new object[] { new { cylinder = 3, dryBar = 11 } },
        });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, state.StatusCode);
        var refused = await state.Json();
        Assert.Equal("cylinders[0].cylinder is 3: the engine has 1, 2.", refused.Fault("cylinders[0].cylinder"));
        Assert.Contains("its calibration was due on 2025-01-05", refused.Fault("gaugeId"), StringComparison.Ordinal);
        Assert.Equal(0, (await Get(visit)).GetProperty("history").GetArrayLength());
    }

    [Fact]
    public async Task A_tight_valve_asks_for_it_on_card_and_bay_screen_and_the_sign_off_waits_where_the_engine_model_asks()
    {
        var (visit, technician) = await Visit();
        Assert.Empty((await Get(visit)).GetProperty("because").EnumerateArray());

        await app.Measure(visit, new LobeKey(TestEngines.Exhaust(2)), Stage.AsFound, 0.15m);

        var card = await Get(visit);
        Assert.Equal("Found tight: cylinder 2, exhaust 1. A valve that does not close any more loses compression.", card.GetProperty("because")[0].GetString());
        Assert.True(card.GetProperty("waits").GetBoolean());
        Assert.Equal(2, (await Reasons(technician, visit)).Count(r => r.StartsWith("cylinders.", StringComparison.Ordinal)));
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        Assert.Contains("Compression or leak-down is asked for", (await pages.Open(visit.Pages)).Html.Body!.TextContent, StringComparison.Ordinal);

        await Sent(technician, visit, Warm(new { cylinder = 1, dryBar = 11 }, new { cylinder = 2, dryBar = 9 }));
        Assert.DoesNotContain(await Reasons(technician, visit), r => r.StartsWith("cylinders.", StringComparison.Ordinal));
        Assert.False((await Get(visit)).GetProperty("waits").GetBoolean());
        // The valve that was found tight is named with its cylinder.
        Assert.Contains(Sentences((await Get(visit)).GetProperty("asFound")[1]), s => s.StartsWith("Found tight: cylinder 2, exhaust 1.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_next_visit_of_the_motorcycle_shows_what_was_measured_before()
    {
        var (visit, technician) = await Visit();
        await Sent(technician, visit, Warm(new { cylinder = 1, dryBar = 11.5m }, new { cylinder = 2, dryBar = 11.4m }));
        app.Clock.Now += NodaTime.Duration.FromDays(30);

        var again = await app.CheckedInAgain(visit, 31_000);

        var earlier = Assert.Single((await Get(again)).GetProperty("earlier").EnumerateArray());
        Assert.Equal((visit.Number, 24_000, 1150m),
            (earlier.GetProperty("jobCardNumber").GetInt32(), earlier.GetProperty("odometerCount").GetInt32(), earlier.GetProperty("cylinders")[0].GetProperty("dry").GetProperty("kpa").GetDecimal()));
        Assert.Empty((await Get(visit)).GetProperty("earlier").EnumerateArray());
    }

    [Fact]
    public async Task A_pressure_that_cannot_be_read_is_told_with_its_cylinder()
    {
        var (visit, _) = await Visit();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var refused = await pages.Send($"{visit.Pages}/compression", new() { ["Input.Cylinders[1].DryBar"] = "a lot" }, "#compression");

        Assert.Equal(["Cylinder 2: Dry is \"a lot\": a number such as 0.15 or 0,15, without a sign between thousands, is allowed."], refused.Faults);
    }

    [Fact]
    public async Task The_page_writes_what_is_typed_in_bar_and_comes_back_filled_when_it_is_refused()
    {
        var (visit, _) = await Visit();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var refused = await pages.Send($"{visit.Pages}/compression", new() { ["Input.Cylinders[1].DryBar"] = "11,2" }, "#compression");
        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Contains(refused.Faults, f => f.Contains("Compression gauge is empty", StringComparison.Ordinal));
        Assert.Equal("11,2", refused.Html.QuerySelector("[name='Input.Cylinders[1].DryBar']")!.GetAttribute("value"));

        var written = await pages.Send($"{visit.Pages}/compression", new()
        {
            ["Input.Cylinders[1].DryBar"] = "11,2", ["Input.GaugeId"] = TestWorkshop.CompressionGauge.ToString(), ["Input.ThrottleOpen"] = "true",
        }, "#compression");
        Assert.Equal(HttpStatusCode.Redirect, written.Status);
        Assert.Contains("1120 kPa (11.2 bar, 162 psi)", (await pages.Open($"{visit.Pages}/compression")).Html.Body!.TextContent, StringComparison.Ordinal);
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);
        Assert.Null((await advisor.Open($"{visit.Pages}/compression")).Html.QuerySelector("#compression"));
    }

    private static object Warm(params object[] cylinders) => Warm(null, cylinders);

    private static object Warm(string? reason, params object[] cylinders) =>
        new { stage = "asFound", warmth = "warm", throttleOpen = true, gaugeId = TestWorkshop.CompressionGauge, reason, cylinders };

    private static IReadOnlyList<string> Sentences(JsonElement cylinder) => [.. cylinder.GetProperty("sentences").EnumerateArray().Select(s => s.GetString()!)];

    private async Task<(TestVisit Visit, HttpClient Technician)> Visit() =>
        (await app.CheckedIn(specification: TestEngines.TwinThatIsLookedOver()), await app.As(Roles.Technician));

    private static Task<HttpResponseMessage> Send(HttpClient client, TestVisit visit, object body) => client.PostAsJsonAsync($"{visit.Api}/compression", body, Ct);

    private static async Task<JsonElement> Sent(HttpClient client, TestVisit visit, object body)
    {
        var answer = await Send(client, visit, body);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
        return await answer.Json();
    }

    private static async Task<IReadOnlyList<string>> Reasons(HttpClient client, TestVisit visit) =>
        [.. (await (await client.GetAsync(new Uri($"{visit.Api}/sign-off", UriKind.Relative), Ct)).Json()).GetProperty("reasons").EnumerateArray()
            .Select(r => r.GetProperty("subject").GetString()!)];

    private async Task<JsonElement> Get(TestVisit visit) =>
        await (await (await app.As(Roles.Technician)).GetAsync(new Uri($"{visit.Api}/compression", UriKind.Relative), Ct)).Json();
}
