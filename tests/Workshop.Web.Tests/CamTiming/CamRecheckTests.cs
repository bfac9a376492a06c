using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Workshop.Web.Tests.JobCards;
using Xunit;
using static Workshop.Web.Tests.CamTiming.TimingBodies;

namespace Workshop.Web.Tests.CamTiming;

/// <summary>What a visit that had the tensioner out must do before it is signed off, in the order of the work.</summary>
public sealed class CamRecheckTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_drive_that_was_opened_is_ticked_turned_checked_as_left_and_once_more_before_the_sign_off()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: WithAdjustment, specification: Engine);
        await Sent(technician, visit, Aligned("asFound"));

        var early = await Send(technician, visit, Aligned("asLeft"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, early.StatusCode);
        Assert.Contains("Tick on the torque sheet first: Tensioner bolt, Sprocket bolt", Ordered((await early.Json()).Fault("alignments[0].camshaft")), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Conflict, (await Recheck(technician, visit)).StatusCode);

        app.Clock.Now += Duration.FromMinutes(5);
        await FinishedVisits.TickAll(technician, visit);
        Assert.Contains("two full turns", (await (await Recheck(technician, visit)).Json()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(
            ["camDrives.cam-chain", "camTiming.exhaust-cam", "camTiming.intake-cam"], (await Reasons(technician, visit)).Where(r => r.StartsWith("cam", StringComparison.Ordinal)).Order());

        app.Clock.Now += Duration.FromMinutes(5);
        await Turn(technician, visit);
        await Sent(technician, visit, Aligned("asLeft"));
        var unconfirmed = await (await Recheck(technician, visit, released: false, wrench: null)).Json();
        Assert.Contains("jumps teeth", unconfirmed.Fault("tensionerReleased"), StringComparison.Ordinal);
        Assert.Contains("checked once more", unconfirmed.Fault("wrenchId"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await Recheck(technician, visit)).StatusCode);

        Assert.DoesNotContain(await Reasons(technician, visit), r => r.StartsWith("cam", StringComparison.Ordinal));
        var drive = (await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/cam-timing", Ct)).GetProperty("drives")[0];
        Assert.Equal("Tek Nician", drive.GetProperty("opened").GetProperty("recheckedBy").GetString());

        // Somebody takes a tick back and ticks again: what was checked before holds no longer.
        app.Clock.Now += Duration.FromMinutes(5);
        await Tick(technician, visit, TestEngines.TensionerBolt, tightened: false);
        await Tick(technician, visit, TestEngines.TensionerBolt, tightened: true);
        Assert.Contains("camDrives.cam-chain", await Reasons(technician, visit));
    }

    [Fact]
    public async Task A_timing_check_that_was_booked_is_asked_for_and_timing_that_is_left_off_needs_a_remark()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: TimingOnly, specification: Engine);

        Assert.Equal(2, (await Reasons(technician, visit)).Count(r => r.StartsWith("camTiming.", StringComparison.Ordinal)));
        await Sent(technician, visit, Late(5, 5));
        await Sent(technician, visit, Aligned("asLeft")); // Marks that look right do not undo what the wheel showed.
        Assert.Equal(["camTiming.exhaust-cam", "camTiming.intake-cam"], (await Reasons(technician, visit)).Where(r => r.StartsWith("cam", StringComparison.Ordinal)).Order());

        await FinishedVisits.TickAll(technician, visit);
        await FinishedVisits.InspectSeals(technician, visit);
        await FinishedVisits.ReadCautions(technician, visit);
        var refused = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new { odometer = 24_000 }, Ct);
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        var accepted = await technician.PostAsJsonAsync($"{visit.Api}/sign-off",
            new { odometer = 24_000, acceptsOutsideLimits = true, remark = "Owner told; the chain is renewed next month." }, Ct);
        Assert.True(accepted.IsSuccessStatusCode, await accepted.Content.ReadAsStringAsync(Ct));
    }

    [Fact]
    public async Task Where_nothing_was_opened_there_is_nothing_to_check_once_more()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: TimingOnly, specification: Engine);

        Assert.Equal("not-opened", (await (await Recheck(technician, visit)).Json()).GetProperty("code").GetString());
    }

    private static string Ordered(string? sentence) => sentence!.Replace("Sprocket bolt, Tensioner bolt", "Tensioner bolt, Sprocket bolt", StringComparison.Ordinal);

    private static Task<HttpResponseMessage> Recheck(HttpClient client, TestVisit visit, bool released = true, string? wrench = "small") =>
        client.PostAsJsonAsync($"{visit.Api}/cam-timing/rechecks", new
        {
            drive = TestEngines.CamChain, tensionerWentInAtRest = true, tensionerReleased = released, wrenchId = wrench is null ? (Guid?)null : TestWorkshop.SmallWrench,
        }, Ct);

    private static async Task Turn(HttpClient client, TestVisit visit) =>
        (await client.PostAsJsonAsync($"{visit.Api}/readings/hand-turns", new { noHardStop = true, marksRight = true }, Ct)).EnsureSuccessStatusCode();

    private static async Task Tick(HttpClient client, TestVisit visit, string fastener, bool tightened) =>
        (await client.PostAsJsonAsync($"{visit.Api}/torque-sheet/ticks", new { fastenerCode = fastener, wrenchId = TestWorkshop.SmallWrench, tightened }, Ct)).EnsureSuccessStatusCode();

    private static async Task<IReadOnlyList<string>> Reasons(HttpClient client, TestVisit visit) =>
        [.. (await client.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct)).GetProperty("reasons").EnumerateArray().Select(r => r.GetProperty("subject").GetString()!)];
}
