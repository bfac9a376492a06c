using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Xunit;

namespace Workshop.Web.Tests.Drift;

/// <summary>The page of how an engine model drifts, and the button that has it worked out anew.</summary>
public sealed class FitPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly string Address = $"/engine-models/{TestWorkshop.EngineModel}/drift";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_refit_is_asked_for_seen_to_and_kept_in_the_history()
    {
        await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m), (0.25m, 0.26m));
        await app.ReadOverYears(TestEngines.Intake(1), (0.17m, 0.18m), (0.16m, 0.17m), (0.15m, 0.16m));
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        await app.Refit();

        var asked = await manager.Send(Address, [], "main form[method=post]");
        Assert.Equal((HttpStatusCode.Redirect, $"{Address}#refit"), (asked.Status, asked.Location));
        var waiting = await manager.Open(Address);
        Assert.Equal("Asked for; it begins when no more readings come.", waiting.Html.QuerySelector("p[role=status]:not(.done)")?.TextContent);
        Assert.Contains("Asked for", (await manager.Open("/drift")).MainText, StringComparison.Ordinal);
        Assert.True(await app.Refit() >= 1);

        var page = await manager.Open(Address);
        Assert.Contains("Up to date.", page.MainText, StringComparison.Ordinal);
        Assert.Contains("Log-likelihood", page.MainText, StringComparison.Ordinal);
        var answer = await (await app.As(Roles.Manager)).GetFromJsonAsync<JsonElement>($"/api/v1/engine-models/{TestWorkshop.EngineModel}/drift-fit", Ct);
        var history = answer.GetProperty("history").EnumerateArray().ToList();
        Assert.Equal(answer.GetProperty("version").GetInt32(), history[0].GetProperty("version").GetInt32());
        Assert.Equal(history.Count, page.Html.QuerySelector("#history-caption")!.ParentElement!.QuerySelectorAll("tbody tr").Length);
    }

    [Fact]
    public async Task The_page_says_how_far_a_refit_is()
    {
        Assert.Equal("Never asked for.", FitWords.Progress(null));
        var begun = app.Clock.Now;
        var under = new GetDriftFit.Progress(false, true, begun, begun, null, 400, 0);
        Assert.Equal("Being worked out.", FitWords.Progress(under));
        Assert.Equal("Forecasts are being written: 200 of 400 engines.", FitWords.Progress(under with { EnginesWritten = 200 }));
        await app.Knows(TestWorkshop.EngineModel);
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        await app.Look(async db =>
        {
            await Refits.Request(db, [TestWorkshop.EngineModel], app.Clock, Ct);
            var refit = db.DriftRefits.Single(r => r.EngineModelId == TestWorkshop.EngineModel);
            (refit.StartedAt, refit.FinishedAt, refit.FitVersion, refit.Engines, refit.EnginesWritten) = (begun, null, 1, 400, 200);
            return await db.SaveChangesAsync(Ct);
        });

        var page = await manager.Open(Address);

        Assert.Contains("200 of 400 engines", page.Html.QuerySelector("p[role=status]")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector($"a[href='{Address}#refit']"));
    }

    [Fact]
    public async Task Figures_stand_beside_the_drawing_of_each_side_and_in_plain_words()
    {
        await app.Knows(TestWorkshop.EngineModel);
        await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m), (0.25m, 0.26m));
        var manager = await TestPages.SignedIn(app, Roles.Manager);

        var page = await manager.Open(Address);

        Assert.Equal(2, page.Html.QuerySelectorAll("svg.slopes").Length);
        var exhaust = page.Html.QuerySelector("section[aria-labelledby='side-Exhaust']")!;
        Assert.Contains("fitted mean -0.0100", exhaust.QuerySelector("svg")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("1 valves", exhaust.QuerySelector("svg desc")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("1", Assert.Single(exhaust.QuerySelectorAll("tbody tr")).QuerySelectorAll("td")[2].TextContent);
        Assert.Contains("Exhaust valves close up by 0.0100 mm per 10,000 km on average; nine of ten lie between -0.0137 and -0.0063.", page.MainText, StringComparison.Ordinal);
        Assert.Contains("-0.0100 ± 0.0005", page.MainText, StringComparison.Ordinal);
        Assert.Contains("Too few known changes of shim to tell the lever ratio", page.MainText, StringComparison.Ordinal);
        Assert.Contains("Rests on its own 300 readings of 100 valves in 25 engines.", page.MainText, StringComparison.Ordinal);
        Assert.Empty(page.Html.QuerySelectorAll("[style], style, script:not([src])"));
    }

    [Fact]
    public async Task The_page_is_offered_to_the_manager_on_the_engine_models_page_and_to_nobody_else()
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        var technician = await TestPages.SignedIn(app, Roles.Technician);
        var specification = $"/engine-models/{TestWorkshop.EngineModel}";

        Assert.NotNull((await manager.Open(specification)).Html.QuerySelector($"a[href='{Address}']"));
        Assert.Null((await technician.Open(specification)).Html.QuerySelector($"a[href='{Address}']"));
        Assert.Equal(HttpStatusCode.Forbidden, (await technician.Open(Address)).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await manager.Open($"/engine-models/{TestWorkshop.Bay1}/drift")).Status);
    }
}
