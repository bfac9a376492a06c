using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Tooling;

public sealed class InstrumentTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private HttpClient manager = null!;

    [Fact]
    public async Task Instruments_of_every_kind_are_entered_and_what_does_not_go_together_is_refused()
    {
        manager = await app.As(Roles.Manager);
        foreach (var kind in Enum.GetValues<InstrumentKind>())
        {
            var added = await Add(new { kind = Word(kind), unit = InstrumentRules.UnitsOf(kind)[0], name = $"Kept {kind}", serialNumber = "K-1", rangeHighest = 50 });
            Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        }

        await Refused(await Add(new { kind = "torqueWrench", unit = "mm", name = "N", serialNumber = "K-2", rangeHighest = 50 }), "unit", "N.m, lbf.ft, lbf.in, kgf.m, kgf.cm is allowed");
        await Refused(await Add(new { kind = "torqueWrench", unit = "N.m", name = "N", serialNumber = "K-2" }), "rangeHighest", "give the rated maximum");
        await Refused(await Add(new { kind = "torqueWrench", unit = "N.m", name = "N", serialNumber = "K-2", rangeLowest = 9, rangeHighest = 8 }), "rangeHighest", "more than the lowest, 9");
        await Refused(await Add(new { kind = "micrometer", unit = "mm", name = "N", serialNumber = "K-2", lengthMm = 80 }), "lengthMm", "only torque wrenches have one");
        await Refused(await Add(new { kind = "torqueWrench", unit = "N.m", name = "N", serialNumber = "K-1", rangeHighest = 50 }), "serialNumber", "another torque wrench", HttpStatusCode.Conflict);
        await Refused(await Add(new { kind = "torqueWrench", unit = "N.m", name = "N", serialNumber = "K-2", rangeHighest = 50, graduation = 0 }), "graduation", "graduation is 0", HttpStatusCode.BadRequest);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await app.As(Roles.Technician)).PostAsJsonAsync("/api/v1/instruments", new { }, Ct)).StatusCode);
    }

    [Fact]
    public async Task A_change_names_the_version_that_was_read()
    {
        manager = await app.As(Roles.Manager);
        var address = await Wrench("C-1");
        var body = new { name = "Torque wrench, renamed", serialNumber = "C-1", rangeLowest = 5, rangeHighest = 25, lengthMm = 270, drive = "3/8 in", graduation = 0.5 };
        var tag = await manager.Tag(address);

        Assert.Equal(HttpStatusCode.OK, (await manager.Put(address, body, tag)).StatusCode);
        Assert.Equal(HttpStatusCode.PreconditionFailed, (await manager.Put(address, body, tag)).StatusCode);
        Assert.Equal((HttpStatusCode)428, (await manager.Put(address, body, null)).StatusCode);
        var read = await Read(address);
        Assert.Equal(("Torque wrench, renamed", 270m, "3/8 in"), (read.GetProperty("name").GetString(), read.GetProperty("lengthMm").GetDecimal(), read.GetProperty("drive").GetString()));
    }

    [Fact]
    public async Task A_new_wrench_is_used_only_once_it_is_calibrated_and_the_months_say_until_when()
    {
        manager = await app.As(Roles.Manager);
        var address = await Wrench("N-1", calibrated: false);
        Assert.Equal((false, "has no calibration on record"), Standing(await Read(address)));

        var recorded = await Calibrate(address, new { doneOn = "2026-02-20", certificate = "C 77", laboratory = "Made-up laboratory", uncertainty = 3 });

        Assert.Equal("2027-02-20", (await recorded.Json()).GetProperty("dueOn").GetString());
        var read = await Read(address);
        Assert.Equal((true, null), Standing(read));
        var line = Assert.Single(read.GetProperty("calibrations").EnumerateArray());
        Assert.Equal(("C 77", "Made-up laboratory", "Mana Ger"), (line.GetProperty("certificate").GetString(), line.GetProperty("laboratory").GetString(), line.GetProperty("enteredBy").GetString()));
        await Refused(await Calibrate(address, new { doneOn = "2026-03-03", certificate = "C", laboratory = "L" }), "doneOn", "2026-03-02 or earlier is allowed");
        await Refused(await Calibrate(address, new { doneOn = "2026-03-01" }), "certificate", "certificate is empty", HttpStatusCode.BadRequest);
        Assert.Equal((HttpStatusCode)428, (await manager.PostAsJsonAsync($"{address}/calibrations", new { doneOn = "2026-03-01", certificate = "C", laboratory = "L" }, Ct)).StatusCode);
    }

    [Fact]
    public async Task What_was_dropped_is_held_back_until_the_manager_releases_it_with_a_reason()
    {
        manager = await app.As(Roles.Manager);
        var technician = await app.As(Roles.Technician);
        var address = await Wrench("D-1");

        var dropped = await Happened(technician, address, new { kind = "dropped", remark = "off the bench" });

        Assert.Equal("dropped, not to be used", (await dropped.Json()).GetProperty("stateInWords").GetString());
        Assert.False(Standing(await Read(address)).MayBeUsed);
        app.Clock.Now += NodaTime.Duration.FromMinutes(5);
        var release = $"{address}/release";
        Assert.Equal(HttpStatusCode.Forbidden, (await technician.Send(HttpMethod.Post, release, new { reason = "looks fine" }, await technician.Tag(address))).StatusCode);
        await Refused(await manager.Send(HttpMethod.Post, release, new { }, await manager.Tag(address)), "reason", "reason is empty", HttpStatusCode.BadRequest);
        var released = await manager.Send(HttpMethod.Post, release, new { reason = "checked against the new one at 20 N.m", until = "2026-03-06" }, await manager.Tag(address));
        Assert.Equal("in use, released by the manager until 2026-03-06", (await released.Json()).GetProperty("stateInWords").GetString());

        var events = (await Read(address)).GetProperty("events").EnumerateArray().Select(e => (e.GetProperty("kind").GetString(), e.GetProperty("remark").GetString())).ToList();
        Assert.Equal([("released", "checked against the new one at 20 N.m"), ("dropped", "off the bench")], events);
        Assert.True(await app.Look(db => db.AuditRows.AnyAsync(a => a.TableName == "instruments", Ct)));
        Assert.Equal(HttpStatusCode.Conflict, (await manager.Send(HttpMethod.Post, release, new { reason = "again" }, await manager.Tag(address))).StatusCode);
    }

    [Fact]
    public async Task What_is_sent_away_comes_back_with_its_certificate_and_what_is_withdrawn_by_a_manager_only()
    {
        manager = await app.As(Roles.Manager);
        var technician = await app.As(Roles.Technician);
        var address = await Wrench("S-1");

        Assert.Equal(HttpStatusCode.Created, (await Happened(technician, address, new { kind = "handedTo", holderId = TestWorkshop.Technician })).StatusCode);
        Assert.Equal("Tek Nician", (await Read(address)).GetProperty("holder").GetString());
        await Happened(technician, address, new { kind = "sentForCalibration" });
        Assert.Equal((false, "is out for calibration"), Standing(await Read(address)));
        Assert.Equal(JsonValueKind.Null, (await Read(address)).GetProperty("holder").ValueKind);
        await Refused(await Happened(technician, address, new { kind = "sentForCalibration" }), "kind", "is out for calibration already");
        await Calibrate(address, new { doneOn = "2026-03-01", certificate = "C", laboratory = "L", isBack = true });
        Assert.Equal((true, null), Standing(await Read(address)));

        await Happened(technician, address, new { kind = "withdrawn" });
        Assert.Equal(HttpStatusCode.Forbidden, (await Happened(technician, address, new { kind = "backInUse" })).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await Happened(manager, address, new { kind = "backInUse" })).StatusCode);
        await Refused(await Happened(manager, address, new { kind = "released" }), "kind", "a release has a reason", HttpStatusCode.BadRequest);
        await Refused(await Happened(manager, address, new { kind = "handedTo", holderId = Guid.CreateVersion7() }), "holderId", "nobody of the workshop has it");
    }

    [Fact]
    public async Task Adapters_are_entered_changed_and_retired()
    {
        manager = await app.As(Roles.Manager);
        var ring = new { kind = "offsetAdapter", name = "Ring 10", effectiveLengthMm = 30, thicknessMm = 7.5, drive = "1/4 in", tool = "10 mm ring" };
        var made = await manager.PostAsJsonAsync("/api/v1/wrench-adapters", ring, Ct);
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        var address = made.Headers.Location!.ToString();

        await Refused(await manager.PostAsJsonAsync("/api/v1/wrench-adapters", ring, Ct), "name", "another adapter is called that", HttpStatusCode.Conflict);
        await Refused(await manager.PostAsJsonAsync("/api/v1/wrench-adapters", ring with { name = "Bar", kind = "extensionBar" }, Ct), "effectiveLengthMm", "0 is allowed");
        await Refused(await manager.PostAsJsonAsync("/api/v1/wrench-adapters", ring with { name = "Zero", effectiveLengthMm = 0 }, Ct), "effectiveLengthMm", "it is more");
        var body = new { name = "Ring 10", effectiveLengthMm = 31.5, thicknessMm = 7.5, drive = "1/4 in", tool = "10 mm ring", retired = true };
        Assert.Equal(HttpStatusCode.OK, (await manager.Change(address, body)).StatusCode);
        Assert.Equal((HttpStatusCode)428, (await manager.Put(address, body, null)).StatusCode);
        var read = await Read(address);
        Assert.Equal((31.5m, true), (read.GetProperty("effectiveLengthMm").GetDecimal(), read.GetProperty("retired").GetBoolean()));
    }

    [Fact]
    public async Task The_pages_enter_an_instrument_record_its_calibration_and_what_happened()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var refused = await pages.Send("/tooling/instruments/new?kind=torqueWrench", new()
        {
            ["Input.Unit"] = "lbf.in", ["Input.Name"] = "Paged wrench", ["Input.SerialNumber"] = "P-1", ["Input.RangeLowest"] = "40",
            ["Input.RangeHighest"] = "20", ["Input.LengthMm"] = "240,5",
        });
        Assert.Contains("Rated maximum is 20", Assert.Single(refused.Faults), StringComparison.Ordinal);
        Assert.Equal(("40", "240,5"), (refused.ValueOf("Input.RangeLowest"), refused.ValueOf("Input.LengthMm")));

        var made = await pages.Send("/tooling/instruments/new?kind=torqueWrench", new()
        {
            ["Input.Unit"] = "lbf.in", ["Input.Name"] = "Paged wrench", ["Input.SerialNumber"] = "P-1", ["Input.RangeLowest"] = "40", ["Input.RangeHighest"] = "200",
        });
        var address = made.Location!;
        var calibrated = await pages.Send(address, new()
        {
            ["Calibration.DoneOn"] = "2026-02-01", ["Calibration.Certificate"] = "P 1", ["Calibration.Laboratory"] = "Made-up laboratory",
        }, "#calibration");
        Assert.Equal(address, calibrated.Location);
        Assert.Contains("it holds until 2027-02-01", (await pages.Open(address)).MainText, StringComparison.Ordinal);

        await pages.Send(address, new() { ["Event.Kind"] = "Dropped", ["Event.Remark"] = "off the lift" }, "#event");
        var page = await pages.Open(address);
        Assert.Contains("dropped, not to be used", page.MainText, StringComparison.Ordinal);
        Assert.Contains("off the lift", page.MainText, StringComparison.Ordinal);
        await pages.Send(address, new() { ["Release.Reason"] = "compared" }, "#release");
        Assert.Contains("released by the manager until its next calibration", (await pages.Open(address)).MainText, StringComparison.Ordinal);

        var technician = await TestPages.SignedIn(app, Roles.Technician);
        var seen = await technician.Open(address);
        Assert.NotNull(seen.Html.QuerySelector("#event"));
        Assert.Null(seen.Html.QuerySelector("#edit"));
        Assert.Null(seen.Html.QuerySelector("#calibration"));
        Assert.Equal(HttpStatusCode.OK, (await technician.Open("/tooling/adapters")).Status);
    }

    private async Task<string> Wrench(string serial, bool calibrated = true)
    {
        var made = await Add(new { kind = "torqueWrench", unit = "N.m", name = "Torque wrench 5 to 25 N.m", serialNumber = serial, rangeLowest = 5, rangeHighest = 25 });
        var address = made.Headers.Location!.ToString();
        if (calibrated)
        {
            (await Calibrate(address, new { doneOn = "2026-01-10", certificate = "C", laboratory = "L" })).EnsureSuccessStatusCode();
        }

        return address;
    }

    private Task<HttpResponseMessage> Add(object body) => manager.PostAsJsonAsync("/api/v1/instruments", body, Ct);

    private async Task<HttpResponseMessage> Calibrate(string address, object body) =>
        await manager.Send(HttpMethod.Post, $"{address}/calibrations", body, await manager.Tag(address));

    private static async Task<HttpResponseMessage> Happened(HttpClient client, string address, object body) =>
        await client.Send(HttpMethod.Post, $"{address}/events", body, await client.Tag(address));

    private async Task<JsonElement> Read(string address) => await (await manager.GetAsync(new Uri(address, UriKind.Relative), Ct)).Json();

    private static (bool MayBeUsed, string? Against) Standing(JsonElement read) =>
        (read.GetProperty("mayBeUsed").GetBoolean(), read.GetProperty("against").GetString());

    private static string Word(InstrumentKind kind) => JsonNamingPolicy.CamelCase.ConvertName(kind.ToString());

    private static async Task Refused(HttpResponseMessage answer, string field, string sentence, HttpStatusCode status = HttpStatusCode.UnprocessableEntity)
    {
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(sentence, (await answer.Json()).GetProperty("errors").GetProperty(field)[0].GetString(), StringComparison.Ordinal);
    }
}
