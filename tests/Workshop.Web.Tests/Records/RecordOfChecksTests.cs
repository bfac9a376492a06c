using System.Net.Http.Json;
using System.Text.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Workshop.Web.Tests.Paper;
using Xunit;

namespace Workshop.Web.Tests.Records;

public sealed class RecordOfChecksTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task How_it_came_and_what_followed_the_work_stand_on_the_record_with_what_was_said()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: RecordedVisits.CheckOnly);
        await Post(technician, $"{visit.Api}/arrival", new { notes = new object[] { new { kind = "leak", subject = "engineOil", state = "weeping", words = "below the cover" } }, nothingElseSeen = true });
        await app.Finish(visit, technician);
        await Post(technician, $"{visit.Api}/after-work/leak-check", new { runMinutes = 10, places = new object[] { new { code = "engine", state = "weeping", words = "old trace, wiped off" } } });
        await Post(technician, $"{visit.Api}/after-work/test-ride", new { distanceKm = 12.5, words = "runs well" });
        await RecordedVisits.SignOff(technician, visit, 24_013);

        var answer = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/record", Ct);
        using var pdf = new PdfReader(await technician.GetByteArrayAsync(new Uri($"{visit.Api}/record.pdf", UriKind.Relative), Ct));

        var record = answer.GetProperty("record");
        Assert.Contains("Leaks: Engine oil weeping", Said(record, "arrival"));
        Assert.Contains("Warning lamps: None seen", Said(record, "arrival"));
        Assert.Equal(["Leak check: The engine as a whole, from below too: weeping", "Test ride: 12.5 km, ridden by Tek Nician"], Said(record, "afterWork"));
        Assert.Equal(["below the cover", "old trace, wiped off", "runs well"], answer.GetProperty("words").EnumerateObject().Where(w => w.Name.StartsWith("said:", StringComparison.Ordinal)).Select(w => w.Value.GetString()).Order());
        var text = string.Concat(pdf.Text().Where(c => !char.IsWhiteSpace(c)));
        Assert.All(["How it came", "Engine oil weeping: below the cover", "After the work", "12.5 km, ridden by Tek Nician: runs well"], words => Assert.Contains(words.Replace(" ", "", StringComparison.Ordinal), text, StringComparison.Ordinal));
    }

    private static IEnumerable<string> Said(JsonElement record, string list) =>
        record.GetProperty(list).EnumerateArray().Select(c => $"{c.GetProperty("what").GetString()}: {c.GetProperty("sentence").GetString()}");

    private static async Task Post(HttpClient client, string address, object body)
    {
        var answer = await client.PostAsJsonAsync(address, body, Ct);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
    }
}
