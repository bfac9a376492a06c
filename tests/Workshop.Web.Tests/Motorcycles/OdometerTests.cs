using System.Net;
using System.Net.Http.Json;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Motorcycles;

/// <summary>At the test's clock it is 2 March 2026.</summary>
public sealed class OdometerTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const string HowToConfirm =
        "where it is right all the same, enter it with the motorcycle's odometer, say why and confirm it (confirmUnusual).";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Backwards_is_judged_by_date_not_by_order_of_entry()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        Assert.Equal(HttpStatusCode.OK, (await advisor.Odometer(motorcycle, 12_000, "2026-01-10")).StatusCode);
        var late = await advisor.Odometer(motorcycle, 5_000, "2025-03-01");
        var tooFar = await advisor.Odometer(motorcycle, 12_001, "2025-06-01");
        var tooNear = await advisor.Odometer(motorcycle, 11_999, "2026-02-01");

        Assert.Equal(HttpStatusCode.OK, late.StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, tooFar.StatusCode);
        Assert.Equal(
            "odometer is 12001 km on 2025-06-01: later, on 2026-01-10, it showed 12000 km. At most 12000 is allowed; " + HowToConfirm, await tooFar.Detail());
        Assert.Equal(
            "odometer is 11999 km: it runs backwards; on 2026-01-10 it showed 12000 km. At least 12000 is allowed; " + HowToConfirm, await tooNear.Detail());
        Assert.Equal(2, (await advisor.Motorcycle(motorcycle)).GetProperty("odometerReadings").GetArrayLength());
    }

    [Fact]
    public async Task A_slip_is_refused_until_somebody_says_why_it_is_none_and_then_overrules_what_it_contradicts()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await advisor.Odometer(motorcycle, 9_000, "2025-06-01");
        await advisor.Odometer(motorcycle, 91_000, "2025-10-01");
        app.Clock.Now += NodaTime.Duration.FromMinutes(1);

        var backwards = await advisor.Odometer(motorcycle, 12_000, "2026-01-10");
        var unsaid = await Confirm(advisor, motorcycle, 12_000, "2026-01-10", null);
        var confirmed = await Confirm(advisor, motorcycle, 12_000, "2026-01-10", "Read twice; October was typed wrong");
        var next = await advisor.Odometer(motorcycle, 12_400, "2026-02-10");
        var far = await advisor.Odometer(motorcycle, 16_401, "2026-02-12");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, backwards.StatusCode);
        Assert.Equal("reason is empty: give why the reading is right.", await unsaid.Detail());
        Assert.Equal(HttpStatusCode.OK, confirmed.StatusCode);
        Assert.Equal(HttpStatusCode.OK, next.StatusCode);
        Assert.StartsWith(
            "odometer is 16401 km: on 2026-02-10 it showed 12400 km, which is 4001 km in 2 days. At most 16400 is allowed; ", await far.Detail(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await Confirm(advisor, motorcycle, 16_401, "2026-02-12", "Rode through two nights")).StatusCode);
        var readings = (await advisor.Motorcycle(motorcycle)).GetProperty("odometerReadings").EnumerateArray()
            .ToDictionary(r => r.GetProperty("odometer").GetInt32(), r => r.GetProperty("overruled").GetBoolean());
        Assert.Equal([91_000], readings.Where(r => r.Value).Select(r => r.Key));
        Assert.Equal("at 24,000 km, in 7,599 km", (await advisor.DueOf(motorcycle, TestEngines.ValveCheck)).GetProperty("byDistance").GetString());
        app.Clock.Now = TestWorkshop.Start;
    }

    [Fact]
    public async Task The_page_offers_to_confirm_what_looks_like_a_slip_and_keeps_what_was_typed()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await advisor.Odometer(motorcycle, 9_000, "2025-06-01");
        var pages = await TestPages.SignedIn(app, Roles.Advisor);
        var address = $"/motorcycles/{motorcycle}/odometer";

        var refused = await pages.Send(address, new() { ["Input.Odometer"] = "8000", ["Input.ReadOn"] = "2026-01-10" }, "form.fields");
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "8000"), (refused.Status, refused.ValueOf("Input.Odometer")));
        Assert.NotNull(refused.Html.QuerySelector("input[name='Input.ConfirmUnusual']"));
        app.Clock.Now += NodaTime.Duration.FromMinutes(1);
        var done = await pages.Send(refused, address, new() { ["Input.ConfirmUnusual"] = "true", ["Input.Reason"] = "The other one was wrong" });

        Assert.Equal($"/motorcycles/{motorcycle}#odometer", done.Location);
        Assert.Contains("overruled by a confirmed reading", (await pages.Open($"/motorcycles/{motorcycle}")).MainText, StringComparison.Ordinal);
        app.Clock.Now = TestWorkshop.Start;
    }

    private static Task<HttpResponseMessage> Confirm(HttpClient advisor, Guid motorcycle, int odometer, string readOn, string? reason) =>
        advisor.PostAsJsonAsync(
            $"/api/v1/motorcycles/{motorcycle}/odometer-readings", new { odometer, readOn, reason, confirmUnusual = true }, Ct);

    [Theory]
    [InlineData(100, "2026-03-03", HttpStatusCode.UnprocessableEntity, "readOn is 2026-03-03, which has not come yet: today, 2026-03-02, or an earlier day is allowed.")]
    [InlineData(100, "2024-02-29", HttpStatusCode.UnprocessableEntity, "odometer is of 2024-02-29, but this odometer was fitted on 2024-03-01; give a day from then on.")]
    [InlineData(-1, "2026-03-02", HttpStatusCode.BadRequest, "odometer is -1: a whole number from 0 to 999999 is allowed.")]
    [InlineData(1_000_000, "2026-03-02", HttpStatusCode.BadRequest, "odometer is 1000000: a whole number from 0 to 999999 is allowed.")]
    public async Task Bad_input_names_field_value_and_what_is_allowed(int odometer, string readOn, HttpStatusCode status, string sentence)
    {
        var advisor = await app.As(Roles.Advisor);

        var answer = await advisor.Odometer(await advisor.AddMotorcycle(), odometer, readOn);

        Assert.Equal((status, sentence), (answer.StatusCode, await answer.Detail()));
    }

    [Fact]
    public async Task A_new_motorcycle_may_show_zero_on_its_first_day()
    {
        var advisor = await app.As(Roles.Advisor);

        Assert.Equal(HttpStatusCode.OK, (await advisor.Odometer(await advisor.AddMotorcycle(), 0, "2024-03-01")).StatusCode);
    }

    [Fact]
    public async Task The_same_reading_typed_again_is_the_same_reading()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        var first = await (await advisor.Odometer(motorcycle, 700, "2025-03-01")).Json();
        var second = await (await advisor.Odometer(motorcycle, 700, "2025-03-01")).Json();

        Assert.Equal(first.GetProperty("id").GetGuid(), second.GetProperty("id").GetGuid());
        Assert.Equal(1, (await advisor.Motorcycle(motorcycle)).GetProperty("odometerReadings").GetArrayLength());
    }

    [Fact]
    public async Task A_reading_moves_what_is_due()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var before = await advisor.DueOf(motorcycle, TestEngines.ValveCheck);

        await advisor.Odometer(motorcycle, 23_100, "2026-03-02");

        var after = await advisor.DueOf(motorcycle, TestEngines.ValveCheck);
        Assert.Equal("assumed", before.GetProperty("rateBasis").GetString());
        Assert.Equal("borrowed", after.GetProperty("rateBasis").GetString());
        Assert.Equal("at 24,000 km, in 900 km", after.GetProperty("byDistance").GetString());
        Assert.True(string.CompareOrdinal(after.GetProperty("expectedOn").GetString(), before.GetProperty("expectedOn").GetString()) < 0);
    }

    [Fact]
    public async Task A_correction_stands_in_place_of_the_reading_and_gives_its_reason()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var wrong = (await (await advisor.Odometer(motorcycle, 91_000, "2025-09-01")).Json()).GetProperty("id").GetGuid();

        var corrected = await advisor.Odometer(motorcycle, 9_100, "2025-09-01", wrong, "A zero too many");
        var next = await advisor.Odometer(motorcycle, 9_500, "2025-10-01");

        Assert.Equal(HttpStatusCode.OK, corrected.StatusCode);
        Assert.Equal(HttpStatusCode.OK, next.StatusCode);
        var readings = (await advisor.Motorcycle(motorcycle)).GetProperty("odometerReadings").EnumerateArray().ToList();
        var id = (await corrected.Json()).GetProperty("id").GetGuid();
        Assert.Equal(id, readings.Single(r => r.GetProperty("id").GetGuid() == wrong).GetProperty("supersededById").GetGuid());
        Assert.Equal("A zero too many", readings.Single(r => r.GetProperty("id").GetGuid() == id).GetProperty("reason").GetString());
    }

    [Fact]
    public async Task A_correction_is_of_a_standing_reading_of_this_motorcycle_and_says_why()
    {
        var advisor = await app.As(Roles.Advisor);
        var (motorcycle, other) = (await advisor.AddMotorcycle(), await advisor.AddMotorcycle());
        var wrong = (await (await advisor.Odometer(motorcycle, 900, "2025-09-01")).Json()).GetProperty("id").GetGuid();

        var without = await advisor.Odometer(motorcycle, 910, "2025-09-01", wrong);
        var stray = await advisor.Odometer(motorcycle, 910, "2025-09-01", reason: "Stray");
        var ofOther = await advisor.Odometer(other, 910, "2025-09-01", wrong, "Another");
        await advisor.Odometer(motorcycle, 910, "2025-09-01", wrong, "First");
        var twice = await advisor.Odometer(motorcycle, 920, "2025-09-01", wrong, "Second");

        Assert.Equal("reason is empty: give why the earlier reading is wrong.", await without.Detail());
        Assert.Equal("reason is given, but supersedesId is empty: name the reading that is corrected.", await stray.Detail());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, ofOther.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, twice.StatusCode);
    }

    [Fact]
    public async Task A_new_instrument_in_miles_goes_on_where_the_old_one_in_kilometres_ended()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await advisor.Odometer(motorcycle, 9_000, "2025-01-01");

        var replaced = await advisor.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/odometers",
            new { replacedOn = "2025-06-01", oldOdometer = 10_000, newOdometer = 5, newUnit = "miles" }, Ct);
        var onNew = await advisor.Odometer(motorcycle, 1_005, "2025-12-01");
        var backwards = await advisor.Odometer(motorcycle, 4, "2025-12-02");
        var onOld = await advisor.Odometer(motorcycle, 9_500, "2025-03-01");

        Assert.Equal(HttpStatusCode.OK, replaced.StatusCode);
        Assert.Equal(10_000m + 1_609.344m, (await onNew.Json()).GetProperty("distanceKm").GetDecimal());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, backwards.StatusCode);
        Assert.Equal("kilometres", (await onOld.Json()).GetProperty("unit").GetString());
        Assert.Equal("at 14,912 mi, in 7,699 mi", (await advisor.DueOf(motorcycle, TestEngines.ValveCheck)).GetProperty("byDistance").GetString());
    }

    [Fact]
    public async Task A_new_instrument_is_refused_before_the_last_reading_and_its_day_cannot_be_corrected_away()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await advisor.Odometer(motorcycle, 9_000, "2025-07-01");

        var tooEarly = await Replace(advisor, motorcycle, "2025-06-01", 8_000);
        var backwards = await Replace(advisor, motorcycle, "2025-08-01", 8_999);
        var before = await Replace(advisor, motorcycle, "2024-03-01", 0);
        Assert.Equal(HttpStatusCode.OK, (await Replace(advisor, motorcycle, "2025-08-01", 9_001)).StatusCode);
        var last = (await advisor.Motorcycle(motorcycle)).GetProperty("odometerReadings").EnumerateArray()
            .Single(r => r.GetProperty("odometer").GetInt32() == 9_001).GetProperty("id").GetGuid();
        var corrected = await advisor.Odometer(motorcycle, 9_100, "2025-08-01", last, "Mistyped");

        Assert.Equal(
            "replacedOn is 2025-06-01: the old odometer was read on 2025-07-01 still; that day or a later one is allowed.", await tooEarly.Detail());
        Assert.StartsWith("oldOdometer is 8999 km: it runs backwards", await backwards.Detail(), StringComparison.Ordinal);
        Assert.StartsWith("replacedOn is 2024-03-01: the odometer that it has now was fitted on 2024-03-01", await before.Detail(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, corrected.StatusCode);
    }

    [Fact]
    public async Task Two_entries_at_once_judge_each_other()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();

        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(i =>
            advisor.Odometer(motorcycle, 8_000 - (1_000 * i), $"2025-0{i + 1}-01")));

        // Each next is later and shows less, so whichever came first refuses all the others.
        Assert.Equal(1, answers.Count(a => a.StatusCode == HttpStatusCode.OK));
        Assert.Equal(7, answers.Count(a => a.StatusCode == HttpStatusCode.UnprocessableEntity));
    }

    [Fact]
    public async Task An_unknown_motorcycle_is_not_found_and_a_technician_may_not_enter()
    {
        var advisor = await app.As(Roles.Advisor);
        var technician = await app.As(Roles.Technician);

        Assert.Equal(HttpStatusCode.NotFound, (await advisor.Odometer(TestWorkshop.Bay1, 1, "2026-01-01")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await Replace(advisor, TestWorkshop.Bay1, "2026-01-01", 1)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await technician.Odometer(TestWorkshop.Bay1, 1, "2026-01-01")).StatusCode);
    }

    private static Task<HttpResponseMessage> Replace(HttpClient advisor, Guid motorcycle, string replacedOn, int oldOdometer) =>
        advisor.PostAsJsonAsync($"/api/v1/motorcycles/{motorcycle}/odometers",
            new { replacedOn, oldOdometer, newOdometer = 0, newUnit = "kilometres" }, Ct);
}
