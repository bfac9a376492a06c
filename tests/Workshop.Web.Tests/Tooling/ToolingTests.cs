using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Tooling;

public sealed class ToolingTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Instruments_say_scale_calibration_state_and_holder_and_a_feeler_set_its_blades()
    {
        await Add("Overdue wrench", "W-9", new LocalDate(2026, 3, 1), TestWorkshop.Technician);
        var technician = await app.As(Roles.Technician);

        var rows = (await Get(technician, "/api/v1/instruments")).GetProperty("rows").EnumerateArray().ToDictionary(r => r.GetProperty("serialNumber").GetString()!);

        Assert.Equal((true, "2028-01-05, in 22 months", 36),
            (rows["F-1"].GetProperty("mayBeUsed").GetBoolean(), rows["F-1"].GetProperty("calibrationDueInWords").GetString(), rows["F-1"].GetProperty("blades").GetArrayLength()));
        Assert.Equal("5 to 25 N.m", rows["W-1"].GetProperty("scale").GetString());
        Assert.Equal((false, "calibration overdue, not to be used", "2026-03-01, 1 day ago", "Tek Nician"),
            (rows["W-9"].GetProperty("mayBeUsed").GetBoolean(), rows["W-9"].GetProperty("stateInWords").GetString(),
                rows["W-9"].GetProperty("calibrationDueInWords").GetString(), rows["W-9"].GetProperty("holder").GetString()));
    }

    [Fact]
    public async Task Instruments_come_page_by_page_each_once_though_names_repeat()
    {
        await Add("Twin", "T-1", null, null);
        await Add("Twin", "T-2", null, null);
        await Add("Twin", "T-3", null, null);
        var technician = await app.As(Roles.Technician);

        var serials = new List<string>();
        string? after = null;
        do
        {
            var page = await Get(technician, $"/api/v1/instruments?take=2{(after is null ? "" : $"&after={Uri.EscapeDataString(after)}")}");
            serials.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("serialNumber").GetString()!));
            after = page.GetProperty("next").GetString();
        }
        while (after is not null);

        Assert.Equal(
            await app.Look(db => db.Instruments.OrderBy(i => i.Name).ThenBy(i => i.Id).Select(i => i.SerialNumber).ToListAsync(Ct)), serials);
    }

    [Fact]
    public async Task The_page_shows_which_visit_has_a_special_tool_now()
    {
        // A day ahead, since the engine is to stand until it is cold.
        var advisor = await app.As(Roles.Advisor);
        var start = app.Clock.Now + Duration.FromHours(24) + Duration.FromMinutes(30);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), start, items:
            [Counter.Item(TestEngines.ValveCheck), Counter.Item(TestEngines.Adjustment, "likely")])).Number();

        var before = Squeezed(await (await TestPages.SignedIn(app, Roles.Technician)).Open("/tooling"));
        app.Clock.Now += Duration.FromHours(25);
        var during = Squeezed(await (await TestPages.SignedIn(app, Roles.Technician)).Open("/tooling"));
        app.Clock.Now -= Duration.FromHours(25);

        Assert.Contains("Cam alignment jig cam-alignment-jig in its place", before, StringComparison.Ordinal);
        Assert.Contains($"Cam alignment jig cam-alignment-jig job card {number} until 2026-03-03 13:40", during, StringComparison.Ordinal);
        Assert.Contains("Blades of Feeler set, steps of 0.01 mm, F-1 (36)", before, StringComparison.Ordinal);
    }

    private static string Squeezed(TestPage page) => string.Join(' ', page.Html.QuerySelector("main")!.InnerHtml
        .Replace("<", " <", StringComparison.Ordinal) is { } html
        ? new AngleSharp.Html.Parser.HtmlParser().ParseDocument(html).Body!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
        : []);

    private static async Task<JsonElement> Get(HttpClient client, string address)
    {
        var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Ct);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }

    private Task<int> Add(string name, string serial, LocalDate? due, Guid? holder) => app.Look(async db =>
    {
        db.Instruments.Add(new Instrument
        {
            Id = NewId.At(app.Clock), Kind = InstrumentKind.TorqueWrench, Name = name, SerialNumber = serial, Unit = "N.m",
            CalibrationDueOn = due, HolderId = holder,
        });
        return await db.SaveChangesAsync(Ct);
    });
}
