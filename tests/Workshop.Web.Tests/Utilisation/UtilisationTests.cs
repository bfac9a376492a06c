using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Intervals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Utilisation;

public sealed class UtilisationTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Hours_held_until_the_sign_off_and_hours_sold_stand_beside_what_was_available()
    {
        await SignedOffVisit();
        app.Clock.Now = Instant.FromUtc(2026, 3, 2, 20, 0);
        var manager = await app.As(Roles.Manager);

        var used = await (await manager.GetAsync("/api/v1/utilisation?from=2026-03-02&until=2026-03-03", Ct)).Json();

        // Planned from 9:00 to 12:00 by the workshop's clock, signed off at 11:00; open and at work from 8:00 to 17:00.
        var bay = Of(used.GetProperty("bays"), "Bay 1");
        Assert.Equal((9.0, 2.0, 7.0, 0.5), (Hours(bay, "available"), Hours(bay, "held"), Hours(bay, "idle"), Hours(bay, "sold")));
        var technician = Of(used.GetProperty("technicians"), "TN");
        Assert.Equal((9.0, 2.0, 7.0, 0.5), (Hours(technician, "available"), Hours(technician, "held"), Hours(technician, "idle"), Hours(technician, "sold")));
        Assert.Equal(0, Hours(Of(used.GetProperty("bays"), "Bay 2"), "held"));
        var needed = used.GetProperty("baysNeeded");
        Assert.Equal((9.0, 1, 2 / 9.0), (needed.GetProperty("openHours").GetDouble(), needed.GetProperty("holdings").GetInt32(), needed.GetProperty("load").GetDouble()));
        Assert.Equal(1, needed.GetProperty("enoughBays").GetInt32() - 1);
        Assert.Equal("2026-03-02T20:00:00Z", used.GetProperty("countedUntil").GetString());
    }

    [Fact]
    public async Task The_page_draws_it_and_says_how_it_is_counted()
    {
        await SignedOffVisit();
        app.Clock.Now = Instant.FromUtc(2026, 3, 2, 20, 0);
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var page = await pages.Open("/utilisation?from=2026-03-02&until=2026-03-02");

        Assert.NotNull(page.Html.QuerySelector("svg.bays-chart[aria-label]"));
        Assert.Contains("How this is counted", page.MainText, StringComparison.Ordinal);
        Assert.Contains("rough guide", page.MainText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("from=2026-03-05&until=2026-03-02", HttpStatusCode.UnprocessableEntity, "from is 2026-03-05 and until is 2026-03-02: 1 to 366 days, the first before the last, are allowed.")]
    [InlineData("from=march", HttpStatusCode.BadRequest, "from is \"march\": a day such as 2026-03-02 is allowed.")]
    public async Task A_period_that_cannot_be_is_refused(string query, HttpStatusCode status, string sentence)
    {
        var answer = await (await app.As(Roles.Manager)).GetAsync($"/api/v1/utilisation?{query}", Ct);

        Assert.Equal((status, sentence), (answer.StatusCode, await answer.Sentence()));
    }

    [Fact]
    public async Task It_is_the_managers() => Assert.Equal(
        HttpStatusCode.Forbidden, (await (await app.As(Roles.Advisor)).GetAsync("/api/v1/utilisation", Ct)).StatusCode);

    private static JsonElement Of(JsonElement rows, string name) => rows.EnumerateArray().Single(r => r.GetProperty("name").GetString() == name);

    private static double Hours(JsonElement row, string what) => row.GetProperty($"{what}Hours").GetDouble();

    private async Task SignedOffVisit()
    {
        app.Clock.Now = TestWorkshop.Start;
        if (await app.Look(db => db.SignOffs.AnyAsync(Ct)))
        {
            return;
        }

        var visit = await app.CheckedIn();
        var (start, signed) = (Instant.FromUtc(2026, 3, 2, 8, 0), Instant.FromUtc(2026, 3, 2, 10, 0));
        await app.Look(async db =>
        {
            // What the card of the test's making holds already is let go: this visit is written row by row.
            foreach (var row in await db.Occupancies.ToListAsync(Ct))
            {
                db.Occupancies.Remove(row);
            }

            await db.SaveChangesAsync(Ct);
            db.Occupancies.AddRange(new[] { TestWorkshop.Bay1, TestWorkshop.TechnicianResource }.Select(resource => new Occupancy
            {
                Id = NewId.At(app.Clock), JobCardNumber = visit.Number, Phase = VisitPhase.Work, ResourceId = resource,
                Span = new Interval(start, start + Duration.FromHours(3)), Live = false,
            }));
            (await db.JobCards.SingleAsync(c => c.Number == visit.Number, Ct)).State = JobCardState.SignedOff;
            db.SignOffs.Add(new SignOff
            {
                JobCardNumber = visit.Number, OdometerReadingId = visit.OdometerReadingId!.Value, SignedBy = TestWorkshop.Technician, SignedAt = signed,
            });
            db.DoneItems.Add(new DoneItem
            {
                Id = NewId.At(app.Clock), MotorcycleId = visit.MotorcycleId, ServiceItemCode = TestEngines.OilService, DoneOn = new LocalDate(2026, 3, 2),
                Distance = Distance.FromKilometres(24_000), JobCardNumber = visit.Number, DoneBy = TestWorkshop.Technician, EnteredAt = signed,
            });
            return await db.SaveChangesAsync(Ct);
        });
    }
}
