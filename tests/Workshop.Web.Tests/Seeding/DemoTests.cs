using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.JobCards;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Tests.Hosting;
using Xunit;

namespace Workshop.Web.Tests.Seeding;

/// <summary>
/// The demo as it first starts: once broken off, then whole. Filling a database takes a while, so one serves all tests here,
/// which only look.
/// </summary>
public sealed class StartedDemo(PostgresServer server) : IAsyncLifetime
{
    private SeededService? seeded;

    internal SeededService Seeded => seeded!;

    internal WebApplicationFactory<WorkshopDbContext> Service { get; private set; } = null!;

    /// <summary>What the start that something stood in the way of failed with, and how many rows it left.</summary>
    internal Exception? BrokenOff { get; private set; }

    internal int LeftBehind { get; private set; }

    public async ValueTask InitializeAsync()
    {
        seeded = new SeededService(await server.CreateDatabaseAsync());
        await using (var empty = await seeded.Start(demo: false))
        {
            // When people and engine models are in, this row stands in the way of the stores.
            await empty.Look(db => db.Database.ExecuteSqlAsync(
                $"insert into storage_places (id, name) values (gen_random_uuid(), 'Oil store')"));
        }

        BrokenOff = await Record.ExceptionAsync(() => seeded.Start(demo: true));
        await using (var afterwards = await seeded.Start(demo: false))
        {
            LeftBehind = await afterwards.Look(async db =>
                await db.Users.CountAsync() + await db.WorkshopProfiles.CountAsync() + await db.EngineModels.CountAsync()
                + await db.People.CountAsync() + await db.Parts.CountAsync());
            await afterwards.Look(db => db.StoragePlaces.ExecuteDeleteAsync());
        }

        Service = await seeded.Start(demo: true);
    }

    public async ValueTask DisposeAsync()
    {
        await Service.DisposeAsync();
        await Seeded.DisposeAsync();
    }
}

