using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Xunit;
using static Workshop.Web.Tests.Clearances.ReadingBodies;

namespace Workshop.Web.Tests.Shims;

public sealed class ShimsPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Exhaust = "article#valve-1-exhaust-1 form";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_proposal_is_fitted_with_one_tap()
    {
        var visit = await Measured();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/shims";
        var page = await pages.Open(address);

        var answer = await pages.Send(page, address, [], Exhaust);

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        var strip = page.Html.QuerySelector("article#valve-1-exhaust-1 svg.strip")!;
        Assert.Equal(2, strip.QuerySelectorAll("path.bracket").Length);
        Assert.Contains("with the shim advised about 0.245 mm", strip.GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(ShimThickness.FromMillimetres(1.95m), await app.Look(db => db.ShimObservations
            .Where(s => s.JobCardNumber == visit.Number && s.Stage == Stage.AsLeft).Select(s => s.Thickness).SingleAsync(Ct)));
        Assert.Equal([MovementKind.CameOut, MovementKind.Issued], (await app.Look(db => db.StockMovements
            .Where(m => m.JobCardNumber == visit.Number && m.Thickness != null).Select(m => m.Kind).ToListAsync(Ct))).OrderDescending());
        var after = await pages.Open(address);
        Assert.Contains("measure as left", after.Html.QuerySelector("#name-1-exhaust-1")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_shim_that_nobody_knows_is_measured_on_the_page_of_the_plan_which_then_says_what_goes_in()
    {
        var visit = await app.CheckedIn();
        (await (await app.As(Roles.Technician)).PostAsJsonAsync($"{visit.Api}/readings", Send(Found("1-exhaust-1", 0.15, 0.16)), Ct)).EnsureSuccessStatusCode();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/shims";
        const string form = "article#valve-1-exhaust-1 form[aria-label^='Shim that came out']";

        var refused = await pages.Send(address, new() { ["Out.Shims[0].ThicknessMm"] = "21,13" }, form);
        Assert.Equal("21,13", refused.Html.QuerySelector($"{form} [name='Out.Shims[0].ThicknessMm']")!.GetAttribute("value"));
        Assert.Single(refused.Faults);

        var sent = await pages.Send(address, new() { ["Out.Shims[0].ThicknessMm"] = "2,113", ["Out.MicrometerId"] = TestWorkshop.Micrometer.ToString() }, form);

        Assert.Equal($"{address}#valve-1-exhaust-1", sent.Location);
        Assert.Contains("fit", (await pages.Open(address)).Html.QuerySelector("#name-1-exhaust-1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(ShimThickness.FromMillimetres(2.113m), await app.Look(db => db.ShimObservations
            .Where(o => o.JobCardNumber == visit.Number && o.Stage == Stage.AsFound).Select(o => o.Thickness).SingleAsync(Ct)));
    }

    [Fact]
    public async Task A_thickness_that_the_box_lacks_comes_back_in_its_own_form_as_it_was_typed()
    {
        var visit = await Measured();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/shims";

        var answer = await pages.Send(address, new() { ["Input.Shims[0].ThicknessMm"] = "1,94", ["Input.Shims[0].OldIntoBox"] = "true" }, Exhaust);

        Assert.Equal(HttpStatusCode.Conflict, answer.Status);
        Assert.Contains("the box holds none", Assert.Single(answer.Faults), StringComparison.Ordinal);
        var target = answer.Html.GetElementById(answer.Html.QuerySelector(".faults a")!.GetAttribute("href")![1..]);
        Assert.Equal("1,94", target?.GetAttribute("value"));
        Assert.NotNull(answer.Html.QuerySelector(Exhaust)!.QuerySelector($"#{target!.Id}"));
        Assert.True(answer.Html.QuerySelector($"{Exhaust} [name='Input.Shims[0].OldIntoBox']")!.HasAttribute("checked"));
        Assert.False(answer.Html.QuerySelector("article#valve-2-exhaust-1 [name='Input.Shims[0].OldIntoBox']")!.HasAttribute("checked"));
    }

    [Fact]
    public async Task An_empty_thickness_is_not_taken_as_not_measured()
    {
        var visit = await Measured();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/shims";

        var empty = await pages.Send(address, new() { ["Input.Shims[0].ThicknessMm"] = "", ["Input.Shims[0].FromBox"] = null }, Exhaust);
        var said = await pages.Send(empty, address, new() { ["notMeasured"] = "true" }, Exhaust);

        Assert.Contains("Shim fitted (shims[0].thicknessMm) is empty", Assert.Single(empty.Faults), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, said.Status);
        Assert.Null(await app.Look(db => db.ShimObservations
            .Where(s => s.JobCardNumber == visit.Number && s.Stage == Stage.AsLeft).Select(s => s.Thickness).SingleAsync(Ct)));
    }

    [Fact]
    public async Task What_no_shim_can_mend_says_so_as_a_caution()
    {
        var visit = await Measured(shim: 1.25m);
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"{visit.Pages}/shims");

        Assert.Contains("Do not grind or stack shims", page.Html.QuerySelector("article#valve-1-exhaust-1 .caution")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ids_are_unique_and_every_field_has_its_label()
    {
        var visit = await Measured();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        foreach (var page in new[]
        {
            await pages.Open($"{visit.Pages}/shims?all=true"),
            await pages.Send($"{visit.Pages}/shims", new() { ["Input.Shims[0].ThicknessMm"] = "nine" }, Exhaust),
        })
        {
            var ids = page.Html.QuerySelectorAll("[id]").Select(e => e.Id).ToList();
            Assert.Equal(ids.Count, ids.Distinct().Count());
            Assert.All(page.Html.QuerySelectorAll("main input:not([type=hidden]), main select"), field =>
                Assert.NotNull(page.Html.QuerySelector($"label[for='{field.Id}']")));
        }
    }

    private async Task<TestVisit> Measured(decimal shim = 2.1m)
    {
        var visit = await app.CheckedIn();
        var answer = await (await app.As(Roles.Technician)).PostAsJsonAsync(
            $"{visit.Api}/readings",
            Send(Found("1-exhaust-1", 0.15, 0.16)).With("shims", new[] { new { valve = "1-exhaust-1", stage = "asFound", thicknessMm = shim } }), Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return visit;
    }
}
