using System.Net;
using System.Text;
using AngleSharp;
using AngleSharp.Dom;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Clearances;

public sealed class ReadingsPageTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_point_and_a_comma_are_both_the_decimal_sign_and_untouched_rows_are_left_alone()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open($"{visit.Pages}/readings");

        var answer = await Send(pages, page, $"{visit.Pages}/readings", new(Engine())
        {
            [Field(page, "Go, cylinder 1, exhaust 1, as found")] = "0,215",
            [Field(page, "No-go, cylinder 1, exhaust 1, as found")] = "0.225",
            [Field(page, "Go, cylinder 2, intake 1, lobe 2, as found")] = "0.12",
            [Field(page, "No-go, cylinder 2, intake 1, lobe 2, as found")] = "0,13",
            [Field(page, "Shim as found, cylinder 1, exhaust 1, mm")] = "2,113",
        });

        Assert.Empty(answer.Faults);
        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        var rows = await Rows(visit);
        Assert.Equal(["1-exhaust-1 1 AsFound 0.215 0.225", "2-intake-1 2 AsFound 0.12 0.13"], rows);
        Assert.Equal(ShimThickness.FromMillimetres(2.113m), await app.Look(db =>
            db.ShimObservations.Where(s => s.JobCardNumber == visit.Number).Select(s => s.Thickness).SingleAsync(Ct)));
    }

    [Fact]
    public async Task Bad_input_keeps_all_that_was_typed_and_its_faults_lead_to_their_fields()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open($"{visit.Pages}/readings");
        var (go, noGo) = (Field(page, "Go, cylinder 1, exhaust 1, as found"), Field(page, "No-go, cylinder 1, exhaust 1, as found"));
        var other = Field(page, "Go, cylinder 2, exhaust 1, as found");

        var answer = await Send(pages, page, $"{visit.Pages}/readings", new(Engine())
        {
            [go] = "0,25", [noGo] = "0,25", [other] = "0.21", [Field(page, "Blades, cylinder 2, exhaust 1, as found")] = "NextNotTried",
        });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Equal(
            ["cylinder 1, exhaust 1, as found: No-go is 0.25 mm: it must be greater than go, which is 0.25 mm."], answer.Faults);
        Assert.Equal("0,25", answer.ValueOf(go));
        Assert.Equal("0,25", answer.ValueOf(noGo));
        Assert.Equal("0.21", answer.ValueOf(other));
        Assert.Equal("NextNotTried", answer.ValueOf(Field(page, "Blades, cylinder 2, exhaust 1, as found")));
        Assert.Equal("21,5", answer.ValueOf("Input.HeadTemperatureC"));
        var target = LinkTargets(answer).Single();
        Assert.Equal(noGo, target.GetAttribute("name"));
        Assert.Contains("input-validation-error", target.ClassList);
        Assert.Empty(await Rows(visit));
    }

    [Fact]
    public async Task A_number_that_is_none_and_a_warm_engine_come_back_as_typed()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open($"{visit.Pages}/readings");
        var (go, noGo) = (Field(page, "Go, cylinder 1, exhaust 1, as found"), Field(page, "No-go, cylinder 1, exhaust 1, as found"));

        var wrong = await Send(pages, page, $"{visit.Pages}/readings", new(Engine()) { [go] = "0.2l", [noGo] = "0.22" });
        var warm = await Send(pages, wrong, $"{visit.Pages}/readings", new(Engine()) { [go] = "0.21", ["Input.HeadTemperatureC"] = "61" });
        var kept = await Send(pages, warm, $"{visit.Pages}/readings", new() { ["Input.KeptWhyNotCold"] = "Compared with the owner's figures" });

        Assert.Equal(["Go, cylinder 1, exhaust 1, as found is \"0.2l\": a number such as 0.15 or 0,15, without a sign between thousands, is allowed."], wrong.Faults);
        Assert.Equal("0.2l", wrong.ValueOf(go));
        Assert.Contains("Cylinder head is 61 °C: the engine is too warm", Assert.Single(warm.Faults), StringComparison.Ordinal);
        Assert.Equal("0.22", warm.ValueOf(noGo));
        Assert.Equal("Input.HeadTemperatureC", LinkTargets(warm).Single().GetAttribute("name"));
        Assert.Equal(HttpStatusCode.Redirect, kept.Status);
        Assert.Single(await Rows(visit));
    }

    [Fact]
    public async Task A_correction_asks_why_and_the_page_shows_what_stands_with_its_strip()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/readings";
        var page = await pages.Open(address);
        var (go, noGo) = (Field(page, "Go, cylinder 1, exhaust 1, as found"), Field(page, "No-go, cylinder 1, exhaust 1, as found"));
        await Send(pages, page, address, new(Engine()) { [go] = "0.15", [noGo] = "0.16" });
        var second = await pages.Open(address);

        var asked = await Send(pages, second, address, new() { [go] = "0.21", [noGo] = "0.22" });
        var done = await Send(pages, asked, address, new() { ["Input.Reason"] = "Lobe was not away" });
        var after = await pages.Open(address);

        Assert.Contains("too tight: below 0.20 mm; 0.20 to 0.30 mm is allowed", second.MainText, StringComparison.Ordinal);
        Assert.Equal("21.5", second.ValueOf("Input.HeadTemperatureC"));
        Assert.Contains("say why cylinder 1, exhaust 1 as found (0.15 to 0.16 mm) is entered again", Assert.Single(asked.Faults), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, done.Status);
        var cell = after.Html.QuerySelectorAll("svg.strip").Single().ParentElement!;
        Assert.Contains("0.21 to 0.22 mm", cell.TextContent, StringComparison.Ordinal);
        Assert.Equal("within 0.20 to 0.30 mm", cell.QuerySelector("strong")!.TextContent);
        Assert.Contains("Lobe was not away", after.Html.QuerySelector("details")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task As_left_a_valve_is_carried_over_or_measured_and_a_shim_leaves_the_box()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open($"{visit.Pages}/readings");
        await Send(pages, page, $"{visit.Pages}/readings", new(Engine())
        {
            [Field(page, "Go, cylinder 1, exhaust 1, as found")] = "0.21", [Field(page, "No-go, cylinder 1, exhaust 1, as found")] = "0.22",
            [Field(page, "Go, cylinder 2, exhaust 1, as found")] = "0.15", [Field(page, "No-go, cylinder 2, exhaust 1, as found")] = "0.16",
        });
        var left = await pages.Open($"{visit.Pages}/readings?stage=AsLeft");

        var answer = await Send(pages, left, $"{visit.Pages}/readings?stage=AsLeft", new(Engine())
        {
            [Field(left, "What was done, cylinder 1, exhaust 1")] = "NotDisturbed",
            [Field(left, "Shim as left, cylinder 2, exhaust 1, mm")] = "2.05",
            [Field(left, "From the box, cylinder 2, exhaust 1")] = "true",
        });
        var shut = await pages.Open($"{visit.Pages}/readings?stage=AsLeft");
        await FinishedVisits.TickAll(await app.As(Roles.Technician), visit);
        var turned = await pages.Send($"{visit.Pages}/readings?stage=AsLeft",
            new() { ["Turns.NoHardStop"] = "true", ["Turns.MarksRight"] = "true" }, "form#turned");
        left = await pages.Open($"{visit.Pages}/readings?stage=AsLeft");
        var measured = await Send(pages, left, $"{visit.Pages}/readings?stage=AsLeft", new(Engine())
        {
            [Field(left, "Go, cylinder 2, exhaust 1, as left")] = "0.24", [Field(left, "No-go, cylinder 2, exhaust 1, as left")] = "0.25",
        });

        Assert.Contains("Tick on the torque sheet first: Camshaft cap bolt.", shut.MainText, StringComparison.Ordinal);
        Assert.Null(shut.Html.QuerySelector("[aria-label='Go, cylinder 2, exhaust 1, as left']"));
        Assert.Equal(HttpStatusCode.Redirect, turned.Status);
        Assert.Empty(measured.Faults);

        Assert.Empty(answer.Faults);
        Assert.Equal($"{visit.Pages}/readings?stage=AsLeft", answer.Location);
        Assert.Contains("1-exhaust-1 1 AsLeft 0.21 0.22", await Rows(visit));
        Assert.Contains("2-exhaust-1 1 AsLeft 0.24 0.25", await Rows(visit));
        Assert.Equal(-1m, await app.Look(db => db.StockMovements
            .Where(m => m.JobCardNumber == visit.Number && m.Thickness == ShimThickness.FromMillimetres(2.05m)).SumAsync(m => m.OnHandChange, Ct)));
        var after = await pages.Open($"{visit.Pages}/readings?stage=AsLeft");
        Assert.Contains("(not measured again)", after.MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_form_says_what_is_wanted_and_every_link_has_its_place()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var answer = await Send(pages, await pages.Open($"{visit.Pages}/readings"), $"{visit.Pages}/readings", []);

        Assert.Contains("give at least one reading", Assert.Single(answer.Faults), StringComparison.Ordinal);
        Assert.Single(LinkTargets(answer));
    }

    [Fact]
    public async Task The_advisor_reads_without_a_form_and_may_not_send_one()
    {
        var visit = await app.CheckedIn();
        var technician = await TestPages.SignedIn(app, Roles.Technician);
        var page = await technician.Open($"{visit.Pages}/readings");
        var advisor = await TestPages.SignedIn(app, Roles.Advisor);

        var seen = await advisor.Open($"{visit.Pages}/readings");
        var token = (await advisor.Open("/motorcycles/new")).ValueOf("__RequestVerificationToken")!;
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token), new("Input.HeadTemperatureC", "20")]);
        var sent = await advisor.Client.PostAsync(new Uri($"{visit.Pages}/readings", UriKind.Relative), form, Ct);

        Assert.NotNull(page.Html.QuerySelector("form.readings"));
        Assert.Null(seen.Html.QuerySelector("form.readings"));
        Assert.Contains("Compression dead centre of cylinder 1", seen.MainText, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Forbidden, sent.StatusCode);
    }

    [Fact]
    public async Task The_page_of_a_full_visit_stays_under_a_hundred_kilobytes_and_every_field_has_a_name()
    {
        var visit = await app.CheckedIn();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open($"{visit.Pages}/readings");
        var fields = page.Html.QuerySelectorAll("input[aria-label]").Select(e => (e.GetAttribute("aria-label")!, e.GetAttribute("name")!))
            .Where(f => f.Item1.Contains("as found", StringComparison.Ordinal) && f.Item2.EndsWith("GoMm", StringComparison.Ordinal));
        await Send(pages, page, $"{visit.Pages}/readings", new(Engine().Concat(fields.Select(f =>
            new KeyValuePair<string, string?>(f.Item2, f.Item1.StartsWith("Go", StringComparison.Ordinal) ? "0.15" : "0.16")))));

        var full = await pages.Open($"{visit.Pages}/readings");

        Assert.Equal(6, full.Html.QuerySelectorAll("svg.strip").Length);
        var size = Encoding.UTF8.GetByteCount(full.Html.ToHtml());
        Assert.True(size * 16 / 6 < 100_000, $"{size} bytes for six lobes: sixteen would not stay under 100 kB.");
        Assert.All(full.Html.QuerySelectorAll("main input:not([type=hidden]), main select"), field => Assert.True(
            field.HasAttribute("aria-label") || full.Html.QuerySelector($"label[for='{field.Id}']") is not null, field.OuterHtml));
        Assert.DoesNotContain(" style=", full.Html.ToHtml(), StringComparison.Ordinal);
    }

    private static Task<TestPage> Send(TestPages pages, TestPage page, string address, Dictionary<string, string?> typed) =>
        pages.Send(page, address, typed, "form.readings");

    private static Dictionary<string, string?> Engine() => new()
    {
        ["Input.HeadTemperatureC"] = "21,5",
        ["Input.InstrumentId"] = TestWorkshop.FeelerSet.ToString(),
    };

    private static string Field(TestPage page, string label) =>
        page.Html.QuerySelector($"[aria-label='{label}']")?.GetAttribute("name")
            ?? throw new InvalidOperationException($"No field \"{label}\" on the page.");

    private static IReadOnlyList<IElement> LinkTargets(TestPage page) => [.. page.Html.QuerySelectorAll(".faults a").Select(link =>
        page.Html.GetElementById(link.GetAttribute("href")![1..])
            ?? throw new InvalidOperationException($"{link.OuterHtml} leads nowhere."))];

    private Task<List<string>> Rows(TestVisit visit) => app.Look(async db =>
        (await db.ClearanceReadings.Where(r => r.JobCardNumber == visit.Number).ToListAsync(Ct))
        .OrderBy(r => r.Valve).ThenBy(r => r.Lobe).ThenBy(r => r.Stage)
        .Select(r => FormattableString.Invariant($"{r.Valve} {r.Lobe} {r.Stage} {r.Go?.Millimetres:0.00##} {r.NoGo?.Millimetres:0.00##}")).ToList());
}
