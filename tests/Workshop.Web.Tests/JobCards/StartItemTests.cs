using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

public sealed class StartItemTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_possible_adjustment_is_begun_and_takes_its_tool_until_the_end_of_the_visit_or_says_who_has_it()
    {
        var technician = await app.As(Roles.Technician);
        var items = new Dictionary<string, Likelihood>
        {
            [TestEngines.ValveCheck] = Likelihood.Certain, [TestEngines.Adjustment] = Likelihood.Possible,
        };
        var visit = await app.CheckedIn(items: items);
        var later = await app.CheckedIn(items: items);

        var begun = await Start(technician, visit, TestEngines.Adjustment);
        var again = await Start(technician, visit, TestEngines.Adjustment);
        var without = await Start(technician, later, TestEngines.Adjustment);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.OK), (begun.StatusCode, again.StatusCode, without.StatusCode));
        Assert.Equal(0, (await begun.Json()).GetProperty("warnings").GetArrayLength());
        Assert.Equal(new Interval(app.Clock.Now, app.Clock.Now + Duration.FromHours(4)), await app.Look(db => db.Occupancies
            .Where(o => o.JobCardNumber == visit.Number && o.ResourceId == TestWorkshop.AlignmentJig).Select(o => o.Span).SingleAsync(Ct)));
        Assert.StartsWith($"Cam alignment jig is taken by job card {visit.Number} (VISIT",
            (await without.Json()).GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
        var card = await (await technician.GetAsync(new Uri(visit.Api, UriKind.Relative), Ct)).Json();
        Assert.All(card.GetProperty("items").EnumerateArray(), i => Assert.True(i.GetProperty("underWay").GetBoolean()));
        Assert.Equal((250, 0), (card.GetProperty("bookedMinutes").GetInt32(), card.GetProperty("possibleMinutes").GetInt32()));
    }

    [Fact]
    public async Task An_item_found_necessary_comes_onto_the_card_with_its_kit()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: new Dictionary<string, Likelihood> { [TestEngines.ValveCheck] = Likelihood.Certain });

        var answer = await Start(technician, visit, TestEngines.OilService);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(Likelihood.Certain, await app.Look(db => db.JobCardItems
            .Where(i => i.JobCardNumber == visit.Number && i.ServiceItemCode == TestEngines.OilService).Select(i => i.Likelihood).SingleAsync(Ct)));
        Assert.True(await app.Look(db => (
            from m in db.StockMovements join p in db.Parts on m.PartId equals p.Id
            where m.JobCardNumber == visit.Number && p.Code == TestEngines.OilFilter select m).AnyAsync(Ct)));
    }

    [Fact]
    public async Task What_cannot_be_begun_is_refused_in_words()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain });
        var booked = await app.Booked();

        var certain = await Start(technician, visit, TestEngines.OilService);
        var alone = await Start(technician, visit, TestEngines.Adjustment);
        var unknown = await Start(technician, visit, "wheels");
        var notHere = await Start(technician, booked, TestEngines.Adjustment);

        Assert.Contains("is a certain item", await certain.Sentence(), StringComparison.Ordinal);
        Assert.Contains("begin \"valve-clearance-check\" first", await alone.Sentence(), StringComparison.Ordinal);
        Assert.Contains("code is \"wheels\", which the engine model lacks", await unknown.Sentence(), StringComparison.Ordinal);
        Assert.Contains("not checked in", await notHere.Sentence(), StringComparison.Ordinal);
        Assert.Equal(
            (HttpStatusCode.Conflict, HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity, HttpStatusCode.Conflict),
            (certain.StatusCode, alone.StatusCode, unknown.StatusCode, notHere.StatusCode));
    }

    [Fact]
    public async Task A_card_carries_its_version_as_an_etag_that_changes_with_it()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.Booked();

        var before = await advisor.GetAsync(new Uri(visit.Api, UriKind.Relative), Ct);
        await app.CheckIn(visit, 500);
        var after = await advisor.GetAsync(new Uri(visit.Api, UriKind.Relative), Ct);

        Assert.Matches("^\"[0-9]+\"$", before.Headers.ETag?.Tag);
        Assert.NotEqual(before.Headers.ETag, after.Headers.ETag);
    }

    private static Task<HttpResponseMessage> Start(HttpClient client, TestVisit visit, string code) =>
        client.PostAsync(new Uri($"{visit.Api}/items/{code}/start", UriKind.Relative), null, Ct);
}
