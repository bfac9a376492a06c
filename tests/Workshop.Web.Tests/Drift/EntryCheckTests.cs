using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Clearances.ReadingBodies;

namespace Workshop.Web.Tests.Drift;

/// <summary>What is said while the cover is open, when a reading does not fit what is known of the valve.</summary>
public sealed class EntryCheckTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_reading_that_fits_its_history_is_taken_without_a_word()
    {
        var visit = await OnceChecked();
        var answer = await Send(visit, Found("1-exhaust-1", 0.21, 0.22));

        Assert.Empty(answer.GetProperty("checks").EnumerateArray());
        var expected = answer.GetProperty("readings")[0].GetProperty("expected");
        Assert.InRange(0.215m, expected.GetProperty("fromMm").GetDecimal(), expected.GetProperty("toMm").GetDecimal());
        Assert.False(expected.GetProperty("measureAgain").GetBoolean());
    }

    [Fact]
    public async Task A_reading_far_off_asks_for_one_more_and_the_same_again_is_accepted_at_once()
    {
        var visit = await OnceChecked();

        var first = await Send(visit, Found("1-exhaust-1", 0.29, 0.30));
        var asked = Assert.Single(first.GetProperty("checks").EnumerateArray()).GetString()!;
        var again = await Send(visit, Found("1-exhaust-1", 0.29, 0.30));

        Assert.Contains("cylinder 1, exhaust 1: 0.29 to 0.30 mm disagrees with the last visit", asked, StringComparison.Ordinal);
        Assert.Contains("Measure once more", asked, StringComparison.Ordinal);
        Assert.True(first.GetProperty("readings")[0].GetProperty("expected").GetProperty("measureAgain").GetBoolean());
        Assert.Empty(again.GetProperty("checks").EnumerateArray());
    }

    [Fact]
    public async Task Another_reading_that_is_as_far_off_asks_again()
    {
        var visit = await OnceChecked();
        await Send(visit, Found("1-exhaust-1", 0.29, 0.30));

        var other = await Send(visit, Found("1-exhaust-1", 0.15, 0.16));

        Assert.Single(other.GetProperty("checks").EnumerateArray());
    }

    [Fact]
    public async Task A_cylinder_that_takes_no_blade_at_all_is_asked_about_its_stroke()
    {
        var visit = await OnceChecked();

        var answer = await Send(
            visit, None("1-intake-1"), None("1-intake-1", lobe: 2), None("1-exhaust-1"), Found("2-exhaust-1", 0.21, 0.22));

        Assert.Contains(
            answer.GetProperty("checks").EnumerateArray().Select(c => c.GetString()),
            c => c!.StartsWith("All valves of cylinder 1 are tighter than expected or take no blade", StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_engine_that_reads_tight_all_over_is_asked_about_its_temperature()
    {
        var visit = await OnceChecked();

        var answer = await Send(
            visit, Found("1-intake-1", 0.08, 0.09), Found("1-intake-1", 0.09, 0.10, lobe: 2), Found("1-exhaust-1", 0.18, 0.19),
            Found("2-intake-1", 0.08, 0.09), Found("2-intake-1", 0.09, 0.10, lobe: 2), Found("2-exhaust-1", 0.18, 0.19));

        Assert.Contains(
            answer.GetProperty("checks").EnumerateArray().Select(c => c.GetString()),
            c => c!.Contains("tighter than expected: check engine temperature, blade set and hand", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_card_says_what_to_expect_before_the_cover_opens_and_says_the_same_after_the_reading()
    {
        var visit = await OnceChecked(exhaustGo: 0.21m);
        var technician = await app.As(Roles.Technician);

        var before = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/forecast", Ct);
        await Send(visit, Found("1-exhaust-1", 0.25, 0.26));
        var after = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/forecast", Ct);

        Assert.StartsWith("Expect to shim cylinder 1, exhaust 1 and cylinder 2, exhaust 1", before.GetProperty("summary").GetString(), StringComparison.Ordinal);
        Assert.Equal(before.GetRawText(), after.GetRawText());
        var lobe = before.GetProperty("lobes").EnumerateArray().Single(l => l.GetProperty("valve").GetString() == "1-exhaust-1");
        Assert.InRange(lobe.GetProperty("outside").GetDouble(), 0.5, 1);
        Assert.True(lobe.GetProperty("fromMm").GetDecimal() < 0.20m);
        Assert.InRange(before.GetProperty("anyOutside").GetDouble(), lobe.GetProperty("outside").GetDouble(), 1);
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open(visit.Pages);
        Assert.Contains("Expect to shim cylinder 1, exhaust 1", page.MainText, StringComparison.Ordinal);
    }

    /// <summary>Checked at 20,000 km two years ago, with all valves well inside; here again at 44,000 km.</summary>
    private async Task<TestVisit> OnceChecked(decimal exhaustGo = 0.24m)
    {
        await app.Knows(TestWorkshop.EngineModel);
        var now = app.Clock.Now;
        app.Clock.Now = now - Duration.FromDays(730);
        var first = await app.CheckedIn(20_000);
        foreach (var lobe in ReadingRules.LobesOf(TestEngines.Twin()))
        {
            var go = lobe.Valve.Side == Side.Exhaust ? exhaustGo : lobe.Lobe == 1 ? 0.14m : 0.15m;
            await app.Read(first, lobe.Valve, Stage.AsFound, go, go + 0.01m, lobe.Lobe);
        }

        app.Clock.Now = now;
        return await app.CheckedInAgain(first, 44_000);
    }

    private static object None(string valve, int lobe = 1) => Found(valve, null, 0.05, lobe, "noneEnters");

    private async Task<JsonElement> Send(TestVisit visit, params object[] readings)
    {
        app.Clock.Now += Duration.FromMinutes(1);
        var technician = await app.As(Roles.Technician);
        var sent = await technician.PostAsJsonAsync($"{visit.Api}/readings", Clearances.ReadingBodies.Send(readings).With("reason", "measured once more"), Ct);
        Assert.True(sent.IsSuccessStatusCode, await sent.Content.ReadAsStringAsync(Ct));
        return await sent.Json();
    }
}
