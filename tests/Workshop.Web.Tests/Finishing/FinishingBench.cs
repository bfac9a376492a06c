using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Tooling;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Finishing;

/// <summary>Visits of an engine that asks for everything that may follow the work, and what is sent of it.</summary>
internal static class FinishingBench
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static readonly Dictionary<string, Likelihood> OilOnly = new() { [TestEngines.OilService] = Likelihood.Certain };

    public static readonly BalanceFigures Figures = new(1300, 50, Pressure.FromKilopascals(2), Temperature.FromCelsius(80));

    /// <summary>All kinds, on every visit; the drain plug's torque is checked once more.</summary>
    public static readonly EngineSpecification AsksForAll = TestEngines.Twin() with
    {
        VisitChecks =
        [
            new(VisitCheckKind.Balance, WhenAsked.Always) { Balance = Figures, Note = "By the screw of cylinder 2." },
            new(VisitCheckKind.LeakCheck, WhenAsked.Always) { Places = ["fuel line"] },
            new(VisitCheckKind.TestRide, WhenAsked.Always),
            new(VisitCheckKind.Recheck, WhenAsked.Always) { OilAfterRun = true, FastenersAgain = [TestEngines.DrainPlug] },
            new(VisitCheckKind.ReminderReset, WhenAsked.Always),
            new(VisitCheckKind.PartsCounted, WhenAsked.Always),
        ],
        AfterWork = new AfterWork(Recheck: new Recheck([TestEngines.OilService], 3, 15)),
    };

    public static EngineSpecification Asks(params CheckOnVisit[] checks) => TestEngines.Twin() with { VisitChecks = checks };

    public static Task<Guid> Gauge(this WorkshopApp app) => app.Look(async db =>
    {
        var gauge = new Instrument
        {
            Id = Domain.NewId.At(app.Clock), Kind = InstrumentKind.VacuumGauge, Name = "Vacuum gauges, four",
            SerialNumber = Guid.CreateVersion7().ToString("N")[16..], Unit = "kPa",
        };
        db.Instruments.Add(gauge);
        await db.SaveChangesAsync(Ct);
        return gauge.Id;
    });

    public static object Vacuums(Guid gauge, decimal first, decimal second, string stage = "asLeft", string? reason = null) => new
    {
        stage, speedRpm = 1310, hotAtC = 85, hotOf = "coolant", gaugeId = gauge, reason,
        cylinders = new[] { new { cylinder = 1, vacuumKpa = first }, new { cylinder = 2, vacuumKpa = second } },
    };

    public static Task<HttpResponseMessage> Post(HttpClient client, TestVisit visit, string part, object body) =>
        client.PostAsJsonAsync($"{visit.Api}/after-work/{part}", body, Ct);

    public static async Task<JsonElement> Posted(HttpClient client, TestVisit visit, string part, object body)
    {
        var answer = await Post(client, visit, part, body);
        var json = await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
        Assert.True(answer.IsSuccessStatusCode, json.ToString());
        return json;
    }

    public static Task<JsonElement> Read(HttpClient client, TestVisit visit) =>
        client.GetFromJsonAsync<JsonElement>($"{visit.Api}/after-work", Ct);

    /// <summary>What stands in the way of the sign-off, of what follows the work.</summary>
    public static async Task<IReadOnlyList<string>> Left(HttpClient client, TestVisit visit) =>
        [.. (await client.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct)).GetProperty("reasons").EnumerateArray()
            .Where(r => r.GetProperty("place").GetString() == "afterWork" || r.GetProperty("subject").GetString() == "asLeft.secondPerson")
            .Select(r => r.GetProperty("subject").GetString()!)];
}
