using System.Net;
using System.Net.Http.Json;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Motorcycles;

/// <summary>What was done elsewhere, parts that were changed, and the page that shows it all.</summary>
public sealed class HistoryTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_done_elsewhere_sets_the_next_due()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        var answer = await Did(advisor, motorcycle, "2025-04-30", 12_030, TestEngines.OilService, TestEngines.ValveCheck);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var oil = await advisor.DueOf(motorcycle, TestEngines.OilService);
        Assert.Equal("at 22,030 km, in 10,000 km", oil.GetProperty("byDistance").GetString());
        Assert.Equal("2026-04-30, in 8 weeks", oil.GetProperty("byDate").GetString());
        Assert.Equal("2025-04-30 at 12,030 km", oil.GetProperty("lastDone").GetString());
        Assert.Equal("at 36,030 km, in 24,000 km", (await advisor.DueOf(motorcycle, TestEngines.ValveCheck)).GetProperty("byDistance").GetString());
        var done = (await advisor.Motorcycle(motorcycle)).GetProperty("doneItems");
        Assert.Equal(2, done.GetArrayLength());
        Assert.Equal("Engine oil and filter", done[0].GetProperty("name").GetString());
        Assert.Equal("Ada Visor", done[0].GetProperty("doneBy").GetString());
    }

    [Fact]
    public async Task Items_that_the_engine_model_lacks_or_that_stand_already_are_named_one_by_one()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await Did(advisor, motorcycle, "2025-04-30", 12_030, TestEngines.OilService);

        var answer = await Did(
            advisor, motorcycle, "2025-04-30", 12_030, TestEngines.OilService, "waxing", TestEngines.ValveCheck, TestEngines.ValveCheck);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var errors = (await answer.Json()).GetProperty("errors");
        Assert.Contains("recorded for that day", errors.GetProperty("items[0]")[0].GetString(), StringComparison.Ordinal);
        Assert.Contains(
            "is \"waxing\": the engine model has valve-clearance-check, valve-clearance-adjustment, oil-and-filter",
            errors.GetProperty("items[1]")[0].GetString(), StringComparison.Ordinal);
        Assert.Contains("stands in the list before", errors.GetProperty("items[3]")[0].GetString(), StringComparison.Ordinal);
        Assert.False(errors.TryGetProperty("items[2]", out _));
    }

    [Fact]
    public async Task Nothing_done_and_no_engine_then_are_refused()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        Assert.Equal("items is empty: give at least one item that was done.", await (await Did(advisor, motorcycle, "2025-04-30", 1)).Detail());
        Assert.StartsWith(
            "doneOn is 2023-04-30: no engine was in the motorcycle on that day",
            await (await Did(advisor, motorcycle, "2023-04-30", 1, TestEngines.OilService)).Detail(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_part_belongs_to_the_engine_of_that_day()
    {
        var advisor = await app.As(Roles.Advisor);
        var technician = await app.As(Roles.Technician);
        var motorcycle = await advisor.AddMotorcycle();

        var seat = await Changed(technician, motorcycle, new
        {
            part = "seat", kind = "ground", valve = "1-exhaust-1", changedOn = "2025-04-30", odometer = 12_030, remark = "pitted",
        });
        var camshaft = await Changed(technician, motorcycle, new { part = "camshaft", kind = "replaced", changedOn = "2025-05-30", odometer = 12_500 });

        Assert.Equal(HttpStatusCode.OK, seat.StatusCode);
        Assert.Equal(HttpStatusCode.OK, camshaft.StatusCode);
        var stored = await advisor.Motorcycle(motorcycle);
        var changes = stored.GetProperty("partChanges");
        Assert.Equal(stored.GetProperty("engines")[0].GetProperty("engineId").GetGuid(), changes[0].GetProperty("engineId").GetGuid());
        Assert.Equal(("camshaft", null), (changes[0].GetProperty("part").GetString(), changes[0].GetProperty("valve").GetString()));
        Assert.Equal(("ground", "1-exhaust-1", "pitted", 12_030m), (
            changes[1].GetProperty("kind").GetString(), changes[1].GetProperty("valve").GetString(),
            changes[1].GetProperty("remark").GetString(), changes[1].GetProperty("distanceKm").GetDecimal()));
        Assert.Equal(2, await app.Look(db => db.OdometerReadings.CountAsync(r => r.MotorcycleId == motorcycle, Ct)));
    }

    [Fact]
    public async Task A_part_change_names_what_is_wrong_and_what_is_allowed()
    {
        var technician = await app.As(Roles.Technician);
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();

        var empty = await Changed(technician, motorcycle, new { });
        var unknown = await Changed(technician, motorcycle, new
        {
            part = "seat", kind = "ground", valve = "3-intake-1", changedOn = "2025-04-30", odometer = 1,
        });

        var errors = (await empty.Json()).GetProperty("errors");
        Assert.Equal(
            "part is empty: give the part: valve, seat, camshaft, follower, bucket, cylinderHead.", errors.GetProperty("part")[0].GetString());
        Assert.Equal("kind is empty: give what was done to it: replaced, ground.", errors.GetProperty("kind")[0].GetString());
        Assert.Equal("valve is 3-intake-1: the engine has 1-intake-1, 1-exhaust-1, 2-intake-1, 2-exhaust-1.", await unknown.Detail());
    }

    [Fact]
    public async Task Pages_record_readings_items_and_parts_and_the_motorcycle_shows_them()
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        var address = $"/motorcycles/{motorcycle}";

        var reading = await manager.Send(address, new() { ["Input.Odometer"] = "1200" }, "#odometer-form");
        var done = await manager.Send($"{address}/done-items", new()
        {
            ["Input.Items"] = TestEngines.OilService, ["Input.DoneOn"] = "2024-09-01", ["Input.Odometer"] = "1000",
        });
        var part = await manager.Send($"{address}/part-changes", new()
        {
            ["Input.Part"] = "CylinderHead", ["Input.Kind"] = "Ground", ["Input.Valve"] = "2-intake-1",
            ["Input.ChangedOn"] = "2024-10-01", ["Input.Odometer"] = "1100", ["Input.Remark"] = "Warped",
        });
        var replaced = await manager.Send($"{address}/odometer/replace", new() { ["Input.OldOdometer"] = "1201", ["Input.NewUnit"] = "1" });

        Assert.All([reading, done, part, replaced], answer => Assert.Equal(HttpStatusCode.Redirect, answer.Status));
        Assert.StartsWith($"{address}#", reading.Location, StringComparison.Ordinal);
        var page = await manager.Open(address);
        Assert.Contains("The new odometer counts miles from here on.", page.MainText, StringComparison.Ordinal);
        Assert.Equal(5, page.Html.QuerySelectorAll("#odometer ~ .scroll")[0].QuerySelectorAll("tbody tr").Length);
        Assert.Contains("cylinder head ground", page.MainText, StringComparison.Ordinal);
        Assert.Contains("cylinder 2, intake 1", page.MainText, StringComparison.Ordinal);
        Assert.Contains("2024-09-01 at 621 mi", page.MainText, StringComparison.Ordinal);
        Assert.All(page.Html.QuerySelectorAll("table"), table => Assert.NotNull(table.QuerySelector("caption")));
        Assert.NotNull(page.Html.QuerySelector($"a[href='/drift/{motorcycle}']"));
        Assert.NotNull(page.Html.QuerySelector($"a[href='/book?motorcycle={motorcycle}']"));
    }

    [Fact]
    public async Task Refused_forms_come_back_filled()
    {
        var manager = await TestPages.SignedIn(app, Roles.Manager);
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        var address = $"/motorcycles/{motorcycle}";

        await Refused(manager, address, "#odometer-form", new() { ["Input.Odometer"] = "1200 km", ["Input.ReadOn"] = "2026-03-01" });
        await Refused(manager, $"{address}/odometer", "form.fields", new() { ["Input.Odometer"] = "-5", ["Input.ReadOn"] = "2027-03-01" });
        await Refused(manager, $"{address}/odometer/replace", "form.fields", new()
        {
            ["Input.OldOdometer"] = "", ["Input.NewOdometer"] = "7", ["Input.ReplacedOn"] = "2025-01-01", ["Input.NewUnit"] = "1",
        });
        await Refused(manager, $"{address}/done-items", "form.fields", new() { ["Input.DoneOn"] = "2025-01-01", ["Input.Odometer"] = "77" });
        await Refused(manager, $"{address}/part-changes", "form.fields", new()
        {
            ["Input.Part"] = "Bucket", ["Input.Kind"] = "", ["Input.Valve"] = "1-exhaust-1", ["Input.ChangedOn"] = "2025-01-01",
            ["Input.Odometer"] = "77", ["Input.Remark"] = "<b>A \"remark\" & more</b>",
        });
    }

    [Fact]
    public async Task A_correction_by_page_names_what_it_corrects()
    {
        var advisor = await app.As(Roles.Advisor);
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var wrong = (await (await advisor.Odometer(motorcycle, 91_000, "2025-09-01")).Json()).GetProperty("id").GetGuid();
        var address = $"/motorcycles/{motorcycle}/odometer?supersedes={wrong}";

        var open = await pages.Open(address);
        var without = await pages.Send(open, address, new() { ["Input.Odometer"] = "9100" });
        var corrected = await pages.Send(without, address, new() { ["Input.Reason"] = "A zero too many" });

        Assert.Contains("Corrects the reading of 91,000 km on 2025-09-01", string.Join(" ", open.MainText.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, without.Status);
        Assert.Equal("9100", without.ValueOf("Input.Odometer"));
        Assert.Equal(HttpStatusCode.Redirect, corrected.Status);
        Assert.Contains("a correction: A zero too many", (await pages.Open(corrected.Location!)).MainText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_technician_sees_the_motorcycle_without_what_only_advisors_may_do()
    {
        var motorcycle = await (await app.As(Roles.Advisor)).AddMotorcycle();
        var technician = await TestPages.SignedIn(app, Roles.Technician);

        var page = await technician.Open($"/motorcycles/{motorcycle}");

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Null(page.Html.QuerySelector("#odometer-form"));
        Assert.NotNull(page.Html.QuerySelector($"a[href='/motorcycles/{motorcycle}/part-changes']"));
        foreach (var forbidden in new[] { "edit", "odometer", "odometer/replace", "done-items" })
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await technician.Open($"/motorcycles/{motorcycle}/{forbidden}")).Status);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await technician.Open($"/motorcycles/{TestWorkshop.Bay1}")).Status);
    }

    private static async Task Refused(TestPages pages, string address, string form, Dictionary<string, string?> typed)
    {
        var answer = await pages.Send(address, typed, form);

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.NotEmpty(answer.Faults);
        Assert.All(typed, field => Assert.Equal(field.Value, answer.ValueOf(field.Key)));
    }

    private static Task<HttpResponseMessage> Did(HttpClient client, Guid motorcycle, string doneOn, int odometer, params string[] items) =>
        client.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/done-items", new { items, doneOn, odometer }, Ct);

    private static Task<HttpResponseMessage> Changed(HttpClient client, Guid motorcycle, object body) =>
        client.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/part-changes", body, Ct);
}
