using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Drift;

public sealed class LeaveOutVisitTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string FormOfLast = "article.visit form";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_visit_is_left_out_with_a_reason_and_taken_in_again_and_all_of_it_is_shown()
    {
        var visit = await WarmAtTheLast();
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        var address = $"/drift/{visit.MotorcycleId}";

        var before = await Drift(visit);
        var left = await manager.Send(address, new() { ["Input.Reason"] = "engine was warm" }, FormOfLast);
        Assert.Equal((HttpStatusCode.Redirect, $"{address}#visits"), (left.Status, left.Location));
        var page = await manager.Open(address);

        Assert.True(await Drift(visit) > before + 0.0005m);
        var shown = page.Html.QuerySelector("article.visit")!.TextContent;
        Assert.Contains(": left out", shown, StringComparison.Ordinal);
        Assert.Matches(@"Left out by Mana Ger, \d{4}-\d\d-\d\d \d\d:\d\d: engine was warm", shown);
        Assert.NotNull(page.Html.QuerySelector("section.lobe svg path.kept-out"));
        Assert.Contains("the visit was left out", page.MainText, StringComparison.Ordinal);
        Assert.True(await app.Look(db => db.DriftRefits.AnyAsync(r => r.EngineModelId == TestWorkshop.EngineModel && r.WantedSince != null, Ct)));

        app.Clock.Now += Duration.FromMinutes(1);
        await manager.Send(address, new() { ["Input.Reason"] = "it was cold after all" }, FormOfLast);
        var again = (await manager.Open(address)).Html.QuerySelector("article.visit")!;

        Assert.Equal(before, await Drift(visit));
        Assert.DoesNotContain(": left out", again.QuerySelector("h3")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["Taken in again", "Left out"], again.QuerySelectorAll("li").Select(l => l.TextContent.Split(" by ")[0].Trim()));
    }

    [Fact]
    public async Task Without_a_reason_the_form_comes_back_open()
    {
        var visit = await WarmAtTheLast();
        var manager = await TestPages.SignedIn(app, Roles.Manager);

        var page = await manager.Send($"/drift/{visit.MotorcycleId}?view=shims-out", new() { ["Input.Reason"] = " " }, FormOfLast);

        Assert.Equal(HttpStatusCode.BadRequest, page.Status);
        Assert.StartsWith("Why is empty: give why", Assert.Single(page.Faults), StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector("article.visit details[open] #Input_Reason"));
        Assert.Equal("#Input_Reason", page.Html.QuerySelector(".faults a")!.GetAttribute("href"));
        Assert.Equal("Shims' part taken out", page.Html.QuerySelector("nav.switch [aria-current]")!.TextContent);
    }

    [Theory]
    [InlineData(Roles.Technician)]
    [InlineData(Roles.Advisor)]
    public async Task Others_see_the_visits_and_no_form(string role)
    {
        var visit = await WarmAtTheLast();
        var pages = await TestPages.SignedIn(app, role);

        var page = await pages.Open($"/drift/{visit.MotorcycleId}");
        var form = (await pages.Open("/due")).Html.QuerySelector("form.who")!;
        var fields = form.QuerySelectorAll("input").ToDictionary(i => i.GetAttribute("name")!, i => i.GetAttribute("value") ?? "");
        fields["Input.Reason"] = "no";
        using var content = new FormUrlEncodedContent(fields);
        var sent = await pages.Client.PostAsync(new Uri($"/drift/{visit.MotorcycleId}?handler=LeaveOut", UriKind.Relative), content, Ct);
        var api = await (await app.As(role)).PostAsJsonAsync(
            $"/api/v1/motorcycles/{visit.MotorcycleId}/drift/left-out-visits", new { readingId = TestWorkshop.Bay1, leftOut = true, reason = "no" }, Ct);

        Assert.Equal(3, page.Html.QuerySelectorAll("article.visit").Length);
        Assert.Empty(page.Html.QuerySelectorAll("main form"));
        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.Forbidden), (sent.StatusCode, api.StatusCode));
    }

    [Fact]
    public async Task A_reading_of_another_motorcycle_is_not_found()
    {
        var (one, other) = (await WarmAtTheLast(), await WarmAtTheLast());
        var reading = await app.Look(db => db.ClearanceReadings.Where(r => r.EngineId == other.EngineId).Select(r => r.Id).FirstAsync(Ct));

        var answer = await (await app.As(Roles.Manager)).PostAsJsonAsync(
            $"/api/v1/motorcycles/{one.MotorcycleId}/drift/left-out-visits", new { readingId = reading, leftOut = true, reason = "warm" }, Ct);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    private async Task<TestVisit> WarmAtTheLast()
    {
        await app.Knows(TestWorkshop.EngineModel);
        return await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.26m, 0.27m), (0.20m, 0.21m));
    }

    private async Task<decimal> Drift(TestVisit visit)
    {
        var answer = await (await app.As(Roles.Manager)).GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{visit.MotorcycleId}/drift", Ct);
        return answer.GetProperty("lobes").EnumerateArray().Single(l => l.GetProperty("valve").GetString() == "1-exhaust-1")
            .GetProperty("forecast").GetProperty("driftMmPer10000Km").GetDecimal();
    }
}
