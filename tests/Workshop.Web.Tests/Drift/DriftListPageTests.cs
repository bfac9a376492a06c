using System.Net;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Drift;

/// <summary>What the manager types on the Clearance drift page, and what is offered to whom.</summary>
public sealed class DriftListPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_filter_keeps_what_was_chosen_and_goes_on_into_the_file()
    {
        await app.CheckedIn();
        var manager = await TestPages.SignedIn(app, Roles.Manager);

        var page = await manager.Open($"/drift?within=18&engineModelId={TestWorkshop.EngineModel}&side=exhaust");

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Equal(("18", TestWorkshop.EngineModel.ToString(), "exhaust"), (page.ValueOf("within"), page.ValueOf("engineModelId"), page.ValueOf("side")));
        var file = page.Html.QuerySelectorAll("main a").Select(a => a.GetAttribute("href")).Single(h => h!.Contains("handler=Csv", StringComparison.Ordinal));
        Assert.Contains($"within=18&engineModelId={TestWorkshop.EngineModel}&side=exhaust", file, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("within=0", "within", "0", "Within months is 0: a whole number from 1 to 240 is allowed.")]
    [InlineData("within=soon", "within", "soon", "Within months is \"soon\": a whole number is allowed.")]
    [InlineData("side=left&within=6", "within", "6", "Valves is \"left\": one of intake, exhaust is allowed.")]
    [InlineData("engineModelId=none&within=6", "within", "6", "Engine model is \"none\": an id such as 018f3c2e-7b1a-7c3d-9e4f-5a6b7c8d9e0f, as the lists give it, is allowed.")]
    public async Task A_filter_that_cannot_be_is_said_beside_what_was_typed(string query, string field, string typed, string fault)
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);

        foreach (var address in new[] { $"/drift?{query}", $"/drift?handler=Csv&{query}" })
        {
            var page = await manager.Open(address);

            Assert.Equal(HttpStatusCode.BadRequest, page.Status);
            Assert.Equal([fault], page.Faults);
            Assert.Equal(typed, page.ValueOf(field));
            Assert.NotNull(page.Html.QuerySelector(page.Html.QuerySelector(".faults a")!.GetAttribute("href")!));
        }
    }

    [Fact]
    public async Task The_threshold_is_set_and_all_models_are_asked_for()
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);

        var set = await manager.Send("/drift", new() { ["Threshold.ThresholdPercent"] = "7,5" });

        Assert.Equal((HttpStatusCode.Redirect, "/drift"), (set.Status, set.Location));
        Assert.Equal(0.075, await app.Look(db => db.WorkshopProfiles.Select(p => p.DriftThreshold).SingleAsync(Ct)), 1e-12);
        Assert.NotNull(await app.Look(db => db.DriftRefits.Where(r => r.EngineModelId == TestWorkshop.EngineModel).Select(r => r.WantedSince).SingleAsync(Ct)));
        var page = await manager.Open("/drift");
        Assert.Equal("7.5", page.ValueOf("Threshold.ThresholdPercent"));
        Assert.Contains("An engine is to be checked at 7.5 %", page.MainText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0", "Threshold is 0 %: 0.1 to 50 % with at most 1 decimals is allowed.")]
    [InlineData("51", "Threshold is 51 %: 0.1 to 50 % with at most 1 decimals is allowed.")]
    [InlineData("", "Threshold is empty: give the threshold in per cent.")]
    public async Task A_threshold_that_cannot_be_comes_back_with_what_was_typed(string typed, string fault)
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);

        var page = await manager.Send("/drift", new() { ["Threshold.ThresholdPercent"] = typed });

        Assert.Equal(HttpStatusCode.BadRequest, page.Status);
        Assert.Equal([fault], page.Faults);
        Assert.Equal(typed, page.ValueOf("Threshold.ThresholdPercent"));
        Assert.NotNull(page.Html.QuerySelector(page.Html.QuerySelector(".faults a")!.GetAttribute("href")!));
    }

    [Theory]
    [InlineData(Roles.Advisor)]
    [InlineData(Roles.Technician)]
    [InlineData(Roles.Manager)]
    public async Task Everybody_is_offered_the_screens_that_they_may_see_and_no_other(string role)
    {
        var pages = await TestPages.SignedIn(app, role);

        var offered = (await pages.Open("/due")).Html.QuerySelectorAll("header nav a").Select(a => a.GetAttribute("href")!).ToList();

        Assert.Equal(role == Roles.Manager, offered.Contains("/drift"));
        foreach (var address in offered)
        {
            Assert.Equal(HttpStatusCode.OK, (await pages.Open(address)).Status);
        }
    }

    [Fact]
    public async Task What_a_spreadsheet_would_compute_stays_text_in_the_file()
    {
        var visit = await app.CheckedIn(60_000);
        await app.Look(async db =>
        {
            (await db.Motorcycles.SingleAsync(m => m.Id == visit.MotorcycleId, Ct)).Maker = "=1+1";
            return await db.SaveChangesAsync(Ct);
        });
        var manager = await TestPages.SignedIn(app, Roles.Manager);

        var file = CsvText.Read(await manager.Client.GetStringAsync(new Uri("/drift?handler=Csv", UriKind.Relative), Ct));

        Assert.Contains(file, l => l["motorcycle"] == "'=1+1 Twin 600");
    }

    [Fact]
    public async Task The_page_asks_the_database_no_more_for_many_motorcycles_than_for_one()
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        await app.CheckedIn();
        var few = await Asked(manager);
        for (var i = 0; i < 5; i++)
        {
            await app.CheckedIn();
        }

        Assert.Equal(few, await Asked(manager));
        Assert.InRange(few, 1, 14);
    }

    private async Task<int> Asked(TestPages pages)
    {
        using var counted = new CountedCommands(app);
        Assert.Equal(HttpStatusCode.OK, (await pages.Open("/drift")).Status);
        return counted.Count;
    }
}
