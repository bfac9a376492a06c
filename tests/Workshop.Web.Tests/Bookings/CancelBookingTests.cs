using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Domain.TorqueSheets;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Bookings.Counter;

namespace Workshop.Web.Tests.Bookings;

public sealed class CancelBookingTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_cancelled_visit_frees_its_time_and_its_kit_and_keeps_the_reason()
    {
        var advisor = await app.As(Roles.Advisor);
        var start = Instant.FromUtc(2026, 3, 3, 8, 0);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), start)).Number();
        var next = await advisor.AddMotorcycle();
        Assert.Equal(HttpStatusCode.Conflict, (await advisor.Book(next, start)).StatusCode);

        var cancelled = await Cancel(advisor, number, "The owner sold it.");

        Assert.Equal("cancelled", (await cancelled.Json()).GetProperty("state").GetString());
        Assert.Equal(HttpStatusCode.Created, (await advisor.Book(next, start)).StatusCode);
        Assert.Equal(0, await app.Look(db => db.StockMovements.Where(m => m.JobCardNumber == number).SumAsync(m => m.ReservedChange, Ct)));
        Assert.Equal("The owner sold it.", await app.Look(db => (
            from c in db.Cancellations join r in db.Remarks on c.ReasonRemarkId equals r.Id
            where c.JobCardNumber == number select r.Text).SingleAsync(Ct)));
        Assert.All(await app.Look(db => db.Occupancies.Where(o => o.JobCardNumber == number).ToListAsync(Ct)), o => Assert.False(o.Live));
        var card = await (await advisor.GetAsync(new Uri($"/api/v1/job-cards/{number}", UriKind.Relative), Ct)).Json();
        Assert.Equal("The owner sold it.", card.GetProperty("cancelled").GetProperty("remark").GetString());
        Assert.Equal(0, card.GetProperty("resources").GetArrayLength());
    }

    [Fact]
    public async Task A_visit_is_cancelled_once_and_with_a_reason()
    {
        var advisor = await app.As(Roles.Advisor);
        var number = await (await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 3, 4, 8, 0))).Number();

        var without = await Cancel(advisor, number, " ");
        var first = await Cancel(advisor, number, "Rain.");
        var second = await Cancel(advisor, number, "Rain again.");
        var nothing = await Cancel(advisor, 999_999, "None.");

        Assert.Equal(
            (HttpStatusCode.BadRequest, HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.NotFound),
            (without.StatusCode, first.StatusCode, second.StatusCode, nothing.StatusCode));
        Assert.Equal($"Job card {number} is cancelled already.", await second.Sentence());
    }

    [Fact]
    public async Task A_motorcycle_that_is_here_may_be_sent_home_until_work_begins()
    {
        var advisor = await app.As(Roles.Advisor);
        var untouched = await app.CheckedIn();
        var opened = await app.CheckedIn();
        await app.Look(async db =>
        {
            db.FastenerTicks.Add(new FastenerTick
            {
                Id = NewId.At(app.Clock), JobCardNumber = opened.Number, FastenerCode = TestEngines.CoverBolt, Tightened = true,
                TickedBy = TestWorkshop.Technician, TickedAt = app.Clock.Now,
            });
            return await db.SaveChangesAsync(Ct);
        });

        var home = await Cancel(advisor, untouched.Number, "No time after all.");
        var refused = await Cancel(advisor, opened.Number, "No time after all.");

        Assert.Equal(HttpStatusCode.OK, home.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Equal($"Work on job card {opened.Number} has begun; close what was opened and sign it off.", await refused.Sentence());
        Assert.Equal(JobCardState.CheckedIn, await app.Look(db => db.JobCards.Where(c => c.Number == opened.Number).Select(c => c.State).SingleAsync(Ct)));
    }

    private static Task<HttpResponseMessage> Cancel(HttpClient client, int number, string reason) =>
        client.PostAsJsonAsync($"/api/v1/job-cards/{number}/cancel", new { reason }, Ct);
}
