using System.Net;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.EngineModels;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Imports;

/// <summary>What a file may get wrong: every fault is named with line, column, value and what is allowed, and nothing is written.</summary>
public sealed class ImportFaultsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("NOBODY,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,", "line 2, motorcycle", "It is \"NOBODY\": no motorcycle in the books")]
    [InlineData(",2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,", "line 2, motorcycle", "motorcycle is empty")]
    [InlineData("F 1,31.05.2019,24100,1-exhaust-1,as found,0.28,0.29,", "line 2, date", "It is \"31.05.2019\": a day such as 2021-05-31 is allowed")]
    [InlineData("F 1,2019-02-30,24100,1-exhaust-1,as found,0.28,0.29,", "line 2, date", "It is \"2019-02-30\"")]
    [InlineData("F 1,2030-01-01,24100,1-exhaust-1,as found,0.28,0.29,", "line 2, date", "has not come yet")]
    [InlineData("F 1,1999-12-31,24100,1-exhaust-1,as found,0.28,0.29,", "line 2, odometer", "this odometer was fitted on 2000-01-01")]
    [InlineData("F 1,2019-05-31,24.100,1-exhaust-1,as found,0.28,0.29,", "line 2, odometer", "It is \"24.100\": a whole number")]
    [InlineData("F 1,2019-05-31,1000000,1-exhaust-1,as found,0.28,0.29,", "line 2, odometer", "odometer is 1000000: a whole number from 0 to 999999 is allowed")]
    [InlineData("F 1,2019-05-31,24100,3-exhaust-1,as found,0.28,0.29,", "line 2, valve", "the engine has no such valve; it has 1-intake-1")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1/2,as found,0.28,0.29,", "line 2, valve", "The lobe is 2: cylinder 1, exhaust 1 has one lobe")]
    [InlineData("F 1,2019-05-31,24100,exhaust 1,as found,0.28,0.29,", "line 2, valve", "It is \"exhaust 1\": cylinder-side-position")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,before,0.28,0.29,", "line 2, stage", "It is \"before\": \"as found\" or \"as left\" is allowed")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,0.29,0.29,", "line 2, no-go", "No-go is 0.29 mm: it must be greater than go, which is 0.29 mm")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,,,", "line 2, go", "Go is empty")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,0.28,x,", "line 2, no-go", "It is \"x\": a number such as 0.15 or 0,15 is allowed")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,0.28,28,", "line 2, no-go", "no-go is 28 mm: 0 to 3 mm with at most 4 decimals is allowed")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,25", "line 2, shim", "shim is 25 mm: 0.5 to 10 mm with at most 3 decimals is allowed")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,0,28,0,29,", "line 2, motorcycle", "The line has 10 cells, the first line names 8")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,0.2\"8,0.29,", "line 2, motorcycle", "A quotation mark stands inside a cell")]
    [InlineData("=1+1,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,", "line 2, motorcycle", "It is \"=1+1\"")]
    [InlineData("F 1,2019-05-31,24100,1-exhaust-1,as found,=0.28,0.29,", "line 2, go", "It is \"=0.28\"")]
    public async Task A_line_at_fault_is_named_with_column_value_and_what_is_allowed(string line, string at, string words)
    {
        await Book("F 1");
        var manager = await app.As(Roles.Manager);

        var answer = await manager.SendCsv(Worksheets.File(line));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var fault = Assert.Single(await answer.Faults());
        Assert.Equal(at, fault.At);
        Assert.Contains(words, fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_fault_of_a_file_is_listed_in_its_order_and_nothing_is_written()
    {
        await Book("F 2");
        var manager = await app.As(Roles.Manager);
        var before = await Written();

        var answer = await manager.SendCsv(Worksheets.File(
            "F 2,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,",
            "F 2,2019-05-31,24200,2-exhaust-1,as found,0.28,0.29,",
            "F 2,2019-05-31,24100,1-exhaust-1,as found,0.27,0.28,",
            "F 2,2018-05-31,30000,1-exhaust-1,as left,0.28,0.27,2.5",
            "F 3,2018-05-31,x,9-exhaust-1,as right,0.28,0.29,"));

        var listed = await answer.Faults();
        Assert.Equal(
            ["line 2, odometer", "line 3, odometer", "line 4, valve", "line 5, no-go", "line 6, motorcycle", "line 6, odometer", "line 6, stage"],
            listed.Select(f => f.At));
        var faults = listed.ToDictionary(f => f.At, f => f.Sentence);
        Assert.Contains("It is 24200, but line 2 of the same day says 24100", faults["line 3, odometer"], StringComparison.Ordinal);
        Assert.Contains("which line 2 gives for the same day and stage: once is allowed", faults["line 4, valve"], StringComparison.Ordinal);
        Assert.Contains("it runs backwards; on 2018-05-31 it showed 30000 km", faults["line 2, odometer"], StringComparison.Ordinal);
        Assert.Equal(before, await Written());

        // Other tests of this class write to the same database, in any order.
        Task<(int Imports, int Odometer, int Readings)> Written() => app.Look(async db => (
            await db.ReadingImports.CountAsync(Ct), await db.OdometerReadings.CountAsync(Ct), await db.ClearanceReadings.CountAsync(Ct)));
    }

    [Fact]
    public async Task What_is_in_the_books_already_is_not_written_again()
    {
        await Book("F 4");
        var manager = await app.As(Roles.Manager);
        var file = Worksheets.File("F 4,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,");
        var dry = await manager.SendCsv(file, "?dryRun=true");
        var first = await manager.SendCsv(file);

        var again = await manager.SendCsv(file);

        Assert.Equal(HttpStatusCode.OK, dry.StatusCode);
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        var fault = Assert.Single(await again.Faults());
        Assert.Equal("line 2, valve", fault.At);
        Assert.Contains("in the books already", fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_odometer_that_runs_backwards_against_the_books_is_refused_by_date()
    {
        var id = await Book("F 5");
        var manager = await app.As(Roles.Manager);
        await manager.SendCsv(Worksheets.File("F 5,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,"));

        var earlier = await manager.SendCsv(Worksheets.File("F 5,2018-05-31,25000,1-exhaust-1,as found,0.28,0.29,"));
        var sameDay = await manager.SendCsv(Worksheets.File("F 5,2019-05-31,24100,2-exhaust-1,as found,0.28,0.29,"));

        Assert.Contains("later, on 2019-05-31, it showed 24100 km", Assert.Single(await earlier.Faults()).Sentence, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, sameDay.StatusCode);
        Assert.Equal(1, await app.Look(db => db.OdometerReadings.CountAsync(r => r.MotorcycleId == id, Ct)));
    }

    [Fact]
    public async Task One_shim_serves_both_lobes()
    {
        await Book("F 6");
        var manager = await app.As(Roles.Manager);

        var answer = await manager.SendCsv(Worksheets.File(
            "F 6,2019-05-31,24100,1-intake-1,as found,0.15,0.16,2.500",
            "F 6,2019-05-31,24100,1-intake-1/2,as found,0.15,0.16,2.600"));

        Assert.Contains("one shim serves both lobes", Assert.Single(await answer.Faults()).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_engine_with_screws_has_no_shims()
    {
        var visit = await app.Booked(specification: TestEngines.Twin() with { ValveTrain = ValveTrainKind.ScrewAndLocknut, Shims = null });
        var registration = await app.Look(db => db.Motorcycles.Where(m => m.Id == visit.MotorcycleId).Select(m => m.Registration).SingleAsync(Ct));
        var manager = await app.As(Roles.Manager);

        var answer = await manager.SendCsv(Worksheets.File($"{registration},2021-05-31,24100,1-exhaust-1,as found,0.28,0.29,2.500"));

        Assert.Contains("the engine has screws, no shims", Assert.Single(await answer.Faults()).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "line 1, motorcycle", "The file has no line below")]
    [InlineData("motorcycle,date,odometer,valve,stage,go\n", "line 1, no-go", "The column is missing")]
    [InlineData("motorcycle,date,odometer,valve,stage,go,no-go,colour\n", "line 1, colour", "No such column; motorcycle, date")]
    [InlineData("motorcycle,date,odometer,valve,stage,go,no-go,go\n", "line 1, go", "The column is named twice")]
    public async Task A_file_without_the_columns_is_refused_by_its_first_line(string file, string at, string words)
    {
        var manager = await app.As(Roles.Manager);

        var faults = await (await manager.SendCsv(file.Length == 0 ? Worksheets.Header : file)).Faults();

        var fault = Assert.Single(faults, f => f.At == at || file.Length == 0);
        Assert.Contains(words, fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_body_of_another_type_of_bytes_that_are_no_text_or_too_long_is_refused()
    {
        var manager = await app.As(Roles.Manager);
        using var latin = new ByteArrayContent(Encoding.Latin1.GetBytes(Worksheets.File("MÜ 1,2019-05-31,24100,1-exhaust-1,as found,0.28,0.29,")));
        latin.Headers.ContentType = new("text/csv");
        using var xml = new StringContent("<a/>", Encoding.UTF8, "application/xml");
        using var broken = new StringContent("{\"csv\": 7}", Encoding.UTF8, "application/json");
        var address = new Uri("/api/v1/imports/readings", UriKind.Relative);

        await Refused(await manager.PostAsync(address, latin, Ct), "csv is not UTF-8 text");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await manager.PostAsync(address, xml, Ct)).StatusCode);
        await Refused(await manager.PostAsync(address, broken, Ct), "csv");
        await Refused(await manager.SendCsv(""), "csv is empty");
        await Refused(await manager.SendCsv("motorcycle\0"), "csv is not UTF-8 text");
        await Refused(await manager.SendCsv(new string('x', 4_000_001)), "csv has 4000001 characters: at most 4000000 are allowed");
        await Refused(await manager.SendJson(new { csv = Worksheets.Header, fileName = "a\u0007" }), "fileName holds a control character");
    }

    private static async Task Refused(HttpResponseMessage answer, string words)
    {
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, string.Join(" ", (await answer.Faults()).Select(f => f.Sentence)), StringComparison.Ordinal);
    }

    /// <summary>The motorcycle, made by the first test that needs it.</summary>
    private async Task<Guid> Book(string registration)
    {
        var there = await app.Look(db => db.Motorcycles.Where(m => m.Registration == registration).Select(m => (Guid?)m.Id).SingleOrDefaultAsync(Ct));
        return there ?? await app.Motorcycle(registration, "2000-01-01");
    }
}
