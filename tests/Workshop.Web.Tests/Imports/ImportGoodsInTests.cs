using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Workshop.Web.Tests.Stores;
using Xunit;

namespace Workshop.Web.Tests.Imports;

public sealed class ImportGoodsInTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Header = "part;place;quantity;lot;use by;unit cost;thickness mm";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_file_is_checked_then_taken_in_once()
    {
        var desk = await StoresDesk.Of(app);
        var (ring, oil, place) = (await desk.Part(), await desk.Part("fluid", "millilitre", 36), await desk.Place());
        var box = (await desk.Get("/api/v1/stock/places")).GetProperty("places").EnumerateArray().Single(p => p.GetProperty("name").GetString() == "Shim box").GetProperty("code").GetString();
        var file = File($"{ring};{place};25;;;0,35;", $"{oil};{place};1000,5;L-1;2028-05-31;;", $"{oil};{place};500;L-1;;;", $"{TestEngines.ShimPart};{box};2;;;;2,345");

        var checked_ = await StoresDesk.Done(await Send(desk.Client, file, dryRun: true));
        var nothing = await desk.At(ring, place);
        var taken = await StoresDesk.Done(await Send(desk.Client, file));
        var again = await StoresDesk.Done(await Send(desk.Client, file));

        Assert.Equal((4, false, 4), (checked_.GetProperty("lines").GetInt32(), checked_.GetProperty("alreadyImported").GetBoolean(), checked_.GetProperty("goods").GetArrayLength()));
        Assert.Equal((0m, 0m), nothing);
        Assert.NotEqual(Guid.Empty, taken.GetProperty("importId").GetGuid());
        Assert.True(again.GetProperty("alreadyImported").GetBoolean());
        Assert.Equal(((25m, 0m), (1500.5m, 0m)), (await desk.At(ring, place), await desk.At(oil, place)));
        Assert.Equal("2028-05-31", (await desk.PartOf(oil)).GetProperty("at")[0].GetProperty("expiresOn").GetString());
        await StoresDesk.LedgerAgrees(app);
    }

    [Fact]
    public async Task Every_fault_names_its_line_and_nothing_is_written_while_there_is_one()
    {
        var desk = await StoresDesk.Of(app);
        var (ring, oil, place) = (await desk.Part(), await desk.Part("fluid", "millilitre", 36), await desk.Place());

        var answer = await Send(desk.Client, File(
            $"{ring};{place};3;;;;", $"nobody;{place};1;;;;", $"{ring};P-0;1;;;;", $"{ring};{place};1.5;;;;", $"{oil};{place};5;;;;",
            $"{oil};{place};5;L;2026-02-01;;", $"{ring};{place};many;;;;", $"{ring};{place};0;;;;", $"{ring};;1;;;;"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var faults = (await answer.Json()).GetProperty("errors").EnumerateObject().Select(e => e.Name).ToList();
        Assert.Equal(
            ["line 3, part", "line 4, place", "line 5, quantity", "line 6, lot", "line 7, use by", "line 8, quantity", "line 9, quantity", "line 10, place"],
            faults);
        Assert.Equal((0m, 0m), await desk.At(ring, place));
    }

    [Fact]
    public async Task By_the_page_a_file_is_checked_and_imported_by_whoever_opens_the_parcel()
    {
        var desk = await StoresDesk.Of(app);
        var (ring, place) = (await desk.Part(), await desk.Place());
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var wrong = await pages.Send("/imports/goods-in", new() { ["Input.Csv"] = File($"{ring};{place};1.5;;;;") });
        var found = await pages.Send("/imports/goods-in", new() { ["Input.Csv"] = File($"{ring};{place};15;;;;"), ["Input.DryRun"] = "true" });
        var done = await pages.Send(found, "/imports/goods-in", new() { ["Input.DryRun"] = "false" });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        Assert.Contains("Line 2, quantity", wrong.MainText, StringComparison.Ordinal);
        Assert.Contains("Nothing is wrong. An import would take in", found.MainText, StringComparison.Ordinal);
        Assert.Equal("/stores", done.Location);
        Assert.Equal((15m, 0m), await desk.At(ring, place));
    }

    private static string File(params string[] lines) => string.Join('\n', lines.Prepend(Header));

    private static Task<HttpResponseMessage> Send(HttpClient client, string csv, bool dryRun = false) =>
        client.PostAsJsonAsync("/api/v1/imports/goods-in", new { csv, dryRun, fileName = "delivery.csv" }, Ct);
}
