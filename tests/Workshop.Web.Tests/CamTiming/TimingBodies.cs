using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.CamTiming;

/// <summary>Sends of cam timing, of an engine whose lobe centres are 105 after and 107 before top dead centre.</summary>
internal static class TimingBodies
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static readonly Dictionary<string, Likelihood> TimingOnly = new() { [TestEngines.TimingCheck] = Likelihood.Certain };

    public static readonly Dictionary<string, Likelihood> WithAdjustment = new()
    {
        [TestEngines.TimingCheck] = Likelihood.Certain, [TestEngines.Adjustment] = Likelihood.Certain,
    };

    public static EngineSpecification Engine { get; } = TestEngines.TwinWithCamDrive();

    /// <summary>Both camshafts by degree wheel at 1 mm, late by so much; the tensioner out by so much.</summary>
    public static object Late(decimal intake, decimal exhaust, decimal? extensionMm = null, string stage = "asFound", string? reason = null, decimal wheelOff = 0) => new
    {
        stage, inRunningDirection = true, degreeWheelId = TestWorkshop.DegreeWheel, dialGaugeId = TestWorkshop.DialGauge,
        deadCentre = "positiveStop", stopBeforeDegrees = 30 - wheelOff, stopAfterDegrees = 30 + wheelOff, liftMm = 1, station = "follower", reason,
        lobes = new[]
        {
            // Duration 230: intake opens 115 - centre before top, exhaust opens 115 + centre - 180 before bottom.
            Lobe("intake-cam", "intake", 115 - 105 - intake - wheelOff, 115 + 105 - 180 + intake + wheelOff),
            Lobe("exhaust-cam", "exhaust", 115 + 107 - 180 - exhaust - wheelOff, 115 - 107 + exhaust + wheelOff),
        },
        chains = extensionMm is null ? null : new[] { new { drive = TestEngines.CamChain, extensionMm } },
    };

    public static object Aligned(string stage, bool intake = true, bool exhaust = true, string? reason = null) => new
    {
        stage, inRunningDirection = true, reason,
        alignments = new[] { new { camshaft = "intake-cam", passes = intake }, new { camshaft = "exhaust-cam", passes = exhaust } },
    };

    public static object Lobe(string camshaft, string side, decimal opens, decimal closes) => new
    {
        camshaft, side,
        readings = new[] { new { opensDegrees = opens + 0.25m, closesDegrees = closes - 0.25m }, new { opensDegrees = opens - 0.25m, closesDegrees = closes + 0.25m } },
    };

    public static Task<HttpResponseMessage> Send(HttpClient client, TestVisit visit, object body) =>
        client.PostAsJsonAsync($"{visit.Api}/cam-timing", body, Ct);

    public static async Task<JsonElement> Sent(HttpClient client, TestVisit visit, object body)
    {
        var answer = await Send(client, visit, body);
        var json = await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
        Assert.True(answer.IsSuccessStatusCode, json.ToString());
        return json;
    }
}
