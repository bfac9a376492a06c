using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Domain.Clearances;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.JobCards;
using Xunit;
using static Workshop.Web.Tests.Finishing.FinishingBench;

namespace Workshop.Web.Tests.Finishing;

/// <summary>The second person of the readings as left, where the workshop asks for one.</summary>
public sealed class AsLeftWitnessTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Somebody_else_confirms_the_set_as_it_stands_and_every_later_reading_voids_that()
    {
        var (technician, manager) = (await app.As(Roles.Technician), await app.As(Roles.Manager));
        var visit = await app.CheckedIn();
        await app.MeasureAll(visit);
        await app.MeasureAll(visit, Stage.AsLeft);
        Assert.Empty(await Left(technician, visit));

        var mark = $"/api/v1/engine-models/{TestWorkshop.EngineModel}/as-left-second-person";
        Assert.Equal(HttpStatusCode.Forbidden, (await technician.Send(HttpMethod.Put, mark, null, null)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await manager.Send(HttpMethod.Put, mark, null, null)).StatusCode);
        Assert.Equal(["asLeft.secondPerson"], await Left(technician, visit));

        var seen = (await Read(manager, visit)).GetProperty("asLeft");
        Assert.Equal((true, true, 6), (seen.GetProperty("asked").GetBoolean(), seen.GetProperty("mayConfirm").GetBoolean(), seen.GetProperty("readings").GetInt32()));
        Assert.False((await Read(technician, visit)).GetProperty("asLeft").GetProperty("mayConfirm").GetBoolean());
        Assert.Equal("same-person", (await (await Confirm(technician, visit, 6)).Json()).GetProperty("code").GetString());
        Assert.Equal("other-readings", (await (await Confirm(manager, visit, 5)).Json()).GetProperty("code").GetString());
        Assert.Equal(HttpStatusCode.OK, (await Confirm(manager, visit, 6)).StatusCode);
        Assert.Equal("witnessed-already", (await (await Confirm(manager, visit, 6)).Json()).GetProperty("code").GetString());
        Assert.Empty(await Left(technician, visit));
        Assert.Equal("Mana Ger", (await Read(technician, visit)).GetProperty("asLeft").GetProperty("confirmedBy").GetString());

        // A correction is a further attempt: what was confirmed is no longer what stands.
        await app.Measure(visit, ReadingRules.LobesOf(TestEngines.Twin())[0], Stage.AsLeft, 0.16m, attempt: 2);
        Assert.Equal(["asLeft.secondPerson"], await Left(technician, visit));
        Assert.Contains("after a second person confirmed them", (await Read(technician, visit)).GetProperty("asLeft").GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await Confirm(manager, visit, 7)).StatusCode);
        Assert.Empty(await Left(technician, visit));

        Assert.Equal(HttpStatusCode.OK, (await manager.Send(HttpMethod.Delete, mark, null, null)).StatusCode);
    }

    [Fact]
    public async Task It_is_marked_for_all_engine_models_at_once_too_and_where_nothing_is_left_anew_nobody_is_asked()
    {
        var (technician, manager) = (await app.As(Roles.Technician), await app.As(Roles.Manager));
        var other = await app.CheckedIn(specification: TestEngines.Twin());
        await app.MeasureAll(other, Stage.AsLeft);
        var untouched = await app.CheckedIn(specification: TestEngines.Twin());
        const string Mark = "/api/v1/engine-models/as-left-second-person";

        Assert.Equal(HttpStatusCode.OK, (await manager.Send(HttpMethod.Put, Mark, null, null)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await manager.Send(HttpMethod.Put, Mark, null, null)).StatusCode);

        Assert.Equal(["asLeft.secondPerson"], await Left(technician, other));
        Assert.Empty(await Left(technician, untouched));
        Assert.Equal("no-readings", (await (await Confirm(manager, untouched, 0)).Json()).GetProperty("code").GetString());
        Assert.Equal(HttpStatusCode.OK, (await manager.Send(HttpMethod.Delete, Mark, null, null)).StatusCode);
        Assert.Empty(await Left(technician, other));
    }

    [Fact]
    public async Task Only_who_may_measure_confirms()
    {
        var visit = await app.CheckedIn();
        await app.MeasureAll(visit, Stage.AsLeft);

        Assert.Equal(HttpStatusCode.Forbidden, (await Confirm(await app.As(Roles.Advisor), visit, 6)).StatusCode);
    }

    private static Task<HttpResponseMessage> Confirm(HttpClient client, TestVisit visit, int readings) =>
        client.PostAsJsonAsync($"{visit.Api}/readings/as-left-witnesses", new { readings }, Ct);
}
