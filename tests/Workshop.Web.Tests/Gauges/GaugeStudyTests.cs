using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Domain.Tests;
using Workshop.Domain.Tooling;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Gauges;

public sealed class GaugeStudyTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>
    /// AIAG, Measurement Systems Analysis, 4th ed.: 10 parts, 3 appraisers, 3 trials, sent reading by reading; the manual prints GRR
    /// 0.302373, 27.9 % of the total deviation and 4.861 categories.
    /// </summary>
    [Fact]
    public async Task The_published_study_sent_reading_by_reading_gives_the_printed_figures()
    {
        var technician = await app.As(Roles.Technician);
        var (address, people) = await Start(technician, parts: 10, trials: 3, people: 3);
        foreach (var row in CheckValues.Lines("gauges/aiag-10x3x3.csv").Skip(1).Where(l => l.Length > 0))
        {
            var fields = row.Split(',').Select(f => f.Trim('"')).ToArray();
            await Sent(technician, address, people[fields[1][0] - 'A'], int.Parse(fields[0], CultureInfo.InvariantCulture), int.Parse(fields[2], CultureInfo.InvariantCulture), decimal.Parse(fields[3], CultureInfo.InvariantCulture));
        }

        var found = (await Get(technician, address)).GetProperty("analysis");
        var gauge = found.GetProperty("components").EnumerateArray().Single(c => c.GetProperty("name").GetString() == "measuring altogether");
        Assert.Equal(0.302373, gauge.GetProperty("deviation").GetDouble(), 5e-6);
        Assert.Equal(0.279, gauge.GetProperty("shareOfDeviation").GetDouble(), 5e-4);
        Assert.Equal(4.861, found.GetProperty("categories").GetDouble(), 5e-4);
        Assert.Equal((4, "coarse", true),
            (found.GetProperty("distinctCategories").GetInt32(), found.GetProperty("trust").GetString(), found.GetProperty("interactionPooled").GetBoolean()));
        Assert.False((await Get(technician, $"{address}?interaction=kept")).GetProperty("analysis").GetProperty("interactionPooled").GetBoolean());

        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open(address.Replace("/api/v1", "/tooling", StringComparison.Ordinal));
        Assert.Contains("It tells 4 classes of parts apart", page.Html.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("-1.38", page.Html.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_sees_what_was_read_while_readings_are_missing_and_each_reads_in_an_order_drawn_by_lot()
    {
        var technician = await app.As(Roles.Technician);
        var (address, people) = await Start(technician, parts: 3, trials: 2, people: 2);
        await Sent(technician, address, people[0], 2, 1, 7.5m);

        var study = await Get(technician, address);
        Assert.Equal(0, study.GetProperty("readings").GetArrayLength());
        Assert.Equal((1, 12), (study.GetProperty("read").GetInt32(), study.GetProperty("wanted").GetInt32()));
        Assert.Equal("1 of 12 readings are in; the study is worked out when all are.", study.GetProperty("whyNoAnalysis").GetString());

        // Whoever follows what the answer asks for next reads every part in every trial once.
        var read = new List<(int, int)>();
        var next = (study.GetProperty("appraisers")[1].GetProperty("nextPart").GetInt32(), study.GetProperty("appraisers")[1].GetProperty("nextTrial").GetInt32());
        for (JsonElement? answer = null; answer is null || answer.Value.GetProperty("nextPart").ValueKind == JsonValueKind.Number;)
        {
            read.Add(next);
            answer = await Sent(technician, address, people[1], next.Item1, next.Item2, 7m + next.Item1);
            if (answer.Value.GetProperty("nextPart").ValueKind == JsonValueKind.Number)
            {
                next = (answer.Value.GetProperty("nextPart").GetInt32(), answer.Value.GetProperty("nextTrial").GetInt32());
            }
        }

        Assert.Equal([(1, 1), (1, 2), (2, 1), (2, 2), (3, 1), (3, 2)], read.Order());
        Assert.Equal([1, 1, 1, 2, 2, 2], read.Select(r => r.Item2));
    }

    [Fact]
    public async Task A_reading_is_corrected_with_a_reason_and_never_overwritten()
    {
        var technician = await app.As(Roles.Technician);
        var (address, people) = await Start(technician, parts: 2, trials: 2, people: 2);
        await Sent(technician, address, people[0], 1, 1, 7.5m);

        var again = await technician.PostAsJsonAsync($"{address}/readings", new { appraiserId = people[0], part = 1, trial = 1, value = 7.6m }, Ct);
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Contains("say why in reason", await again.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);

        (await technician.PostAsJsonAsync($"{address}/readings", new { appraiserId = people[0], part = 1, trial = 1, value = 7.6m, reason = "slipped" }, Ct)).EnsureSuccessStatusCode();
        var id = Guid.Parse(address.Split('/')[^1]);
        Assert.Equal([7.5m, 7.6m], await app.Look(db => db.GaugeTrialReadings.Where(r => r.TrialId == id).OrderBy(r => r.SupersedesId != null).Select(r => r.Value).ToListAsync(Ct)));
        Assert.Equal(1, (await Get(technician, address)).GetProperty("read").GetInt32());
    }

    [Fact]
    public async Task What_is_not_in_the_study_is_refused_by_name()
    {
        var technician = await app.As(Roles.Technician);
        var (address, people) = await Start(technician, parts: 2, trials: 2, people: 2);

        var answer = await technician.PostAsJsonAsync($"{address}/readings", new { appraiserId = TestWorkshop.Manager, part = 3, trial = 3, value = 1 }, Ct);
        var said = await answer.Content.ReadAsStringAsync(Ct);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("part is 3: this study has 1 to 2.", said, StringComparison.Ordinal);
        Assert.Contains("trial is 3: this study has 1 to 2.", said, StringComparison.Ordinal);

        (await technician.PostAsJsonAsync($"{address}/giving-up", new { }, Ct)).EnsureSuccessStatusCode();
        var late = await technician.PostAsJsonAsync($"{address}/readings", new { appraiserId = people[0], part = 1, trial = 1, value = 1 }, Ct);
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
    }

    [Fact]
    public async Task The_page_begins_a_study_and_comes_back_filled_when_something_is_wrong()
    {
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var typed = new Dictionary<string, string?>
        {
            ["Input.Name"] = "Shims by micrometer", ["Input.Design"] = "Nested", ["Input.Unit"] = "mm", ["Input.Parts"] = "1", ["Input.Trials"] = "2", ["Input.Tolerance"] = "0,05",
        };

        var refused = await pages.Send("/tooling/gauge-studies", typed);
        Assert.Equal(HttpStatusCode.BadRequest, refused.Status);
        Assert.Contains(" is 1: a whole number from 2 to 30 is allowed.", refused.Html.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains(" names 0: 2 to 10 different people are allowed.", refused.Html.Body.TextContent, StringComparison.Ordinal);
        Assert.Equal("Shims by micrometer", refused.Html.QuerySelector("#Input_Name")!.GetAttribute("value"));
    }

    [Fact]
    public async Task A_blade_is_measured_withdrawn_and_no_longer_in_the_set()
    {
        var technician = await app.As(Roles.Technician);
        var (set, micrometer) = await app.Look(async db => (
            await db.Instruments.Where(i => i.Kind == InstrumentKind.FeelerSet).Select(i => i.Id).FirstAsync(Ct),
            await db.Instruments.Where(i => i.Kind == InstrumentKind.Micrometer).Select(i => i.Id).FirstAsync(Ct)));
        var blade = (await Get(technician, $"/api/v1/instruments/{set}/blades")).GetProperty("blades")[3];
        var id = blade.GetProperty("id").GetGuid();
        var nominal = blade.GetProperty("nominalMm").GetDecimal();

        var measured = await technician.PostAsJsonAsync($"/api/v1/blades/{id}/checks", new { measuredMm = nominal + 0.002m, micrometerId = micrometer }, Ct);
        Assert.Equal(0.002m, (await measured.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("deviationMm").GetDecimal());
        var silent = await technician.PostAsJsonAsync($"/api/v1/blades/{id}/checks", new { withdrawn = true }, Ct);
        Assert.Contains("remark is empty: give what is wrong with the blade.", await silent.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        (await technician.PostAsJsonAsync($"/api/v1/blades/{id}/checks", new { withdrawn = true, remark = "bent at the tip" }, Ct)).EnsureSuccessStatusCode();

        var now = (await Get(technician, $"/api/v1/instruments/{set}/blades")).GetProperty("blades")[3];
        Assert.Equal((true, nominal + 0.002m, 2), (now.GetProperty("withdrawn").GetBoolean(), now.GetProperty("measuredMm").GetDecimal(), now.GetProperty("checks").GetArrayLength()));
    }

    [Fact]
    public async Task An_inch_blade_is_kept_by_what_is_marked_on_it()
    {
        var technician = await app.As(Roles.Technician);
        var set = Guid.CreateVersion7();
        await app.Look(async db =>
        {
            db.Instruments.Add(new Instrument { Id = set, Kind = InstrumentKind.FeelerSet, Name = "Inch blades", SerialNumber = "FB-IN", Unit = "in" });
            await db.SaveChangesAsync(Ct);
            return true;
        });

        var inMm = await technician.PostAsJsonAsync($"/api/v1/instruments/{set}/blades", new { nominalMm = 0.1m }, Ct);
        Assert.Contains("is marked in in", await inMm.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        (await technician.PostAsJsonAsync($"/api/v1/instruments/{set}/blades", new { nominalIn = 0.004m }, Ct)).EnsureSuccessStatusCode();
        var blade = (await Get(technician, $"/api/v1/instruments/{set}/blades")).GetProperty("blades")[0];
        Assert.Equal((0.1016m, 0.004m), (blade.GetProperty("nominalMm").GetDecimal(), blade.GetProperty("nominalIn").GetDecimal()));
    }

    private async Task<(string Address, IReadOnlyList<Guid> People)> Start(HttpClient client, int parts, int trials, int people)
    {
        var staff = await app.Look(db => db.People.Where(p => p.IsStaff && p.Id != TestWorkshop.Manager).OrderBy(p => p.Name).Select(p => p.Id).Take(people).ToListAsync(Ct));
        while (staff.Count < people)
        {
            var id = Guid.CreateVersion7();
            await app.Look(async db =>
            {
                db.People.Add(new Person { Id = id, Name = $"Reader {id:N}", IsStaff = true });
                await db.SaveChangesAsync(Ct);
                return true;
            });
            staff.Add(id);
        }

        var answer = await client.PostAsJsonAsync("/api/v1/gauge-studies", new { name = "A study", design = "crossed", unit = "mm", parts, trials, appraiserIds = staff }, Ct);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return (answer.Headers.Location!.ToString(), staff);
    }

    private static async Task<JsonElement> Sent(HttpClient client, string address, Guid person, int part, int trial, decimal value)
    {
        var answer = await client.PostAsJsonAsync($"{address}/readings", new { appraiserId = person, part, trial, value }, Ct);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
    }

    private static async Task<JsonElement> Get(HttpClient client, string address) => await client.GetFromJsonAsync<JsonElement>(address, Ct);
}
