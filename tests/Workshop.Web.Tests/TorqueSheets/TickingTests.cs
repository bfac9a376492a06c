using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.TorqueSheets;

/// <summary>What is dialled, what is between, how often the wrench clicked, and the second person.</summary>
public sealed class TickingTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_tick_keeps_adapter_angle_and_what_was_dialled()
    {
        var (wrench, ring, _) = await Tools("T-1");
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        // 10 N.m at the fastener: 10 x 200 / (200 + 50) = 8 on the dial.
        var ticked = await Json(await Tick(technician, visit, new { fastenerCode = TestEngines.CoverBolt, wrenchId = wrench, adapterId = ring, adapterAngleDegrees = 0, tightened = true }));

        Assert.Equal("8 N.m", ticked.GetProperty("dialled").GetString());
        var tick = Fastener(await Sheet(technician, visit), TestEngines.CoverBolt).GetProperty("tick");
        Assert.Equal(("Ring T-1", 0m, 8m, "N.m", 6), (
            tick.GetProperty("adapter").GetString(), tick.GetProperty("adapterAngleDegrees").GetDecimal(), tick.GetProperty("dialled").GetDecimal(),
            tick.GetProperty("dialledUnit").GetString(), tick.GetProperty("cycles").GetInt32()));
    }

    [Fact]
    public async Task What_does_not_go_together_is_refused_with_the_reason()
    {
        var (wrench, ring, bar) = await Tools("T-2");
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        object Body(object? adapter, object? angle, object? dialled = null) => new
        {
            fastenerCode = TestEngines.CoverBolt, wrenchId = wrench, adapterId = adapter, adapterAngleDegrees = angle, dialled, tightened = true,
        };

        await Refused(await Tick(technician, visit, Body(ring, null)), "adapterAngleDegrees", "give its angle against the wrench");
        await Refused(await Tick(technician, visit, Body(bar, 30)), "adapterAngleDegrees", "is a straight extension and has no angle");
        await Refused(await Tick(technician, visit, Body(null, 30)), "adapterAngleDegrees", "but no adapter", HttpStatusCode.BadRequest);
        await Refused(await Tick(technician, visit, Body(ring, 200)), "adapterAngleDegrees", "0 to 180 degrees", HttpStatusCode.BadRequest);
        await Refused(await Tick(technician, visit, Body(Guid.CreateVersion7(), 0)), "adapterId", "is no adapter of the workshop");
        await Refused(await Tick(technician, visit, Body(ring, 0, 9)), "dialled", "dialled is 9 N.m: 8 N.m is to be dialled for 10 N.m");
        Assert.Equal(HttpStatusCode.OK, (await Tick(technician, visit, Body(bar, null, 10))).StatusCode);
    }

    [Fact]
    public async Task Cycles_are_counted_from_ticks_since_the_calibration_and_a_tick_taken_back_stays_counted()
    {
        var (wrench, _, _) = await Tools("T-3");
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        var address = $"/api/v1/instruments/{wrench}";

        await Tick(technician, visit, new { fastenerCode = TestEngines.CoverBolt, wrenchId = wrench, tightened = true });
        await Tick(technician, visit, new { fastenerCode = TestEngines.CoverBolt, tightened = false });
        await Tick(technician, visit, new { fastenerCode = TestEngines.CoverBolt, wrenchId = wrench, tightened = true });
        Assert.Equal(12, (await Get(technician, address)).GetProperty("cycles").GetInt32());

        await app.Look(db => db.Instruments.Where(i => i.Id == wrench).ExecuteUpdateAsync(i => i.SetProperty(x => x.CalibrationCycles, 12), Ct));
        Assert.Equal("has made 12 cycles since its calibration, and is due after 12", (await Get(technician, address)).GetProperty("against").GetString());
        await Refused(await Tick(technician, visit, new { fastenerCode = TestEngines.CoverBolt, wrenchId = wrench, tightened = true }), "wrenchId", "has made 12 cycles");
        Assert.DoesNotContain("\"T-3\"", (await Sheet(technician, visit)).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_dropped_wrench_is_neither_offered_nor_taken()
    {
        var (wrench, _, _) = await Tools("T-4");
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        var address = $"/api/v1/instruments/{wrench}";
        Assert.Contains("\"T-4\"", (await Sheet(technician, visit)).ToString(), StringComparison.Ordinal);

        (await technician.Send(HttpMethod.Post, $"{address}/events", new { kind = "dropped" }, await technician.Tag(address))).EnsureSuccessStatusCode();

        Assert.DoesNotContain("\"T-4\"", (await Sheet(technician, visit)).ToString(), StringComparison.Ordinal);
        await Refused(await Tick(technician, visit, new { fastenerCode = TestEngines.CoverBolt, wrenchId = wrench, tightened = true }), "wrenchId",
            "was dropped on 2026-03-02 and is neither calibrated nor released since. These suit 10 N.m: ");
        var ways = await Get(technician, $"{visit.Api}/torque-sheet/{TestEngines.CoverBolt}/wrenches");
        Assert.Contains("was dropped", ways.GetProperty("steps")[0].GetProperty("against").ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_marked_fastener_asks_for_somebody_else_before_the_card_is_signed_off()
    {
        var (technician, manager) = (await app.As(Roles.Technician), await app.As(Roles.Manager));
        var mark = $"/api/v1/engine-models/{TestWorkshop.EngineModel}/second-person/{TestEngines.DrainPlug}";
        Assert.Equal(HttpStatusCode.Forbidden, (await technician.Put(mark, new { }, null)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await manager.Put(mark, new { }, null)).StatusCode);
        var visit = await app.Finish(await app.CheckedIn(), technician);
        var tick = Fastener(await Sheet(technician, visit), TestEngines.DrainPlug).GetProperty("tick").GetProperty("id").GetGuid();
        Assert.Contains("no second person has confirmed it", await Reasons(technician, visit), StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.Forbidden, (await Witness(technician, visit, tick)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Witness(manager, visit, tick)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Witness(manager, visit, tick)).StatusCode);
        Assert.DoesNotContain("second person", await Reasons(technician, visit), StringComparison.Ordinal);
        Assert.Equal("Mana Ger", Fastener(await Sheet(technician, visit), TestEngines.DrainPlug).GetProperty("tick").GetProperty("witnessedBy").GetString());

        // A tick taken back takes its witness with it.
        await Tick(technician, visit, new { fastenerCode = TestEngines.DrainPlug, tightened = false });
        await Tick(technician, visit, new { fastenerCode = TestEngines.DrainPlug, wrenchId = TestWorkshop.SmallWrench, tightened = true });
        Assert.Contains("no second person has confirmed it", await Reasons(technician, visit), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, (await Witness(manager, visit, tick)).StatusCode);

        Assert.Equal(HttpStatusCode.OK, (await manager.Send(HttpMethod.Delete, mark, null, null)).StatusCode);
        Assert.DoesNotContain("second person", await Reasons(technician, visit), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_pages_ask_what_is_to_be_dialled_and_tick_in_that_way()
    {
        var (wrench, ring, _) = await Tools("T-6");
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/torque-sheet/{TestEngines.CoverBolt}?wrench={wrench}&adapter={ring}&angle=60";

        // 10 x 200 / (200 + 50 x 0.5) = 8.889; the marks are at every half.
        Assert.Contains("9 N.m", (await pages.Open(address)).MainText, StringComparison.Ordinal);
        var sent = await pages.Send(address, new() { ["Input.Tightened"] = "true" });

        Assert.Equal($"{visit.Pages}/torque-sheet#fastener-{TestEngines.CoverBolt}", sent.Location);
        var tick = await app.Look(db => db.FastenerTicks.SingleAsync(t => t.JobCardNumber == visit.Number, Ct));
        Assert.Equal((wrench, ring, 60m, 9m), (tick.WrenchId!.Value, tick.AdapterId!.Value, tick.AdapterAngleDegrees!.Value, tick.Dialled!.Value));
    }

    private Task<(Guid Wrench, Guid Ring, Guid Bar)> Tools(string serial) => app.Look(async db =>
    {
        var wrench = new Instrument
        {
            Id = NewId.At(app.Clock), Kind = InstrumentKind.TorqueWrench, Name = $"Wrench {serial}", SerialNumber = serial, Unit = "N.m",
            RangeLowest = 4, RangeHighest = 20, Graduation = 0.5m, LengthMm = 200, Drive = "1/4 in",
            CalibratedOn = new LocalDate(2026, 1, 5), CalibrationDueOn = new LocalDate(2027, 1, 5),
        };
        WrenchAdapter Between(string name, WrenchAdapterKind kind, decimal length) => new()
        {
            Id = NewId.At(app.Clock), Name = $"{name} {serial}", Kind = kind, EffectiveLengthMm = length, ThicknessMm = 8, Drive = "1/4 in", Tool = "8 mm ring",
        };
        var (ring, bar) = (Between("Ring", WrenchAdapterKind.OffsetAdapter, 50), Between("Bar", WrenchAdapterKind.ExtensionBar, 0));
        db.Instruments.Add(wrench);
        db.WrenchAdapters.AddRange(ring, bar);
        await db.SaveChangesAsync(Ct);
        return (wrench.Id, ring.Id, bar.Id);
    });

    private static Task<HttpResponseMessage> Tick(HttpClient client, TestVisit visit, object body) =>
        client.PostAsJsonAsync($"{visit.Api}/torque-sheet/ticks", body, Ct);

    private static Task<HttpResponseMessage> Witness(HttpClient client, TestVisit visit, Guid tick) =>
        client.PostAsJsonAsync($"{visit.Api}/torque-sheet/witnesses", new { fastenerCode = TestEngines.DrainPlug, tickId = tick }, Ct);

    private static async Task<string> Reasons(HttpClient client, TestVisit visit) =>
        (await Get(client, $"{visit.Api}/sign-off")).GetProperty("reasons").ToString();

    private static Task<JsonElement> Sheet(HttpClient client, TestVisit visit) => Get(client, $"{visit.Api}/torque-sheet");

    private static async Task<JsonElement> Get(HttpClient client, string address) =>
        await Json(await client.GetAsync(new Uri(address, UriKind.Relative), Ct));

    private static Task<JsonElement> Json(HttpResponseMessage answer) => answer.Content.ReadFromJsonAsync<JsonElement>(Ct)!;

    private static JsonElement Fastener(JsonElement sheet, string code) => sheet.GetProperty("sections").EnumerateArray()
        .SelectMany(s => s.GetProperty("fasteners").EnumerateArray())
        .Single(f => f.GetProperty("fastenerCode").GetString() == code);

    private static async Task Refused(HttpResponseMessage answer, string field, string sentence, HttpStatusCode status = HttpStatusCode.UnprocessableEntity)
    {
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(sentence, (await Json(answer)).GetProperty("errors").GetProperty(field)[0].GetString(), StringComparison.Ordinal);
    }
}
