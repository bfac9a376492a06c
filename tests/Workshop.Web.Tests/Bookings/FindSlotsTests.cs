using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Bookings.Counter;

namespace Workshop.Web.Tests.Bookings;

/// <summary>The clock stands at Monday 2026-03-02, 09:00 in Vienna; nothing is booked by other tests.</summary>
public sealed class FindSlotsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_first_slot_of_a_valve_check_is_when_the_engine_can_be_cold_and_a_booking_takes_it()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        var found = await Find(advisor, motorcycle, [Item(TestEngines.ValveCheck)], explain: true);

        // It could come at 09:00 and be cold at 17:10, after closing; so on Tuesday at 08:00.
        var slot = found.GetProperty("slots")[0];
        Assert.Equal("2026-03-03T07:00:00Z", slot.GetProperty("startsAt").GetString());
        Assert.Equal("2026-03-02T15:50:00Z", slot.GetProperty("arrivesAt").GetString());
        Assert.Equal(
            ["arrival", "coldSoak", "work", "warmRun", "testRide", "handOver"],
            slot.GetProperty("phases").EnumerateArray().Select(p => p.GetProperty("phase").GetString()));
        Assert.Contains(found.GetProperty("whyNotEarlier").EnumerateArray(),
            w => w.GetString() == "The engine must stand first: it is cold at 2026-03-02 17:10 at the earliest.");

        var booked = await advisor.PostAsJsonAsync("/api/v1/bookings", new
        {
            motorcycleId = motorcycle,
            items = new[] { Item(TestEngines.ValveCheck) },
            bayId = slot.GetProperty("bayId").GetGuid(),
            technicianId = slot.GetProperty("technicianId").GetGuid(),
            startsAt = slot.GetProperty("startsAt").GetString(),
        }, Ct);
        Assert.Equal(HttpStatusCode.Created, booked.StatusCode);
        var (a, b) = (slot.GetProperty("phases"), (await booked.Json()).GetProperty("phases"));
        Assert.Equal(a.GetRawText(), b.GetRawText());
    }

    [Fact]
    public async Task Wishes_are_kept_and_one_that_cannot_be_is_explained()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        object[] items = [Item(TestEngines.OilService)];

        var later = await Find(advisor, motorcycle, items, wishes: new { notBeforeDay = "2026-03-12", bayId = TestWorkshop.Bay2 });
        var never = await Find(advisor, motorcycle, items, wishes: new { notBeforeDay = "2026-03-12", readyByDay = "2026-03-12", readyByTime = "08:30:00" }, explain: true);
        var crossed = await Post(advisor, motorcycle, items, wishes: new { notBeforeDay = "2026-03-12", readyByDay = "2026-03-10" });

        Assert.All(later.GetProperty("slots").EnumerateArray(), s => Assert.Equal("Bay 2", s.GetProperty("bay").GetString()));
        Assert.Equal("2026-03-12T07:00:00Z", later.GetProperty("slots")[0].GetProperty("startsAt").GetString());
        Assert.Equal(0, never.GetProperty("slots").GetArrayLength());
        Assert.Contains(never.GetProperty("whyNotEarlier").EnumerateArray(),
            w => w.GetString()!.Contains("handed over after the time by which it must be ready", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, crossed.StatusCode);
    }

    [Fact]
    public async Task Parts_that_are_short_push_the_start_to_the_opening_of_the_day_after_their_delivery()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var part = await app.Look(db => db.Parts.SingleAsync(p => p.Code == TestEngines.OilFilter, Ct));
        await Move(part.Id, -3);
        object[] items = [Item(TestEngines.OilService)];
        try
        {
            var unknown = await Find(advisor, motorcycle, items);
            var delivery = await Expect(part.Id, new LocalDate(2026, 3, 6));
            var expected = await Find(advisor, motorcycle, items, explain: true);
            var booked = await advisor.Book(motorcycle, Instant.FromUtc(2026, 3, 5, 8, 0));
            await app.Look(db => db.ExpectedDeliveries.Where(d => d.Id == delivery).ExecuteUpdateAsync(d => d.SetProperty(x => x.ClosedAt, app.Clock.Now), Ct));

            Assert.True(unknown.GetProperty("parts").GetProperty("unknown").GetBoolean());
            Assert.Equal(
                "Oil filter: 1 short, on no order that brings enough, and nobody has entered how long it takes; the starts do not wait for it. Order it before you promise a time.",
                unknown.GetProperty("parts").GetProperty("parts")[0].GetProperty("sentence").GetString());
            // Expected on Friday; Monday is the working day after.
            Assert.Equal("2026-03-09T07:00:00Z", expected.GetProperty("slots")[0].GetProperty("startsAt").GetString());
            Assert.Contains("Oil filter: 1 short, expected on 2026-03-06; work from 2026-03-09 08:00 on.",
                expected.GetProperty("whyNotEarlier").EnumerateArray().Select(w => w.GetString()));
            Assert.Equal(HttpStatusCode.Created, booked.StatusCode);
            Assert.Single((await booked.Json()).GetProperty("warnings").EnumerateArray());
        }
        finally
        {
            await Move(part.Id, 3);
        }
    }

    [Fact]
    public async Task What_nobody_can_do_is_said_with_what_they_lack()
    {
        var advisor = await app.As(Roles.Advisor);
        var unskilled = await app.AddResource(ResourceKind.Technician, "NO");

        var found = await Find(advisor, await advisor.AddMotorcycle(), [Item(TestEngines.ValveCheck)], wishes: new { technicianId = unskilled }, explain: true);

        Assert.Equal(0, found.GetProperty("slots").GetArrayLength());
        Assert.Equal(["NO lacks valve work."], found.GetProperty("whyNotEarlier").EnumerateArray().Select(w => w.GetString()));
    }

    private static async Task<JsonElement> Find(HttpClient advisor, Guid motorcycle, object[] items, object? wishes = null, bool explain = false)
    {
        var answer = await Post(advisor, motorcycle, items, wishes, explain);
        answer.EnsureSuccessStatusCode();
        return await answer.Json();
    }

    private static Task<HttpResponseMessage> Post(HttpClient advisor, Guid motorcycle, object[] items, object? wishes = null, bool explain = false) =>
        advisor.PostAsJsonAsync("/api/v1/bookings/slots", new { motorcycleId = motorcycle, items, wishes, explain, count = 3 }, Ct);

    private Task<Guid> Expect(Guid part, LocalDate day) => app.Look(async db =>
    {
        var delivery = new ExpectedDelivery
        {
            Id = NewId.At(app.Clock), PartId = part, Quantity = 5, ExpectedOn = day, EnteredBy = TestWorkshop.Advisor, EnteredAt = app.Clock.Now,
        };
        db.ExpectedDeliveries.Add(delivery);
        await db.SaveChangesAsync(Ct);
        return delivery.Id;
    });

    private Task<int> Move(Guid part, decimal change) => app.Look(async db =>
    {
        db.StockMovements.Add(new StockMovement
        {
            Id = NewId.At(app.Clock), PartId = part, PlaceId = TestWorkshop.Shelf, Kind = MovementKind.Counted,
            OnHandChange = change, ReservedChange = 0, MovedBy = TestWorkshop.Manager, MovedAt = app.Clock.Now,
        });
        return await db.SaveChangesAsync(Ct);
    });
}
