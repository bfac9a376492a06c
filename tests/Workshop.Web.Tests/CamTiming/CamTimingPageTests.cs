using System.Net;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.CamTiming.TimingBodies;

namespace Workshop.Web.Tests.CamTiming;

public sealed class CamTimingPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Form = "main form.readings";

    [Fact]
    public async Task What_is_typed_is_written_and_drawn_beside_what_is_stated()
    {
        var visit = await app.CheckedIn(items: TimingOnly, specification: Engine);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/cam-timing";

        var sent = await pages.Send(address, Typed("9,5", "40.5"), Form);
        Assert.Empty(sent.Faults);
        Assert.Equal(HttpStatusCode.Redirect, sent.Status);

        var page = await pages.Open(address);
        Assert.Contains("0.5° late, within what is permitted", page.MainText, StringComparison.Ordinal);
        Assert.Contains("tensioner out by 6.4 mm", page.MainText, StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector("svg.timing-circle .arc.measured.intake"));
        Assert.NotNull(page.Html.QuerySelector("svg.timing-circle .arc.stated.exhaust"));
        Assert.Contains("Cam timing", (await pages.Open(visit.Pages)).Html.QuerySelector(".card-head nav")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bad_input_comes_back_filled_with_its_faults()
    {
        var visit = await app.CheckedIn(items: TimingOnly, specification: Engine);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var typed = Typed("9,5", "200");
        typed["Input.InRunningDirection"] = null;

        var sent = await pages.Send($"{visit.Pages}/cam-timing", typed, Form);

        Assert.Equal(HttpStatusCode.BadRequest, sent.Status);
        Assert.Contains(sent.Faults, f => f.Contains("is 200 degrees: -180 to 180", StringComparison.Ordinal));
        Assert.Contains(sent.Faults, f => f.Contains("Go round again in running direction", StringComparison.Ordinal));
        Assert.Equal("9,5", sent.ValueOf("Input.Lobes[0].Readings[0].OpensDegrees"));
        Assert.Equal("6,4", sent.ValueOf("Input.Chains[0].ExtensionMm"));
        Assert.Equal("PositiveStop", sent.ValueOf("Input.DeadCentre"));
    }

    [Fact]
    public async Task Whoever_only_reads_sees_no_form()
    {
        var visit = await app.CheckedIn(items: TimingOnly, specification: Engine);
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open($"{visit.Pages}/cam-timing");

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Null(page.Html.QuerySelector(Form));
        Assert.Contains("one tooth is 24°", page.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_engine_model_without_drives_has_a_page_that_says_so_and_no_link_to_it()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Contains("states nothing about cam timing", (await pages.Open($"{visit.Pages}/cam-timing")).MainText, StringComparison.Ordinal);
        Assert.DoesNotContain("Cam timing", (await pages.Open(visit.Pages)).Html.QuerySelector(".card-head nav")!.TextContent, StringComparison.Ordinal);
    }

    private static Dictionary<string, string?> Typed(string opens, string closes) => new()
    {
        ["Input.DegreeWheelId"] = TestWorkshop.DegreeWheel.ToString(), ["Input.DialGaugeId"] = TestWorkshop.DialGauge.ToString(),
        ["Input.LiftMm"] = "1", ["Input.Station"] = "Follower", ["Input.DeadCentre"] = "PositiveStop",
        ["Input.StopBeforeDegrees"] = "30", ["Input.StopAfterDegrees"] = "30", ["Input.InRunningDirection"] = "true",
        ["Input.Lobes[0].Readings[0].OpensDegrees"] = opens, ["Input.Lobes[0].Readings[0].ClosesDegrees"] = closes,
        ["Input.Chains[0].ExtensionMm"] = "6,4",
    };
}
