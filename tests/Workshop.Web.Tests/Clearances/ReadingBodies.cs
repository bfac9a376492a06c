using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Clearances;

/// <summary>Bodies of POST readings, and what an answer says.</summary>
internal static class ReadingBodies
{
    public static Dictionary<string, object?> Send(params object[] readings) => new()
    {
        ["instrumentId"] = TestWorkshop.FeelerSet,
        ["headTemperatureC"] = 21.5,
        ["temperatureMethod"] = "surface probe at the head",
        ["readings"] = readings,
    };

    public static Dictionary<string, object?> With(this Dictionary<string, object?> body, string name, object? value)
    {
        body[name] = value;
        return body;
    }

    public static object Found(string valve, double? go, double? noGo, int lobe = 1, string kind = "goAndNoGo") =>
        new { valve, lobe, stage = "asFound", kind, goMm = go, noGoMm = noGo };

    public static object Left(string valve, double? go, double? noGo, int lobe = 1) =>
        new { valve, lobe, stage = "asLeft", goMm = go, noGoMm = noGo };

    public static async Task<JsonElement> Json(this HttpResponseMessage answer) =>
        await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);

    /// <summary>The sentences at a field of a problem.</summary>
    public static string Fault(this JsonElement problem, string field)
    {
        var errors = problem.GetProperty("errors");
        Assert.True(errors.TryGetProperty(field, out var sentences), $"No fault at {field}: {errors}");
        return string.Join(" ", sentences.EnumerateArray().Select(s => s.GetString()));
    }

    /// <summary>One lobe of GET readings.</summary>
    public static JsonElement Lobe(this JsonElement answer, string valve, int lobe = 1) => answer.GetProperty("positions").EnumerateArray()
        .SelectMany(p => p.GetProperty("lobes").EnumerateArray())
        .Single(l => l.GetProperty("valve").GetString() == valve && l.GetProperty("lobe").GetInt32() == lobe);

    public static JsonElement Valve(this JsonElement answer, string valve, string name = "valve") => answer.GetProperty("valves").EnumerateArray()
        .Single(v => v.GetProperty(name).GetString() == valve);
}
