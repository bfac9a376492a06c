using System.Diagnostics;
using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Drift;
using Xunit;

namespace Workshop.Web.Tests.Imports;

public sealed class ImportReadingsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Lines_become_readings_shims_and_one_odometer_reading_a_day()
    {
        var id = await app.Motorcycle("IMP 1");
        var manager = await app.As(Roles.Manager);

        var answer = await manager.SendCsv(Worksheets.File(
            "IMP 1,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,2.500",
            "IMP 1,2019-05-31,24100,1-exhaust-1,as left,0.22,0.23,2.600",
            "IMP 1,2019-05-31,24100,1-intake-1,as found,0.15,0.16,",
            "IMP 1,2019-05-31,24100,1-intake-1/2,as found,,0.12,",
            "IMP 1,2021-06-30,48300,1-exhaust-1,as found,0.21,,"), "?fileName=book-7.csv");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var said = await answer.Json();
        Assert.Equal((5, 1, 2, 5, 2, 0), (Count(said, "lines"), Count(said, "motorcycles"), Count(said, "odometerReadings"),
            Count(said, "readings"), Count(said, "shims"), Count(said, "changesUnknown")));
        var import = await app.Look(db => db.ReadingImports.SingleAsync(i => i.FileName == "book-7.csv", Ct));
        Assert.Equal((5, TestWorkshop.Manager), (import.Rows, import.ImportedBy));
        var readings = await app.Look(db => db.ClearanceReadings.Where(r => r.ImportId == import.Id).OrderBy(r => r.MeasuredAt)
            .ThenBy(r => r.Valve).ThenBy(r => r.Lobe).ToListAsync(Ct));
        Assert.Equal(
            [BracketKind.GoAndNoGo, BracketKind.GoAndNoGo, BracketKind.NoneEnters, BracketKind.GoAndNoGo, BracketKind.NextNotTried],
            readings.Select(r => r.Kind));
        Assert.Equal(new LocalDate(2019, 5, 31), readings[0].MeasuredAt.InUtc().Date);
        Assert.True(readings.Single(r => r.Stage == Stage.AsLeft).MeasuredAt > readings[0].MeasuredAt);
        Assert.Equal([24_100, 48_300], await app.Look(db => db.OdometerReadings.Where(r => r.MotorcycleId == id)
            .OrderBy(r => r.ReadOn).Select(r => r.Count).ToListAsync(Ct)));
        Assert.Equal([2.500m, 2.600m], (await app.Look(db => db.ShimObservations.Where(s => s.ImportId == import.Id).ToListAsync(Ct)))
            .OrderBy(s => s.Stage).Select(s => s.Thickness!.Value.Millimetres));
    }

    [Fact]
    public async Task Forecasts_and_what_is_due_are_written_anew()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var id = await app.Motorcycle("IMP 2");
        var before = await app.Look(db => db.DueItems.Where(d => d.MotorcycleId == id).MinAsync(d => d.ExpectedOn, Ct));
        var manager = await app.As(Roles.Manager);

        await manager.SendCsv(Worksheets.File(
            "IMP 2,2019-05-31,24000,1-exhaust-1,as found,0.28,0.29,",
            "IMP 2,2021-05-31,44000,1-exhaust-1,as found,0.26,0.27,",
            "IMP 2,2023-05-31,64000,1-exhaust-1,as found,0.24,0.25,",
            "IMP 2,2025-05-31,84000,1-exhaust-1,as found,0.23,0.24,"));

        var forecasts = await app.Look(db => (
            from f in db.ClearanceForecasts
            join fitting in db.EngineFittings on f.EngineId equals fitting.EngineId
            where fitting.MotorcycleId == id
            select f).ToListAsync(Ct));
        Assert.Equal(6, forecasts.Count);
        Assert.Equal(4, Assert.Single(forecasts, f => f.LeavesLimitsOn is not null).Readings);
        Assert.NotEqual(before, await app.Look(db => db.DueItems.Where(d => d.MotorcycleId == id).MinAsync(d => d.ExpectedOn, Ct)));
    }

    [Fact]
    public async Task A_dry_run_says_what_would_be_written_and_writes_nothing()
    {
        var id = await app.Motorcycle("IMP 3");
        var manager = await app.As(Roles.Manager);

        var answer = await (await manager.SendJson(new
        {
            csv = Worksheets.File("IMP 3,2019-05-31,24100,1-exhaust-1,as left,0.28,0.29,"), dryRun = true,
        })).Json();

        Assert.True(answer.GetProperty("dryRun").GetBoolean());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("importId").ValueKind);
        Assert.Equal(1, Count(answer, "changesUnknown"));
        var visit = Assert.Single(answer.GetProperty("visits").EnumerateArray());
        Assert.Equal(("IMP 3", "2019-05-31", 24_100), (visit.GetProperty("registration").GetString(), visit.GetProperty("on").GetString(), Count(visit, "odometer")));
        Assert.Equal(0, await app.Look(db => db.OdometerReadings.CountAsync(r => r.MotorcycleId == id, Ct)));
        Assert.Equal(0, await app.Look(db => db.ReadingImports.CountAsync(i => i.FileName == "IMP 3", Ct)));
    }

    [Fact]
    public async Task Semicolons_and_decimal_commas_will_do_and_so_will_quoted_cells_and_a_byte_order_mark()
    {
        await app.Motorcycle("IMP 4");
        var manager = await app.As(Roles.Manager);

        var semicolons = await manager.SendCsv(
            "\uFEFFMotorcycle;Date;Odometer;Valve;Stage;Go (mm);No-Go (mm);Shim (mm)\r\nIMP 4;2019-05-31;24100;1-exhaust-1;As found;0,28;0,29;2,475\r\n\r\n");
        var quoted = await manager.SendCsv(
            "date,motorcycle,odometer,valve,stage,go,noGo\n2020-05-31,IMP 4,30000,1-exhaust-1,asFound,\"0,28\",\"0,29\"\n");

        Assert.Equal(HttpStatusCode.OK, semicolons.StatusCode);
        Assert.Equal(1, Count(await semicolons.Json(), "shims"));
        Assert.Equal(HttpStatusCode.OK, quoted.StatusCode);
        Assert.Equal(2, await app.Look(db => db.ClearanceReadings.CountAsync(
            r => r.Go == Clearance.FromMillimetres(0.28m) && r.NoGo == Clearance.FromMillimetres(0.29m)
                && db.EngineFittings.Any(f => f.EngineId == r.EngineId && db.Motorcycles.Any(m => m.Id == f.MotorcycleId && m.Registration == "IMP 4")), Ct)));
    }

    [Fact]
    public async Task The_same_key_imports_once()
    {
        await app.Motorcycle("IMP 5");
        var manager = await app.As(Roles.Manager);
        manager.DefaultRequestHeaders.Add("Idempotency-Key", "worksheets-once");
        var file = Worksheets.File("IMP 5,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,");

        var first = await manager.SendCsv(file);
        var second = await manager.SendCsv(file);

        Assert.Equal(await first.Content.ReadAsStringAsync(Ct), await second.Content.ReadAsStringAsync(Ct));
        Assert.Equal(HttpStatusCode.OK, second.StatusCode);
    }

    [Fact]
    public async Task Only_the_manager_imports()
    {
        var technician = await app.As(Roles.Technician);

        Assert.Equal(HttpStatusCode.Forbidden, (await technician.SendCsv(Worksheets.File())).StatusCode);
    }

    /// <summary>What was measured as left with no shim given goes on from a new level; with the shim given, on the same.</summary>
    [Fact]
    public async Task As_left_without_a_shim_cuts_the_leg_and_with_one_does_not()
    {
        var id = await app.Motorcycle("IMP 6");
        var manager = await app.As(Roles.Manager);

        await manager.SendCsv(Worksheets.File(
            "IMP 6,2019-05-31,24000,1-exhaust-1,as found,0.28,0.29,2.500",
            "IMP 6,2019-05-31,24000,1-exhaust-1,as left,0.22,0.23,2.600",
            "IMP 6,2019-05-31,24000,2-exhaust-1,as left,0.22,0.23,",
            "IMP 6,2019-05-31,24000,2-exhaust-1,as found,0.28,0.29,2.500",
            "IMP 6,2021-05-31,44000,1-exhaust-1,as found,0.20,0.21,",
            "IMP 6,2021-05-31,44000,2-exhaust-1,as found,0.20,0.21,"));

        var drift = await (await manager.GetAsync(new Uri($"/api/v1/motorcycles/{id}/drift", UriKind.Relative), Ct)).Json();
        Assert.Equal([3], LegsOf(drift, "1-exhaust-1"));
        Assert.Equal([1, 2], LegsOf(drift, "2-exhaust-1"));
    }

    /// <summary>
    /// 5,000 lines of 84 motorcycles: some three seconds of one core. The bound of time allows for a machine that is busy with
    /// much else; that nothing is asked of the database once a line or a motorcycle is counted.
    /// </summary>
    [Fact]
    public async Task Five_thousand_lines_take_seconds_and_a_few_dozen_commands()
    {
        var advisor = await app.As(Roles.Advisor);
        var lines = new List<string>();
        for (var motorcycle = 0; motorcycle < 84; motorcycle++)
        {
            await advisor.AddMotorcycle($"BIG {motorcycle}");
            for (var visit = 0; visit < 5; visit++)
            {
                foreach (var valve in new[] { "1-intake-1", "1-intake-1/2", "1-exhaust-1", "2-intake-1", "2-intake-1/2", "2-exhaust-1" })
                {
                    var start = $"BIG {motorcycle},{2010 + (visit * 3)}-05-31,{20_000 * (visit + 1)},{valve}";
                    lines.Add($"{start},as found,0.{24 - visit},0.{25 - visit},2.500");
                    lines.Add($"{start},as left,0.{24 - visit},0.{25 - visit},2.500");
                }
            }
        }

        var manager = await app.As(Roles.Manager);
        using var commands = new CountedCommands(app);
        var watch = Stopwatch.StartNew();
        var answer = await manager.SendCsv(Worksheets.File(lines.Take(5000)));
        watch.Stop();

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(5000, Count(await answer.Json(), "readings"));
        TestContext.Current.SendDiagnosticMessage($"5,000 lines took {watch.Elapsed.TotalSeconds:0.0} s and {commands.Count} commands");
        Assert.InRange(commands.Count, 10, 80);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 60);
    }

    private static IEnumerable<int> LegsOf(JsonElement drift, string valve) => drift.GetProperty("lobes").EnumerateArray()
        .Single(l => l.GetProperty("valve").GetString() == valve).GetProperty("legs").EnumerateArray()
        .Select(l => l.GetProperty("readings").GetArrayLength());

    private static int Count(JsonElement of, string name) => of.GetProperty(name).GetInt32();
}
