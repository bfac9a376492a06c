using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

/// <summary>From the bench to the sign-off through the use cases alone: what one stage writes, the gates of the last one read.</summary>
public sealed class WholeVisitTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_visit_with_an_adjustment_is_signed_off_when_its_last_reason_is_gone()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        await FinishedVisits.ReadCautions(technician, visit);

        await Post(technician, $"{visit.Api}/readings", Readings("asFound", intakeMm: 0.08m));
        Assert.Equal(
            ["1-intake-1", "1-intake-1.lobe2", "2-intake-1", "2-intake-1.lobe2"],
            (await Subjects(technician, visit)).Where(s => s.StartsWith("valves.", StringComparison.Ordinal)).Select(s => s["valves.".Length..]));

        app.Clock.Now += Duration.FromMinutes(30);
        await Post(technician, $"{visit.Api}/items/{TestEngines.Adjustment}/start", null);
        await Post(technician, $"{visit.Api}/readings", new
        {
            micrometerId = TestWorkshop.Micrometer,
            shims = new[]
            {
                new { valve = "1-intake-1", stage = "asFound", thicknessMm = 2.4m, fromBox = false },
                new { valve = "1-intake-1", stage = "asLeft", thicknessMm = 2.3m, fromBox = true },
                new { valve = "2-intake-1", stage = "asFound", thicknessMm = 2.4m, fromBox = false },
                new { valve = "2-intake-1", stage = "asLeft", thicknessMm = 2.3m, fromBox = true },
            },
        });
        Assert.Contains("valves.2-intake-1.lobe2", await Subjects(technician, visit));
        await Post(technician, $"{visit.Api}/torque-sheet/ticks", new
        {
            fastenerCode = TestEngines.CamCapBolt, wrenchId = TestWorkshop.SmallWrench, tightened = true,
        });
        await Post(technician, $"{visit.Api}/readings/hand-turns", new { noHardStop = true, marksRight = true });
        await Post(technician, $"{visit.Api}/readings", Readings("asLeft", intakeMm: 0.14m));
        Assert.Equal(
            [$"fasteners.{TestEngines.DrainPlug}", $"fasteners.{TestEngines.CoverBolt}", "seals.head-cover.cover-gasket"],
            await Subjects(technician, visit));

        app.Clock.Now += Duration.FromMinutes(30);
        await FinishedVisits.TickAll(technician, visit);
        await FinishedVisits.InspectSeals(technician, visit);
        Assert.Empty(await Subjects(technician, visit));
        var signed = await Post(technician, $"{visit.Api}/sign-off", new { odometer = 24_003 });

        Assert.Equal(
            [TestEngines.OilService, TestEngines.Adjustment, TestEngines.ValveCheck],
            signed.GetProperty("doneItems").EnumerateArray().Select(i => i.GetString()));
    }

    private static async Task<List<string>> Subjects(HttpClient client, TestVisit visit) =>
        [.. (await client.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct)).GetProperty("reasons").EnumerateArray()
            .Select(r => r.GetProperty("subject").GetString()!)];

    private static object Readings(string stage, decimal intakeMm) => new
    {
        instrumentId = TestWorkshop.FeelerSet,
        headTemperatureC = 20,
        temperatureMethod = "surface probe at the head",
        readings = Domain.Clearances.ReadingRules.LobesOf(TestEngines.Twin())
            .Where(l => stage == "asFound" || l.Valve.Side == Side.Intake)
            .Select(l =>
            {
                var go = l.Valve.Side == Side.Intake ? intakeMm : 0.25m;
                return new { valve = l.Valve.ToString(), lobe = l.Lobe, stage, goMm = go, noGoMm = go + 0.01m };
            })
            .ToArray(),
    };

    private static async Task<JsonElement> Post(HttpClient client, string address, object? body)
    {
        var answer = body is null
            ? await client.PostAsync(new Uri(address, UriKind.Relative), null, Ct)
            : await client.PostAsJsonAsync(address, body, Ct);
        Assert.True(answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Ct));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
    }
}
