using System.Net;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.EngineModels;

public sealed class EngineModelPagesTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static string Known => $"/engine-models/{TestWorkshop.EngineModel}";

    [Fact]
    public async Task The_list_leads_to_the_model()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var list = await pages.Open("/engine-models");

        Assert.Equal("Testwerk Twin 600", list.Html.QuerySelector($"a[href='{Known}']")?.TextContent);
        Assert.Contains("invented", list.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_model_shows_limits_torques_and_intervals_and_says_that_nobody_checked_them()
    {
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open(Known);

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("Invented.", page.MainText, StringComparison.Ordinal);
        Assert.Contains("nobody has checked this against the maker's document", page.MainText, StringComparison.Ordinal);
        Assert.Contains("intake, lobe 2", page.MainText, StringComparison.Ordinal);
        Assert.Contains("24 N.m", page.MainText, StringComparison.Ordinal);

        // 24 N.m / 1.3558179483314004 N.m per lbf.ft (NIST SP 811).
        Assert.Contains("17.7 lbf.ft", page.MainText, StringComparison.Ordinal);
        Assert.Contains("every 10,000 km or 12 months, first at 1,000 km or 6 months", page.MainText, StringComparison.Ordinal);
        Assert.Contains("3200 ml Engine oil 10W-40", page.MainText, StringComparison.Ordinal);
        Assert.Equal("Valve clearance adjustment", page.Html.QuerySelector($"a[href='#item-{TestEngines.Adjustment}']")?.TextContent);
    }

    [Fact]
    public async Task A_model_that_does_not_exist_ends_in_a_page_that_says_so()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open($"/engine-models/{Guid.Empty}")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await pages.Open($"{Known}?version=9")).Status);
    }
}
