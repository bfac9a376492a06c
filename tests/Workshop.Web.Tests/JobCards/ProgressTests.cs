using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Tests.Bookings;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

/// <summary>Each test has bays and a time of its own.</summary>
public sealed class ProgressTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static int hours;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Work_before_the_engine_is_cold_wants_a_reason_which_is_kept()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await Here(coldSince: -1);

        var early = await Begin(technician, visit, new { phase = "work" });
        var withReason = await Begin(technician, visit, new { phase = "work", reason = "Owner waits; the check is left out." });

        Assert.Equal(HttpStatusCode.Conflict, early.StatusCode);
        Assert.Contains("its engine is cold from", await early.Sentence(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, withReason.StatusCode);
        var phase = (await Progress(technician, visit)).GetProperty("phases")[0];
        Assert.Equal(("work", "Owner waits; the check is left out."), (phase.GetProperty("phase").GetString(), phase.GetProperty("reason").GetString()));
        Assert.Equal("TN", phase.GetProperty("technician").GetString());
    }

    [Fact]
    public async Task An_engine_that_ran_again_soaks_from_its_last_stop_wherever_that_is_shown()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await Here();
        var before = await Card(technician, visit);

        var stopped = await technician.PostAsJsonAsync($"{visit.Api}/engine-stops", new { stoppedAt = Say(app.Clock.Now) }, Ct);
        var earlier = await technician.PostAsJsonAsync($"{visit.Api}/engine-stops", new { stoppedAt = Say(app.Clock.Now - Duration.FromHours(1)) }, Ct);
        var later = await technician.PostAsJsonAsync($"{visit.Api}/engine-stops", new { stoppedAt = Say(app.Clock.Now + Duration.FromHours(1)) }, Ct);

        Assert.Equal(HttpStatusCode.OK, stopped.StatusCode);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (earlier.StatusCode, later.StatusCode));
        var after = await Card(technician, visit);
        Assert.NotEqual(before.GetProperty("coldFrom").GetString(), after.GetProperty("coldFrom").GetString());
        Assert.Equal(Say(app.Clock.Now), after.GetProperty("engineStoppedAt").GetString());
        Assert.Equal(after.GetProperty("coldFrom").GetString(), (await Progress(technician, visit)).GetProperty("coldFrom").GetString());
        Assert.Contains("which is still to come", await later.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_a_warm_run_ends_the_engine_has_stopped_and_nobody_types_it()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await Here();
        await Begun(technician, visit, "work");
        Later(2);
        await Begun(technician, visit, "warmRun");
        Later(1);
        await Begun(technician, visit, "testRide");
        Later(1);
        await Begun(technician, visit, "handOver");

        Assert.Equal([app.Clock.Now], await app.Look(db => db.EngineStops
            .Where(s => s.JobCardNumber == visit.Number).Select(s => s.StoppedAt).ToListAsync(Ct)));
    }

    [Fact]
    public async Task A_motorcycle_pushed_elsewhere_takes_that_place_lets_go_of_the_old_and_carries_its_tag()
    {
        var technician = await app.As(Roles.Technician);
        var (bay, stand) = (await Bay(), await app.AddResource(ResourceKind.ParkingPlace, $"Stand {100 + ++hours}"));
        var visit = await Here();
        await Takes(visit, bay, 0, 4);
        await Begun(technician, visit, "work");
        Later(1);

        var moved = await technician.PostAsJsonAsync($"{visit.Api}/moves", new { resourceId = stand, tag = PhaseRules.NoOilTag }, Ct);

        Assert.Equal(HttpStatusCode.OK, moved.StatusCode);
        Assert.Contains("Its bay is free", (await moved.Json()).GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
        var live = await app.Look(db => db.Occupancies.Where(o => o.JobCardNumber == visit.Number && o.Live).ToListAsync(Ct));
        Assert.Equal(app.Clock.Now, live.Single(o => o.ResourceId == bay).Span.End);
        Assert.Equal(app.Clock.Now, live.Single(o => o.ResourceId == stand).Span.Start);
        var progress = await Progress(technician, visit);
        Assert.Equal(PhaseRules.NoOilTag, progress.GetProperty("tag").GetString());
        Assert.StartsWith("Stand", progress.GetProperty("place").GetProperty("name").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_that_another_stands_in_or_has_taken_is_refused_with_who_has_it()
    {
        var technician = await app.As(Roles.Technician);
        var (bay, standsIn, planned) = (await Bay(), await Bay(), await Bay());
        var (visit, other) = (await Here(), await Here());
        await Takes(visit, bay, 0, 4);
        await Takes(other, standsIn, 0, 2);
        await Takes(other, planned, 2, 8);
        await Begun(technician, visit, "work");
        await Begun(technician, other, "work");
        Later(1);

        var occupied = await technician.PostAsJsonAsync($"{visit.Api}/moves", new { resourceId = standsIn }, Ct);
        var taken = await technician.PostAsJsonAsync($"{visit.Api}/moves", new { resourceId = planned }, Ct);
        var shorter = await technician.PostAsJsonAsync(
            $"{visit.Api}/moves", new { resourceId = planned, until = Say(app.Clock.Now + Duration.FromHours(1)) }, Ct);

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.Conflict, HttpStatusCode.OK), (occupied.StatusCode, taken.StatusCode, shorter.StatusCode));
        Assert.Contains($"job card {other.Number}", await occupied.Sentence(), StringComparison.Ordinal);
        Assert.Contains("stands there", await occupied.Sentence(), StringComparison.Ordinal);
        Assert.Contains($"is taken by job card {other.Number}", await taken.Sentence(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_engine_that_waits_open_keeps_its_bay_and_frees_its_technician_until_it_goes_on()
    {
        var technician = await app.As(Roles.Technician);
        var (bay, tools) = (await Bay(), await app.AddResource(ResourceKind.SpecialTool, $"Tool {++hours}"));
        var who = await app.AddResource(ResourceKind.Technician, $"T{++hours}");
        var visit = await Here();
        foreach (var resource in new[] { bay, tools, who })
        {
            await Takes(visit, resource, 0, 4);
        }

        await Begun(technician, visit, "work");
        Later(1);
        var since = app.Clock.Now;
        var until = since + Duration.FromHours(20);

        var waits = await technician.PostAsJsonAsync($"{visit.Api}/wait", new { @for = "shims", expectedUntil = Say(until) }, Ct);

        Assert.Equal(HttpStatusCode.OK, waits.StatusCode);
        Assert.Equal((since, since), (await Until(visit, who), await Until(visit, tools)));
        // Three hours of work were left.
        Assert.Equal(until + Duration.FromHours(3), await Until(visit, bay));
        Assert.Equal(HttpStatusCode.Conflict, (await Begin(technician, visit, new { phase = "handOver" })).StatusCode);

        var longer = await technician.PostAsJsonAsync($"{visit.Api}/wait", new { @for = "shims", expectedUntil = Say(until + Duration.FromHours(5)) }, Ct);
        Assert.Equal(HttpStatusCode.OK, longer.StatusCode);
        Assert.Equal(until + Duration.FromHours(8), await Until(visit, bay));

        Later(2);
        var on = await technician.PostAsJsonAsync($"{visit.Api}/go-on", new { }, Ct);
        Assert.Equal(HttpStatusCode.OK, on.StatusCode);
        Assert.True(await Until(visit, bay) > app.Clock.Now, "the bay is not taken for what is left");
        Assert.Contains(VisitPhase.HandOver, await app.Look(db => db.PlannedPhases
            .Where(p => p.JobCardNumber == visit.Number).Select(p => p.Phase).ToListAsync(Ct)));
        Assert.Equal("work", (await Progress(technician, visit)).GetProperty("phase").GetString());
    }

    [Fact]
    public async Task A_wait_beyond_its_time_keeps_its_bay_hour_by_hour_whichever_copy_of_the_service_sees_to_it()
    {
        var technician = await app.As(Roles.Technician);
        var bay = await Bay();
        var visit = await Here();
        await Takes(visit, bay, 0, 4);
        await Begun(technician, visit, "work");
        Later(1);
        var until = app.Clock.Now + Duration.FromHours(1);
        (await technician.PostAsJsonAsync($"{visit.Api}/wait", new { @for = "shims", expectedUntil = Say(until) }, Ct)).EnsureSuccessStatusCode();
        var keeper = app.Services.GetRequiredService<WaitKeeper>();

        await keeper.KeepAll(Ct);
        var inTime = await Waiting(visit);
        app.Clock.Now = until - Duration.FromMinutes(2);
        await Task.WhenAll(keeper.KeepAll(Ct), keeper.KeepAll(Ct));

        Assert.Equal(until, inTime);
        Assert.Equal(app.Clock.Now + Duration.FromHours(1), await Waiting(visit));
        Assert.Equal(app.Clock.Now + Duration.FromHours(4), await Until(visit, bay));
        Assert.Equal(until, await app.Look(db => db.VisitWaits.Where(w => w.JobCardNumber == visit.Number).Select(w => w.ExpectedUntil).SingleAsync(Ct)));
    }

    [Fact]
    public async Task A_wait_into_the_next_visit_is_kept_and_says_whose_it_is()
    {
        var technician = await app.As(Roles.Technician);
        var bay = await Bay();
        var (visit, next) = (await Here(), await app.Booked());
        await Takes(visit, bay, 0, 4);
        await Takes(next, bay, 6, 9);
        await Begun(technician, visit, "work");
        Later(1);

        var waits = await technician.PostAsJsonAsync(
            $"{visit.Api}/wait", new { @for = "ownersWord", expectedUntil = Say(app.Clock.Now + Duration.FromHours(30)) }, Ct);

        Assert.Equal(HttpStatusCode.OK, waits.StatusCode);
        Assert.Contains($"is taken by job card {next.Number}", (await waits.Json()).GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
        Assert.Equal(await app.Look(db => db.Occupancies.Where(o => o.JobCardNumber == next.Number).Select(o => o.Span.Start).SingleAsync(Ct)), await Until(visit, bay));
    }

    [Fact]
    public async Task The_page_begins_a_phase_with_one_tap_and_says_why_not_beside_what_was_typed()
    {
        var visit = await Here(coldSince: -1);
        var pages = await TestPages.SignedIn(app, Roles.Technician);
        var address = $"{visit.Pages}/progress";

        var early = await Tap(pages, address, "Work", new() { ["Begin.Reason"] = "" });
        var begun = await Tap(pages, address, "Work", new() { ["Begin.Reason"] = "Owner waits." });
        var page = await pages.Open(address);

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.Redirect), (early.Status, begun.Status));
        Assert.Contains("its engine is cold from", Assert.Single(early.Faults), StringComparison.Ordinal);
        Assert.Contains("Work since", page.MainText, StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector("#wait"));
    }

    [Fact]
    public async Task Nothing_is_begun_of_a_motorcycle_that_is_not_here_or_gone()
    {
        var technician = await app.As(Roles.Technician);
        var booked = await app.Booked();

        var answer = await Begin(technician, booked, new { phase = "work" });
        var unknown = await technician.PostAsJsonAsync("/api/v1/job-cards/999999/phases", new { phase = "work" }, Ct);
        var none = await Begin(technician, booked, new { });

        Assert.Equal((HttpStatusCode.Conflict, HttpStatusCode.NotFound, HttpStatusCode.BadRequest), (answer.StatusCode, unknown.StatusCode, none.StatusCode));
        Assert.Contains("not checked in", await answer.Sentence(), StringComparison.Ordinal);
    }

    private static string Say(Instant instant) => NodaTime.Text.InstantPattern.ExtendedIso.Format(instant);

    private static async Task<TestPage> Tap(TestPages pages, string address, string phase, Dictionary<string, string?> typed)
    {
        var page = await pages.Open(address);
        var form = page.Html.QuerySelector("#begin")!;
        var button = page.Html.CreateElement("input");
        button.SetAttribute("type", "hidden");
        button.SetAttribute("name", "Begin.Phase");
        button.SetAttribute("value", phase);
        form.AppendChild(button);
        return await pages.Send(page, address, typed, "#begin");
    }

    private static Task<HttpResponseMessage> Begin(HttpClient client, TestVisit visit, object body) =>
        client.PostAsJsonAsync($"{visit.Api}/phases", body, Ct);

    private static async Task Begun(HttpClient client, TestVisit visit, string phase)
    {
        var answer = await Begin(client, visit, new { phase, oilIn = true });
        Assert.True(answer.IsSuccessStatusCode, $"{phase}: {await answer.Content.ReadAsStringAsync(Ct)}");
    }

    private static async Task<JsonElement> Progress(HttpClient client, TestVisit visit) =>
        await (await client.GetAsync(new Uri($"{visit.Api}/progress", UriKind.Relative), Ct)).Json();

    private static async Task<JsonElement> Card(HttpClient client, TestVisit visit) =>
        (await (await client.GetAsync(new Uri(visit.Api, UriKind.Relative), Ct)).Json()).GetProperty("checkIn");

    private Task<Guid> Bay() => app.AddResource(ResourceKind.Bay, $"Bay {10 + ++hours}");

    private void Later(int by) => app.Clock.Now += Duration.FromHours(by);

    /// <summary>A visit that is here; its engine is cold for so many hours, or not yet.</summary>
    private async Task<TestVisit> Here(int coldSince = 1)
    {
        var visit = await app.CheckedIn();
        var cold = await app.Look(db => db.CheckIns.Where(c => c.JobCardNumber == visit.Number).Select(c => c.EngineStoppedAt).SingleAsync(Ct));
        Assert.Equal(app.Clock.Now - Duration.FromHours(14), cold);
        if (coldSince < 0)
        {
            await app.Look(async db =>
            {
                db.EngineStops.Add(new EngineStop
                {
                    Id = NewId.At(app.Clock), JobCardNumber = visit.Number, StoppedAt = app.Clock.Now - Duration.FromMinutes(10),
                    EnteredBy = TestWorkshop.Technician, EnteredAt = app.Clock.Now,
                });
                return await db.SaveChangesAsync(Ct);
            });
        }

        return visit;
    }

    private Task<int> Takes(TestVisit visit, Guid resource, int from, int until) => app.Look(db =>
    {
        db.Occupancies.Add(new Occupancy
        {
            Id = NewId.At(app.Clock), JobCardNumber = visit.Number, Phase = VisitPhase.Work, ResourceId = resource,
            Span = new Interval(app.Clock.Now + Duration.FromHours(from), app.Clock.Now + Duration.FromHours(until)),
        });
        return db.SaveChangesAsync(Ct);
    });

    private Task<Instant> Waiting(TestVisit visit) => app.Look(async db => (await db.Occupancies
        .Where(o => o.JobCardNumber == visit.Number && o.Phase == VisitPhase.Waiting && o.Live).ToListAsync(Ct)).Max(o => o.Span.End));

    private Task<Instant> Until(TestVisit visit, Guid resource) => app.Look(async db =>
        (await db.Occupancies.Where(o => o.JobCardNumber == visit.Number && o.ResourceId == resource && o.Live).ToListAsync(Ct)).Max(o => o.Span.End));
}
