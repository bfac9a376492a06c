using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.JobCards;
using Xunit;
using static Workshop.Web.Tests.Clearances.ReadingBodies;

namespace Workshop.Web.Tests.Shims;

/// <summary>
/// What is asked of a plan is kept for everybody; as left opens after caps and turns; what does not agree is said at once.
/// Exhaust of the test engine: 0.20 to 0.30 mm, set to 0.25, ratio 0.6.
/// </summary>
public sealed class ShimPlanChoiceTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_shim_chosen_by_hand_is_seen_by_everybody_until_it_is_taken_back()
    {
        var visit = await TwoTight();
        var free = (await Plan(visit)).Valve("1-exhaust-1", "key");
        var other = free.GetProperty("alternatives")[0].GetProperty("shim").GetProperty("code").GetString()!;

        var chosen = await (await Choose(visit, new { locks = new[] { new { valve = "1-exhaust-1", shim = other } } })).Json();
        var seen = await Plan(visit, Roles.Advisor);
        await Choose(visit, new { locks = new[] { new { valve = "1-exhaust-1", shim = (string?)null } } });
        var after = await Plan(visit);

        Assert.Equal(1, chosen.GetProperty("version").GetInt32());
        Assert.Equal(other, seen.Valve("1-exhaust-1", "key").GetProperty("shim").GetProperty("code").GetString());
        Assert.True(seen.Valve("1-exhaust-1", "key").GetProperty("locked").GetBoolean());
        Assert.Equal(free.GetProperty("newMm").GetDecimal(), after.Valve("1-exhaust-1", "key").GetProperty("newMm").GetDecimal());
        Assert.Equal(2, after.GetProperty("version").GetInt32());
    }

    [Fact]
    public async Task Two_people_choose_for_two_valves_and_both_choices_stand()
    {
        var visit = await TwoTight();

        var answers = await Task.WhenAll(
            Choose(visit, new { locks = new[] { new { valve = "1-exhaust-1", shim = "stay" } } }),
            Choose(visit, new { guard = "expandedUncertainty", locks = new[] { new { valve = "2-exhaust-1", shim = "stay" } } }));
        var plan = await Plan(visit);

        Assert.All(answers, a => Assert.Equal(HttpStatusCode.OK, a.StatusCode));
        Assert.Equal("expandedUncertainty", plan.GetProperty("guard").GetString());
        Assert.All(new[] { "1-exhaust-1", "2-exhaust-1" }, v => Assert.True(plan.Valve(v, "key").GetProperty("locked").GetBoolean()));
        Assert.Equal(2, plan.GetProperty("totals").GetProperty("outside").GetInt32());
        await Choose(visit, new { freeAll = true });
        Assert.Equal(0, (await Plan(visit)).GetProperty("totals").GetProperty("outside").GetInt32());
    }

    [Fact]
    public async Task A_choice_that_cannot_be_is_refused_with_what_could_be_and_nothing_is_written()
    {
        var visit = await TwoTight();

        var gone = await Choose(visit, new { locks = new[] { new { valve = "1-exhaust-1", shim = "box-9.999-new" } } });
        var unknown = await Choose(visit, new { locks = new[] { new { valve = "7-exhaust-1", shim = "stay" } } });
        var unmeasured = await Choose(visit, new { locks = new[] { new { valve = "1-intake-1", shim = "stay" } } });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, gone.StatusCode);
        Assert.Contains("not to be had any more. The plan offers it box-", (await gone.Json()).Fault("locks[0].shim"), StringComparison.Ordinal);
        Assert.Contains("no such valve", (await unknown.Json()).Fault("locks[0].valve"), StringComparison.Ordinal);
        Assert.Contains("no shim can be chosen for it yet", (await unmeasured.Json()).Fault("locks[0].shim"), StringComparison.Ordinal);
        Assert.Equal(0, await app.Look(db => db.ShimPlanChoices.CountAsync(c => c.JobCardNumber == visit.Number, Ct)));
    }

    [Fact]
    public async Task The_page_takes_another_shim_by_one_tap_and_plans_anew_within_two_tenths_of_a_second()
    {
        var visit = await TwoTight();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/shims";
        var page = await pages.Open(address);
        var button = page.Html.QuerySelector("#valve-1-exhaust-1 form.ways button[name='Choice.Locks[0].Shim']")!;

        var answer = await pages.Send(page, address, new() { ["Choice.Locks[0].Shim"] = button.GetAttribute("value") }, "#valve-1-exhaust-1 form.ways");
        var after = await pages.Open(address);
        var planned = await pages.Send(after, address, new() { ["Choice.SetAll"] = "true", ["Choice.Aim"] = "LongestLife" }, "form[aria-label='What the plan is made by']");
        var times = new List<double>();
        for (var i = 0; i < 5; i++)
        {
            var watch = Stopwatch.StartNew();
            page = await pages.Open(address);
            times.Add(watch.Elapsed.TotalMilliseconds);
        }

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        Assert.Contains("chosen by hand", after.Html.QuerySelector("#name-1-exhaust-1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, planned.Status);
        Assert.Equal("true", page.Html.QuerySelector("#Choice_SetAll option[selected]")!.GetAttribute("value"));
        Assert.True(times.Min() < 200, $"{times.Min():0} ms");
    }

    [Fact]
    public async Task Only_who_measures_may_choose_and_a_closed_card_stays_as_it_is()
    {
        var visit = await TwoTight();

        Assert.Equal(HttpStatusCode.Forbidden, (await Choose(visit, new { setAll = true }, Roles.Advisor)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await (await app.As(Roles.Technician)).PostAsJsonAsync(
            $"/api/v1/job-cards/{(await app.Booked()).Number}/shim-plan", new { setAll = true }, Ct)).StatusCode);
    }

    [Fact]
    public async Task As_left_waits_for_the_caps_and_for_two_turns_by_hand()
    {
        var visit = await TwoTight();
        var technician = await app.As(Roles.Technician);
        await Fit(visit, "1-exhaust-1", 1.95m);
        app.Clock.Now += Duration.FromMinutes(20);

        var early = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Left("1-exhaust-1", 0.24, 0.25)), Ct);
        var untickedTurn = await Turn(visit, true, true);
        await FinishedVisits.TickAll(technician, visit);
        var stopped = await Turn(visit, false, true);
        var unturned = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Left("1-exhaust-1", 0.24, 0.25)), Ct);
        var turned = await Turn(visit, true, true);
        var open = await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Left("1-exhaust-1", 0.24, 0.25)), Ct);

        Assert.Contains("Tick on the torque sheet first: Camshaft cap bolt.", (await early.Json()).Fault("readings[0].stage"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, untickedTurn.StatusCode);
        Assert.Contains("a valve may be on a piston", (await stopped.Json()).Fault("noHardStop"), StringComparison.Ordinal);
        Assert.Contains("two full turns", (await unturned.Json()).Fault("readings[0].stage"), StringComparison.Ordinal);
        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.OK], [turned.StatusCode, open.StatusCode]);
        Assert.Empty((await open.Json()).GetProperty("warnings").EnumerateArray());
    }

    [Fact]
    public async Task Shims_and_readings_as_left_do_not_go_in_one_send()
    {
        var visit = await TwoTight();

        var answer = await (await app.As(Roles.Technician)).PostAsJsonAsync($"{visit.Api}/readings", Send(Left("1-exhaust-1", 0.24, 0.25))
            .With("shims", new[] { new { valve = "1-exhaust-1", stage = "asLeft", thicknessMm = 1.95m } }), Ct);

        Assert.Contains("Shims are fitted in the same send", (await answer.Json()).Fault("readings[0].stage"), StringComparison.Ordinal);
    }

    /// <summary>1.950 for 2.100 adds 0.09: 0.245 is to be expected, 0.18 is left.</summary>
    [Fact]
    public async Task A_clearance_as_left_that_the_shims_do_not_explain_is_said_at_once()
    {
        var visit = await TwoTight();
        var technician = await app.As(Roles.Technician);
        await Fit(visit, "1-exhaust-1", 1.95m);
        app.Clock.Now += Duration.FromMinutes(20);
        await FinishedVisits.OpenAsLeft(technician, visit);

        var answer = await (await technician.PostAsJsonAsync($"{visit.Api}/readings", Send(Left("1-exhaust-1", 0.18, 0.19)), Ct)).Json();
        var readings = await (await technician.GetAsync($"{visit.Api}/readings", Ct)).Json();
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open($"{visit.Pages}/readings?stage=AsLeft");

        var sentence = Assert.Single(answer.GetProperty("warnings").EnumerateArray()).GetString()!;
        Assert.Contains("should give about 0.245 mm: wrong shim, wrong valve, or dirt between; as if 2.05 mm lay in it", sentence, StringComparison.Ordinal);
        Assert.Equal(sentence, Assert.Single(readings.GetProperty("doubts").EnumerateArray()).GetString());
        Assert.Contains("should give about 0.245 mm", page.MainText, StringComparison.Ordinal);
    }

    /// <summary>
    /// 0.155 with 2.100 in and 0.345 with 1.950 in: exchanged, both stand at about 0.25. After the first move the second valve lies
    /// empty: the plan knows, and nothing is measured as left before it has got its shim.
    /// </summary>
    [Fact]
    public async Task Two_valves_exchange_their_shims_one_after_the_other()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);
        (await technician.PostAsJsonAsync(
            $"{visit.Api}/readings",
            Send(Found("1-exhaust-1", 0.15, 0.16), Found("2-exhaust-1", 0.34, 0.35)).With("micrometerId", TestWorkshop.Micrometer).With("shims", new[]
            {
                new { valve = "1-exhaust-1", stage = "asFound", thicknessMm = 2.1m },
                new { valve = "2-exhaust-1", stage = "asFound", thicknessMm = 1.95m },
            }), Ct)).EnsureSuccessStatusCode();
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/shims";

        var plan = await Plan(visit);
        var first = await pages.Send(address, [], "article#valve-1-exhaust-1 form");
        var between = (await Plan(visit)).Valve("2-exhaust-1", "key");
        await FinishedVisits.TickAll(technician, visit);
        var early = await Turn(visit, true, true);
        var second = await pages.Send(address, [], "article#valve-2-exhaust-1 form");
        await FinishedVisits.OpenAsLeft(technician, visit);
        var left = await technician.PostAsJsonAsync(
            $"{visit.Api}/readings", Send(Left("1-exhaust-1", 0.24, 0.25), Left("2-exhaust-1", 0.25, 0.26)), Ct);

        Assert.Equal(["2-exhaust-1", "1-exhaust-1"], new[] { "1-exhaust-1", "2-exhaust-1" }
            .Select(v => plan.Valve(v, "key").GetProperty("shim").GetProperty("fromValve").GetString()));
        Assert.Equal(0, plan.GetProperty("totals").GetProperty("fromBox").GetInt32());
        Assert.Equal([HttpStatusCode.Redirect, HttpStatusCode.Redirect], [first.Status, second.Status]);
        Assert.Equal(("bench", 2.1m), (between.GetProperty("shim").GetProperty("source").GetString(), between.GetProperty("newMm").GetDecimal()));
        Assert.Contains("none lies in cylinder 2, exhaust 1", (await early.Json()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Empty((await left.Json()).GetProperty("warnings").EnumerateArray());
        Assert.Equal(["1-exhaust-1 1.950", "2-exhaust-1 2.100"], await app.Look(async db => (await db.Shims
            .Where(s => s.EngineId == visit.EngineId).OrderBy(s => s.Valve).ToListAsync(Ct)).Select(s => $"{s.Valve} {s.Thickness.Millimetres:0.000}")));
    }

    private async Task<TestVisit> TwoTight()
    {
        var visit = await app.CheckedIn();
        var answer = await (await app.As(Roles.Technician)).PostAsJsonAsync(
            $"{visit.Api}/readings",
            Send(Found("1-exhaust-1", 0.15, 0.16), Found("2-exhaust-1", 0.14, 0.15)).With("micrometerId", TestWorkshop.Micrometer).With("shims", new[]
            {
                new { valve = "1-exhaust-1", stage = "asFound", thicknessMm = 2.1m },
                new { valve = "2-exhaust-1", stage = "asFound", thicknessMm = 2.15m },
            }), Ct);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return visit;
    }

    private async Task<HttpResponseMessage> Choose(TestVisit visit, object body, string role = Roles.Technician) =>
        await (await app.As(role)).PostAsJsonAsync($"{visit.Api}/shim-plan", body, Ct);

    private async Task<HttpResponseMessage> Turn(TestVisit visit, bool noHardStop, bool marksRight) =>
        await (await app.As(Roles.Technician)).PostAsJsonAsync($"{visit.Api}/readings/hand-turns", new { noHardStop, marksRight }, Ct);

    private async Task Fit(TestVisit visit, string valve, decimal thicknessMm) => (await (await app.As(Roles.Technician)).PostAsJsonAsync(
        $"{visit.Api}/shims", new { shims = new[] { new { valve, thicknessMm } } }, Ct)).EnsureSuccessStatusCode();

    private async Task<JsonElement> Plan(TestVisit visit, string role = Roles.Technician) =>
        await (await (await app.As(role)).GetAsync($"{visit.Api}/shim-plan", Ct)).Json();
}
