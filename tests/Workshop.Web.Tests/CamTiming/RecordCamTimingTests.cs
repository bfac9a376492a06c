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
using static Workshop.Web.Tests.CamTiming.TimingBodies;

namespace Workshop.Web.Tests.CamTiming;

public sealed class RecordCamTimingTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Both_camshafts_late_come_back_with_figures_and_the_likely_cause()
    {
        var (visit, technician) = await Visit();

        await Sent(technician, visit, Late(4.5m, 4, extensionMm: 14.5m, wheelOff: 1.5m));

        var drive = (await Get(visit)).GetProperty("drives")[0];
        var found = drive.GetProperty("asFound");
        var intake = found.GetProperty("cams")[0].GetProperty("lobes")[0];
        Assert.Equal(24, drive.GetProperty("teeth")[0].GetDecimal());
        Assert.Equal(109.5m, intake.GetProperty("lobeCentreDegrees").GetDecimal());
        Assert.Equal(230, intake.GetProperty("durationDegrees").GetDecimal());
        Assert.Equal(-4.5m, intake.GetProperty("advanceDegrees").GetDecimal());
        Assert.Equal(0.5m, intake.GetProperty("scatterDegrees").GetDecimal());
        Assert.Equal("late", intake.GetProperty("verdict").GetString());
        Assert.Contains("corrected", intake.GetProperty("deadCentre").GetString(), StringComparison.Ordinal);
        var pair = found.GetProperty("pair");
        Assert.Equal(106.25m, pair.GetProperty("separationCamDegrees").GetDecimal()); // (109.5 + 103) / 2
        Assert.Equal(17.5m, pair.GetProperty("overlapDegrees").GetDecimal()); // 230 - 2 x 106.25
        Assert.Equal(-3.25m, pair.GetProperty("advanceDegrees").GetDecimal());
        Assert.Equal(4.25m, found.GetProperty("meanRetardDegrees").GetDecimal());
        Assert.Equal("chainOrGuideWear", found.GetProperty("likelyCause").GetString());
        Assert.Contains("at its limit of 14 mm", found.GetProperty("causeSentences")[1].GetString(), StringComparison.Ordinal);
        Assert.Equal("notTold", drive.GetProperty("asLeft").GetProperty("likelyCause").GetString());
    }

    [Fact]
    public async Task What_is_checked_again_supersedes_with_a_reason_and_every_entry_stays()
    {
        var (visit, technician) = await Visit();
        await Sent(technician, visit, Late(9, 9));

        var without = await Send(technician, visit, Late(0, 0));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, without.StatusCode);
        Assert.Contains("say why Intake camshaft, Exhaust camshaft is entered again", (await without.Json()).Fault("reason"), StringComparison.Ordinal);
        await Sent(technician, visit, Late(0, 0, reason: "The wheel had slipped."));

        var card = await Get(visit);
        Assert.Equal("nothingOff", card.GetProperty("drives")[0].GetProperty("asFound").GetProperty("likelyCause").GetString());
        var history = card.GetProperty("history").EnumerateArray().ToList();
        Assert.Equal([false, false, true, true], history.Select(h => h.GetProperty("counts").GetBoolean()));
        Assert.Equal("The wheel had slipped.", history[2].GetProperty("reason").GetString());
    }

    [Fact]
    public async Task The_database_refuses_to_change_or_take_out_an_entry()
    {
        var (visit, technician) = await Visit();
        await Sent(technician, visit, Late(1, 1, extensionMm: 6));

        foreach (var table in new[] { "cam_timing_checks", "cam_timing_readings", "chain_readings" })
        {
            await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, $"delete from {table}", Ct));
        }

        await Assert.ThrowsAsync<PostgresException>(() => app.Look(db => db.Database.ExecuteSqlRawAsync("update cam_timing_readings set opens_degrees = 0", Ct)));
    }

    [Fact]
    public async Task Faults_of_shape_are_named_with_field_value_and_what_is_allowed()
    {
        var (visit, technician) = await Visit();

        var answer = await Send(technician, visit, new
        {
            stage = "asFound", inRunningDirection = false, deadCentre = "dialGauge", liftMm = 25,
            lobes = new[] { new { camshaft = "intake-cam", side = "intake", readings = new[] { new { opensDegrees = (decimal?)181, closesDegrees = (decimal?)null } } } },
            chains = new[] { new { drive = TestEngines.CamChain, extensionMm = 3, atStop = true } },
        });

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await answer.Json();
        Assert.Contains("only true is recorded", problem.Fault("inRunningDirection"), StringComparison.Ordinal);
        Assert.Contains("give the degree wheel", problem.Fault("degreeWheelId"), StringComparison.Ordinal);
        Assert.Contains("either side of dead centre", problem.Fault("stopBeforeDegrees"), StringComparison.Ordinal);
        Assert.Contains("is 25 mm: 0 to 20 mm", problem.Fault("liftMm"), StringComparison.Ordinal);
        Assert.Contains("is 181 degrees: -180 to 180 degrees", problem.Fault("lobes[0].readings[0].opensDegrees"), StringComparison.Ordinal);
        Assert.Contains("as the lift was left", problem.Fault("lobes[0].readings[0].closesDegrees"), StringComparison.Ordinal);
        Assert.Contains("leave one of them out", problem.Fault("chains[0].extensionMm"), StringComparison.Ordinal);
        Assert.Equal(0, await app.Look(db => db.CamTimingChecks.CountAsync(c => c.JobCardNumber == visit.Number, Ct)));
    }

    [Fact]
    public async Task What_the_engine_model_does_not_state_is_refused_all_at_once()
    {
        var (visit, technician) = await Visit();

        var answer = await Send(technician, visit, new
        {
            stage = "asFound", inRunningDirection = true, degreeWheelId = TestWorkshop.DialGauge, dialGaugeId = TestWorkshop.OldDialGauge, deadCentre = "marks",
            liftMm = 1, station = "valve",
            alignments = new[] { new { camshaft = "no-cam", passes = true } },
            lobes = new[] { Lobe("intake-cam", "exhaust", 10, 40) },
            chains = new[] { new { drive = TestEngines.CamChain, extensionMm = (decimal?)18.5m, lengthMm = (decimal?)null }, new { drive = "no-chain", extensionMm = (decimal?)null, lengthMm = (decimal?)100 } },
        });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var problem = await answer.Json();
        Assert.Contains("it is no degree wheel; choose a degree wheel", problem.Fault("degreeWheelId"), StringComparison.Ordinal);
        Assert.Contains("its calibration was due on 2025-01-05", problem.Fault("dialGaugeId"), StringComparison.Ordinal);
        Assert.Contains("\"no-cam\": the engine model states no timing of it", problem.Fault("alignments[0].camshaft"), StringComparison.Ordinal);
        Assert.Contains("of \"intake-cam\" intake is timed", problem.Fault("lobes[0].side"), StringComparison.Ordinal);
        Assert.Contains("goes out by 18 mm at most", problem.Fault("chains[0].extensionMm"), StringComparison.Ordinal);
        Assert.Contains("the engine model has cam-chain", problem.Fault("chains[1].drive"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_engine_model_without_drives_says_so()
    {
        var visit = await app.CheckedIn();
        var answer = await Send(await app.As(Roles.Technician), visit, Aligned("asFound"));

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("states nothing about cam timing", (await answer.Json()).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_advisor_reads_and_does_not_write()
    {
        var (visit, _) = await Visit();
        var advisor = await app.As(Roles.Advisor);

        Assert.Equal(HttpStatusCode.OK, (await advisor.GetAsync(new Uri($"{visit.Api}/cam-timing", UriKind.Relative), Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Send(advisor, visit, Aligned("asFound"))).StatusCode);
    }

    private async Task<(TestVisit Visit, HttpClient Technician)> Visit() =>
        (await app.CheckedIn(items: TimingOnly, specification: Engine), await app.As(Roles.Technician));

    private async Task<JsonElement> Get(TestVisit visit) =>
        await (await app.As(Roles.Technician)).GetFromJsonAsync<JsonElement>($"{visit.Api}/cam-timing", Ct);
}
