using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Workshop.Web.Tests.Kits;
using Xunit;

namespace Workshop.Web.Tests.Ignition;

public sealed class RecordPlugsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_plug_that_is_renewed_is_the_one_of_the_engine_model_and_its_gap_is_judged()
    {
        var (visit, technician) = await Visit();

        await Sent(technician, visit, new
        {
            gauge = "blade", instrumentId = TestWorkshop.FeelerSet,
            plugs = new object?[]
            {
                new { cylinder = 1, condition = "oily", gapFoundMm = 0.95m, renewed = true, gapLeftMm = 0.75m },
                new { cylinder = 2, condition = "normal", gapFoundMm = 0.8m, gapLeftMm = 0.8m },
            },
        });

        var plugs = (await Get(visit)).GetProperty("plugs").EnumerateArray().ToList();
        Assert.Equal(("Plug of cylinder 1", TestEngines.OilFilter, "too wide: 0.7 to 0.8 mm is allowed", "within 0.7 to 0.8 mm"),
            (plugs[0].GetProperty("name").GetString(), plugs[0].GetProperty("partCode").GetString(), plugs[0].GetProperty("foundWords").GetString(), plugs[0].GetProperty("leftWords").GetString()));
        Assert.StartsWith("likely oil past rings", plugs[0].GetProperty("means").GetString(), StringComparison.Ordinal);
        Assert.False(plugs[1].GetProperty("renewed").GetBoolean());
        await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, "delete from plug_checks", Ct));
    }

    [Fact]
    public async Task The_sign_off_waits_for_every_plug_with_a_gap_that_is_allowed_where_the_engine_model_asks()
    {
        var (visit, technician) = await Visit();
        Assert.Equal(["plugs.1-1", "plugs.2-1"], await Reasons(technician, visit));

        await Sent(technician, visit, Plugs(null, (1, 0.85m), (2, 0.75m)));
        Assert.Equal(["plugs.1-1"], await Reasons(technician, visit));

        await Sent(technician, visit, Plugs("Bent to its gap.", (1, 0.8m)));
        Assert.Empty(await Reasons(technician, visit));
        Assert.Equal([false, true, true], (await Get(visit)).GetProperty("history").EnumerateArray()
            .OrderBy(h => h.GetProperty("name").GetString()).ThenBy(h => h.GetProperty("attempt").GetInt32()).Select(h => h.GetProperty("counts").GetBoolean()));
    }

    [Fact]
    public async Task What_is_wrong_is_named_with_its_field_and_nothing_is_written()
    {
        var (visit, technician) = await Visit();

        var refused = await Send(technician, visit, new
        {
            gauge = "wire", instrumentId = TestWorkshop.Micrometer,
            plugs = new object[]
            {
                new { cylinder = 1, plug = 2, condition = "normal", gapLeftMm = 0.8m },
                new { cylinder = 2, condition = "crackedInsulator", gapLeftMm = 0.8m },
                new { cylinder = 1, condition = "normal", renewed = true, partCode = "no-such-plug", gapLeftMm = 0.8m },
            },
        });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var faults = await refused.Json();
        Assert.Equal("plugs[0].cylinder is 1-2: the engine has no such plug; cylinder and plug are one of 1-1, 2-1.", faults.Fault("plugs[0].cylinder"));
        Assert.Equal("plugs[1].renewed is false with a plug that has a cracked insulator: such a plug is not refitted; renew it.", faults.Fault("plugs[1].renewed"));
        Assert.StartsWith("plugs[2].partCode is \"no-such-plug\": the stores have no such part", faults.Fault("plugs[2].partCode"), StringComparison.Ordinal);
        Assert.Contains("it is no plug gauge", faults.Fault("instrumentId"), StringComparison.Ordinal);
        var shape = await (await Send(technician, visit, new { gauge = "wire", plugs = new object[] { new { cylinder = 1, condition = "normal", gapLeftMm = 30 } } })).Json();
        Assert.Equal("plugs[0].gapLeftMm is 30 mm: 0.1 to 3 mm with at most 2 decimals is allowed.", shape.Fault("plugs[0].gapLeftMm"));
        Assert.Equal(0, (await Get(visit)).GetProperty("history").GetArrayLength());
    }

    [Fact]
    public async Task Plugs_that_are_renewed_beyond_the_kit_are_used_at_the_sign_off()
    {
        var technician = await app.As(Roles.Technician);
        var items = new Dictionary<string, Likelihood> { [TestEngines.ValveCheck] = Likelihood.Certain };
        var visit = await app.Finish(await app.CheckedIn(24_000, items), technician);
        await Sent(technician, visit, new
        {
            gauge = "wire",
            plugs = new object[]
            {
                new { cylinder = 1, condition = "oily", renewed = true, partCode = TestEngines.DrainRing, gapLeftMm = 0.8m },
                new { cylinder = 2, condition = "normal", gapLeftMm = 0.8m },
            },
        });

        var signed = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_000 }, Ct);

        Assert.True(signed.IsSuccessStatusCode, await signed.Content.ReadAsStringAsync(Ct));
        Assert.Equal(-1, await app.Look(db => (
            from m in db.StockMovements
            join p in db.Parts on m.PartId equals p.Id
            where m.JobCardNumber == visit.Number && p.Code == TestEngines.DrainRing
            select m.OnHandChange).SumAsync(Ct)));
    }

    /// <summary>The card's kit holds one plug, and the stores' alternative stands in for it; an entry names the alternative by its own code.</summary>
    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 0)]
    public async Task A_plug_that_stands_in_for_the_kits_is_issued_once(bool renewed, int issued)
    {
        var technician = await app.As(Roles.Technician);
        var code = renewed ? "stand-in-plug" : "stand-in-plug-2";
        var standIn = await app.Ring(code, 5);
        await app.Alternatives(await app.Look(db => db.Parts.Where(p => p.Code == TestEngines.OilFilter).Select(p => p.Id).SingleAsync(Ct)), standIn);
        var visit = await app.CheckedIn(24_000, KitStock.OilOnly, specification: TestEngines.TwinThatIsLookedOver());
        Assert.True((await technician.PostAsJsonAsync($"{visit.Api}/kit/substitutions", new { partCode = TestEngines.OilFilter, insteadCode = code, reason = "Out of stock." }, Ct)).IsSuccessStatusCode);
        await app.Finish(visit, technician);
        await technician.PostAsJsonAsync($"{visit.Api}/arrival", new
        {
            nothingElseSeen = true,
            notes = new[] { "engineOil", "coolant", "frontBrake", "rearBrake", "clutch" }.Select(s => new { kind = "level", subject = s, state = "atMark" }),
        }, Ct);
        await Sent(technician, visit, new
        {
            gauge = "wire",
            plugs = new object[]
            {
                new { cylinder = 1, condition = "normal", renewed, partCode = renewed ? code : null, gapLeftMm = 0.8m },
                new { cylinder = 2, condition = "normal", gapLeftMm = 0.8m },
            },
        });

        var signed = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_000 }, Ct);

        Assert.True(signed.IsSuccessStatusCode, await signed.Content.ReadAsStringAsync(Ct));
        Assert.Equal((5 - issued, 0), await app.Balance(code));
    }

    [Fact]
    public async Task The_page_writes_a_plug_and_leaves_alone_what_nobody_touched()
    {
        var (visit, _) = await Visit();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var written = await pages.Send($"{visit.Pages}/plugs", new()
        {
            ["Input.Plugs[1].Condition"] = "Sooty", ["Input.Plugs[1].GapFoundMm"] = "0,9", ["Input.Plugs[1].GapLeftMm"] = "0,75", ["Input.Plugs[1].Renewed"] = "true",
        }, "#plugs");

        Assert.Equal(HttpStatusCode.Redirect, written.Status);
        var plugs = (await Get(visit)).GetProperty("plugs").EnumerateArray().ToList();
        Assert.Equal(JsonValueKind.Null, plugs[0].GetProperty("condition").ValueKind);
        Assert.Equal("sooty", plugs[1].GetProperty("condition").GetString());
    }

    private static object Plugs(string? reason, params (int Cylinder, decimal LeftMm)[] plugs) => new
    {
        gauge = "wire", reason, plugs = plugs.Select(p => new { cylinder = p.Cylinder, condition = "normal", gapLeftMm = p.LeftMm }),
    };

    private async Task<(TestVisit Visit, HttpClient Technician)> Visit() =>
        (await app.CheckedIn(specification: TestEngines.TwinThatIsLookedOver()), await app.As(Roles.Technician));

    private static Task<HttpResponseMessage> Send(HttpClient client, TestVisit visit, object body) => client.PostAsJsonAsync($"{visit.Api}/plugs", body, Ct);

    private static async Task Sent(HttpClient client, TestVisit visit, object body)
    {
        var answer = await Send(client, visit, body);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
    }

    private static async Task<IReadOnlyList<string>> Reasons(HttpClient client, TestVisit visit) =>
        [.. (await (await client.GetAsync(new Uri($"{visit.Api}/sign-off", UriKind.Relative), Ct)).Json()).GetProperty("reasons").EnumerateArray()
            .Select(r => r.GetProperty("subject").GetString()!).Where(s => s.StartsWith("plugs.", StringComparison.Ordinal))];

    private async Task<JsonElement> Get(TestVisit visit) =>
        await (await (await app.As(Roles.Technician)).GetAsync(new Uri($"{visit.Api}/plugs", UriKind.Relative), Ct)).Json();
}
