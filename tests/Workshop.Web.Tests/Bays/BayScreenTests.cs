using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Xunit;
using static Workshop.Web.Tests.Clearances.ReadingBodies;

namespace Workshop.Web.Tests.Bays;

/// <summary>What the bay screen sends, as a client of the API does.</summary>
public sealed class BayScreenTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string FirstPosition = "Compression dead centre of cylinder 1";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_reading_that_was_overtaken_is_refused_with_both_values_and_writes_nothing()
    {
        var visit = await app.CheckedIn();
        var (one, other) = (await app.As(Roles.Technician), await app.As(Roles.Manager));
        await other.PostAsJsonAsync($"{visit.Api}/readings", Send(Attempt(0.12, 0.13, 1)), Ct);

        var late = await one.PostAsJsonAsync($"{visit.Api}/readings", Send(Attempt(0.15, 0.16, 1)), Ct);

        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        var problem = await late.Json();
        Assert.Equal("overtaken", problem.GetProperty("code").GetString());
        Assert.Contains("readings[0].attempt is 1: cylinder 1, intake 1 as found was read meanwhile, 0.12 to 0.13 mm by", problem.Fault("readings[0].attempt"), StringComparison.Ordinal);
        var standing = problem.GetProperty("standing")[0];
        Assert.Equal(("0.12 to 0.13 mm", 1), (standing.GetProperty("reading").GetString(), standing.GetProperty("attempt").GetInt32()));

        var decided = await one.PostAsJsonAsync($"{visit.Api}/readings", Send(Attempt(0.15, 0.16, 2)).With("reason", "Read by two"), Ct);
        Assert.Equal(HttpStatusCode.OK, decided.StatusCode);
        Assert.Equal(2, await app.Look(db => db.ClearanceReadings.CountAsync(r => r.JobCardNumber == visit.Number)));
    }

    [Fact]
    public async Task A_position_is_confirmed_with_mark_and_lobes_and_only_one_that_the_engine_has()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var confirmed = await technician.PostAsJsonAsync($"{visit.Api}/readings/positions", new { stage = "asFound", position = FirstPosition, markAndLobes = true }, Ct);
        var notLooked = await technician.PostAsJsonAsync($"{visit.Api}/readings/positions", new { stage = "asFound", position = FirstPosition }, Ct);
        var unknown = await technician.PostAsJsonAsync($"{visit.Api}/readings/positions", new { stage = "asFound", position = "Somewhere", markAndLobes = true }, Ct);

        Assert.Equal(HttpStatusCode.OK, confirmed.StatusCode);
        Assert.Contains("turn on in running direction", (await notLooked.Json()).Fault("markAndLobes"), StringComparison.Ordinal);
        Assert.Contains($"the engine is measured at {FirstPosition};", (await unknown.Json()).Fault("position"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_clock_runs_on_one_job_at_a_time_and_stops_with_a_reason()
    {
        var (first, second) = (await app.CheckedIn(), await app.CheckedIn());
        var technician = await app.As(Roles.Technician);

        await technician.PostAsJsonAsync($"{first.Api}/work-clock/on", new { }, Ct);
        app.Clock.Now += Duration.FromMinutes(30);
        var elsewhere = await (await technician.PostAsJsonAsync($"{second.Api}/work-clock/on", new { }, Ct)).Json();
        app.Clock.Now += Duration.FromMinutes(20);
        var without = await technician.PostAsJsonAsync($"{second.Api}/work-clock/off", new { }, Ct);
        var off = await technician.PostAsJsonAsync($"{second.Api}/work-clock/off", new { reason = "break" }, Ct);
        var again = await technician.PostAsJsonAsync($"{second.Api}/work-clock/off", new { reason = "break" }, Ct);

        Assert.Equal(first.Number, elsewhere.GetProperty("stoppedOn").GetInt32());
        Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
        Assert.Equal(HttpStatusCode.OK, off.StatusCode);
        Assert.Contains("does not run", (await again.Json()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        var (one, two) = (await Clock(technician, first), await Clock(technician, second));
        Assert.Equal((30, "otherJob"), (one.GetProperty("workedMinutes").GetInt32(), one.GetProperty("last").GetProperty("reason").GetString()));
        Assert.Equal((20, "break"), (two.GetProperty("workedMinutes").GetInt32(), two.GetProperty("last").GetProperty("reason").GetString()));
    }

    [Fact]
    public async Task A_clock_that_was_stopped_without_network_counts_until_then_and_never_into_the_time_to_come()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        await technician.PostAsJsonAsync($"{visit.Api}/work-clock/on", new { }, Ct);
        var said = app.Clock.Now + Duration.FromMinutes(25);
        app.Clock.Now += Duration.FromMinutes(60);

        var ahead = await technician.PostAsJsonAsync($"{visit.Api}/work-clock/off", new { reason = "finished", at = $"{app.Clock.Now + Duration.FromMinutes(1)}" }, Ct);
        var before = await technician.PostAsJsonAsync($"{visit.Api}/work-clock/off", new { reason = "finished", at = $"{said - Duration.FromMinutes(30)}" }, Ct);
        var off = await technician.PostAsJsonAsync($"{visit.Api}/work-clock/off", new { reason = "finished", at = $"{said}" }, Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, ahead.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, before.StatusCode);
        Assert.Equal(HttpStatusCode.OK, off.StatusCode);
        Assert.Equal(25, (await Clock(technician, visit)).GetProperty("workedMinutes").GetInt32());
    }

    [Fact]
    public async Task The_database_keeps_the_spells_of_a_person_apart()
    {
        var visit = await app.CheckedIn();
        var start = app.Clock.Now;
        WorkSpell Spell(int from, int? until) => new()
        {
            Id = NewId.At(start), JobCardNumber = visit.Number, PersonId = TestWorkshop.Advisor, StartedAt = start + Duration.FromMinutes(from),
            EndedAt = until is { } end ? start + Duration.FromMinutes(end) : null, EndedFor = until is null ? null : PauseReason.Break,
        };

        await Add(Spell(0, 30), Spell(30, null));

        await Assert.ThrowsAsync<DbUpdateException>(() => Add(Spell(60, 70)));

        Task<int> Add(params WorkSpell[] spells) => app.Look(db =>
        {
            db.WorkSpells.AddRange(spells);
            return db.SaveChangesAsync(Ct);
        });
    }

    [Fact]
    public async Task The_steps_of_a_job_say_where_one_is_and_which_tools_it_takes()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var work = await technician.GetFromJsonAsync<System.Text.Json.JsonElement>($"{visit.Api}/steps", Ct);

        Assert.Equal("open", work.GetProperty("now").GetString());
        Assert.Equal(
            ["open", "measure", "adjust", "tighten", "close"], work.GetProperty("steps").EnumerateArray().Select(s => s.GetProperty("key").GetString()));
        Assert.Contains("Feeler set", work.GetProperty("steps")[1].GetProperty("tools").EnumerateArray().Select(t => t.GetString()));
    }

    private static object Attempt(double go, double noGo, int attempt) =>
        new { valve = "1-intake-1", stage = "asFound", goMm = go, noGoMm = noGo, attempt };

    private static async Task<System.Text.Json.JsonElement> Clock(HttpClient client, TestVisit visit) =>
        await client.GetFromJsonAsync<System.Text.Json.JsonElement>($"{visit.Api}/work-clock", Ct);
}
