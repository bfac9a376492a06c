using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Shims.ShimStores;

namespace Workshop.Web.Tests.Shims;

public sealed class ShimBoxPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Box = $"/stores/shims?box={TestEngines.ShimPart}";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("2,125")]
    [InlineData("d 8")]
    [InlineData($"{TestEngines.ShimPart}/2.125")]
    public async Task A_size_is_found_by_thickness_by_compartment_and_by_its_label(string typed)
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"{Box}&find={Uri.EscapeDataString(typed)}");

        var row = Assert.Single(page.Html.QuerySelector("#sizes-found")!.ParentElement!.QuerySelectorAll("tbody tr"));
        Assert.Contains("2.125 mm", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("D8", row.TextContent, StringComparison.Ordinal);
        Assert.Single(page.Html.QuerySelectorAll("svg.box-map rect.found"));
    }

    [Fact]
    public async Task The_map_draws_every_compartment_and_what_lies_in_it()
    {
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var page = await pages.Open(Box);

        var map = page.Html.QuerySelector("svg.box-map")!;
        Assert.Contains("81 compartments", map.GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(81, map.QuerySelectorAll("text").Count(t => decimal.TryParse(t.TextContent, out var mm) && t.TextContent.Contains('.')));
        Assert.Empty(page.Html.QuerySelectorAll("rect.found"));
        Assert.Contains("Nothing lies there", (await pages.Open($"{Box}&find=Z9")).MainText, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open("/stores/shims?box=nothing")).Status);
    }

    [Fact]
    public async Task Goods_in_come_with_a_comma_and_what_was_typed_stays_when_refused()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var wrong = await pages.Send(Box, new() { ["Receipt.ThicknessMm"] = "2,79", ["Receipt.NominalMm"] = "2,70", ["Receipt.Quantity"] = "3" }, "#receive");
        var done = await pages.Send(wrong, Box, new() { ["Receipt.NominalMm"] = "2,80" }, "#receive");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        Assert.Contains("more than a step of the series", Assert.Single(wrong.Faults), StringComparison.Ordinal);
        Assert.Equal("2,79", wrong.ValueOf("Receipt.ThicknessMm"));
        Assert.Equal(HttpStatusCode.Redirect, done.Status);
        Assert.Contains("Took in 3 of 2.79 mm to Shim box, G5.", (await pages.Open(Box)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_count_comes_back_as_typed_until_its_difference_is_explained()
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var address = $"/stores/shims/count?box={TestEngines.ShimPart}";
        var sheet = await pages.Open(address);
        var row = sheet.Html.QuerySelectorAll("tbody tr").Single(r => r.TextContent.Contains("2.350 mm", StringComparison.Ordinal));
        var field = row.QuerySelector("input[type=text]")!.GetAttribute("name")!;

        var asked = await pages.Send(sheet, address, new() { [field] = "1" });
        var done = await pages.Send(asked, address, new() { ["Input.Reason"] = "One was lent" });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.Status);
        Assert.Contains("2 by the ledger, 1 counted", Assert.Single(asked.Faults), StringComparison.Ordinal);
        Assert.Equal("1", asked.ValueOf(field));
        Assert.Equal(HttpStatusCode.Redirect, done.Status);
        var thickness = Mm(2.35m);
        Assert.Equal(1, await app.Look(db => db.Shims.CountAsync(s => s.Thickness == thickness && s.PlaceId != null, Ct)));
    }

    [Fact]
    public async Task A_shim_of_the_bench_is_put_away_by_its_page_and_scrapped_by_it()
    {
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.213m);
        (await app.Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 1.9, fromBox = true })).EnsureSuccessStatusCode();
        var id = await app.Look(db => db.Shims.Where(s => s.BenchCardNumber == visit.Number).Select(s => s.Id).SingleAsync(Ct));
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"/stores/shims/{id}";
        Assert.Contains("On benches", (await pages.Open(Box)).MainText, StringComparison.Ordinal);

        var unconfirmed = await pages.Send(address, new() { ["Away.ThicknessMm"] = "2,212" }, "#away");
        var away = await pages.Send(unconfirmed, address, new() { ["Away.CleanedAndMeasured"] = "true" }, "#away");
        var page = await pages.Open(address);
        var scrapped = await pages.Send(page, address, new() { ["Scrap.Reason"] = "Dished" }, "#scrap");

        Assert.Contains("zero the micrometer", Assert.Single(unconfirmed.Faults), StringComparison.Ordinal);
        Assert.Equal("2,212", unconfirmed.ValueOf("Away.ThicknessMm"));
        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (away.Status, scrapped.Status));
        Assert.Contains("Shim box, E1", page.MainText, StringComparison.Ordinal);
        Assert.Equal(ShimEnd.Scrapped, (await app.Shim(id)).Gone);
        var gone = await pages.Open(address);
        Assert.Null(gone.Html.QuerySelector("#scrap"));
        Assert.Contains("dished", gone.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Policy_and_series_are_the_managers()
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        var technician = await TestPages.SignedIn(app, Roles.Technician);

        var set = await manager.Send(Box, new() { ["Policy.UsedShims"] = "OwnMachineOnly" }, "#policy");
        var series = await manager.Send(Box, new()
        {
            ["Series.PartCode"] = "P-10", ["Series.Name"] = "Shim 10 mm", ["Series.Seat"] = "ShimUnderBucket", ["Series.DiameterMm"] = "10",
            ["Series.SmallestMm"] = "1,70", ["Series.LargestMm"] = "2,90", ["Series.StepMm"] = "0,01", ["Series.Box"] = "Shim box 10",
            ["Series.Columns"] = "12", ["Series.Source"] = "made up for this test",
        }, "#series");

        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (set.Status, series.Status));
        var page = await technician.Open(Box);
        Assert.Contains("own machine only", page.MainText, StringComparison.Ordinal);
        Assert.Null(page.Html.QuerySelector("#policy"));
        Assert.Contains("121 compartments", (await technician.Open("/stores/shims?box=P-10")).Html.QuerySelector("svg.box-map")!.GetAttribute("aria-label"), StringComparison.Ordinal);
        await app.SetPolicy("yes");
    }

    [Fact]
    public async Task Ids_are_unique_and_every_field_has_its_label()
    {
        var id = Assert.Single(await app.Receive(2.223m, 1));
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        foreach (var address in new[] { $"{Box}&find=2.2", $"/stores/shims/count?box={TestEngines.ShimPart}", $"/stores/shims/{id}", "/stores/stocking" })
        {
            var page = await pages.Open(address);
            Assert.Equal(HttpStatusCode.OK, page.Status);
            var ids = page.Html.QuerySelectorAll("[id]").Select(e => e.Id).ToList();
            Assert.Equal(ids.Count, ids.Distinct().Count());
            Assert.All(page.Html.QuerySelectorAll("main input:not([type=hidden]), main select"), field => Assert.True(
                field.HasAttribute("aria-label") || page.Html.QuerySelector($"label[for='{field.Id}']") is not null, $"{address}: {field.OuterHtml}"));
        }
    }
}
