using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Shims;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

/// <summary>Brings a visit to where nothing stands in the way of its sign-off, and what a test changes of that.</summary>
internal static class FinishedVisits
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>Measured within limits, ticked, seals inspected, cautions read: all that the card's items ask for.</summary>
    public static async Task<TestVisit> Finish(this WorkshopApp app, TestVisit visit, HttpClient technician)
    {
        await app.MeasureAll(visit);
        await TickAll(technician, visit);
        await InspectSeals(technician, visit);
        await ReadCautions(technician, visit);
        return visit;
    }

    public static Task<int> MeasureAll(this WorkshopApp app, TestVisit visit, Stage stage = Stage.AsFound) => app.Look(db =>
    {
        foreach (var lobe in ReadingRules.LobesOf(TestEngines.Twin()))
        {
            db.ClearanceReadings.Add(Reading(app, visit, lobe, stage, lobe.Valve.Side == Side.Intake ? 0.15m : 0.25m));
        }

        return db.SaveChangesAsync(Ct);
    });

    public static Task<int> Measure(this WorkshopApp app, TestVisit visit, LobeKey lobe, Stage stage, decimal goMm, int attempt = 1) =>
        app.Look(db =>
        {
            db.ClearanceReadings.Add(Reading(app, visit, lobe, stage, goMm, attempt));
            return db.SaveChangesAsync(Ct);
        });

    public static Task<int> FitShim(this WorkshopApp app, TestVisit visit, ValveKey valve) => app.Look(db =>
    {
        db.ShimObservations.Add(new ShimObservation
        {
            Id = Domain.NewId.At(app.Clock), EngineId = visit.EngineId, JobCardNumber = visit.Number, Valve = valve, Stage = Stage.AsLeft,
            Thickness = ShimThickness.FromMillimetres(2.3m), MicrometerId = TestWorkshop.Micrometer, OdometerReadingId = visit.OdometerReadingId!.Value,
            MeasuredAt = app.Clock.Now, MeasuredBy = TestWorkshop.Technician, EnteredBy = TestWorkshop.Technician, EnteredAt = app.Clock.Now,
        });
        return db.SaveChangesAsync(Ct);
    });

    public static Task<int> Begin(this WorkshopApp app, TestVisit visit, string item)
    {
        NodaTime.Instant? now = app.Clock.Now;
        return app.Look(db => db.JobCardItems
            .Where(i => i.JobCardNumber == visit.Number && i.ServiceItemCode == item)
            .ExecuteUpdateAsync(i => i.SetProperty(x => x.StartedAt, now), Ct));
    }

    public static async Task TickAll(HttpClient technician, TestVisit visit)
    {
        var sheet = await technician.GetFromJsonAsync<System.Text.Json.JsonElement>($"{visit.Api}/torque-sheet", Ct);
        foreach (var fastener in sheet.GetProperty("sections").EnumerateArray().SelectMany(s => s.GetProperty("fasteners").EnumerateArray()))
        {
            var answer = await technician.PostAsJsonAsync($"{visit.Api}/torque-sheet/ticks", new
            {
                fastenerCode = fastener.GetProperty("fastenerCode").GetString(), wrenchId = TestWorkshop.SmallWrench, tightened = true,
            }, Ct);
            answer.EnsureSuccessStatusCode();
        }
    }

    /// <summary>Every old seal that must be inspected is fit.</summary>
    public static async Task InspectSeals(HttpClient technician, TestVisit visit)
    {
        var seals = await technician.GetFromJsonAsync<System.Text.Json.JsonElement>($"{visit.Api}/seals", Ct);
        var rows = seals.GetProperty("seals").EnumerateArray()
            .Where(s => s.GetProperty("policy").GetString() == "inspectAndReuse" && s.GetProperty("inspection").ValueKind == System.Text.Json.JsonValueKind.Null)
            .Select(s => new { placeCode = s.GetProperty("placeCode").GetString(), partCode = s.GetProperty("partCode").GetString(), verdict = "fit" })
            .ToList();
        if (rows.Count > 0)
        {
            (await technician.PostAsJsonAsync($"{visit.Api}/seals/inspections", new { seals = rows }, Ct)).EnsureSuccessStatusCode();
        }
    }

    /// <summary>What opens the readings as left once shims are in: everything ticked, two turns by hand confirmed.</summary>
    public static async Task OpenAsLeft(HttpClient technician, TestVisit visit)
    {
        await TickAll(technician, visit);
        var answer = await technician.PostAsJsonAsync($"{visit.Api}/readings/hand-turns", new { noHardStop = true, marksRight = true }, Ct);
        answer.EnsureSuccessStatusCode();
    }

    public static async Task ReadCautions(HttpClient technician, TestVisit visit)
    {
        var cautions = await technician.GetFromJsonAsync<System.Text.Json.JsonElement>($"{visit.Api}/cautions", Ct);
        foreach (var caution in cautions.GetProperty("cautions").EnumerateArray())
        {
            var answer = await technician.PostAsync(
                new Uri($"{visit.Api}/cautions/{caution.GetProperty("code").GetString()}/acknowledge", UriKind.Relative), null, Ct);
            answer.EnsureSuccessStatusCode();
        }
    }

    private static ClearanceReading Reading(
        WorkshopApp app, TestVisit visit, LobeKey lobe, Stage stage, decimal goMm, int attempt = 1) => new()
    {
        Id = Domain.NewId.At(app.Clock), EngineId = visit.EngineId, JobCardNumber = visit.Number, Valve = lobe.Valve, Lobe = lobe.Lobe,
        Stage = stage, Attempt = attempt, Kind = BracketKind.GoAndNoGo, Go = Clearance.FromMillimetres(goMm),
        NoGo = Clearance.FromMillimetres(goMm + 0.01m), InstrumentId = TestWorkshop.FeelerSet,
        HeadTemperature = Temperature.FromCelsius(20), TemperatureMethod = "surface probe at the head",
        OdometerReadingId = visit.OdometerReadingId!.Value, MeasuredAt = app.Clock.Now, MeasuredBy = TestWorkshop.Technician,
        EnteredBy = TestWorkshop.Technician, EnteredAt = app.Clock.Now,
    };
}
