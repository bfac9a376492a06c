using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

public sealed class CheckInTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Checking_in_keeps_odometer_words_and_the_last_stop_and_says_when_the_engine_is_cold()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.Booked();

        var answer = await Send(technician, visit.Number, new
        {
            odometerCount = 24_310, ownersWords = "Ticks when cold.", seenOnArrival = "Left mirror cracked.",
            engineStoppedAt = "2026-03-02T07:15:00Z",
        });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        // The specification wants eight hours.
        Assert.Equal("2026-03-02T15:15:00Z", (await answer.Json()).GetProperty("coldFrom").GetString());
        var card = await (await technician.GetAsync(new Uri(visit.Api, UriKind.Relative), Ct)).Json();
        var checkIn = card.GetProperty("checkIn");
        Assert.Equal("checkedIn", card.GetProperty("state").GetString());
        Assert.Equal((24_310, "kilometres", "Ticks when cold.", "Left mirror cracked.", "Tek Nician"),
            (checkIn.GetProperty("odometerCount").GetInt32(), checkIn.GetProperty("odometerUnit").GetString(),
                checkIn.GetProperty("ownersWords").GetString(), checkIn.GetProperty("seenOnArrival").GetString(), checkIn.GetProperty("by").GetString()));
        Assert.Equal(visit.Number, await app.Look(db => db.OdometerReadings
            .Where(r => r.MotorcycleId == visit.MotorcycleId).Select(r => r.JobCardNumber).SingleAsync(Ct)));
    }

    [Fact]
    public async Task An_odometer_that_runs_backwards_and_an_engine_that_stops_tomorrow_are_refused_and_nothing_is_kept()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.Booked();
        await app.CheckIn(await app.Booked(), 100);
        await app.Look(async db =>
        {
            var odometer = await db.Odometers.SingleAsync(o => o.MotorcycleId == visit.MotorcycleId, Ct);
            db.OdometerReadings.Add(new Domain.Motorcycles.OdometerReading
            {
                Id = Domain.NewId.At(app.Clock), OdometerId = odometer.Id, MotorcycleId = visit.MotorcycleId, ReadOn = new LocalDate(2025, 5, 1),
                Count = 20_000, Unit = odometer.Unit, Distance = Domain.Measures.Distance.FromKilometres(20_000),
                MeasuredBy = TestWorkshop.Advisor, EnteredBy = TestWorkshop.Advisor, EnteredAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });

        var backwards = await Send(advisor, visit.Number, new { odometerCount = 19_999, ownersWords = "x", engineStoppedAt = "2026-03-02T07:15:00Z" });
        var tomorrow = await Send(advisor, visit.Number, new { odometerCount = 20_100, engineStoppedDay = "2026-03-03", engineStoppedTime = "09:00:00" });

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (backwards.StatusCode, tomorrow.StatusCode));
        Assert.Equal(
            "odometerCount is 19999 km: it runs backwards; on 2025-05-01 it showed 20000 km. At least 20000 is allowed; where it is right all the same, enter it with the motorcycle's odometer, say why and confirm it (confirmUnusual).", await backwards.Sentence());
        Assert.StartsWith("engineStoppedTime is 2026-03-03 09:00, which is still to come", await tomorrow.Sentence(), StringComparison.Ordinal);
        Assert.Equal(1, await app.Look(db => db.OdometerReadings.CountAsync(r => r.MotorcycleId == visit.MotorcycleId, Ct)));
        Assert.False(await app.Look(db => db.CheckIns.AnyAsync(c => c.JobCardNumber == visit.Number, Ct)));
    }

    [Fact]
    public async Task A_motorcycle_is_checked_in_once()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.CheckedIn();

        var again = await Send(advisor, visit.Number, new { odometerCount = 30_000, engineStoppedAt = "2026-03-02T07:15:00Z" });

        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Equal($"The motorcycle of job card {visit.Number} is checked in already.", await again.Sentence());
    }

    [Fact]
    public async Task What_is_missing_is_named()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.Booked();

        var empty = await Send(advisor, visit.Number, new { });
        var half = await Send(advisor, visit.Number, new { odometerCount = 1_000_000, engineStoppedDay = "2026-03-02" });

        var errors = (await empty.Json()).GetProperty("errors");
        Assert.True(errors.TryGetProperty("odometerCount", out _));
        Assert.True(errors.TryGetProperty("engineStoppedAt", out _));
        Assert.Contains("odometerCount is 1000000: a whole number from 0 to 999999 is allowed.", await half.Sentence(), StringComparison.Ordinal);
        Assert.Contains("engineStoppedTime is empty", await half.Sentence(), StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> Send(HttpClient client, int number, object body) =>
        client.PostAsJsonAsync($"/api/v1/job-cards/{number}/check-in", body, Ct);
}
