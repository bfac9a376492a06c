using System.Net;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.SignIn;

public sealed class SignInPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    [Fact]
    public async Task The_page_leads_on_to_where_the_person_wanted_to_go()
    {
        var pages = new TestPages(app.Anonymous());

        var answer = await pages.Send("/sign-in?returnTo=%2Fmotorcycles", new()
        {
            ["Input.UserName"] = Roles.Advisor, ["Input.Password"] = TestWorkshop.Password,
        });

        Assert.Equal("/motorcycles", answer.Location);
        Assert.Contains("Registration", (await pages.Open("/motorcycles")).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_form_comes_back_as_it_was_typed_and_its_faults_lead_to_the_fields()
    {
        var pages = await TestPages.SignedIn(app, Roles.Advisor);

        var answer = await pages.Send("/motorcycles/new", new()
        {
            ["Input.Registration"] = "WK 900", ["Input.Maker"] = "Testwerk", ["Input.ModelYear"] = "21", ["Input.OwnerName"] = "Olga Owner",
        });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains(answer.Faults, f => f.StartsWith("Model year is 21", StringComparison.Ordinal));
        Assert.Equal("WK 900", answer.ValueOf("Input.Registration"));
        Assert.Equal("21", answer.ValueOf("Input.ModelYear"));
        Assert.All(answer.Html.QuerySelectorAll(".faults a"), link =>
            Assert.NotNull(answer.Html.GetElementById(link.GetAttribute("href")![1..])));
    }

    [Fact]
    public async Task A_visit_of_the_tests_stands_as_the_service_would_write_it()
    {
        var visit = await app.CheckedIn(odometerKm: 31_000);
        var again = await app.CheckedInAgain(visit, odometerKm: 31_000);

        Assert.NotEqual(visit.Number, again.Number);
        Assert.Equal(JobCardState.CheckedIn, await app.Look(db =>
            db.JobCards.Where(c => c.Number == again.Number).Select(c => c.State).SingleAsync()));
        Assert.Equal(31_000m, await app.Look(async db =>
            (await db.OdometerReadings.SingleAsync(r => r.Id == visit.OdometerReadingId)).Distance.Kilometres));
    }
}
