using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Imports;

public sealed class ImportHistoryTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string Header = "motorcycle,item,date,odometer,unit,note";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_done_before_is_in_the_history_and_moves_what_is_due()
    {
        var id = await app.Motorcycle("H 1", "2018-01-01");
        var manager = await app.As(Roles.Manager);

        var answer = await Made(await Send(manager, File(
            "H 1,oil-and-filter,2024-05-31,9800,km,by the workshop before us",
            "H 1,valve-clearance-check,2024-05-31,9800,km,")));

        Assert.Equal((2, 1, 1), (Number(answer, "doneItems"), Number(answer, "odometerReadings"), Number(answer, "motorcycles")));
        var history = await manager.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{id}/history", Ct);
        var row = history.GetProperty("rows").EnumerateArray().Single(r => r.GetProperty("code").GetString() == TestEngines.OilService);
        Assert.Equal(("2024-05-31", 9800, "Engine oil and filter", "Mana Ger", "pasted text", "by the workshop before us"), (
            row.GetProperty("doneOn").GetString(), Number(row, "odometer"), row.GetProperty("name").GetString(), row.GetProperty("doneBy").GetString(),
            row.GetProperty("importedFrom").GetString(), row.GetProperty("note").GetString()));
        var due = await app.Look(db => db.DueItems.SingleAsync(d => d.MotorcycleId == id && d.ServiceItemCode == TestEngines.OilService, Ct));
        Assert.Equal((new LocalDate(2024, 5, 31), 9800m, 19_800m), (due.LastDoneOn, due.LastDoneAt!.Value.Kilometres, due.DueAt!.Value.Kilometres));
    }

    [Fact]
    public async Task A_motorcycle_may_be_named_by_its_vin()
    {
        var advisor = await app.As(Roles.Advisor);
        var made = await advisor.PostAsJsonAsync("/api/v1/motorcycles", new
        {
            registration = "H VIN", vin = "1M8GDM9AXKP042788", maker = "Testwerk", model = "Twin 600", modelYear = 1989,
            engineModelId = TestWorkshop.EngineModel, odometerUnit = "miles", inServiceSince = "1989-01-01",
        }, Ct);
        made.EnsureSuccessStatusCode();
        var manager = await app.As(Roles.Manager);

        var answer = await Made(await Send(manager, File("1M8GDM9AXKP042788,oil-and-filter,2015-05-31,9000,mi,", "H VIN,oil-and-filter,2016-05-31,10000,mi,")));

        Assert.Equal((1, 2), (Number(answer, "motorcycles"), Number(answer, "doneItems")));
        var kilometres = await app.Look(db => db.DoneItems.Where(d => d.DoneOn == new LocalDate(2015, 5, 31)).Select(d => d.Distance).SingleAsync(Ct));

        // 9,000 international miles of 1609.344 m (NIST SP 811).
        Assert.Equal(14_484.096m, kilometres.Kilometres);
    }

    [Theory]
    [InlineData("NOBODY,oil-and-filter,2019-05-31,24100,km,", "line 2, motorcycle", "It is \"NOBODY\": no motorcycle in the books has this registration or VIN")]
    [InlineData("H F,paint,2019-05-31,24100,km,", "line 2, item", "It is \"paint\": the engine model of H F has valve-clearance-check, valve-clearance-adjustment, oil-and-filter.")]
    [InlineData("H F,,2019-05-31,24100,km,", "line 2, item", "item is empty: give the code of a service item")]
    [InlineData("H F,oil-and-filter,31.5.2019,24100,km,", "line 2, date", "It is \"31.5.2019\": a day such as 2021-05-31 is allowed")]
    [InlineData("H F,oil-and-filter,2030-05-31,24100,km,", "line 2, date", "has not come yet")]
    [InlineData("H F,oil-and-filter,2019-05-31,24.100,km,", "line 2, odometer", "It is \"24.100\": a whole number, without separators is allowed")]
    [InlineData("H F,oil-and-filter,2019-05-31,24100,mi,", "line 2, unit", "It is mi: the odometer of H F counted km on that day")]
    [InlineData("H F,oil-and-filter,2019-05-31,24100,leagues,", "line 2, unit", "It is \"leagues\": km or mi is allowed")]
    [InlineData("H F,oil-and-filter,2019-05-31,24100", "line 2, motorcycle", "The line has 4 cells, the first line names 6")]
    public async Task A_line_at_fault_is_named_with_column_value_and_what_is_allowed(string line, string at, string words)
    {
        if (!await app.Look(db => db.Motorcycles.AnyAsync(m => m.Registration == "H F", Ct)))
        {
            await app.Motorcycle("H F", "2018-01-01");
        }

        var answer = await Send(await app.As(Roles.Manager), File(line));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var fault = Assert.Single(await answer.Faults());
        Assert.Equal(at, fault.At);
        Assert.Contains(words, fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_in_the_last_line_leaves_nothing_of_the_file_behind()
    {
        await app.Motorcycle("H LAST", "2018-01-01");
        var manager = await app.As(Roles.Manager);
        var before = await Written();

        var answer = await Send(manager, File([
            .. Enumerable.Range(0, 200).Select(i => $"H LAST,oil-and-filter,{new LocalDate(2019, 1, 1).PlusDays(i):uuuu-MM-dd},{1000 + i},km,note {i}"),
            "H LAST,oil-and-filter,2019-12-01,900,km,"]));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("it runs backwards", Assert.Single(await answer.Faults(), f => f.At == "line 202, odometer").Sentence, StringComparison.Ordinal);
        Assert.Equal(before, await Written());
    }

    [Fact]
    public async Task A_dry_run_writes_nothing_and_answers_what_an_import_would_write()
    {
        await app.Motorcycle("H DRY", "2018-01-01");
        var manager = await app.As(Roles.Manager);
        var file = File("H DRY,oil-and-filter,2024-05-31,9800,km,a note");
        var before = await Written();

        var dry = await Made(await Send(manager, file, "?dryRun=true"));

        Assert.Equal((1, 1), (Number(dry, "doneItems"), Number(dry, "odometerReadings")));
        Assert.Equal(JsonValueKind.Null, dry.GetProperty("importId").ValueKind);
        Assert.Equal(before, await Written());
        Assert.Equal(1, Number(await Made(await Send(manager, file)), "doneItems"));
    }

    [Fact]
    public async Task The_same_file_writes_nothing_twice()
    {
        await app.Motorcycle("H TWICE", "2018-01-01");
        var manager = await app.As(Roles.Manager);
        var file = File("H TWICE,oil-and-filter,2024-05-31,9800,km,a note");
        var first = await Made(await Send(manager, file));
        var before = await Written();

        var again = await Made(await Send(manager, file));

        Assert.True(again.GetProperty("alreadyImported").GetBoolean());
        Assert.Equal(first.GetProperty("importId").GetGuid(), again.GetProperty("importId").GetGuid());
        Assert.Equal(before, await Written());
    }

    [Fact]
    public async Task Lines_that_repeat_one_another_or_the_books_are_recognised()
    {
        await app.Motorcycle("H DOUBLE", "2018-01-01");
        var manager = await app.As(Roles.Manager);
        await Made(await Send(manager, File("H DOUBLE,oil-and-filter,2024-05-31,9800,km,")));

        var answer = await Made(await Send(manager, File(
            "H DOUBLE,oil-and-filter,2024-05-31,9800,km,once more",
            "H DOUBLE,oil-and-filter,2025-05-31,19800,km,",
            "H DOUBLE,oil-and-filter,2025-05-31,19800,km,",
            "H DOUBLE,valve-clearance-check,2025-05-31,19800,km,")));

        Assert.Equal((2, 1, 1), (Number(answer, "doneItems"), Number(answer, "inBooksAlready"), Number(answer, "duplicates")));
        var other = await Send(manager, File("H DOUBLE,oil-and-filter,2025-05-31,19801,km,"));
        Assert.Contains("the books have oil-and-filter on that day at 19800 km", Assert.Single(await other.Faults()).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_checks_first_and_then_imports_the_text_as_it_stands()
    {
        var id = await app.Motorcycle("H PAGE", "2018-01-01");
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var faulty = await pages.Send("/imports/history", new() { ["Input.Csv"] = File("H PAGE,paint,2024-05-31,9800,km,"), ["Input.DryRun"] = "true" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, faulty.Status);
        Assert.Contains("Line 2, item: It is \"paint\"", faulty.MainText, StringComparison.Ordinal);
        var found = await pages.Send(faulty, "/imports/history",
            new() { ["Input.Csv"] = File("H PAGE,oil-and-filter,2024-05-31,9800,km,=note"), ["Input.DryRun"] = "true" });
        Assert.Contains("1 items and 1 odometer readings of 1 motorcycles", found.MainText, StringComparison.Ordinal);
        var imported = await pages.Send(found, "/imports/history", new() { ["Input.DryRun"] = "false" });

        Assert.Equal((HttpStatusCode.Redirect, "/motorcycles"), (imported.Status, imported.Location));
        var history = await pages.Open($"/motorcycles/{id}/history");
        Assert.Contains("9,800 km", history.MainText, StringComparison.Ordinal);
        var csv = await pages.Client.GetAsync(new Uri($"/motorcycles/{id}/history?handler=Csv", UriKind.Relative), Ct);
        Assert.Equal("history-h-page.csv", csv.Content.Headers.ContentDisposition!.FileName);
        Assert.Equal(
            ["registration,date,item,name,odometer,unit,total km,job card,by,imported from,note",
             "H PAGE,2024-05-31,oil-and-filter,Engine oil and filter,9800,km,9800,,Mana Ger,pasted text,'=note"],
            (await csv.Content.ReadAsStringAsync(Ct)).Split("\r\n", StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public async Task The_history_comes_a_page_at_a_time()
    {
        var id = await app.Motorcycle("H SLICE", "2018-01-01");
        var manager = await app.As(Roles.Manager);
        await Made(await Send(manager, File(Enumerable.Range(0, 5).Select(i => $"H SLICE,oil-and-filter,2024-05-0{i + 1},{9800 + i},km,").ToArray())));

        var seen = new List<string>();
        for (string? after = ""; after is not null;)
        {
            var page = await manager.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{id}/history?take=2{(after.Length > 0 ? $"&after={after}" : "")}", Ct);
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("doneOn").GetString()!));
            after = page.GetProperty("next").GetString();
        }

        Assert.Equal(["2024-05-05", "2024-05-04", "2024-05-03", "2024-05-02", "2024-05-01"], seen);
        Assert.Equal(HttpStatusCode.NotFound, (await manager.GetAsync($"/api/v1/motorcycles/{Guid.Empty}/history", Ct)).StatusCode);
    }

    [Fact]
    public async Task Importing_is_the_managers()
    {
        Assert.Equal(HttpStatusCode.Forbidden, (await Send(await app.As(Roles.Advisor), File("X,x,2024-05-01,1,km,"))).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await TestPages.SignedIn(app, Roles.Technician)).Open("/imports/history")).Status);
    }

    private Task<(int Imports, int Done, int Odometer, int Remarks)> Written() => app.Look(async db => (
        await db.HistoryImports.CountAsync(Ct), await db.DoneItems.CountAsync(Ct), await db.OdometerReadings.CountAsync(Ct), await db.Remarks.CountAsync(Ct)));

    private static string File(params string[] lines) => string.Join('\n', lines.Prepend(Header)) + "\n";

    private static int Number(JsonElement answer, string name) => answer.GetProperty(name).GetInt32();

    private static async Task<HttpResponseMessage> Send(HttpClient client, string csv, string query = "")
    {
        using var content = new StringContent(csv, Encoding.UTF8, "text/csv");
        return await client.PostAsync(new Uri($"/api/v1/imports/history{query}", UriKind.Relative), content, Ct);
    }

    private static async Task<JsonElement> Made(HttpResponseMessage answer)
    {
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Ct));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
    }
}
