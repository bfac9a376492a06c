using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Hosting;
using Workshop.Web.Tests.Motorcycles;
using Workshop.Web.Tests.Paper;
using Xunit;

namespace Workshop.Web.Tests.Records;

public sealed class RecordTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string NothingForetold =
        "nothing was foretold at this visit: how the clearances of this engine model change with distance had not been worked out from its readings by then. The intervals above hold.";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_record_says_what_was_found_done_used_and_agreed_and_what_comes_next()
    {
        var (visit, finding, photo) = await app.RichlySignedOff();
        var technician = await app.As(Roles.Technician);

        var answer = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/record", Ct);
        var record = answer.GetProperty("record");

        Assert.False(answer.GetProperty("isLater").GetBoolean());
        Assert.Equal(("Tek Nician", "2026-03-02", 24_000, 24_012, "kilometres"), (
            Text(record, "signedBy"), Text(record, "signedOn"), record.GetProperty("odometerIn").GetInt32(), record.GetProperty("odometerOut").GetInt32(),
            Text(record, "odometerUnit")));
        Assert.Equal(
            ["Engine oil and filter False", "Valve clearance adjustment True", "Valve clearance check True"],
            record.GetProperty("items").EnumerateArray().Select(i => $"{Text(i, "name")} {i.GetProperty("done").GetBoolean()}"));
        var lobes = record.GetProperty("clearances").EnumerateArray().ToDictionary(l => Text(l, "name"));
        Assert.Equal(6, lobes.Count);
        Assert.Equal("Within limits as found; set; too wide as left.", Text(lobes["cylinder 1, intake 1, lobe 2"], "sentence"));
        Assert.Equal("Within limits as found and as left.", Text(lobes["cylinder 2, intake 1"], "sentence"));
        Assert.Equal("Within limits.", Text(lobes["cylinder 1, exhaust 1"], "sentence"));
        Assert.Equal((0.15m, 0.16m), (lobes["cylinder 1, intake 1"].GetProperty("found").GetProperty("goMm").GetDecimal(), lobes["cylinder 1, intake 1"].GetProperty("found").GetProperty("noGoMm").GetDecimal()));
        Assert.Equal("2.300 mm in", Text(Assert.Single(record.GetProperty("shims").EnumerateArray()), "sentence"));
        Assert.Contains(record.GetProperty("measuring").EnumerateArray(), m => m.GetString()!.StartsWith("Feeler set, steps of 0.01 mm: calibrated on 2026-01-05, holds until 2028-01-05", StringComparison.Ordinal));
        var fasteners = record.GetProperty("fasteners").EnumerateArray().ToList();
        Assert.All(fasteners, f => Assert.Equal(("2026-03-02", "calibrated on 2026-01-05, holds until 2028-01-05"), (Text(f, "tightenedOn"), Text(f, "wrench"))));
        Assert.Contains(fasteners, f => Text(f, "name") == "Head cover bolt");

        var found = Assert.Single(record.GetProperty("findings").EnumerateArray());
        Assert.Equal((finding, "Declined by telephone on 2026-03-02, told not to ride like this", true), (found.GetProperty("id").GetGuid(), Text(found, "answer"), found.GetProperty("staysUnsafe").GetBoolean()));
        Assert.Equal([photo], found.GetProperty("photos").EnumerateArray().Select(p => p.GetGuid()));
        Assert.Equal((108m, "EUR"), (record.GetProperty("agreed").GetProperty("gross").GetDecimal(), Text(record.GetProperty("agreed"), "currency")));
        Assert.Contains(record.GetProperty("nextDue").EnumerateArray(), d => Text(d, "name") == "Valve clearance check"
            && Text(d, "sentence").StartsWith("Left outside its limits at this visit: cylinder 1, intake 1, lobe 2 (too wide). The workshop advises to have that valve set soon;", StringComparison.Ordinal));
        Assert.Equal(
            [$"Of the intake valves {NothingForetold}", $"Of the exhaust valves {NothingForetold}"],
            record.GetProperty("forecasts").EnumerateArray().Select(f => Text(f, "sentence")));
        Assert.Equal(["Invented for tests, edition 1, checked by nobody yet"], record.GetProperty("specification").GetProperty("sources").EnumerateArray().Select(s => s.GetString()));

        var words = answer.GetProperty("words").EnumerateObject().ToDictionary(w => w.Name, w => w.Value.GetString());
        Assert.Equal(
            new Dictionary<string, string?>
            {
                ["remark"] = "Next shim ordered.", [$"not-done:{TestEngines.OilService}"] = "The owner does it himself.", [$"answer:{finding}"] = "her brother",
                [$"caption:{photo}"] = "Worn race",
            },
            words);
    }

    [Fact]
    public async Task What_left_the_stores_stands_by_piece_and_by_volume_and_grade()
    {
        await app.Look(db => db.Parts.Where(p => p.Code == TestEngines.Oil).ExecuteUpdateAsync(set => set.SetProperty(p => p.Designation, "10W-40"), Ct));
        var visit = await app.SignedOff(new Dictionary<string, Likelihood> { [TestEngines.OilService] = Likelihood.Certain });

        var record = (await (await app.As(Roles.Technician)).GetFromJsonAsync<JsonElement>($"{visit.Api}/record", Ct)).GetProperty("record");
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open($"{visit.Pages}/record");

        Assert.Equal(
            ["Oil filter: 1 piece", "Sealing ring 14 x 18 x 1.5: 1 piece", "Engine oil 10W-40: 3200 millilitre"],
            record.GetProperty("parts").EnumerateArray().Select(p => $"{Text(p, "name")}: {p.GetProperty("quantity").GetDecimal():0} {Text(p, "unit")}"));
        var oil = page.Html.QuerySelectorAll(".paper-table tr").Single(r => r.TextContent.Contains("Engine oil 10W-40", StringComparison.Ordinal));
        Assert.Equal(["Engine oil 10W-40", "10W-40", "3.2 l"], oil.QuerySelectorAll("td").Select(c => c.TextContent.Trim()));
    }

    [Fact]
    public async Task Page_and_file_say_the_same_with_strips_and_photos()
    {
        var (visit, _, photo) = await app.RichlySignedOff();
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var page = await pages.Open($"{visit.Pages}/record");
        using var pdf = new PdfReader(await pages.Client.GetByteArrayAsync(new Uri($"{visit.Pages}/record?handler=Pdf", UriKind.Relative), Ct));
        var route = await (await app.As(Roles.Technician)).GetAsync(new Uri($"{visit.Api}/record.pdf", UriKind.Relative), Ct);

        var text = Squeezed(pdf.Text());
        Assert.All(
            new[]
            {
                "Valve clearances left outside their limits: cylinder 1, intake 1, lobe 2 (too wide).", "Not to be ridden like this: Front wheel bearing.",
                "not done: The owner does it himself.", "Remark: Next shim ordered.", "Within limits as found; set; too wide as left.", "0.15 to 0.16", "2.300", "Worn race",
                "10 N.m (7.4 lbf.ft)", "Declined by telephone on 2026-03-02", "108.00 EUR with tax", NothingForetold[..30], "Where limits and torques come from",
            },
            words =>
            {
                Assert.Contains(Squeezed(words), Squeezed(page.MainText), StringComparison.Ordinal);
                Assert.Contains(Squeezed(words), text, StringComparison.Ordinal);
            });
        Assert.Equal(6, page.Html.QuerySelectorAll("svg.strip").Length);
        Assert.Equal($"/photos/{photo}/small", page.Html.QuerySelector(".photos img")!.GetAttribute("src"));
        Assert.Equal(1, pdf.Images());
        Assert.Equal(["http://localhost" + visit.Pages + "/record"], pdf.Codes(0));
        Assert.Equal(("application/pdf", HttpStatusCode.OK), (route.Content.Headers.ContentType?.MediaType, route.StatusCode));
    }

    /// <summary>A strip on paper stands where its row stands: limits and set-to value are words within the sheet, found beside left.</summary>
    [Fact]
    public async Task The_figures_of_a_strip_stand_in_the_file_beside_their_row()
    {
        var (visit, _, _) = await app.RichlySignedOff();
        using var pdf = new PdfReader(await (await app.As(Roles.Technician)).GetByteArrayAsync(new Uri($"{visit.Api}/record.pdf", UriKind.Relative), Ct));

        var words = pdf.Words();
        var drawn = words.Where(w => w.Text == "Drawn").ToList();
        var strips = words.Where(w => w.Text == "found" && drawn.Exists(d => d.Sheet == w.Sheet && Math.Abs(d.Left - w.Left) < 1)).ToList();
        Assert.Equal(4, strips.Count);
        Assert.All(strips, found =>
        {
            var left = words.Where(w => w.Sheet == found.Sheet && w.Text == "left" && Math.Abs(w.Left - found.Left) < 1).MinBy(w => Math.Abs(w.Top - found.Top));
            Assert.True(left!.Top > found.Top);
            Assert.Contains(words, w => w.Sheet == found.Sheet && w.Text == "0.10" && w.Left > found.Right && w.Top > left.Top && w.Top < left.Top + 25);
        });
    }

    [Fact]
    public async Task The_database_itself_keeps_a_record_as_it_was_written()
    {
        var visit = await app.SignedOff();

        foreach (var change in new[]
        {
            $"update issued_records set document = '{{}}' where job_card_number = {visit.Number}", $"delete from issued_records where job_card_number = {visit.Number}",
            $"update issued_records set words = '{{\"remark\": \"other\"}}' where job_card_number = {visit.Number}", "truncate issued_records cascade",
            $"update issued_records set is_later = true, words = '{{}}' where job_card_number = {visit.Number}",
        })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() => Sql.ExecuteAsync(app.Database.Connections.Direct, change, Ct));
            Assert.Equal("23001", refused.SqlState);
        }
    }

    [Fact]
    public async Task A_card_that_is_not_signed_has_no_record_and_one_signed_before_gets_its_record_later_and_says_so()
    {
        var technician = await app.As(Roles.Technician);
        var open = await app.CheckedIn();
        var early = await technician.GetAsync(new Uri($"{open.Api}/record", UriKind.Relative), Ct);
        Assert.Equal((HttpStatusCode.Conflict, $"Job card {open.Number} is checked in: its record is written at the sign-off."), (early.StatusCode, await early.Detail()));
        Assert.Equal(HttpStatusCode.Conflict, (await technician.PostAsync(new Uri($"{open.Api}/record", UriKind.Relative), null, Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await technician.GetAsync(new Uri("/api/v1/job-cards/999999/record", UriKind.Relative), Ct)).StatusCode);

        var visit = await app.SignedOff();
        await Sql.ExecuteAsync(app.Database.Connections.Direct, $"alter table issued_records disable trigger user; delete from issued_records where job_card_number = {visit.Number}; alter table issued_records enable trigger user", Ct);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var page = await pages.Open($"{visit.Pages}/record");
        Assert.Contains("was signed before records were kept", page.MainText, StringComparison.Ordinal);
        var written = await pages.Send(page, $"{visit.Pages}/record", []);
        Assert.Equal(HttpStatusCode.Redirect, written.Status);
        Assert.Contains("Written after the sign-off, from what then stood", (await pages.Open($"{visit.Pages}/record")).MainText, StringComparison.Ordinal);
        var again = await technician.PostAsync(new Uri($"{visit.Api}/record", UriKind.Relative), null, Ct);
        Assert.Equal((HttpStatusCode.Conflict, $"The record of job card {visit.Number} is written, and stays as it is."), (again.StatusCode, await again.Detail()));
    }

    private static string Text(JsonElement of, string name) => of.GetProperty(name).GetString()!;

    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
