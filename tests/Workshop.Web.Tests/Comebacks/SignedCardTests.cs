using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using AngleSharp.Html.Dom;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using SkiaSharp;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Estimates;
using Workshop.Web.Tests.JobCards;
using Workshop.Web.Tests.Motorcycles;
using Workshop.Web.Tests.Photos;
using Xunit;

namespace Workshop.Web.Tests.Comebacks;

/// <summary>
/// A signed card never reopens: every way to write to a card, or to what hangs on it, is tried on one that is signed, and nothing of it
/// changes. All ways come from the list of endpoints: a new route of a card is tried too, without a body of its own until one is given
/// here, and a route of something new says first whether that is of a card.
/// </summary>
public sealed class SignedCardTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string CardRoute = "/api/v1/job-cards/{number:int}";

    /// <summary>What an address names that is not of one card; a place that stands neither here nor in the test fails it.</summary>
    private static readonly string[] OfNoCard =
    [
        "/api/v1/blades", "/api/v1/calendar-feeds", "/api/v1/consents", "/api/v1/engine-models", "/api/v1/gauge-studies", "/api/v1/instruments",
        "/api/v1/message-templates", "/api/v1/motorcycles", "/api/v1/orders", "/api/v1/part-prices", "/api/v1/people", "/api/v1/resources",
        "/api/v1/shims", "/api/v1/stock", "/api/v1/suppliers", "/api/v1/tax-rates", "/api/v1/workshop", "/api/v1/wrench-adapters",
        "/engine-models", "/motorcycles", "/people", "/stores", "/tooling", "/drift", "/records", "/bays",
    ];

    private static readonly object Declined = new { decision = "declined", way = "telephone", bySomebodyElse = true, remark = "her brother" };

    private static readonly object Readings = new
    {
        instrumentId = TestWorkshop.FeelerSet, headTemperatureC = 20, temperatureMethod = "surface probe at the head",
        readings = new object[] { new { valve = "1-exhaust-1", stage = "asFound", kind = "goAndNoGo", goMm = 0.25, noGoMm = 0.26 } },
        reason = "Once more.",
    };

    /// <summary>
    /// What is written about a signed card, for its owner, and the picture that the manager takes out of it for good: the only ways that stay open.
    /// </summary>
    private static readonly string[] AboutIt =
    [
        $"POST {CardRoute}/record", $"POST {CardRoute}/record/links", $"POST {CardRoute}/record/messages", "POST /api/v1/record-links/{id:guid}/revocation",
        "PUT /api/v1/messages/{id:guid}/decision", "PUT /api/v1/photos/{id:guid}/removal",
        "/job-cards/{number:int}/record Link", "/job-cards/{number:int}/record Revoke", "/job-cards/{number:int}/record Write",
        "/job-cards/{number:int}/record/send ", "/messages/{id:guid} ",
        "/job-cards/{number:int}/findings Remove", "/job-cards/{number:int}/check-in Remove", "/findings/{findingId:guid} Remove",
    ];

    /// <summary>What would be written if the card were open, by the route's end.</summary>
    private static readonly Dictionary<string, object> Bodies = new(StringComparer.Ordinal)
    {
        [$"POST {CardRoute}/after-work/reminder"] = new { outcome = "reset" },
        [$"POST {CardRoute}/arrival"] = new { nothingElseSeen = true },
        [$"POST {CardRoute}/cancel"] = new { reason = "x" },
        [$"POST {CardRoute}/cautions"] = new { codes = new[] { "turn-by-hand" } },
        [$"POST {CardRoute}/cautions/{{code}}/acknowledge"] = new { },
        [$"POST {CardRoute}/check-in"] = new { odometerCount = 25_000, engineStoppedAt = "2026-03-02T07:15:00Z" },
        [$"POST {CardRoute}/compression"] = new
        {
            stage = "asFound", warmth = "warm", gaugeId = TestWorkshop.CompressionGauge, cylinders = new object[] { new { cylinder = 1, dryBar = 11 } },
        },
        [$"POST {CardRoute}/engine-stops"] = new { stoppedAt = "2026-03-02T07:59:00Z" },
        [$"POST {CardRoute}/findings"] = new { place = "x", text = "x", gravity = "watch" },
        [$"POST {CardRoute}/items/{{code}}/start"] = new { },
        [$"POST {CardRoute}/moves"] = new { resourceId = TestWorkshop.Bay2 },
        [$"POST {CardRoute}/phases"] = new { phase = "work" },
        [$"POST {CardRoute}/plugs"] = new { gauge = "wire", plugs = new object[] { new { cylinder = 1, condition = "normal", gapLeftMm = 0.8 } } },
        [$"POST {CardRoute}/readings"] = Readings,
        [$"POST {CardRoute}/readings/hand-turns"] = new { noHardStop = true, marksRight = true },
        [$"POST {CardRoute}/sign-off"] = new { odometer = 25_000 },
        [$"POST {CardRoute}/torque-sheet/ticks"] = new { fastenerCode = TestEngines.DrainPlug, tightened = true, wrenchId = TestWorkshop.SmallWrench },
        [$"POST {CardRoute}/wait"] = new { @for = "shims", expectedUntil = "2026-03-03T10:00:00Z" },
        [$"POST {CardRoute}/work-clock/on"] = new { },
        ["POST /api/v1/bookings/{number:int}/move"] = new { bayId = TestWorkshop.Bay2, technicianId = TestWorkshop.TechnicianResource, startsAt = "2026-03-05T08:00:00Z" },
        ["POST /api/v1/bookings/{number:int}/no-show"] = new { },
        ["POST /api/v1/estimates/{id:guid}/answers"] = Declined,
        ["POST /api/v1/findings/{id:guid}/answers"] = Declined,
        ["PUT /api/v1/findings/{id:guid}/done"] = new { },
        ["PUT /api/v1/findings/{id:guid}/withdrawal"] = new { reason = "x" },
    };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_write_to_a_signed_card_is_refused_and_nothing_of_it_changes()
    {
        var technician = await app.As(Roles.Technician);
        var manager = await app.As(Roles.Manager);
        var (visit, places) = await Worked(technician);
        await Sign(technician, visit);
        var before = await CardRows.Of(app, visit.Number);

        var ways = app.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .SelectMany(e => e.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Select(m => (Method: m, Route: "/" + e.RoutePattern.RawText!.Trim('/'))) ?? [])
            .Where(w => w.Method is not ("GET" or "HEAD") && IsOfACard(w.Route, places)).ToList();
        Assert.True(ways.Count >= 50, string.Join(", ", ways));
        Assert.Contains(ways, w => w.Method == "PUT");
        Assert.Empty(Bodies.Keys.Except(ways.Select(w => $"{w.Method} {w.Route}")));
        var wrong = new List<string>();
        foreach (var (method, route) in ways.Where(w => !AboutIt.Contains($"{w.Method} {w.Route}")))
        {
            var address = Filled(route, places).Replace("{code}", route.Contains("/items/", StringComparison.Ordinal) ? TestEngines.Adjustment : "turn-by-hand", StringComparison.Ordinal);
            var named = $"{method} {route}";
            var tag = method == "POST" ? null : await manager.Tag(Filled(route[..(route.IndexOf('}', StringComparison.Ordinal) + 1)], places));
            var answer = await manager.Send(new HttpMethod(method), address, Bodies.GetValueOrDefault(named, new { }), tag);
            if (answer.IsSuccessStatusCode || (Bodies.ContainsKey(named) && answer.StatusCode != HttpStatusCode.Conflict))
            {
                wrong.Add($"{named}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync(Ct)}");
            }
        }

        Assert.Empty(wrong);
        Assert.Equal(before, await CardRows.Of(app, visit.Number));
    }

    [Fact]
    public async Task A_form_that_was_open_before_the_sign_off_changes_nothing_after_it()
    {
        var technician = await app.As(Roles.Technician);
        var (visit, places) = await Worked(technician);
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var handlers = (await PageHandlers.Posts(app.Services)).Where(h => IsOfACard(h.Route, places)).ToList();
        Assert.True(handlers.Count >= 35, string.Join(", ", handlers));
        var open = new Dictionary<string, IReadOnlyList<KeyValuePair<string, string>>>(StringComparer.Ordinal);
        foreach (var route in handlers.Select(h => h.Route).Distinct())
        {
            var page = await pages.Open(Addressed(route, places));
            foreach (var form in page.Html.QuerySelectorAll("main form[method=post]").Cast<IHtmlFormElement>())
            {
                open.TryAdd($"{route} {PageHandlers.NameIn(form)}", FormFiller.Filled(form));
            }
        }

        var shown = handlers.Count(h => open.ContainsKey(h.Named));
        Assert.True(shown >= 20, $"{shown} of {handlers.Count} had a form: {string.Join(", ", open.Keys)}");
        await Sign(technician, visit);
        var before = await CardRows.Of(app, visit.Number);
        var wrong = new List<string>();
        foreach (var handler in handlers.Where(h => !AboutIt.Contains(h.Named)))
        {
            using var fields = new FormUrlEncodedContent(open.GetValueOrDefault(handler.Named) ?? FormFiller.Bare(open.Values.First()));
            var address = Addressed(handler.Route, places) + (handler.Name.Length == 0 ? "" : $"?handler={handler.Name}");
            var answer = await pages.Client.PostAsync(new Uri(address, UriKind.Relative), fields, Ct);
            if (answer.StatusCode is HttpStatusCode.OK or (>= HttpStatusCode.BadRequest and < HttpStatusCode.InternalServerError))
            {
                continue;
            }

            var now = await CardRows.Of(app, visit.Number);
            if (!before.SequenceEqual(now) || answer.StatusCode >= HttpStatusCode.InternalServerError)
            {
                wrong.Add($"{handler.Named}: {(int)answer.StatusCode}, changed {string.Join(", ", now.Where(n => before[n.Key] != n.Value).Select(n => n.Key))}");
                before = now;
            }
        }

        Assert.Empty(wrong);
        Assert.Equal(before, await CardRows.Of(app, visit.Number));
    }

    /// <summary>A visit with all that hangs on one: finished, with an estimate, a finding and its picture.</summary>
    private async Task<(TestVisit Visit, Places Places)> Worked(HttpClient technician)
    {
        await app.SetPrices();
        var visit = await app.CheckedIn(24_000);
        var advisor = await app.As(Roles.Advisor);
        await app.Finish(visit, technician);
        var finding = (await (await technician.PostAsJsonAsync($"{visit.Api}/findings", new { place = "Chain", text = "Dry.", gravity = "watch" }, Ct))
            .EnsureSuccessStatusCode().Json()).GetProperty("id").GetString()!;
        var priced = await advisor.PostAsJsonAsync($"{visit.Api}/estimates", new { findingId = finding, others = new object[] { new { text = "Oil it", minutes = 60 } } }, Ct);
        var estimate = (await priced.EnsureSuccessStatusCode().Json()).GetProperty("id").GetString()!;
        (await advisor.PostAsJsonAsync($"/api/v1/findings/{finding}/answers", Declined, Ct)).EnsureSuccessStatusCode();
        using var files = TestPictures.Form(("a.jpg", TestPictures.Plain(SKEncodedImageFormat.Jpeg)));
        files.Add(new StringContent(finding), "findingId");
        var photos = (await (await technician.PostAsync(new Uri($"{visit.Api}/photos", UriKind.Relative), files, Ct)).EnsureSuccessStatusCode().Json()).GetProperty("photos");
        return (visit, new Places(visit.Number, finding, estimate, photos[0].GetProperty("id").GetString()!));
    }

    private static async Task Sign(HttpClient technician, TestVisit visit)
    {
        var answer = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_000 }, Ct);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
    }

    /// <summary>Whether what an address names first is of the card. What names nothing is no way to a card.</summary>
    private static bool IsOfACard(string route, Places places)
    {
        var first = route.IndexOf('{', StringComparison.Ordinal);
        if (first < 0)
        {
            return false;
        }

        var isOfOne = places.All.ContainsKey(route[..(first - 1)]);
        Assert.True(
            isOfOne || OfNoCard.Any(p => route.StartsWith($"{p}/", StringComparison.Ordinal)) || AboutIt.Any(a => a.Contains(route, StringComparison.Ordinal)),
            $"{route} names something new: say whether it is of a card.");
        return isOfOne;
    }

    private static string Filled(string route, Places places)
    {
        var first = route.IndexOf('{', StringComparison.Ordinal);
        return $"{route[..first]}{places.All[route[..(first - 1)]]}{route[(route.IndexOf('}', StringComparison.Ordinal) + 1)..]}";
    }

    private static string Addressed(string route, Places places) => Filled(route, places)
        .Replace("{code}", TestEngines.DrainPlug, StringComparison.Ordinal).Replace("{paper}", "worksheet", StringComparison.Ordinal);

    /// <summary>What is of the card, by the beginning of its addresses.</summary>
    private sealed record Places(int Number, string Finding, string Estimate, string Photo)
    {
        private string Card => Number.ToString(CultureInfo.InvariantCulture);

        public Dictionary<string, string> All => new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["/api/v1/job-cards"] = Card, ["/job-cards"] = Card, ["/api/v1/bookings"] = Card, ["/api/v1/findings"] = Finding, ["/findings"] = Finding,
            ["/api/v1/estimates"] = Estimate, ["/estimates"] = Estimate, ["/api/v1/photos"] = Photo,
        };
    }
}
