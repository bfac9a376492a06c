using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Arrivals;

public sealed class RecordArrivalTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_check_in_keeps_each_thing_in_a_row_of_its_own_and_what_was_looked_for_in_vain()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.Booked();

        var answer = await advisor.PostAsJsonAsync($"{visit.Api}/check-in", new
        {
            odometerCount = 24_310, ownersWords = "Hard to start.", engineStoppedAt = "2026-03-02T07:15:00Z", nothingElseSeen = true,
            arrival = new object?[]
            {
                new { kind = "complaint", subject = "hardStarting", state = "noted", words = "when cold" },
                null,
                new { kind = "leak", subject = "engineOil", state = "dripping", words = "at the drain plug" },
                new { kind = "level", subject = "engineOil", state = "low" },
            },
        }, Ct);

        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
        var arrival = await Get(visit);
        Assert.Equal(
            ["hard starting: when cold", "engine oil dripping: at the drain plug", "none seen", "engine oil low", "none seen"],
            arrival.GetProperty("standing").EnumerateArray().Select(n => n.GetProperty("said").GetString()));
        Assert.Equal(
            ["level of the coolant", "level of the front brake", "level of the rear brake", "level of the clutch"],
            arrival.GetProperty("missing").EnumerateArray().Select(m => m.GetString()));
        Assert.All(arrival.GetProperty("standing").EnumerateArray(), n => Assert.Equal("onArrival", n.GetProperty("stage").GetString()));
    }

    [Fact]
    public async Task Notes_that_do_not_go_together_refuse_the_check_in_whole()
    {
        var advisor = await app.As(Roles.Advisor);
        var visit = await app.Booked();

        var refused = await advisor.PostAsJsonAsync($"{visit.Api}/check-in", new
        {
            odometerCount = 24_310, engineStoppedAt = "2026-03-02T07:15:00Z",
            arrival = new object[]
            {
                new { kind = "leak", subject = "engineOil", state = "dripping" },
                new { kind = "level", subject = "keys", state = "low" },
                new { kind = "level", subject = "coolant", state = "dripping" },
            },
        }, Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var problem = await refused.Json();
        Assert.Equal("arrival[0].words is empty: say in words where it is, or choose one of the usual places.", problem.Fault("arrival[0].words"));
        Assert.StartsWith("arrival[1].subject is \"keys\": of fluid levels one of engine oil, coolant", problem.Fault("arrival[1].subject"), StringComparison.Ordinal);
        Assert.StartsWith("arrival[2].state is \"dripping\": of fluid levels one of at its mark", problem.Fault("arrival[2].state"), StringComparison.Ordinal);
        Assert.False(await app.Look(db => db.CheckIns.AnyAsync(c => c.JobCardNumber == visit.Number, Ct)));
        Assert.False(await app.Look(db => db.ArrivalNotes.AnyAsync(n => n.JobCardNumber == visit.Number, Ct)));
    }

    [Fact]
    public async Task A_usual_place_is_said_without_words_and_elsewhere_only_with_them()
    {
        var (visit, technician) = (await app.CheckedIn(), await app.As(Roles.Technician));
        await Sent(technician, visit, new
        {
            notes = new object[]
            {
                new { kind = "leak", subject = "engineOil", state = "weeping", place = "cam chain tensioner" },
                new { kind = "leak", subject = "engineOil", state = "dripping", place = "drain plug", words = "since the last oil change" },
                new { kind = "damage", subject = "rear", state = "noted", place = "elsewhere", words = "grab rail bent" },
            },
        });

        var refused = await (await Send(technician, visit, new
        {
            notes = new object[]
            {
                new { kind = "leak", subject = "engineOil", state = "weeping", place = "elsewhere" },
                new { kind = "leak", subject = "coolant", state = "weeping", place = "horn" },
                new { kind = "level", subject = "coolant", state = "low", place = "radiator" },
            },
        })).Json();

        Assert.Equal(
            ["engine oil dripping: drain plug: since the last oil change", "engine oil weeping: cam chain tensioner", "rear: grab rail bent"],
            (await Get(visit)).GetProperty("standing").EnumerateArray().Select(n => n.GetProperty("said").GetString()).Order(StringComparer.Ordinal));
        Assert.StartsWith("notes[0].words is empty: say in words where it is", refused.Fault("notes[0].words"), StringComparison.Ordinal);
        Assert.StartsWith("notes[1].place is \"horn\": one of radiator, hose, ", refused.Fault("notes[1].place"), StringComparison.Ordinal);
        Assert.EndsWith(" or elsewhere is allowed.", refused.Fault("notes[1].place"), StringComparison.Ordinal);
        Assert.Equal("notes[2].place is \"radiator\": of coolant there are no usual places; say it in words.", refused.Fault("notes[2].place"));
    }

    [Fact]
    public async Task What_is_said_anew_takes_the_place_with_a_reason_and_every_row_stays()
    {
        var (visit, technician) = (await app.CheckedIn(), await app.As(Roles.Technician));
        await Sent(technician, visit, new { notes = new[] { Level("low") } });

        var without = await Send(technician, visit, new { notes = new[] { Level("atMark") } });
        Assert.Equal("reason is empty: say why what was noted before is said anew.", (await without.Json()).Fault("reason"));
        await Sent(technician, visit, new { notes = new[] { Level("atMark") }, reason = "It stood on its side stand." });

        var arrival = await Get(visit);
        var stands = Assert.Single(arrival.GetProperty("standing").EnumerateArray());
        Assert.Equal(("engine oil at its mark", "It stood on its side stand.", "Tek Nician"),
            (stands.GetProperty("said").GetString(), stands.GetProperty("because").GetString(), stands.GetProperty("by").GetString()));
        Assert.Equal("engine oil low", Assert.Single(arrival.GetProperty("earlier").EnumerateArray()).GetProperty("said").GetString());
    }

    [Fact]
    public async Task A_leak_is_corrected_by_its_id_struck_with_a_reason_and_a_second_one_stands_beside_it()
    {
        var (visit, technician) = (await app.CheckedIn(), await app.As(Roles.Technician));
        await Sent(technician, visit, new { notes = new[] { Leak("weeping", "left fork"), Leak("dripping", "right fork") } });
        var left = (await Get(visit)).GetProperty("standing").EnumerateArray().Single(n => n.GetProperty("words").GetString() == "left fork").GetProperty("id").GetGuid();

        await Sent(technician, visit, new { notes = new object[] { new { corrects = left, struck = true } }, reason = "It was rain." });

        Assert.Equal("fork oil dripping: right fork", Assert.Single((await Get(visit)).GetProperty("standing").EnumerateArray()).GetProperty("said").GetString());
        var again = await Send(technician, visit, new { notes = new object[] { new { corrects = left, struck = true } }, reason = "Again." });
        Assert.StartsWith($"notes[0].corrects is {left}: no note that stands", (await again.Json()).Fault("notes[0].corrects"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_seen_once_the_work_is_begun_is_not_said_of_the_arrival()
    {
        var (visit, technician) = (await app.CheckedIn(), await app.As(Roles.Technician));
        await Sent(technician, visit, new { nothingElseSeen = true });
        await app.Look(db =>
        {
            db.PhaseStarts.Add(new Domain.JobCards.PhaseStart
            {
                Id = Domain.NewId.At(app.Clock), JobCardNumber = visit.Number, Phase = Domain.Bookings.VisitPhase.Work, StartedAt = app.Clock.Now,
                EnteredBy = TestWorkshop.Technician,
            });
            return db.SaveChangesAsync(Ct);
        });

        await Sent(technician, visit, new { notes = new[] { Leak("weeping", "behind the cover") } });

        var standing = (await Get(visit)).GetProperty("standing").EnumerateArray().ToList();
        Assert.Equal([("fork oil weeping: behind the cover", "duringWork"), ("none seen", "onArrival")],
            standing.Where(n => n.GetProperty("kind").GetString() == "leak").Select(n => (n.GetProperty("said").GetString()!, n.GetProperty("stage").GetString()!)).Order());
    }

    [Fact]
    public async Task None_seen_is_refused_beside_what_was_seen_and_a_card_that_is_not_here_takes_no_notes()
    {
        var (visit, technician) = (await app.CheckedIn(), await app.As(Roles.Technician));
        await Sent(technician, visit, new { notes = new[] { Leak("weeping", "left fork") } });

        var none = await Send(technician, visit, new { notes = new object[] { new { kind = "leak", state = "noneSeen" } } });
        Assert.StartsWith("notes[0].state is \"none seen\", but it is noted already: fork oil weeping", (await none.Json()).Fault("notes[0].state"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, (await Send(technician, await app.Booked(), new { nothingElseSeen = true })).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await Send(technician, visit, new { })).StatusCode);
    }

    [Fact]
    public async Task The_database_refuses_to_change_or_take_out_a_note()
    {
        var (visit, technician) = (await app.CheckedIn(), await app.As(Roles.Technician));
        await Sent(technician, visit, new { nothingElseSeen = true });

        await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, "delete from arrival_notes", Ct));
        await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, "update arrival_notes set state = 'noted'", Ct));
    }

    [Fact]
    public async Task The_sign_off_waits_for_the_state_on_arrival_only_where_the_engine_model_asks()
    {
        var technician = await app.As(Roles.Technician);
        var asks = await app.CheckedIn(specification: TestEngines.TwinThatIsLookedOver());
        var silent = await app.CheckedIn();

        Assert.Contains("arrival", await Reasons(technician, asks));
        Assert.DoesNotContain("arrival", await Reasons(technician, silent));

        await Sent(technician, asks, new
        {
            nothingElseSeen = true,
            notes = new[] { "engineOil", "coolant", "frontBrake", "rearBrake", "clutch" }.Select(s => new { kind = "level", subject = s, state = "atMark" }),
        });
        Assert.DoesNotContain("arrival", await Reasons(technician, asks));
    }

    private static object Level(string state) => new { kind = "level", subject = "engineOil", state };

    private static object Leak(string state, string words) => new { kind = "leak", subject = "forkOil", state, words };

    private static Task<HttpResponseMessage> Send(HttpClient client, TestVisit visit, object body) => client.PostAsJsonAsync($"{visit.Api}/arrival", body, Ct);

    private static async Task Sent(HttpClient client, TestVisit visit, object body)
    {
        var answer = await Send(client, visit, body);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
    }

    private static async Task<IReadOnlyList<string>> Reasons(HttpClient client, TestVisit visit) =>
        [.. (await (await client.GetAsync(new Uri($"{visit.Api}/sign-off", UriKind.Relative), Ct)).Json()).GetProperty("reasons").EnumerateArray()
            .Select(r => r.GetProperty("subject").GetString()!)];

    private async Task<JsonElement> Get(TestVisit visit) =>
        await (await (await app.As(Roles.Technician)).GetAsync(new Uri($"{visit.Api}/arrival", UriKind.Relative), Ct)).Json();
}
