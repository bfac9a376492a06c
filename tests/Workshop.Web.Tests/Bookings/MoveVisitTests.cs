using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Bookings.Counter;

namespace Workshop.Web.Tests.Bookings;

/// <summary>Moving, shortening and not coming. Each test has days of its own.</summary>
public sealed class MoveVisitTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_moved_visit_frees_what_it_held_keeps_it_for_the_record_and_counts_the_change()
    {
        var advisor = await app.As(Roles.Advisor);
        var start = Instant.FromUtc(2026, 3, 3, 8, 0);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), start)).Number();

        var moved = await Move(advisor, number, "2026-03-04", "10:00:00", TestWorkshop.Bay2);
        var other = await advisor.Book(await advisor.AddMotorcycle(), start);

        Assert.Equal(HttpStatusCode.OK, moved.StatusCode);
        Assert.Equal((1, "2026-03-04T09:00:00Z"), ((await moved.Json()).GetProperty("planRevision").GetInt32(), (await moved.Json()).GetProperty("startsAt").GetString()));
        Assert.Equal(HttpStatusCode.Created, other.StatusCode);
        Assert.Equal((6, 6), await app.Look(async db => (
            await db.Occupancies.CountAsync(o => o.JobCardNumber == number && o.Live, Ct),
            await db.Occupancies.CountAsync(o => o.JobCardNumber == number && !o.Live, Ct))));
        var card = await app.Look(db => db.JobCards.SingleAsync(c => c.Number == number, Ct));
        Assert.Equal((Instant.FromUtc(2026, 3, 4, 9, 0), Instant.FromUtc(2026, 3, 4, 10, 20)), (card.StartsAt, card.EndsAt));
    }

    [Fact]
    public async Task A_visit_that_moves_beyond_the_last_day_of_what_it_holds_takes_what_lasts()
    {
        var lot = Domain.NewId.At(app.Clock);
        await app.Look(async db =>
        {
            var ring = await db.Parts.SingleAsync(p => p.Code == TestEngines.DrainRing, Ct);
            db.StockLots.Add(new StockLot { Id = lot, PartId = ring.Id, Code = "ENDS", ExpiresOn = new LocalDate(2026, 3, 27), ReceivedOn = new LocalDate(2026, 1, 5) });
            db.StockMovements.Add(new StockMovement
            {
                Id = Domain.NewId.At(app.Clock), PartId = ring.Id, PlaceId = TestWorkshop.Shelf, LotId = lot, Kind = MovementKind.Received, OnHandChange = 1, ReservedChange = 0,
                MovedBy = TestWorkshop.Manager, MovedAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });
        var advisor = await app.As(Roles.Advisor);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 26, 9, 0))).Number();
        Task<decimal> Held() => app.Look(db => db.StockMovements.Where(m => m.JobCardNumber == number && m.LotId == lot).SumAsync(m => m.ReservedChange, Ct));
        var before = (await Held(), await Rings());

        var moved = await Move(advisor, number, "2026-03-30", "10:00:00");

        Assert.Equal(HttpStatusCode.OK, moved.StatusCode);
        Assert.Equal((1m, 1m), before);
        Assert.Equal((0m, 1m), (await Held(), await Rings()));

        Task<decimal> Rings() => app.Look(db => (
            from movement in db.StockMovements
            join part in db.Parts on movement.PartId equals part.Id
            where part.Code == TestEngines.DrainRing && movement.JobCardNumber == number
            select movement.ReservedChange).SumAsync(Ct));
    }

    [Fact]
    public async Task A_visit_may_move_over_its_own_time_and_not_over_anothers()
    {
        var advisor = await app.As(Roles.Advisor);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 9, 8, 0))).Number();
        var other = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 9, 12, 0))).Number();

        var over = await Move(advisor, number, "2026-03-09", "09:20:00");
        var taken = await Move(advisor, number, "2026-03-09", "12:30:00");

        Assert.Equal(HttpStatusCode.OK, over.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, taken.StatusCode);
        Assert.Contains($"taken by job card {other}", await taken.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wishes_stand_in_the_way_of_a_move_until_the_owner_was_asked()
    {
        var advisor = await app.As(Roles.Advisor);
        var booked = await advisor.PostAsJsonAsync("/api/v1/bookings", new
        {
            motorcycleId = await advisor.AddMotorcycle(),
            items = new[] { Item(TestEngines.OilService) },
            bayId = TestWorkshop.Bay1,
            technicianId = TestWorkshop.TechnicianResource,
            startsAt = "2026-03-11T08:00:00Z",
            wishes = new { notBeforeDay = "2026-03-11", bayId = TestWorkshop.Bay1 },
        }, Ct);
        var number = await booked.Number();

        var against = await Move(advisor, number, "2026-03-10", "09:00:00", TestWorkshop.Bay2);
        var asked = await Move(advisor, number, "2026-03-10", "09:00:00", TestWorkshop.Bay2, againstWishes: true);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, against.StatusCode);
        Assert.Contains("does not come before 2026-03-11 00:00", await against.Sentence(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, asked.StatusCode);
    }

    [Fact]
    public async Task Fewer_minutes_free_the_rest_and_more_of_them_stop_at_the_next_visit()
    {
        var advisor = await app.As(Roles.Advisor);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 12, 8, 0))).Number();
        await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 12, 10, 0))).Number();

        var shorter = await Shorten(advisor, number, 10);
        var longer = await Shorten(advisor, number, 100);

        Assert.Equal("2026-03-12T09:00:00Z", (await shorter.Json()).GetProperty("readyAt").GetString());
        Assert.Equal(HttpStatusCode.Conflict, longer.StatusCode);
        Assert.Equal(10, await app.Look(db => db.VisitWishes.Where(w => w.JobCardNumber == number).Select(w => w.WorkMinutes).SingleAsync(Ct)));
    }

    [Fact]
    public async Task A_visit_whose_time_has_not_come_is_no_no_show_and_one_that_did_not_come_frees_its_time()
    {
        var advisor = await app.As(Roles.Advisor);
        var start = Instant.FromUtc(2026, 3, 17, 8, 0);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), start)).Number();

        var early = await NoShow(advisor, number);
        app.Clock.Now = start + Duration.FromMinutes(20);
        try
        {
            var late = await NoShow(advisor, number);
            var again = await NoShow(advisor, number);
            var other = await advisor.Book(await advisor.AddMotorcycle(), start + Duration.FromMinutes(25));

            Assert.Equal(HttpStatusCode.Conflict, early.StatusCode);
            Assert.Equal("noShow", (await late.Json()).GetProperty("state").GetString());
            Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
            Assert.Equal(HttpStatusCode.Created, other.StatusCode);
            Assert.Equal(JobCardState.NoShow, await app.Look(db => db.JobCards.Where(c => c.Number == number).Select(c => c.State).SingleAsync(Ct)));
        }
        finally
        {
            app.Clock.Now = TestWorkshop.Start;
        }
    }

    [Fact]
    public async Task Work_that_does_not_fit_before_closing_goes_on_the_next_working_day_and_the_bay_stays_taken()
    {
        var advisor = await app.As(Roles.Advisor);
        var friday = Instant.FromUtc(2026, 3, 20, 15, 45);

        var answer = await advisor.Book(await advisor.AddMotorcycle(), friday);

        var number = await answer.Number();
        var work = await app.Look(db => db.Occupancies.Where(o => o.JobCardNumber == number && o.Phase == VisitPhase.Work).ToListAsync(Ct));
        var monday = Instant.FromUtc(2026, 3, 23, 7, 0);
        Assert.Equal(
            [new Interval(friday, friday + Duration.FromMinutes(15)), new Interval(monday, monday + Duration.FromMinutes(15))],
            work.Where(o => o.ResourceId == TestWorkshop.TechnicianResource).Select(o => o.Span).OrderBy(s => s.Start));
        Assert.Equal(new Interval(friday, monday + Duration.FromMinutes(15)), work.Single(o => o.ResourceId == TestWorkshop.Bay1).Span);
    }

    [Fact]
    public async Task The_plan_page_moves_a_visit_and_comes_back_filled_when_it_cannot()
    {
        var advisor = await app.As(Roles.Advisor);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 24, 8, 0))).Number();
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var address = $"/job-cards/{number}/plan";

        var sunday = await pages.Send(address, new() { ["Move.Day"] = "2026-03-22", ["Move.Time"] = "09:30" }, "#move");
        var moved = await pages.Send(sunday, address, new() { ["Move.Day"] = "2026-03-25" }, "#move");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, sunday.Status);
        Assert.Equal(("2026-03-22", "09:30"), (sunday.ValueOf("Move.Day"), sunday.ValueOf("Move.Time")));
        Assert.Equal(HttpStatusCode.Redirect, moved.Status);
        Assert.Contains("2026-03-25 09:30", (await pages.Open(moved.Location!)).MainText, StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> Move(
        HttpClient advisor, int number, string day, string time, Guid? bay = null, bool againstWishes = false) =>
        advisor.PostAsJsonAsync($"/api/v1/bookings/{number}/move", new
        {
            bayId = bay ?? TestWorkshop.Bay1, technicianId = TestWorkshop.TechnicianResource, day, time, againstWishes,
        }, Ct);

    private static Task<HttpResponseMessage> Shorten(HttpClient advisor, int number, int minutes) =>
        advisor.PostAsJsonAsync($"/api/v1/bookings/{number}/duration", new { workMinutes = minutes }, Ct);

    private static Task<HttpResponseMessage> NoShow(HttpClient advisor, int number) =>
        advisor.PostAsJsonAsync($"/api/v1/bookings/{number}/no-show", new { }, Ct);
}
