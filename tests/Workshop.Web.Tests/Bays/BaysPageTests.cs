using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Bays;

public sealed class BaysPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_floor_says_what_stands_where_who_works_on_it_what_its_tag_says_and_what_is_next()
    {
        var technician = await app.As(Roles.Technician);
        var (bay, stand) = (await app.AddResource(ResourceKind.Bay, "Bay 10"), await app.AddResource(ResourceKind.ParkingPlace, "Stand 71"));
        var (here, soaks, coming) = (await app.CheckedIn(), await app.CheckedIn(), await app.Booked());
        await Takes(here, bay, VisitPhase.Work, 0, 4);
        await Takes(coming, bay, VisitPhase.Work, 5, 7);
        await Takes(soaks, stand, VisitPhase.ColdSoak, 0, 20);
        (await technician.PostAsJsonAsync($"{here.Api}/phases", new { phase = "work" }, Ct)).EnsureSuccessStatusCode();
        (await technician.PostAsJsonAsync($"{soaks.Api}/moves", new { resourceId = stand, tag = PhaseRules.NoOilTag }, Ct)).EnsureSuccessStatusCode();

        var floor = await (await technician.GetAsync(new Uri("/api/v1/bays", UriKind.Relative), Ct)).Json();
        var page = await (await TestPages.SignedIn(app, Roles.Advisor)).Open("/bays");

        var inBay = Place(floor, "Bay 10");
        Assert.Equal((here.Number, "work", "TN"), (inBay.GetProperty("stands").GetProperty("jobCardNumber").GetInt32(),
            inBay.GetProperty("stands").GetProperty("phase").GetString(), inBay.GetProperty("stands").GetProperty("technician").GetString()));
        Assert.Equal(coming.Number, inBay.GetProperty("next").GetProperty("jobCardNumber").GetInt32());
        Assert.Equal(PhaseRules.NoOilTag, Place(floor, "Stand 71").GetProperty("stands").GetProperty("tag").GetString());
        var tn = floor.GetProperty("technicians").EnumerateArray().Single(t => t.GetProperty("name").GetString() == "TN");
        Assert.Equal("Bay 10", tn.GetProperty("at").GetProperty("place").GetString());

        Assert.Equal(HttpStatusCode.OK, page.Status);
        var row = page.Html.QuerySelectorAll("tbody tr").Single(r => r.QuerySelector("th")!.TextContent.Trim() == "Bay 10").TextContent;
        Assert.Contains("Work since 09:00", row, StringComparison.Ordinal);
        Assert.Contains("next 14:00 VISIT", row, StringComparison.Ordinal);
        Assert.Contains(PhaseRules.NoOilTag, page.Html.QuerySelector("svg.floor")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector("noscript meta[http-equiv=refresh]") ?? page.Html.QuerySelector("head noscript"));
    }

    [Fact]
    public async Task The_part_that_is_fetched_anew_is_the_floor_alone()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open("/bays");
        var address = page.Html.QuerySelector("[data-live]")!.GetAttribute("data-part")!;
        var part = await pages.Open(address);

        Assert.Equal("/bays/live", page.Html.QuerySelector("[data-live]")!.GetAttribute("data-live"));
        Assert.NotNull(part.Html.QuerySelector("svg.floor"));
        Assert.Null(part.Html.QuerySelector("nav"));
    }

    [Fact]
    public async Task An_absence_that_holds_now_is_said_of_its_place_and_its_technician()
    {
        var technician = await app.As(Roles.Technician);
        var bay = await app.AddResource(ResourceKind.Bay, "Bay 20");
        var away = await app.AddResource(ResourceKind.Technician, "AW");
        await app.Look(db =>
        {
            db.Absences.AddRange(Absent(bay, AbsenceReason.Repair), Absent(away, AbsenceReason.Leave));
            return db.SaveChangesAsync(Ct);
        });

        var floor = await (await technician.GetAsync(new Uri("/api/v1/bays", UriKind.Relative), Ct)).Json();

        Assert.Equal("repair", Place(floor, "Bay 20").GetProperty("away").GetProperty("reason").GetString());
        Assert.Equal("leave", floor.GetProperty("technicians").EnumerateArray().Single(t => t.GetProperty("name").GetString() == "AW")
            .GetProperty("away").GetProperty("reason").GetString());
    }

    private static JsonElement Place(JsonElement floor, string name) =>
        floor.GetProperty("places").EnumerateArray().Single(p => p.GetProperty("name").GetString() == name);

    private Absence Absent(Guid resource, AbsenceReason reason) => new()
    {
        Id = NewId.At(app.Clock), ResourceId = resource, Reason = reason, EnteredBy = TestWorkshop.Manager, EnteredAt = app.Clock.Now,
        Span = new Interval(app.Clock.Now - Duration.FromDays(1), app.Clock.Now + Duration.FromDays(1)),
    };

    private Task<int> Takes(TestVisit visit, Guid resource, VisitPhase phase, int from, int until) => app.Look(db =>
    {
        db.Occupancies.Add(new Occupancy
        {
            Id = NewId.At(app.Clock), JobCardNumber = visit.Number, Phase = phase, ResourceId = resource,
            Span = new Interval(app.Clock.Now + Duration.FromHours(from), app.Clock.Now + Duration.FromHours(until)),
        });
        return db.SaveChangesAsync(Ct);
    });
}
