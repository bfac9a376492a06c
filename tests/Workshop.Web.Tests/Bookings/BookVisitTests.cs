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

/// <summary>The clock stands at Monday 2026-03-02, 09:00 in Vienna; each test has a day of its own in the weeks after.</summary>
public sealed class BookVisitTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_booking_opens_a_card_and_takes_bay_technician_and_tools_for_the_work()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var start = Instant.FromUtc(2026, 3, 3, 8, 0);

        var answer = await advisor.Book(motorcycle, start, items:
            [Item(TestEngines.ValveCheck), Item(TestEngines.Adjustment, "likely"), Item(TestEngines.OilService)]);

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var number = await answer.Number();
        Assert.Equal($"/api/v1/job-cards/{number}", answer.Headers.Location?.ToString());
        // 90 + 120 + 30 minutes of labour and the covers once, 40.
        Assert.Equal(280, (await answer.Json()).GetProperty("bookedMinutes").GetInt32());
        var taken = await app.Look(db => db.Occupancies.Where(o => o.JobCardNumber == number).ToListAsync(Ct));
        var worked = start + Duration.FromMinutes(280);
        Assert.Equal(
            new HashSet<(VisitPhase, Guid, Interval)>
            {
                // Brought the evening before, at the counter from 16:50 until closing at 17:00.
                (VisitPhase.ColdSoak, TestWorkshop.Stand1, new Interval(Instant.FromUtc(2026, 3, 2, 16, 0), start)),
                (VisitPhase.Work, TestWorkshop.Bay1, new Interval(start, worked)),
                (VisitPhase.Work, TestWorkshop.TechnicianResource, new Interval(start, worked)),
                (VisitPhase.Work, TestWorkshop.AlignmentJig, new Interval(start, worked)),
                (VisitPhase.WarmRun, TestWorkshop.Bay1, new Interval(worked, worked + Duration.FromMinutes(15))),
                (VisitPhase.WarmRun, TestWorkshop.TechnicianResource, new Interval(worked, worked + Duration.FromMinutes(15))),
                (VisitPhase.TestRide, TestWorkshop.Bay1, new Interval(worked + Duration.FromMinutes(15), worked + Duration.FromMinutes(35))),
                (VisitPhase.TestRide, TestWorkshop.TechnicianResource, new Interval(worked + Duration.FromMinutes(15), worked + Duration.FromMinutes(35))),
            },
            taken.Select(o => (o.Phase, o.ResourceId, o.Span)).ToHashSet());
        Assert.All(taken, o => Assert.True(o.Live));
        var card = await app.Look(db => db.JobCards.SingleAsync(c => c.Number == number, Ct));
        Assert.Equal((TestWorkshop.EngineModelVersion, JobCardState.Booked, TestWorkshop.Advisor),
            (card.EngineModelVersionId, card.State, card.BookedBy));
        Assert.Equal(Likelihood.Likely, await app.Look(db => db.JobCardItems
            .Where(i => i.JobCardNumber == number && i.ServiceItemCode == TestEngines.Adjustment).Select(i => i.Likelihood).SingleAsync(Ct)));
    }

    [Fact]
    public async Task A_booking_reserves_its_kit()
    {
        var advisor = await app.As(Roles.Advisor);
        await ReceiveOil(3200);

        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 18, 8, 0))).Number();

        Assert.Equal(3200, await app.Look(db => (
            from m in db.StockMovements
            join p in db.Parts on m.PartId equals p.Id
            where m.JobCardNumber == number && p.Code == TestEngines.Oil
            select m.ReservedChange).SingleAsync(Ct)));
    }

    /// <summary>The bookings of other tests of this class may have reserved all the oil there was.</summary>
    private Task<int> ReceiveOil(decimal millilitres) => app.Look(async db =>
    {
        db.StockMovements.Add(new StockMovement
        {
            Id = Domain.NewId.At(app.Clock),
            PartId = await db.Parts.Where(p => p.Code == TestEngines.Oil).Select(p => p.Id).SingleAsync(Ct),
            PlaceId = TestWorkshop.Shelf, Kind = MovementKind.Received, OnHandChange = millilitres, ReservedChange = 0,
            MovedBy = TestWorkshop.Manager, MovedAt = app.Clock.Now,
        });
        return await db.SaveChangesAsync(Ct);
    });

    [Fact]
    public async Task A_possible_adjustment_takes_neither_time_nor_tool()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        var answer = await advisor.Book(motorcycle, Instant.FromUtc(2026, 3, 4, 8, 0), items:
            [Item(TestEngines.ValveCheck), Item(TestEngines.Adjustment, "possible")]);

        var booked = await answer.Json();
        Assert.Equal((130, 120), (booked.GetProperty("bookedMinutes").GetInt32(), booked.GetProperty("possibleMinutes").GetInt32()));
        Assert.DoesNotContain(booked.GetProperty("resources").EnumerateArray(), r => r.GetProperty("kind").GetString() == "specialTool");
    }

    [Fact]
    public async Task Of_sixteen_who_book_the_same_hour_at_once_one_wins_and_the_others_read_who_has_it()
    {
        var advisor = await app.As(Roles.Advisor);
        var start = Instant.FromUtc(2026, 3, 5, 8, 0);
        var motorcycles = new List<Guid>();
        for (var i = 0; i < 16; i++)
        {
            motorcycles.Add(await advisor.AddMotorcycle($"RACE {i}"));
        }

        var answers = await Task.WhenAll(motorcycles.Select(m => advisor.Book(m, start)));

        var winner = Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Created);
        var number = await winner.Number();
        var registration = $"RACE {Array.IndexOf(answers, winner)}";
        foreach (var loser in answers.Where(a => a != winner))
        {
            Assert.Equal(HttpStatusCode.Conflict, loser.StatusCode);
            Assert.StartsWith(
                $"Bay 1 is taken by job card {number} ({registration}, Testwerk Twin 600) until 2026-03-05 10:05. "
                + $"TN is taken by job card {number} ({registration}, Testwerk Twin 600) until 2026-03-05 10:05. "
                + "The next free slot is 2026-03-05 ",
                await loser.Sentence(), StringComparison.Ordinal);
            Assert.True((await loser.Json()).GetProperty("nextSlot").TryGetProperty("technicianId", out _));
        }

        Assert.Equal(1, await app.Look(db => db.JobCards.CountAsync(c => c.StartsAt == start, Ct)));
        Assert.Equal(6, await app.Look(db => db.Occupancies.CountAsync(o => o.JobCardNumber == number, Ct)));
    }

    [Fact]
    public async Task The_next_visit_may_start_at_the_minute_at_which_the_last_one_ends()
    {
        var advisor = await app.As(Roles.Advisor);
        var start = Instant.FromUtc(2026, 3, 6, 8, 0);

        var first = await advisor.Book(await advisor.AddMotorcycle(), start);
        var next = await advisor.Book(await advisor.AddMotorcycle(), start + Duration.FromMinutes(65));
        var between = await advisor.Book(await advisor.AddMotorcycle(), start + Duration.FromMinutes(129));

        Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        Assert.Equal(HttpStatusCode.Created, next.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, between.StatusCode);
        Assert.Contains($"job card {await next.Number()}", await between.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_special_tool_that_is_out_with_another_visit_is_named()
    {
        var advisor = await app.As(Roles.Advisor);
        var second = await app.AddResource(ResourceKind.Technician, "T2", capabilities: "valve work");
        var start = Instant.FromUtc(2026, 3, 9, 8, 0);
        object[] items = [Item(TestEngines.ValveCheck), Item(TestEngines.Adjustment, "likely")];

        var first = await advisor.Book(await advisor.AddMotorcycle(), start, items: items);
        var other = await advisor.Book(await advisor.AddMotorcycle(), start, TestWorkshop.Bay2, second, items);

        Assert.Equal(HttpStatusCode.Conflict, other.StatusCode);
        Assert.StartsWith($"Cam alignment jig is taken by job card {await first.Number()}", await other.Sentence(), StringComparison.Ordinal);
        Assert.True((await other.Json()).GetProperty("errors").TryGetProperty("items", out _));
    }

    [Fact]
    public async Task A_motorcycle_cannot_stand_in_two_bays()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle("TWICE 1");
        var start = Instant.FromUtc(2026, 3, 10, 8, 0);

        var first = await advisor.Book(motorcycle, start);
        var again = await advisor.Book(motorcycle, start, TestWorkshop.Bay2);

        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Equal(
            $"TWICE 1 is booked already on job card {await first.Number()} from 2026-03-10 09:00 until 2026-03-10 10:20.",
            await again.Sentence());
    }

    [Theory]
    [InlineData("2026-03-08T09:00:00Z", "closed that day (Sunday); it opens again on 2026-03-09 from 08:00 to 17:00")]
    [InlineData("2026-03-11T06:59:00Z", "open on 2026-03-11 from 08:00 to 17:00")]
    [InlineData("2026-03-02T07:59:00Z", "which is past; it is 2026-03-02 09:00 now")]
    public async Task A_time_at_which_nobody_works_is_refused_in_words(string startsAt, string sentence)
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        var answer = await advisor.Book(motorcycle, NodaTime.Text.InstantPattern.General.Parse(startsAt).Value);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(sentence, await answer.Sentence(), StringComparison.Ordinal);
        Assert.True((await answer.Json()).GetProperty("errors").TryGetProperty("startsAt", out _));
    }

    [Fact]
    public async Task A_holiday_is_closed_by_its_name()
    {
        var advisor = await app.As(Roles.Advisor);
        await app.Look(async db =>
        {
            db.Holidays.Add(new Holiday { Day = new LocalDate(2026, 5, 1), Name = "Labour Day" });
            return await db.SaveChangesAsync(Ct);
        });

        var answer = await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 5, 1, 8, 0));

        Assert.Contains("closed that day (Labour Day); it opens again on 2026-05-04", await answer.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nine_in_the_morning_is_another_instant_after_the_clocks_have_changed()
    {
        var advisor = await app.As(Roles.Advisor);

        var friday = await BookLocally(advisor, "2026-03-27", "09:00:00");
        var monday = await BookLocally(advisor, "2026-03-30", "09:00:00");

        Assert.Equal("2026-03-27T08:00:00Z", (await friday.Json()).GetProperty("startsAt").GetString());
        Assert.Equal("2026-03-30T07:00:00Z", (await monday.Json()).GetProperty("startsAt").GetString());
    }

    [Fact]
    public async Task On_the_night_of_the_change_a_time_that_the_clocks_skip_is_refused_and_work_across_it_takes_its_minutes()
    {
        var advisor = await app.As(Roles.Advisor);
        await app.Look(async db =>
        {
            db.OpeningHours.Add(new OpeningHours { Weekday = IsoDayOfWeek.Sunday, OpensAt = new LocalTime(1, 0), ClosesAt = new LocalTime(5, 0) });
            return await db.SaveChangesAsync(Ct);
        });
        try
        {
            var skipped = await BookLocally(advisor, "2026-03-29", "02:30:00");
            // 01:45 in winter; 30 minutes later the clock of the wall shows 03:15.
            var across = await BookLocally(advisor, "2026-03-29", "01:45:00");

            Assert.Equal(HttpStatusCode.UnprocessableEntity, skipped.StatusCode);
            Assert.Equal("time is 02:30: on 2026-03-29 the clocks skip that time; give one before or after.", await skipped.Sentence());
            Assert.Equal("2026-03-29T00:45:00Z", (await across.Json()).GetProperty("startsAt").GetString());
            Assert.Equal("2026-03-29T01:15:00Z", (await across.Json()).GetProperty("phases")[0].GetProperty("until").GetString());
        }
        finally
        {
            await app.Look(db => db.OpeningHours.Where(h => h.Weekday == IsoDayOfWeek.Sunday).ExecuteDeleteAsync(Ct));
        }
    }

    [Fact]
    public async Task A_technician_without_the_skill_is_refused_and_the_skill_is_named()
    {
        var advisor = await app.As(Roles.Advisor);
        var unskilled = await app.AddResource(ResourceKind.Technician, "AP");

        var answer = await advisor.Book(
            await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 12, 8, 0), technician: unskilled, items: Item(TestEngines.ValveCheck));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("technicianId is AP, who lacks valve work", await answer.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bay_that_is_retired_or_no_bay_at_all_is_refused()
    {
        var advisor = await app.As(Roles.Advisor);
        var retired = await app.AddResource(ResourceKind.Bay, "Old bay", retired: true);
        var motorcycle = await advisor.AddMotorcycle();
        var start = Instant.FromUtc(2026, 3, 13, 8, 0);

        var old = await advisor.Book(motorcycle, start, retired);
        var noBay = await advisor.Book(motorcycle, start, TestWorkshop.AlignmentJig);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (old.StatusCode, noBay.StatusCode));
        Assert.Contains("bayId is Old bay, which is retired", await old.Sentence(), StringComparison.Ordinal);
        Assert.Contains("no bay has it", await noBay.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Items_that_the_engine_lacks_and_an_adjustment_without_its_check_are_refused()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var start = Instant.FromUtc(2026, 3, 16, 8, 0);

        var unknown = await advisor.Book(motorcycle, start, items: [Item(TestEngines.OilService), Item("wheel-alignment")]);
        var alone = await advisor.Book(motorcycle, start, items: Item(TestEngines.Adjustment));

        Assert.Equal(
            "items[1].code is \"wheel-alignment\", which the engine model lacks; it has valve-clearance-check, valve-clearance-adjustment, oil-and-filter.",
            await unknown.Sentence());
        Assert.Equal(
            "items[0].code is \"valve-clearance-adjustment\": it follows from a check; book \"valve-clearance-check\" with it.",
            await alone.Sentence());
    }

    [Fact]
    public async Task An_empty_body_names_every_field_that_is_wanted()
    {
        var advisor = await app.As(Roles.Advisor);

        var answer = await advisor.PostAsJsonAsync("/api/v1/bookings", new { }, Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var errors = (await answer.Json()).GetProperty("errors");
        foreach (var field in new[] { "motorcycleId", "items", "bayId", "technicianId", "startsAt" })
        {
            Assert.True(errors.TryGetProperty(field, out _), field);
        }
    }

    [Fact]
    public async Task A_technician_does_not_book()
    {
        var technician = await app.As(Roles.Technician);

        var answer = await technician.Book(TestWorkshop.EngineModel, Instant.FromUtc(2026, 3, 17, 8, 0));

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    private static async Task<HttpResponseMessage> BookLocally(HttpClient advisor, string day, string time) =>
        await advisor.PostAsJsonAsync("/api/v1/bookings", new
        {
            motorcycleId = await advisor.AddMotorcycle(),
            items = new[] { Item(TestEngines.OilService) },
            bayId = TestWorkshop.Bay1,
            technicianId = TestWorkshop.TechnicianResource,
            day,
            time,
        }, Ct);
}
