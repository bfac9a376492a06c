using System.Text.Json;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.Drift;
using Xunit;

namespace Workshop.Web.Tests.Shims;

/// <summary>Which clearance a plan reckons with: a valve's whole history, unless what was read now contradicts it.</summary>
public sealed class PlanFromHistoryTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_reading_that_agrees_with_its_history_is_taken_together_with_it()
    {
        // Read 0.25 at 20,000 km, so about 0.24 is expected at 31,000; read a little below it.
        var visit = await Twice(0.225m);

        Assert.InRange(await Level(visit), 0.2305m, 0.24m);
    }

    [Fact]
    public async Task A_reading_that_contradicts_its_history_is_planned_for_as_it_was_read()
    {
        var visit = await Twice(0.10m);

        Assert.Equal(0.105m, await Level(visit));
    }

    private async Task<TestVisit> Twice(decimal go)
    {
        await app.Knows(TestWorkshop.EngineModel);
        var now = app.Clock.Now;
        app.Clock.Now = now - Duration.FromDays(500);
        var first = await app.CheckedIn(20_000);
        await app.Read(first, TestEngines.Exhaust(1), Stage.AsFound, 0.245m, 0.255m);
        app.Clock.Now = now;
        var visit = await app.CheckedInAgain(first, 31_000);
        await app.MeasureOut(visit, "1-exhaust-1", 2.1m, (double)go);
        return visit;
    }

    private async Task<decimal> Level(TestVisit visit)
    {
        var answer = await (await app.As(Roles.Technician)).GetAsync(new Uri($"{visit.Api}/shim-plan", UriKind.Relative), Ct);
        var valve = (await answer.Json()).Valve("1-exhaust-1", "key");
        return valve.GetProperty("lobes")[0].GetProperty("foundMm").GetDecimal();
    }
}
