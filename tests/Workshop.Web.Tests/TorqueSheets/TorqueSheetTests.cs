using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.TorqueSheets;

public sealed class TorqueSheetTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_sheet_lists_what_is_opened_with_torque_thread_seals_and_suited_wrenches()
    {
        var visit = await app.CheckedIn();

        var sheet = await Sheet(await app.As(Roles.Advisor), visit);

        Assert.Equal(2, sheet.GetProperty("notTightened").GetInt32());
        Assert.Equal(["sump-drain", "head-cover"], sheet.GetProperty("sections").EnumerateArray().Select(s => s.GetProperty("jointCode").GetString()));
        var plug = Fastener(sheet, TestEngines.DrainPlug);
        Assert.Equal("dry", plug.GetProperty("treatment").GetString());
        Assert.Equal("notTightened", plug.GetProperty("state").GetString());
        var step = Assert.Single(plug.GetProperty("steps").EnumerateArray());

        // 1 lbf.ft = 1.355818 N.m, 1 lbf.in = 0.1129848 N.m: NIST SP 811 (2008), appendix B.8.
        Assert.Equal((24m, 17.7m, 212m), (
            step.GetProperty("torqueNm").GetDecimal(), step.GetProperty("torqueLbfFt").GetDecimal(), step.GetProperty("torqueLbfIn").GetDecimal()));
        Assert.Equal(TestWorkshop.SmallWrench, Assert.Single(step.GetProperty("wrenches").EnumerateArray()).GetProperty("id").GetGuid());
        var ring = Assert.Single(sheet.GetProperty("sections")[0].GetProperty("seals").EnumerateArray());
        Assert.Equal(("replaceAlways", "Sealing ring 14 x 18 x 1.5"), (ring.GetProperty("policy").GetString(), ring.GetProperty("part").GetString()));
    }

    [Fact]
    public async Task A_seal_that_the_stores_know_as_fitted_once_is_replaced_whatever_its_policy_says()
    {
        var visit = await app.CheckedIn();
        var advisor = await app.As(Roles.Advisor);

        Assert.Equal(["inspectAndReuse", "replaceIfDamaged"], await CoverPolicies(advisor, visit));
        await FittedOnce(true);
        Assert.Equal(["inspectAndReuse", "replaceAlways"], await CoverPolicies(advisor, visit));
        await FittedOnce(false);
    }

    [Fact]
    public async Task An_adjustment_that_is_begun_adds_its_fasteners_and_their_stages()
    {
        var visit = await app.CheckedIn();
        await Begin(visit);

        var sheet = await Sheet(await app.As(Roles.Technician), visit);

        var cap = Fastener(sheet, TestEngines.CamCapBolt);
        Assert.Equal([5m, 12m], cap.GetProperty("steps").EnumerateArray().Select(s => s.GetProperty("torqueNm").GetDecimal()));
        Assert.Equal("oiled", cap.GetProperty("treatment").GetString());
        Assert.Equal("evenly, from the middle outward", cap.GetProperty("sequence").GetString());
    }

    [Fact]
    public async Task A_tick_counts_until_it_is_taken_back()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var ticked = await Body(await Tick(technician, visit, TestEngines.DrainPlug));
        Assert.Equal(("tightened", 1), (ticked.GetProperty("state").GetString(), ticked.GetProperty("notTightened").GetInt32()));
        var plug = Fastener(await Sheet(technician, visit), TestEngines.DrainPlug);
        Assert.Equal("Tek Nician", plug.GetProperty("tick").GetProperty("tickedBy").GetString());
        Assert.Equal("Torque wrench 5 to 25 N.m (W-1)", plug.GetProperty("tick").GetProperty("wrench").GetString());

        var back = await Body(await Tick(technician, visit, TestEngines.DrainPlug, tightened: false));
        Assert.Equal(("takenBack", 2), (back.GetProperty("state").GetString(), back.GetProperty("notTightened").GetInt32()));
        Assert.Equal("takenBack", Fastener(await Sheet(technician, visit), TestEngines.DrainPlug).GetProperty("state").GetString());

        var twice = await Tick(technician, visit, TestEngines.DrainPlug, tightened: false);
        Assert.Equal(HttpStatusCode.Conflict, twice.StatusCode);
        Assert.Equal(2, await app.Look(db => db.FastenerTicks.CountAsync(t => t.JobCardNumber == visit.Number, Ct)));
    }

    [Fact]
    public async Task A_tick_from_before_the_adjustment_was_begun_is_outdated()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        await Tick(technician, visit, TestEngines.CoverBolt);
        await Begin(visit, Duration.FromMinutes(10));

        var sheet = await Sheet(technician, visit);

        Assert.Equal("openedAgain", Fastener(sheet, TestEngines.CoverBolt).GetProperty("state").GetString());
    }

    [Fact]
    public async Task A_wrench_out_of_range_is_refused_with_those_that_suit()
    {
        var large = await AddWrench("Large wrench", 40, 200, new LocalDate(2028, 1, 1));
        var visit = await app.CheckedIn();

        var answer = await Tick(await app.As(Roles.Technician), visit, TestEngines.DrainPlug, large);

        await Refused(answer, "wrenchId",
            "Large wrench (Large wrench) is good for 40 to 200 N.m, and 24 N.m is to be dialled. These suit 24 N.m: Torque wrench 5 to 25 N.m (W-1).");
    }

    [Fact]
    public async Task A_wrench_overdue_for_calibration_is_refused_and_not_suggested()
    {
        var overdue = await AddWrench("Overdue wrench", 5, 30, new LocalDate(2026, 3, 1));
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var answer = await Tick(technician, visit, TestEngines.DrainPlug, overdue);

        await Refused(answer, "wrenchId", "was due for calibration on 2026-03-01");
        Assert.DoesNotContain("Overdue", (await Sheet(technician, visit)).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrench_that_nobody_has_and_a_fastener_that_is_not_opened_are_refused()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        await Refused(await Tick(technician, visit, TestEngines.DrainPlug, allowEmpty: true), "wrenchId", "wrenchId is empty", HttpStatusCode.BadRequest);
        await Refused(await Tick(technician, visit, TestEngines.DrainPlug, TestWorkshop.Shelf), "wrenchId", "is no instrument of the workshop");
        await Refused(await Tick(technician, visit, TestEngines.CamCapBolt), "fastenerCode", "on its torque sheet are drain-plug, cover-bolt");
    }

    [Fact]
    public async Task Only_those_who_measure_tick_and_only_on_a_card_that_is_checked_in()
    {
        var checkedIn = await app.CheckedIn();
        var booked = await app.Booked();

        Assert.Equal(HttpStatusCode.Forbidden, (await Tick(await app.As(Roles.Advisor), checkedIn, TestEngines.DrainPlug)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Tick(await app.As(Roles.Technician), booked, TestEngines.DrainPlug)).StatusCode);
    }

    [Fact]
    public async Task The_page_ticks_with_one_tap_and_takes_back()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/torque-sheet";
        var plug = $"#fastener-{TestEngines.DrainPlug} form";

        var sent = await pages.Send(address, new() { ["Input.Tightened"] = "true" }, plug);

        Assert.Equal($"{address}#fastener-{TestEngines.DrainPlug}", sent.Location);
        var after = await pages.Open(address);
        Assert.Contains("1 of the sheet still to be tightened.", after.MainText, StringComparison.Ordinal);
        Assert.Contains("tightened by Tek Nician, 2026-03-02 09:00, with Torque wrench 5 to 25 N.m (W-1)", Squeezed(after), StringComparison.Ordinal);

        await pages.Send(address, new() { ["Input.Tightened"] = "false" }, plug);

        Assert.Contains("tick taken back", (await pages.Open(address)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_advisor_sees_the_sheet_without_forms_and_may_not_send_one()
    {
        var visit = await app.CheckedIn();
        var address = $"{visit.Pages}/torque-sheet";
        var technician = await TestPages.SignedIn(app, Roles.Technician);
        var form = (await technician.Open(address)).Html.QuerySelector("main form")!;
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);

        var page = await advisor.Open(address);

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Null(page.Html.QuerySelector("main form"));
        Assert.Contains("24 N.m", page.MainText, StringComparison.Ordinal);
        var token = page.Html.QuerySelector("input[name='__RequestVerificationToken']")!.GetAttribute("value")!;
        using var content = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["__RequestVerificationToken"] = token, ["Input.Tightened"] = "true",
            ["Input.FastenerCode"] = form.QuerySelector("[name='Input.FastenerCode']")!.GetAttribute("value")!,
            ["Way"] = form.QuerySelector("[name='Way']")!.GetAttribute("value")!,
        });
        var answer = await advisor.Client.PostAsync(new Uri(address, UriKind.Relative), content, Ct);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal(0, await app.Look(db => db.FastenerTicks.CountAsync(t => t.JobCardNumber == visit.Number, Ct)));
    }

    private static string Squeezed(TestPage page) => string.Join(' ', page.MainText.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private Task<int> Begin(TestVisit visit, Duration? later = null)
    {
        Instant? at = app.Clock.Now + (later ?? Duration.Zero);
        return app.Look(db => db.JobCardItems
            .Where(i => i.JobCardNumber == visit.Number && i.ServiceItemCode == TestEngines.Adjustment)
            .ExecuteUpdateAsync(i => i.SetProperty(x => x.StartedAt, at), Ct));
    }

    private Task<Guid> AddWrench(string name, decimal lowest, decimal highest, LocalDate due) => app.Look(async db =>
    {
        var wrench = new Instrument
        {
            Id = Domain.NewId.At(app.Clock), Kind = InstrumentKind.TorqueWrench, Name = name, SerialNumber = name, Unit = "N.m",
            RangeLowest = lowest, RangeHighest = highest, CalibrationDueOn = due,
        };
        db.Instruments.Add(wrench);
        await db.SaveChangesAsync(Ct);
        return wrench.Id;
    });

    private static Task<HttpResponseMessage> Tick(
        HttpClient client, TestVisit visit, string fastener, Guid? wrench = null, bool tightened = true, bool allowEmpty = false) =>
        client.PostAsJsonAsync($"{visit.Api}/torque-sheet/ticks", new
        {
            fastenerCode = fastener,
            wrenchId = allowEmpty ? (Guid?)null : wrench ?? TestWorkshop.SmallWrench,
            tightened,
        }, Ct);

    private static async Task Refused(
        HttpResponseMessage answer, string field, string sentence, HttpStatusCode status = HttpStatusCode.UnprocessableEntity)
    {
        Assert.Equal(status, answer.StatusCode);
        var said = (await Body(answer)).GetProperty("errors").GetProperty(field)[0].GetString();
        Assert.Contains(sentence, said, StringComparison.Ordinal);
    }

    private static Task<JsonElement> Sheet(HttpClient client, TestVisit visit) =>
        client.GetFromJsonAsync<JsonElement>($"{visit.Api}/torque-sheet", Ct);

    private static async Task<JsonElement> Body(HttpResponseMessage answer) => await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);

    private static async Task<IEnumerable<string?>> CoverPolicies(HttpClient client, TestVisit visit) =>
        (await Sheet(client, visit)).GetProperty("sections").EnumerateArray().Single(s => s.GetProperty("jointCode").GetString() == "head-cover")
            .GetProperty("seals").EnumerateArray().Select(s => s.GetProperty("policy").GetString()).ToList();

    private Task<int> FittedOnce(bool once) => app.Look(db => db.Parts.Where(p => p.Code == TestEngines.PlugWellRing)
        .ExecuteUpdateAsync(p => p.SetProperty(x => x.FittedOnce, once), Ct));

    private static JsonElement Fastener(JsonElement sheet, string code) => sheet.GetProperty("sections").EnumerateArray()
        .SelectMany(s => s.GetProperty("fasteners").EnumerateArray())
        .Single(f => f.GetProperty("fastenerCode").GetString() == code);
}
