using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Xunit;

namespace Workshop.Web.Tests.Drift;

public sealed class ListDriftTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Motorcycles_stand_by_earliest_forecast_and_those_without_come_last_with_the_reason()
    {
        await app.Knows(TestWorkshop.EngineModel);
        var late = await app.ReadOverYears(
            TestEngines.Exhaust(1), (0.29m, 0.30m), (0.28m, 0.29m), (0.27m, 0.28m), (0.26m, 0.27m), (0.25m, 0.26m));
        var soon = await app.ReadOverYears(
            TestEngines.Exhaust(2), (0.28m, 0.29m), (0.26m, 0.27m), (0.25m, 0.26m), (0.23m, 0.24m), (0.21m, 0.22m));
        var outside = await app.ReadOverYears(TestEngines.Exhaust(2), (0.32m, 0.33m), (0.32m, 0.33m));
        var intake = await app.ReadOverYears(TestEngines.Intake(1), (0.17m, 0.18m), (0.16m, 0.17m));
        var never = await app.CheckedIn(60_000);
        await app.RewriteForecasts(never);

        var rows = await Rows(await app.As(Roles.Manager), "/api/v1/drift");

        Assert.Equal([outside.MotorcycleId, soon.MotorcycleId], rows.Take(2).Select(r => r.GetProperty("motorcycleId").GetGuid()));
        Assert.Equal("cylinder 2, exhaust 1", rows[1].GetProperty("valve").GetString());
        Assert.InRange(rows[1].GetProperty("atKm").GetDecimal(), 110_000, 130_000);
        Assert.True(rows[1].GetProperty("earliestAtKm").GetDecimal() < rows[1].GetProperty("atKm").GetDecimal());
        Assert.True(rows[1].GetProperty("earliestOn").GetDateTime() < rows[1].GetProperty("on").GetDateTime());
        // Its check is overdue, so it is asked about as it is.
        Assert.InRange(rows[1].GetProperty("outsideAtNextCheck").GetDouble(), 0, 0.01);
        Assert.True(rows[0].GetProperty("outsideAtNextCheck").GetDouble() > 0.99);
        Assert.Equal((1, 6), (rows[1].GetProperty("foretold").GetInt32(), rows[1].GetProperty("lobes").GetInt32()));
        Assert.Equal(never.MotorcycleId, rows[^1].GetProperty("motorcycleId").GetGuid());
        Assert.StartsWith("No forecast: it was not measured yet", ReasonOf(rows, never), StringComparison.Ordinal);

        await The_filters_narrow_it(soon, intake, never);
        await The_pages_of_the_list_make_up_the_whole(rows);
        await The_page_shows_the_same_order(rows);
        await The_file_holds_every_row_of_the_filter(rows);
        await A_retired_motorcycle_is_no_longer_listed(late, rows.Count);
    }

    /// <summary>Read at 60,000 km and signed off 2 km later, after the ride: due again there, not before, and all pages say why.</summary>
    [Fact]
    public async Task A_valve_that_was_left_outside_is_to_be_come_back_for_and_every_page_says_so()
    {
        const string Why = "a valve was left outside its limits on 2026-03-02: to come back for it";
        await app.Knows(TestWorkshop.EngineModel);
        var left = await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.24m, 0.25m), (0.15m, 0.16m));
        await IsChecked(left, 60_002);
        var drifting = await app.ReadOverYears(TestEngines.Exhaust(1), (0.28m, 0.29m), (0.24m, 0.25m), (0.205m, 0.215m));
        await IsChecked(drifting, 60_002);
        var manager = await app.As(Roles.Manager);

        var due = await Check(left);
        Assert.Equal((60_002m, Why, true), (due.GetProperty("dueAtKm").GetDecimal(), due.GetProperty("byDistance").GetString(), due.GetProperty("byForecast").GetBoolean()));
        var other = await Check(drifting);
        Assert.True(other.GetProperty("byForecast").GetBoolean() && other.GetProperty("dueAtKm").GetDecimal() is > 60_002 and < 84_002);
        Assert.EndsWith("by its drift before the interval", other.GetProperty("byDistance").GetString(), StringComparison.Ordinal);

        var pages = await TestPages.SignedIn(app, Roles.Manager);
        foreach (var visit in new[] { left, drifting })
        {
            var words = (await Check(visit)).GetProperty("byDistance").GetString()!;
            foreach (var address in new[] { visit == left ? "/due" : "/drift", "/drift", $"/drift/{visit.MotorcycleId}", $"/motorcycles/{visit.MotorcycleId}" })
            {
                Assert.Contains(words, (await pages.Open(address)).MainText, StringComparison.Ordinal);
            }
        }

        // Off the list again, which the other tests here look at as a whole.
        await app.Look(db => db.Motorcycles.Where(m => m.Id == left.MotorcycleId || m.Id == drifting.MotorcycleId)
            .ExecuteUpdateAsync(set => set.SetProperty(m => m.Retired, true), Ct));

        async Task<JsonElement> Check(TestVisit visit) =>
            (await Rows(manager, $"/api/v1/motorcycles/{visit.MotorcycleId}/due")).Single(d => d.GetProperty("code").GetString() == TestEngines.ValveCheck);
    }

    private async Task IsChecked(TestVisit visit, int km)
    {
        await app.CheckedInAgain(visit, km);
        await app.Look(async db =>
        {
            db.DoneItems.Add(new DoneItem
            {
                Id = NewId.At(app.Clock.Now), MotorcycleId = visit.MotorcycleId, ServiceItemCode = TestEngines.ValveCheck,
                DoneOn = new LocalDate(2026, 3, 2), Distance = Distance.FromKilometres(km), DoneBy = TestWorkshop.Technician, EnteredAt = app.Clock.Now,
            });
            await db.SaveChangesAsync(Ct);
            await using var transaction = await db.Database.BeginTransactionAsync(Ct);
            await ForecastRows.Rewrite(db, visit.EngineId, app.Clock, Ct);
            await DueRows.Rewrite(db, visit.MotorcycleId, app.Clock, Ct);
            await transaction.CommitAsync(Ct);
            return true;
        });
    }

    [Fact]
    public async Task Months_sides_and_the_place_to_go_on_from_are_checked()
    {
        var manager = await app.As(Roles.Manager);

        foreach (var (query, field, words) in new[]
        {
            ("within=0", "within", "within is 0: a whole number from 1 to 240 is allowed."),
            ("side=left", "side", "side is \"left\": one of intake, exhaust is allowed."),
            ("after=here", "after", "after is \"here\": give back what an answer named as next."),
            ("take=501", "take", "take is 501"),
        })
        {
            var answer = await manager.GetAsync(new Uri($"/api/v1/drift?{query}", UriKind.Relative), Ct);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            var errors = (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("errors");
            Assert.Contains(words, errors.GetProperty(field)[0].GetString(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(Roles.Technician)]
    [InlineData(Roles.Advisor)]
    public async Task The_list_is_the_managers(string role)
    {
        var client = await app.As(role);
        var pages = await TestPages.SignedIn(app, role);

        Assert.Equal(HttpStatusCode.Forbidden, (await client.GetAsync(new Uri("/api/v1/drift", UriKind.Relative), Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await client.GetAsync(new Uri("/api/v1/drift/fits", UriKind.Relative), Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await pages.Open("/drift")).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await pages.Open("/drift?handler=Csv")).Status);
    }

    private async Task The_filters_narrow_it(TestVisit soon, TestVisit intake, TestVisit never)
    {
        var manager = await app.As(Roles.Manager);
        var near = await Rows(manager, "/api/v1/drift?within=36");
        Assert.Contains(near, r => r.GetProperty("motorcycleId").GetGuid() == soon.MotorcycleId);
        Assert.DoesNotContain(near, r => r.GetProperty("motorcycleId").GetGuid() == never.MotorcycleId);

        var sided = await Rows(manager, "/api/v1/drift?side=intake&take=500");
        var first = sided.Single(r => r.GetProperty("motorcycleId").GetGuid() == intake.MotorcycleId);
        Assert.Equal(("cylinder 1, intake 1", 1, 4), (
            first.GetProperty("valve").GetString(), first.GetProperty("foretold").GetInt32(), first.GetProperty("lobes").GetInt32()));
        Assert.NotNull(ReasonOf(sided, soon));

        Assert.Empty(await Rows(manager, $"/api/v1/drift?engineModelId={TestWorkshop.Bay1}"));
    }

    private async Task The_pages_of_the_list_make_up_the_whole(IReadOnlyList<JsonElement> whole)
    {
        var manager = await app.As(Roles.Manager);
        var met = new List<Guid>();
        for (var next = ""; next is not null;)
        {
            var slice = await manager.GetFromJsonAsync<JsonElement>($"/api/v1/drift?take=1&after={next}", Ct);
            met.AddRange(slice.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("motorcycleId").GetGuid()));
            next = slice.GetProperty("next").GetString();
        }

        Assert.Equal(whole.Select(r => r.GetProperty("motorcycleId").GetGuid()), met);
    }

    private async Task The_page_shows_the_same_order(IReadOnlyList<JsonElement> rows)
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);

        var page = await pages.Open("/drift");

        Assert.Equal(
            rows.Select(r => r.GetProperty("registration").GetString()),
            page.Html.QuerySelectorAll(".drift-list tbody th a").Select(th => th.TextContent));
        Assert.Contains("No forecast: it was not measured yet", page.MainText, StringComparison.Ordinal);
        Assert.Contains("more than 99 %", page.MainText, StringComparison.Ordinal);
    }

    private async Task The_file_holds_every_row_of_the_filter(IReadOnlyList<JsonElement> rows)
    {
        var pages = await TestPages.SignedIn(app, Roles.Manager);
        var answer = await pages.Client.GetAsync(new Uri("/drift?handler=Csv&after=ignored", UriKind.Relative), Ct);

        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Matches(@"^clearance-drift-\d{4}-\d\d-\d\d\.csv$", answer.Content.Headers.ContentDisposition.FileName!);
        var table = CsvText.Read(await answer.Content.ReadAsStringAsync(Ct));
        Assert.Equal(rows.Select(r => r.GetProperty("registration").GetString()), table.Select(line => line["registration"]));
        Assert.Equal("cylinder 2, exhaust 1", table[1]["first valve"]);
        Assert.Equal(rows[1].GetProperty("on").GetString(), table[1]["50 % on"]);
        Assert.Equal(rows[1].GetProperty("driftMmPer10000Km").GetDecimal(), decimal.Parse(table[1]["drift mm per 10000 km"]));
        Assert.StartsWith("-0.0", table[1]["drift mm per 10000 km"], StringComparison.Ordinal);

        var narrow = await pages.Client.GetStringAsync(new Uri("/drift?handler=Csv&within=36", UriKind.Relative), Ct);
        Assert.Equal((await Rows(await app.As(Roles.Manager), "/api/v1/drift?within=36")).Count, CsvText.Read(narrow).Count);
    }

    private async Task A_retired_motorcycle_is_no_longer_listed(TestVisit retired, int before)
    {
        await app.Look(async db =>
        {
            (await db.Motorcycles.SingleAsync(m => m.Id == retired.MotorcycleId, Ct)).Retired = true;
            return await db.SaveChangesAsync(Ct);
        });

        Assert.Equal(before - 1, (await Rows(await app.As(Roles.Manager), "/api/v1/drift")).Count);
    }

    private static string? ReasonOf(IEnumerable<JsonElement> rows, TestVisit visit) =>
        rows.Single(r => r.GetProperty("motorcycleId").GetGuid() == visit.MotorcycleId).GetProperty("reason").GetString();

    private static async Task<IReadOnlyList<JsonElement>> Rows(HttpClient client, string address)
    {
        var slice = await client.GetFromJsonAsync<JsonElement>(address, Ct);
        return [.. slice.GetProperty("rows").EnumerateArray()];
    }
}
