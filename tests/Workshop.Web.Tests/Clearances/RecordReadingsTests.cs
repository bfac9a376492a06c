using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Workshop.Domain.Clearances;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Clearances.ReadingBodies;

namespace Workshop.Web.Tests.Clearances;

public sealed class RecordReadingsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Readings_come_back_by_measuring_position_with_their_verdicts()
    {
        var visit = await app.CheckedIn(odometerKm: 24_310);
        var technician = await app.As(Roles.Technician);

        var sent = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(
            Found("1-intake-1", 0.12, 0.13), Found("1-intake-1", 0.20, 0.25, lobe: 2), Found("1-exhaust-1", 0.15, 0.16),
            Found("2-intake-1", 0.10, 0.11)), Ct);

        Assert.Equal(HttpStatusCode.OK, sent.StatusCode);
        var answer = await Get(visit);
        Assert.Equal(24_310, answer.GetProperty("odometerCount").GetInt32());
        Assert.Equal(
            ["Compression dead centre of cylinder 1", "Compression dead centre of cylinder 2"],
            answer.GetProperty("positions").EnumerateArray().Select(p => p.GetProperty("name").GetString()));
        Assert.Equal("within", Verdict(answer.Lobe("1-intake-1")));
        Assert.Equal("notDecided", Verdict(answer.Lobe("1-intake-1", 2)));
        Assert.Equal(0.23m, answer.Lobe("1-intake-1", 2).GetProperty("asFound").GetProperty("tryBladeMm").GetDecimal());
        Assert.Equal("tooTight", Verdict(answer.Lobe("1-exhaust-1")));
        Assert.Equal("within", Verdict(answer.Lobe("2-intake-1")));
        Assert.Equal(JsonValueKind.Null, answer.Lobe("2-exhaust-1").GetProperty("asFound").ValueKind);
        Assert.Equal("Tek Nician", answer.Lobe("2-intake-1").GetProperty("asFound").GetProperty("measuredByName").GetString());
    }

    [Fact]
    public async Task Every_fault_of_shape_is_named_with_its_field_its_value_and_what_is_allowed_and_nothing_is_written()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var answer = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(
            Found("1-intake-1", 0.12, 0.13), Found("1-exhaust-1", 0.25, 0.25), Found("intake one", 0.1, 0.2),
            Found("2-exhaust-1", 4, 5), Found("2-intake-1", null, 0.05), new { valve = "1-intake-1", lobe = 2, goMm = 0.1, noGoMm = 0.2 }), Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await answer.Json();
        Assert.Equal(
            "cylinder 1, exhaust 1, as found: No-go is 0.25 mm: it must be greater than go, which is 0.25 mm.",
            problem.Fault("readings[1].noGoMm"));
        Assert.Contains("valve is \"intake one\": cylinder-side-position", problem.Fault("readings[2].valve"), StringComparison.Ordinal);
        Assert.Equal(
            "readings[3].goMm of cylinder 2, exhaust 1, as found is 4 mm: 0 to 3 mm with at most 4 decimals is allowed.",
            problem.Fault("readings[3].goMm"));
        Assert.Contains("Go is empty", problem.Fault("readings[4].goMm"), StringComparison.Ordinal);
        Assert.Contains("stage is empty: give asFound or asLeft", problem.Fault("readings[5].stage"), StringComparison.Ordinal);
        Assert.Equal(0, await Count(visit));
    }

    [Fact]
    public async Task A_valve_or_lobe_that_the_engine_lacks_is_refused_with_those_that_it_has_and_nothing_is_written()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var answer = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(
            Found("1-intake-1", 0.12, 0.13), Found("3-intake-1", 0.12, 0.13), Found("1-exhaust-1", 0.22, 0.23, lobe: 2)), Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var problem = await answer.Json();
        Assert.Equal(
            "readings[1].valve is 3-intake-1: the engine has no such valve; it has 1-intake-1, 1-exhaust-1, 2-intake-1, 2-exhaust-1.",
            problem.Fault("readings[1].valve"));
        Assert.Equal("readings[2].lobe is 2: cylinder 1, exhaust 1 has one lobe; 1 is allowed.", problem.Fault("readings[2].lobe"));
        Assert.Equal(0, await Count(visit));
    }

    [Fact]
    public async Task A_warm_engine_is_refused_with_its_temperature_and_the_range_and_kept_only_with_a_reason()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        var warm = Send(Found("1-exhaust-1", 0.22, 0.23)).With("headTemperatureC", 48);

        var refused = await technician.PostAsJsonAsync($"{visit.Api}/readings", warm, Ct);
        var kept = await technician.PostAsJsonAsync($"{visit.Api}/readings", warm.With("keptWhyNotCold", "Owner waits, only to compare"), Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains(
            "headTemperatureC is 48 °C: the engine is too warm. 5 to 35 °C is allowed",
            (await refused.Json()).Fault("headTemperatureC"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, kept.StatusCode);
        var reading = (await Get(visit)).Lobe("1-exhaust-1").GetProperty("asFound");
        Assert.True(reading.GetProperty("notCold").GetBoolean());
        Assert.Equal("Not cold: Owner waits, only to compare", reading.GetProperty("reason").GetString());
    }

    [Theory]
    [InlineData("\"0,15\"")]
    [InlineData("\"0.15\"")]
    [InlineData("\"tight\"")]
    public async Task A_number_that_is_none_names_its_place_in_the_body(string typed)
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        using var body = new StringContent(
            $$"""{"headTemperatureC": 20, "readings": [{"valve": "1-intake-1", "stage": "asFound", "goMm": {{typed}}, "noGoMm": 0.16}]}""",
            Encoding.UTF8, "application/json");

        var answer = await technician.PostAsync($"{visit.Api}/readings", body, Ct);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.StartsWith("readings[0].goMm", (await answer.Json()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(0, await Count(visit));
    }

    [Fact]
    public async Task A_lobe_read_again_asks_for_a_reason_and_then_supersedes()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Found("1-exhaust-1", 0.15, 0.16)), Ct);
        var again = Send(Found("1-exhaust-1", 0.21, 0.22));

        var without = await technician.PostAsJsonAsync($"{visit.Api}/readings", again, Ct);
        var with = await technician.PostAsJsonAsync($"{visit.Api}/readings", again.With("reason", "Blade was bent"), Ct);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, without.StatusCode);
        Assert.Contains("cylinder 1, exhaust 1 as found (0.15 to 0.16 mm)", (await without.Json()).Fault("reason"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, with.StatusCode);
        var lobe = (await Get(visit)).Lobe("1-exhaust-1");
        Assert.Equal(0.21m, lobe.GetProperty("asFound").GetProperty("goMm").GetDecimal());
        Assert.Equal(2, lobe.GetProperty("asFound").GetProperty("attempt").GetInt32());
        Assert.Equal("Blade was bent", lobe.GetProperty("asFound").GetProperty("reason").GetString());
        var history = lobe.GetProperty("history").EnumerateArray().ToList();
        Assert.Equal(2, history.Count);
        Assert.Equal(history[0].GetProperty("id").GetGuid(), history[1].GetProperty("supersedesId").GetGuid());
    }

    [Fact]
    public async Task The_database_itself_refuses_to_change_a_reading_whoever_asks()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        await technician.PostAsJsonAsync(
            $"{visit.Api}/readings",
            Send(Found("1-exhaust-1", 0.15, 0.16)).With("shims", new[] { new { valve = "1-exhaust-1", stage = "asFound", thicknessMm = 2.1 } }), Ct);

        foreach (var table in new[] { "clearance_readings", "shim_observations" })
        {
            foreach (var sql in new[] { $"update {table} set entered_at = now() where job_card_number = {visit.Number}", $"delete from {table} where job_card_number = {visit.Number}" })
            {
                var service = await Assert.ThrowsAsync<PostgresException>(() => Execute(app.Database.Connections.Service, sql));
                var owner = await Assert.ThrowsAsync<PostgresException>(() => Execute(app.Database.Connections.Direct, sql));

                Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, service.SqlState);
                Assert.Equal(PostgresErrorCodes.RestrictViolation, owner.SqlState);
            }
        }

        Assert.Equal(1, await Count(visit));
    }

    [Fact]
    public async Task The_database_itself_refuses_a_no_go_that_is_not_above_go()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Found("1-exhaust-1", 0.15, 0.16)), Ct);

        var refused = await Assert.ThrowsAsync<PostgresException>(() => Execute(app.Database.Connections.Service,
            $"""
             insert into clearance_readings (id, engine_id, job_card_number, valve, lobe, stage, attempt, kind, go_mm, no_go_mm, stacked,
               not_cold, not_remeasured, odometer_reading_id, measured_at, measured_by, entered_by, entered_at)
             select gen_random_uuid(), engine_id, job_card_number, valve, lobe, stage, 2, kind, 0.16, 0.16, false,
               not_cold, not_remeasured, odometer_reading_id, measured_at, measured_by, entered_by, entered_at
             from clearance_readings where job_card_number = {visit.Number}
             """));

        Assert.Equal("ck_clearance_readings_no_go_above_go", refused.ConstraintName);
    }

    [Fact]
    public async Task A_valve_that_was_not_disturbed_keeps_what_was_found_as_its_as_left()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        var event1 = new[] { new { valve = "1-intake-1", kind = "notDisturbed" } };

        var early = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Found("1-intake-1", 0.12, 0.13)).With("events", event1), Ct);
        var done = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(
            Found("1-intake-1", 0.12, 0.13), Found("1-intake-1", 0.14, 0.15, lobe: 2)).With("events", event1), Ct);

        Assert.Contains("lobe 2 has no reading as found", (await early.Json()).Fault("events[0].kind"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, done.StatusCode);
        var left = (await Get(visit)).Lobe("1-intake-1", 2).GetProperty("asLeft");
        Assert.True(left.GetProperty("notRemeasured").GetBoolean());
        Assert.Equal(0.14m, left.GetProperty("goMm").GetDecimal());

        // What is found to be wrong afterwards is wrong as left too.
        await technician.PostAsJsonAsync(
            $"{visit.Api}/readings", Send(Found("1-intake-1", 0.13, 0.14, lobe: 2)).With("reason", "Read from the wrong blade"), Ct);
        left = (await Get(visit)).Lobe("1-intake-1", 2).GetProperty("asLeft");
        Assert.Equal(0.13m, left.GetProperty("goMm").GetDecimal());
        Assert.True(left.GetProperty("notRemeasured").GetBoolean());
    }

    [Fact]
    public async Task A_valve_whose_shim_came_out_was_disturbed()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var answer = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Found("1-exhaust-1", 0.22, 0.23))
            .With("shims", new[] { new { valve = "1-exhaust-1", stage = "asFound", thicknessMm = 2.1 } })
            .With("events", new[] { new { valve = "1-exhaust-1", kind = "notDisturbed" } }), Ct);

        Assert.Contains("since its shim came out at this visit", (await answer.Json()).Fault("events[0].kind"), StringComparison.Ordinal);
        Assert.Equal(0, await Count(visit));
    }

    [Fact]
    public async Task A_screw_that_the_engine_lacks_was_not_turned()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var answer = await technician.PostAsJsonAsync($"{visit.Api}/readings", new { events = new[] { new { valve = "1-intake-1", kind = "screwTurned" } } }, Ct);

        Assert.Contains("this engine has shims", (await answer.Json()).Fault("events[0].kind"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_instrument_out_of_calibration_or_of_another_kind_is_refused()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        var overdue = await AddFeelerSet(due: new LocalDate(2026, 3, 1));
        var dueToday = await AddFeelerSet(due: new LocalDate(2026, 3, 2));

        async Task<HttpResponseMessage> With(Guid instrument) => await technician.PostAsJsonAsync(
            $"{visit.Api}/readings", Send(Found("1-exhaust-1", 0.22, 0.23)).With("instrumentId", instrument), Ct);

        Assert.Contains("its calibration was due on 2026-03-01", (await (await With(overdue)).Json()).Fault("instrumentId"), StringComparison.Ordinal);
        Assert.Contains("it is no feeler set", (await (await With(TestWorkshop.Micrometer)).Json()).Fault("instrumentId"), StringComparison.Ordinal);
        Assert.Contains("no instrument has it", (await (await With(Domain.NewId.At(app.Clock))).Json()).Fault("instrumentId"), StringComparison.Ordinal);
        Assert.Equal(0, await Count(visit));
        Assert.Equal(HttpStatusCode.OK, (await With(dueToday)).StatusCode);
    }

    [Fact]
    public async Task A_time_before_the_check_in_or_ahead_and_a_stranger_are_refused()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        var body = Send(Found("1-exhaust-1", 0.22, 0.23)).With("measuredBy", TestWorkshop.Shelf);

        var ahead = await technician.PostAsJsonAsync($"{visit.Api}/readings", body.With("measuredAt", "2026-03-02T09:00:00Z"), Ct);
        var before = await technician.PostAsJsonAsync($"{visit.Api}/readings", body.With("measuredAt", "2026-03-02T07:59:59Z"), Ct);

        foreach (var answer in new[] { await ahead.Json(), await before.Json() })
        {
            Assert.Contains("from the check-in at 2026-03-02 09:00", answer.Fault("measuredAt"), StringComparison.Ordinal);
            Assert.Contains("nobody of the workshop's staff", answer.Fault("measuredBy"), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Readings_wait_for_the_check_in_and_need_a_technician()
    {
        var booked = await app.Booked();
        var body = Send(Found("1-exhaust-1", 0.22, 0.23));

        var early = await (await app.As(Roles.Technician)).PostAsJsonAsync($"{booked.Api}/readings", body, Ct);
        var advisor = await (await app.As(Roles.Advisor)).PostAsJsonAsync($"{booked.Api}/readings", body, Ct);
        var nowhere = await (await app.As(Roles.Technician)).PostAsJsonAsync("/api/v1/job-cards/999999/readings", body, Ct);

        Assert.Equal(HttpStatusCode.Conflict, early.StatusCode);
        Assert.Contains("check it in first", (await early.Json()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, advisor.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, nowhere.StatusCode);
    }

    [Fact]
    public async Task An_empty_send_says_what_is_wanted_and_the_same_lobe_twice_is_refused()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var empty = await technician.PostAsJsonAsync($"{visit.Api}/readings", new { readings = new object?[] { null } }, Ct);
        var twice = await technician.PostAsJsonAsync(
            $"{visit.Api}/readings", Send(Found("1-exhaust-1", 0.22, 0.23), Found("1-exhaust-1", 0.23, 0.24)), Ct);

        Assert.Contains("give at least one reading", (await empty.Json()).Fault("readings"), StringComparison.Ordinal);
        Assert.Contains("readings[0] reads the same lobe and stage", (await twice.Json()).Fault("readings[1].valve"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_technicians_at_one_card_number_their_attempts_one_after_the_other()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => technician.PostAsJsonAsync(
            $"{visit.Api}/readings", Send(Found("1-exhaust-1", (20 + i) / 100.0, (21 + i) / 100.0)).With("reason", "Both hands at once"), Ct)));

        Assert.All(answers, a => Assert.Equal(HttpStatusCode.OK, a.StatusCode));
        Assert.Equal([1, 2, 3, 4, 5, 6], await app.Look(db => db.ClearanceReadings.Where(r => r.JobCardNumber == visit.Number)
            .OrderBy(r => r.Attempt).Select(r => r.Attempt).ToListAsync(Ct)));
    }

    private static string? Verdict(JsonElement lobe) => lobe.GetProperty("asFound").GetProperty("verdict").GetString();

    private async Task<JsonElement> Get(TestVisit visit) =>
        await (await (await app.As(Roles.Advisor)).GetAsync($"{visit.Api}/readings", Ct)).Json();

    private Task<int> Count(TestVisit visit) =>
        app.Look(db => db.ClearanceReadings.CountAsync(r => r.JobCardNumber == visit.Number, Ct));

    private Task<Guid> AddFeelerSet(LocalDate due) => app.Look(async db =>
    {
        var id = Domain.NewId.At(app.Clock);
        db.Instruments.Add(new Domain.Tooling.Instrument
        {
            Id = id, Kind = Domain.Tooling.InstrumentKind.FeelerSet, Name = "Feeler set", SerialNumber = $"F-{id}", Unit = "mm", CalibrationDueOn = due,
        });
        await db.SaveChangesAsync(Ct);
        return id;
    });

    private static async Task Execute(string connection, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Ct);
    }
}
