using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Comebacks;

/// <summary>
/// A signed card never reopens: every way to write to a card is tried on one that is signed, and nothing of it changes. A new route of
/// a card is tried too, without a body of its own until one is given here.
/// </summary>
public sealed class SignedCardTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string CardRoute = "/api/v1/job-cards/{number:int}";

    private static readonly object Readings = new
    {
        instrumentId = TestWorkshop.FeelerSet, headTemperatureC = 20, temperatureMethod = "surface probe at the head",
        readings = new object[] { new { valve = "1-exhaust-1", stage = "asFound", kind = "goAndNoGo", goMm = 0.25, noGoMm = 0.26 } },
        reason = "Once more.",
    };

    /// <summary>What is written about a signed card, for its owner; it changes nothing of it.</summary>
    private static readonly string[] AboutIt = ["/record", "/record/links", "/record/messages"];

    /// <summary>What would be written if the card were open, by the route's end.</summary>
    private static readonly Dictionary<string, object> Bodies = new(StringComparer.Ordinal)
    {
        ["/after-work/reminder"] = new { outcome = "reset" },
        ["/arrival"] = new { nothingElseSeen = true },
        ["/cancel"] = new { reason = "x" },
        ["/cautions"] = new { codes = new[] { "turn-by-hand" } },
        ["/cautions/{code}/acknowledge"] = new { },
        ["/check-in"] = new { odometerCount = 25_000, engineStoppedAt = "2026-03-02T07:15:00Z" },
        ["/compression"] = new
        {
            stage = "asFound", warmth = "warm", gaugeId = TestWorkshop.CompressionGauge, cylinders = new object[] { new { cylinder = 1, dryBar = 11 } },
        },
        ["/engine-stops"] = new { stoppedAt = "2026-03-02T07:59:00Z" },
        ["/findings"] = new { place = "x", text = "x", gravity = "watch" },
        ["/items/{code}/start"] = new { },
        ["/moves"] = new { resourceId = TestWorkshop.Bay2 },
        ["/phases"] = new { phase = "work" },
        ["/plugs"] = new { gauge = "wire", plugs = new object[] { new { cylinder = 1, condition = "normal", gapLeftMm = 0.8 } } },
        ["/readings"] = Readings,
        ["/readings/hand-turns"] = new { noHardStop = true, marksRight = true },
        ["/sign-off"] = new { odometer = 25_000 },
        ["/torque-sheet/ticks"] = new { fastenerCode = TestEngines.DrainPlug, tightened = true, wrenchId = TestWorkshop.SmallWrench },
        ["/wait"] = new { @for = "shims", expectedUntil = "2026-03-03T10:00:00Z" },
        ["/work-clock/on"] = new { },
    };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_write_to_a_signed_card_is_refused_and_nothing_of_it_changes()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.Finish(await app.CheckedIn(24_000), technician);
        (await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_000 }, Ct)).EnsureSuccessStatusCode();
        var manager = await app.As(Roles.Manager);
        var before = await Rows(visit.Number);

        var routes = app.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Contains("POST") == true)
            .Select(e => "/" + e.RoutePattern.RawText!.Trim('/')).Where(r => r.StartsWith(CardRoute, StringComparison.Ordinal)).ToList();
        Assert.True(routes.Count >= 30, string.Join(", ", routes));
        Assert.Empty(Bodies.Keys.Except(routes.Select(r => r[CardRoute.Length..])));
        var wrong = new List<string>();
        foreach (var end in routes.Select(r => r[CardRoute.Length..]).Except(AboutIt))
        {
            var address = visit.Api + end.Replace("{code}", end.StartsWith("/items", StringComparison.Ordinal) ? TestEngines.Adjustment : "turn-by-hand", StringComparison.Ordinal);
            var answer = await manager.PostAsJsonAsync(address, Bodies.GetValueOrDefault(end, new { }), Ct);
            if (answer.IsSuccessStatusCode || (Bodies.ContainsKey(end) && answer.StatusCode != HttpStatusCode.Conflict))
            {
                wrong.Add($"{end}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync(Ct)}");
            }
        }

        Assert.Empty(wrong);
        Assert.Equal(before, await Rows(visit.Number));
    }

    /// <summary>Every table that names a card, with how many rows of this one it has and what they are.</summary>
    private async Task<IReadOnlyDictionary<string, string>> Rows(int number)
    {
        await using var source = NpgsqlDataSource.Create(app.Database.Connections.Direct);
        var tables = new List<string>();
        await using (var command = source.CreateCommand(
            "select table_name from information_schema.columns where table_schema = 'public' and column_name = 'job_card_number' order by 1"))
        await using (var reader = await command.ExecuteReaderAsync(Ct))
        {
            while (await reader.ReadAsync(Ct))
            {
                tables.Add(reader.GetString(0));
            }
        }

        var rows = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (table, column) in tables.Select(t => (t, "job_card_number")).Append(("job_cards", "number")))
        {
            await using var command = source.CreateCommand(string.Create(CultureInfo.InvariantCulture,
                $"select count(*) || ' ' || coalesce(md5(string_agg(t::text, '|' order by t::text)), '') from {table} t where {column} = {number}"));
            rows[table] = (string)(await command.ExecuteScalarAsync(Ct))!;
        }

        Assert.True(rows.Count > 20);
        return rows;
    }
}
