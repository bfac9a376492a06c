using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.Bays;

/// <summary>Monday, 9:00 in Vienna, as the class begins; two bays, and a technician more than usual.</summary>
public sealed class LateTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Late_work_pushes_the_next_visit_which_is_proposed_elsewhere_and_moves_only_when_somebody_says_so()
    {
        var (advisor, technician) = (await app.As(Roles.Advisor), await app.As(Roles.Technician));
        var second = await app.AddResource(ResourceKind.Technician, "ZZ", capabilities: ["valve work"]);
        var ten = app.Clock.Now + Duration.FromHours(1);
        var first = await (await advisor.Book(await advisor.AddMotorcycle(), ten)).Number();
        var planned = await Phases(first);
        var next = await (await advisor.Book(await advisor.AddMotorcycle(), CeilingToGrid(planned.Max(p => p.Until)))).Number();
        var apart = await (await advisor.Book(await advisor.AddMotorcycle(), ten + Duration.FromDays(1), TestWorkshop.Bay2, second)).Number();

        Assert.Equal(0, (await Late(advisor)).GetProperty("late").GetArrayLength());

        app.Clock.Now = ten + Duration.FromMinutes(5);
        (await advisor.PostAsJsonAsync($"/api/v1/job-cards/{first}/check-in", new { odometerCount = 100, engineStoppedAt = "2026-03-02T08:00:00Z" }, Ct)).EnsureSuccessStatusCode();
        app.Clock.Now = ten + Duration.FromMinutes(70);
        (await technician.PostAsJsonAsync($"/api/v1/job-cards/{first}/phases", new { phase = "work" }, Ct)).EnsureSuccessStatusCode();
        var late = await Late(advisor);

        var row = late.GetProperty("late").EnumerateArray().Single();
        Assert.Equal((first, "begunLate", 70), (row.GetProperty("jobCardNumber").GetInt32(), row.GetProperty("reason").GetString(), row.GetProperty("lateMinutes").GetInt32()));
        var pushed = late.GetProperty("pushed").EnumerateArray().Single();
        Assert.Equal((next, first), (pushed.GetProperty("jobCardNumber").GetInt32(), pushed.GetProperty("byJobCardNumber").GetInt32()));
        Assert.InRange(pushed.GetProperty("pushedMinutes").GetInt32(), 1, 70);
        var same = pushed.GetProperty("proposals").EnumerateArray().First();
        Assert.True(same.GetProperty("sameTime").GetBoolean());
        Assert.Equal(("Bay 2", "ZZ"), (same.GetProperty("bay").GetString(), same.GetProperty("technician").GetString()));

        // Looking moved nobody.
        Assert.Equal(planned, await Phases(first));
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var page = await pages.Open("/bays/late");
        Assert.Contains("Nothing moves by itself", page.MainText, StringComparison.Ordinal);
        Assert.Contains("begun late", page.MainText, StringComparison.Ordinal);

        var moved = await pages.Send(page, "/bays/late", [], ".pushed form");

        Assert.Equal(HttpStatusCode.Redirect, moved.Status);
        Assert.Equal(0, (await Late(advisor)).GetProperty("pushed").GetArrayLength());
        Assert.True(await app.Look(db => Task.FromResult(db.Occupancies.Any(o => o.JobCardNumber == next && o.Live && o.ResourceId == TestWorkshop.Bay2))));
        Assert.NotEqual(apart, next);
    }

    private static async Task<JsonElement> Late(HttpClient client) =>
        await (await client.GetAsync(new Uri("/api/v1/bookings/late", UriKind.Relative), Ct)).Json();

    private Task<(VisitPhase Phase, Instant From, Instant Until)[]> Phases(int number) => app.Look(db => Task.FromResult(
        db.PlannedPhases.Where(p => p.JobCardNumber == number).AsEnumerable().OrderBy(p => p.Span.Start)
            .Select(p => (p.Phase, p.Span.Start, p.Span.End)).ToArray()));

    private static Instant CeilingToGrid(Instant at)
    {
        var over = at.ToUnixTimeSeconds() % 300;
        return over == 0 ? at : at + Duration.FromSeconds(300 - over);
    }
}