public sealed class DemoTests(StartedDemo demo) : IClassFixture<StartedDemo>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public void A_filling_that_is_broken_off_leaves_nothing_and_the_next_start_fills_it_whole()
    {
        Assert.IsType<DbUpdateException>(demo.BrokenOff);
        Assert.Equal(0, demo.LeftBehind);
    }

    [Fact]
    public async Task A_further_start_adds_nothing_and_keeps_the_passwords()
    {
        var passwords = demo.Seeded.Passwords();
        var before = await demo.Service.Look(db => db.JobCards.CountAsync(Ct));

        await using var second = await demo.Seeded.Start(demo: true);

        Assert.Equal(before, await second.Look(db => db.JobCards.CountAsync(Ct)));
        Assert.Equal(7, await second.Look(db => db.Users.CountAsync(Ct)));
        Assert.Equal(passwords, demo.Seeded.Passwords());
    }

    [Fact]
    public async Task The_generated_passwords_let_people_in_each_with_their_own()
    {
        var passwords = demo.Seeded.Passwords();
        Assert.Equal("rw-------", FileModes.Of(demo.Seeded.PasswordFile));
        Assert.Equal(["bram", "greta", "ines", "jorun", "milo", "otto", "tilda"], passwords.Keys.Order());
        Assert.All(passwords.Values, p => Assert.InRange(p.Length, 20, 40));

        Assert.Equal(HttpStatusCode.OK, (await SignIn("otto", passwords["otto"])).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SignIn("otto", passwords["greta"])).StatusCode);
    }

    [Fact]
    public async Task There_are_bays_people_tools_instruments_and_stock_and_all_say_that_they_are_invented()
    {
        Assert.True(await Look(db => db.WorkshopProfiles.Select(p => p.Invented).SingleAsync(Ct)));
        Assert.Equal(3, await Look(db => db.Resources.CountAsync(r => r.Kind == ResourceKind.Bay, Ct)));
        Assert.Equal(5, await Look(db => db.Resources.CountAsync(r => r.Kind == ResourceKind.Technician, Ct)));
        Assert.Equal(3, await Look(db => db.EngineModels.CountAsync(m => m.Invented, Ct)));
        Assert.True(await Look(db => db.FeelerBlades.CountAsync(Ct)) > 60);
        Assert.True(await Look(db => db.StockBalances.CountAsync(b => b.Thickness != null && b.OnHand > 0, Ct)) > 50);

        var today = await Today();
        var overdue = await Look(db => db.Instruments.Where(i => i.CalibrationDueOn < today).ToListAsync(Ct));
        Assert.Equal(today.PlusDays(-30), Assert.Single(overdue).CalibrationDueOn);
    }

    [Fact]
    public async Task Forty_motorcycles_have_histories_as_workshops_see_them()
    {
        Assert.Equal(40, await Look(db => db.Motorcycles.CountAsync(Ct)));
        var checks = await Look(db => (
            from reading in db.ClearanceReadings
            where reading.Stage == Stage.AsFound
            group reading.OdometerReadingId by reading.EngineId into engine
            select engine.Distinct().Count()).ToListAsync(Ct));

        Assert.InRange(checks.Count(c => c is >= 1 and <= 3), 28, 38);
        Assert.InRange(checks.Count(c => c > 3), 2, 8);
        Assert.InRange(checks.Count, 36, 39);
    }

    [Fact]
    public async Task Readings_come_from_paper_and_from_visits_with_fine_and_coarse_blades()
    {
        var widths = await Look(async db => (await db.ClearanceReadings.Where(r => r.Kind == BracketKind.GoAndNoGo).ToListAsync(Ct))
            .CountBy(r => r.NoGo!.Value - r.Go!.Value).ToDictionary());
        Assert.Superset(new HashSet<decimal> { 0.01m, 0.05m, 0.0254m }, widths.Keys.ToHashSet());
        Assert.True(widths[0.01m] > widths[0.05m] && widths[0.05m] > 100, $"{widths[0.01m]} and {widths[0.05m]}");

        Assert.True(await Look(db => db.ClearanceReadings.CountAsync(r => r.ImportId != null, Ct)) > 300);
        Assert.True(await Look(db => db.ClearanceReadings.CountAsync(r => r.JobCardNumber != null, Ct)) > 300);
        Assert.Equal(1, await Look(db => db.ReadingImports.CountAsync(Ct)));

        // First shims are often not known: most valves that were read first had theirs left where it was.
        var known = await Look(db => db.ShimObservations.Select(s => new { s.EngineId, s.Valve }).Distinct().CountAsync(Ct));
        var read = await Look(db => db.ClearanceReadings.Select(r => new { r.EngineId, r.Valve }).Distinct().CountAsync(Ct));
        Assert.InRange(known, read / 10, read * 7 / 10);
    }

    [Fact]
    public async Task Every_visit_of_the_past_is_signed_off_and_the_coming_ones_are_booked()
    {
        var now = SystemClock.Instance.GetCurrentInstant();
        var cards = await Look(db => db.JobCards.AsNoTracking().ToListAsync(Ct));

        Assert.All(
            cards.Where(c => c.StartsAt < now), c => Assert.True(c.State == JobCardState.SignedOff || (c.State == JobCardState.CheckedIn && c.EndsAt > now), $"{c.Number} is {c.State}."));
        Assert.True(cards.Count(c => c.State == JobCardState.SignedOff) > 40);
        var coming = cards.Where(c => c.StartsAt >= now).ToList();
        Assert.Equal(5, coming.Count(c => c.State == JobCardState.Booked));
        Assert.InRange(cards.Count(c => c.State == JobCardState.CheckedIn), 1, 2);
        Assert.All(coming, c => Assert.True(c.StartsAt < now + Duration.FromDays(21)));

        Assert.Equal(
            cards.Count(c => c.State == JobCardState.SignedOff), await Look(db => db.SignOffs.CountAsync(Ct)));
        Assert.True(await Look(db => db.FastenerTicks.CountAsync(Ct)) > 300);
        Assert.True(await Look(db => db.StockMovements.CountAsync(m => m.Kind == MovementKind.Issued, Ct)) > 100);
    }

    [Fact]
    public async Task Every_arrival_is_noted_tight_valves_were_tested_and_one_visit_came_back()
    {
        var (noted, here, tested, plugs, comebacks) = await demo.Service.Look(async db => (
            await db.ArrivalNotes.Select(n => n.JobCardNumber).Distinct().CountAsync(Ct), await db.CheckIns.CountAsync(Ct),
            await db.CylinderTests.Select(t => new { t.JobCardNumber, t.Stage }).Distinct().CountAsync(Ct),
            await db.PlugChecks.CountAsync(Ct), await db.Comebacks.AsNoTracking().ToListAsync(Ct)));

        Assert.Equal(here, noted);
        Assert.True(tested > 10 && plugs > 50, $"{tested} stages with cylinders tested, {plugs} plugs");
        var comeback = Assert.Single(comebacks);
        Assert.True(comeback.OfJobCardNumber < comeback.JobCardNumber);
    }

    [Fact]
    public async Task Some_valve_checks_are_overdue_some_fall_due_soon_and_most_come_later()
    {
        var today = await Today();
        var checks = await Look(db => db.DueItems.AsNoTracking().Where(d => d.ServiceItemCode == "valve-clearance-check").ToListAsync(Ct));

        Assert.Equal(40, checks.Count);
        Assert.InRange(checks.Count(d => d.ExpectedOn < today && !d.ByForecast), 4, 14);
        Assert.InRange(checks.Count(d => d.ExpectedOn < today && d.ByForecast), 4, 18);
        Assert.InRange(checks.Count(d => d.ExpectedOn >= today && d.ExpectedOn < today.PlusDays(90)), 2, 20);
        Assert.True(checks.Count(d => d.ExpectedOn >= today.PlusDays(90)) >= 12);
    }

    [Fact]
    public async Task The_manager_sees_which_motorcycles_leave_their_limits_first()
    {
        var client = demo.Service.CreateClient();
        using var session = await SignIn("otto", demo.Seeded.Passwords()["otto"]);
        var token = (await session.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("token").GetString();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);

        var drift = await client.GetFromJsonAsync<JsonElement>("/api/v1/drift?take=50", Ct);

        Assert.True(drift.GetProperty("rows").EnumerateArray().Count(r => r.GetProperty("on").ValueKind == JsonValueKind.String) >= 10);
    }

    [Fact]
    public async Task Drift_and_Due_name_the_same_next_check_of_every_motorcycle()
    {
        var client = demo.Service.CreateClient();
        using var session = await SignIn("otto", demo.Seeded.Passwords()["otto"]);
        var token = (await session.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("token").GetString();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);

        var rows = (await client.GetFromJsonAsync<JsonElement>("/api/v1/drift?take=500", Ct)).GetProperty("rows").EnumerateArray().ToList();

        Assert.Equal(40, rows.Count);
        foreach (var row in rows)
        {
            var id = row.GetProperty("motorcycleId").GetGuid();
            var due = (await client.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{id}/due", Ct)).GetProperty("rows").EnumerateArray()
                .Single(d => d.GetProperty("code").GetString() == "valve-clearance-check");
            var drift = (await client.GetFromJsonAsync<JsonElement>($"/api/v1/motorcycles/{id}/drift", Ct)).GetProperty("nextCheck");
            var said = $"{due.GetProperty("expectedOn")} {due.GetProperty("dueAtKm")}";
            Assert.Equal(said, $"{row.GetProperty("nextCheckOn")} {row.GetProperty("nextCheckKm")}");
            Assert.Equal(said, $"{drift.GetProperty("on")} {drift.GetProperty("dueAtKm")}");
            Assert.Equal(row.GetProperty("nextCheck").GetString(), drift.GetProperty("spoken").GetString());
            Assert.Contains(due.GetProperty("byDistance").GetString()!, drift.GetProperty("spoken").GetString(), StringComparison.Ordinal);
            Assert.False(due.GetProperty("byForecast").GetBoolean()
                && due.GetProperty("lastDoneAtKm").ValueKind == JsonValueKind.Number
                && due.GetProperty("dueAtKm").GetDecimal() < due.GetProperty("lastDoneAtKm").GetDecimal());
        }

        var outlooks = await Look(db => db.EngineOutlooks.AsNoTracking().ToListAsync(Ct));
        var even = (await Look(db => db.ClearanceForecasts.AsNoTracking().Where(f => f.LeavesLimitsAt != null).ToListAsync(Ct)))
            .GroupBy(f => f.EngineId).ToDictionary(of => of.Key, of => of.Min(f => f.LeavesLimitsAt));
        Assert.True(even.Count > 30);
        Assert.All(outlooks.Where(o => even.ContainsKey(o.EngineId)), o => Assert.True(o.PassesThresholdAt <= even[o.EngineId]));
    }

    private Task<T> Look<T>(Func<WorkshopDbContext, Task<T>> look) => demo.Service.Look(look);

    private async Task<LocalDate> Today() =>
        WorkshopTime.Of(await Look(db => db.WorkshopProfiles.AsNoTracking().SingleAsync(Ct))).DayOf(SystemClock.Instance.GetCurrentInstant());

    private async Task<HttpResponseMessage> SignIn(string userName, string password) =>
        await demo.Service.CreateClient().PostAsJsonAsync("/api/v1/session", new { userName, password }, Ct);
}
