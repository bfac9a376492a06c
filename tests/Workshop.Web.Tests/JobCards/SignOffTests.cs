using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Kits;
using Xunit;

namespace Workshop.Web.Tests.JobCards;

public sealed class SignOffTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly Dictionary<string, Likelihood> OilOnly = new() { [TestEngines.OilService] = Likelihood.Certain };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_fresh_card_lists_every_reason_with_the_page_that_puts_it_right()
    {
        var visit = await app.CheckedIn();
        var technician = await app.As(Roles.Technician);

        var state = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct);
        var refused = await SignOff(technician, visit);

        var sentences = state.GetProperty("reasons").EnumerateArray().Select(r => r.GetProperty("sentence").GetString()!).ToList();
        Assert.Contains("Cylinder 2, intake 1, lobe 2: \"Valve clearance check\" is booked, but it was not measured as found.", sentences);
        Assert.Contains("Head cover bolt (6): opened, but not ticked on the torque sheet.", sentences);
        Assert.Contains("The caution \"Hot oil\" is not acknowledged.", sentences);
        Assert.Contains("Head cover: Head cover gasket is reused only after an inspection, and nobody has recorded one.", sentences);
        Assert.Equal(6 + 2 + 1 + 4, sentences.Count);
        Assert.Equal($"{visit.Pages}/torque-sheet", state.GetProperty("reasons").EnumerateArray()
            .First(r => r.GetProperty("place").GetString() == "torqueSheet").GetProperty("address").GetString());
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        var problem = await Body(refused);
        Assert.Equal("not-ready", problem.GetProperty("code").GetString());
        Assert.Equal(sentences.Order(), problem.GetProperty("errors").EnumerateObject().SelectMany(e => e.Value.EnumerateArray()).Select(s => s.GetString()!).Order());
        Assert.Equal(JobCardState.CheckedIn, await StateOf(visit));
    }

    [Fact]
    public async Task A_sign_off_closes_the_card_writes_the_history_and_takes_the_kit()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.Finish(await app.CheckedIn(), technician);
        await app.Look(async db =>
        {
            await KitReservations.Reserve(db, visit.Number, new Actor(TestWorkshop.Advisor, new HashSet<string>()), app.Clock, Ct);
            return true;
        });
        await Occupy(visit, TestWorkshop.Bay1, Duration.FromHours(-2), Duration.FromHours(-1));
        await Occupy(visit, TestWorkshop.Bay2, Duration.FromHours(-1), Duration.FromHours(3));
        var ringsBefore = await OnHand(TestEngines.DrainRing);
        var gasketsBefore = await OnHand(TestEngines.CoverGasket);

        var answer = await SignOff(technician, visit, new
        {
            odometer = 24_012, extraParts = new[] { new { partCode = TestEngines.CoverGasket, quantity = 1 } }, remark = "Test ride 12 km.",
        });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(JobCardState.SignedOff, await StateOf(visit));
        var done = await app.Look(db => db.DoneItems.Where(d => d.JobCardNumber == visit.Number).OrderBy(d => d.ServiceItemCode).ToListAsync(Ct));
        Assert.Equal([TestEngines.OilService, TestEngines.ValveCheck], done.Select(d => d.ServiceItemCode));
        Assert.All(done, d => Assert.Equal((24_012m, new LocalDate(2026, 3, 2)), (d.Distance.Kilometres, d.DoneOn)));
        Assert.Equal(ringsBefore - 1, await OnHand(TestEngines.DrainRing));
        Assert.Equal(gasketsBefore - 1, await OnHand(TestEngines.CoverGasket));
        Assert.Equal(0, await app.Look(db => db.StockMovements.Where(m => m.JobCardNumber == visit.Number).SumAsync(m => m.ReservedChange, Ct)));
        // What it held until now stays on record; from now on it holds nothing.
        Assert.Equal(
            [(TestWorkshop.Bay1, app.Clock.Now - Duration.FromHours(1)), (TestWorkshop.Bay2, app.Clock.Now)],
            (await app.Look(db => db.Occupancies.Where(o => o.JobCardNumber == visit.Number && o.Live).OrderBy(o => o.ResourceId).ToListAsync(Ct)))
                .Select(o => (o.ResourceId, o.Span.End)));
        Assert.True(await app.Look(db => db.DueItems.AnyAsync(d => d.MotorcycleId == visit.MotorcycleId && d.ServiceItemCode == TestEngines.OilService, Ct)));
        Assert.Equal(6, await app.Look(db => db.ClearanceForecasts.CountAsync(f => f.EngineId == visit.EngineId, Ct)));

        var state = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct);
        Assert.Equal(("Tek Nician", 24_012, "Test ride 12 km."), (
            state.GetProperty("signature").GetProperty("by").GetString(),
            state.GetProperty("signature").GetProperty("odometerCount").GetInt32(),
            state.GetProperty("signature").GetProperty("remark").GetString()));
        var kit = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/kit", Ct);
        Assert.Equal(1, kit.GetProperty("lines").EnumerateArray().Single(l => l.GetProperty("partCode").GetString() == TestEngines.CoverGasket).GetProperty("taken").GetDecimal());
    }

    [Fact]
    public async Task Eight_sign_offs_at_once_are_one()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn(items: OilOnly);
        await app.Finish(visit, technician);

        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => SignOff(technician, visit)));

        Assert.Equal(1, answers.Count(a => a.StatusCode == HttpStatusCode.OK));
        Assert.Equal(7, answers.Count(a => a.StatusCode == HttpStatusCode.Conflict));
        Assert.Equal(1, await app.Look(db => db.DoneItems.CountAsync(d => d.JobCardNumber == visit.Number, Ct)));
        Assert.Equal(-1, await app.Look(db => (
            from m in db.StockMovements
            join p in db.Parts on m.PartId equals p.Id
            where m.JobCardNumber == visit.Number && p.Code == TestEngines.DrainRing
            select m.OnHandChange).SumAsync(Ct)));
        var again = await SignOff(technician, visit);
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Equal("signed-off", (await Body(again)).GetProperty("code").GetString());
    }

    [Fact]
    public async Task The_last_ring_goes_to_one_of_two_sign_offs_and_the_other_says_what_is_missing()
    {
        var technician = await app.As(Roles.Technician);
        await Stock("last-ring", 1);
        var visits = new[] { await OneRing("last-ring"), await OneRing("last-ring") };
        foreach (var visit in visits)
        {
            await app.Finish(visit, technician);
        }

        var answers = await Task.WhenAll(visits.Select(v => SignOff(technician, v)));

        var refused = Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Conflict);
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        var said = (await Body(refused)).GetProperty("errors").GetProperty("kit.last-ring")[0].GetString();
        Assert.Equal("Ring last-ring (last-ring): 1 used, but only 0 in the stores; enter the delivery or the count there first.", said);
        Assert.Equal(0, await OnHand("last-ring"));
        Assert.Equal(1, await app.Look(db => db.JobCards.CountAsync(c => visits.Select(v => v.Number).Contains(c.Number) && c.State == JobCardState.SignedOff, Ct)));

        await Stock("last-ring", 1);
        var later = await SignOff(technician, visits[Array.IndexOf(answers, refused)]);
        Assert.Equal(HttpStatusCode.OK, later.StatusCode);
    }

    [Fact]
    public async Task An_adjustment_asks_for_every_valve_under_the_shaft_as_left()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn();
        await app.MeasureAll(visit);
        await app.Begin(visit, TestEngines.Adjustment);
        await app.FitShim(visit, TestEngines.Intake(1));
        await FinishedVisits.TickAll(technician, visit);
        await FinishedVisits.InspectSeals(technician, visit);
        await FinishedVisits.ReadCautions(technician, visit);
        await app.Measure(visit, new LobeKey(TestEngines.Intake(1)), Stage.AsLeft, 0.15m);
        await app.Measure(visit, new LobeKey(TestEngines.Intake(1), 2), Stage.AsLeft, 0.23m);

        var refused = await SignOff(technician, visit);

        Assert.Equal(
            [
                "Cylinder 2, intake 1: disturbed, since the intake camshaft came out, but not measured as left.",
                "Cylinder 2, intake 1, lobe 2: disturbed, since the intake camshaft came out, but not measured as left.",
                "Cylinder 1, intake 1, lobe 2: as left too wide: above 0.22 mm; 0.10 to 0.22 mm is allowed; adjust it, or accept it with a remark.",
            ],
            (await Body(refused)).GetProperty("errors").EnumerateObject().SelectMany(e => e.Value.EnumerateArray()).Select(s => s.GetString()));

        await app.Measure(visit, new LobeKey(TestEngines.Intake(2)), Stage.AsLeft, 0.15m);
        await app.Measure(visit, new LobeKey(TestEngines.Intake(2), 2), Stage.AsLeft, 0.15m);
        var unsaid = await SignOff(technician, visit, new { odometer = 24_000, acceptsOutsideLimits = true });
        Assert.Equal(HttpStatusCode.BadRequest, unsaid.StatusCode);
        Assert.Contains("remark is empty: give why", await unsaid.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        var accepted = await SignOff(technician, visit, new { odometer = 24_000, acceptsOutsideLimits = true, remark = "Next shim ordered." });
        Assert.Equal(HttpStatusCode.OK, accepted.StatusCode);
        var remark = await app.Look(db => (
            from s in db.SignOffs join r in db.Remarks on s.RemarkId equals r.Id where s.JobCardNumber == visit.Number select r.Text).SingleAsync(Ct));
        Assert.Equal(
            "Next shim ordered.\nAccepted: cylinder 1, intake 1, lobe 2, as left too wide: above 0.22 mm; 0.10 to 0.22 mm is allowed.", remark);
        Assert.True(await app.Look(db => db.DoneItems.AnyAsync(d => d.JobCardNumber == visit.Number && d.ServiceItemCode == TestEngines.Adjustment, Ct)));
    }

    [Fact]
    public async Task An_item_not_done_stays_out_of_the_history_and_takes_no_parts()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.CheckedIn();
        await app.MeasureAll(visit);
        await technician.PostAsJsonAsync($"{visit.Api}/torque-sheet/ticks",
            new { fastenerCode = TestEngines.CoverBolt, wrenchId = TestWorkshop.SmallWrench, tightened = true }, Ct);
        await FinishedVisits.InspectSeals(technician, visit);
        await FinishedVisits.ReadCautions(technician, visit);

        var answer = await SignOff(technician, visit, new
        {
            odometer = 24_000, notDone = new[] { new { code = TestEngines.OilService, reason = "The owner does it himself." } },
        });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal([TestEngines.ValveCheck], (await Body(answer)).GetProperty("doneItems").EnumerateArray().Select(i => i.GetString()));
        Assert.Equal(0, await app.Look(db => db.StockMovements.CountAsync(m => m.JobCardNumber == visit.Number && m.OnHandChange != 0, Ct)));
        var state = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct);
        Assert.Equal("Not done: Engine oil and filter. The owner does it himself.", state.GetProperty("signature").GetProperty("remark").GetString());
    }

    [Fact]
    public async Task What_was_typed_wrong_is_named()
    {
        var technician = await app.As(Roles.Technician);
        var visit = await app.Finish(await app.CheckedIn(items: OilOnly), technician);

        await Refused(visit, technician, new { }, HttpStatusCode.BadRequest, "odometer", "odometer is empty");
        await Refused(visit, technician, new { odometer = 23_999 }, HttpStatusCode.UnprocessableEntity, "odometer",
            "it showed 24000 km at this visit already. At least 24000 is allowed.");
        await Refused(visit, technician, new { odometer = 24_000, notDone = new[] { new { code = "polish", reason = "no time" } } },
            HttpStatusCode.UnprocessableEntity, "notDone[0].code", $"there are {TestEngines.OilService}.");
        await Refused(visit, technician, new { odometer = 24_000, notDone = new[] { new { code = TestEngines.OilService } } },
            HttpStatusCode.BadRequest, "notDone[0].reason", "reason is empty");
        await Refused(visit, technician, new { odometer = 24_000, extraParts = new[] { new { partCode = "gold-ring", quantity = 1 } } },
            HttpStatusCode.UnprocessableEntity, "extraParts[0].partCode", "the stores have no such part");
        await Refused(visit, technician, new { odometer = 24_000, extraParts = new[] { new { partCode = TestEngines.DrainRing, quantity = -1 } } },
            HttpStatusCode.BadRequest, "extraParts[0].quantity", "0 to 100000");
        Assert.Equal(HttpStatusCode.Forbidden, (await SignOff(await app.As(Roles.Advisor), visit)).StatusCode);
        Assert.Equal(JobCardState.CheckedIn, await StateOf(visit));
    }

    [Fact]
    public async Task A_card_that_is_only_booked_cannot_be_signed_off()
    {
        var visit = await app.Booked();
        var technician = await app.As(Roles.Technician);

        var answer = await SignOff(technician, visit);
        var state = await technician.GetFromJsonAsync<JsonElement>($"{visit.Api}/sign-off", Ct);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var reason = Assert.Single(state.GetProperty("reasons").EnumerateArray());
        Assert.Equal(($"Job card {visit.Number} is booked, but the motorcycle is not checked in.", $"{visit.Pages}/check-in"),
            (reason.GetProperty("sentence").GetString(), reason.GetProperty("address").GetString()));
    }

    private static async Task Refused(TestVisit visit, HttpClient client, object body, HttpStatusCode status, string field, string sentence)
    {
        var answer = await SignOff(client, visit, body);
        Assert.Equal(status, answer.StatusCode);
        var errors = (await Body(answer)).GetProperty("errors");
        Assert.True(errors.TryGetProperty(field, out var said), errors.ToString());
        Assert.Contains(sentence, said[0].GetString(), StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> SignOff(HttpClient client, TestVisit visit, object? body = null) =>
        client.PostAsJsonAsync($"{visit.Api}/sign-off", body ?? new { odometer = 24_000 }, Ct);

    private Task<TestVisit> OneRing(string code) => app.CheckedIn(items: OilOnly, specification: TestEngines.Twin() with
    {
        Joints = [new Joint("sump-drain", "Oil drain", [TestEngines.DrainPlug], [new Seal(code, 1, SealPolicy.ReplaceAlways)])],
        ServiceItems = [TestEngines.Twin().ServiceItems.Single(i => i.Code == TestEngines.OilService) with { Parts = [] }],
    });

    private Task<int> Stock(string code, decimal quantity) => app.Look(async db =>
    {
        var part = await db.Parts.SingleOrDefaultAsync(p => p.Code == code, Ct) ?? db.Parts.Add(new Part
        {
            Id = Domain.NewId.At(app.Clock), Code = code, Name = $"Ring {code}", Kind = PartKind.SealingRing, Unit = PartUnit.Piece,
        }).Entity;
        db.StockMovements.Add(new StockMovement
        {
            Id = Domain.NewId.At(app.Clock), PartId = part.Id, PlaceId = TestWorkshop.Shelf, Kind = MovementKind.Received,
            OnHandChange = quantity, ReservedChange = 0, MovedBy = TestWorkshop.Manager, MovedAt = app.Clock.Now,
        });
        return await db.SaveChangesAsync(Ct);
    });

    private Task<int> Occupy(TestVisit visit, Guid resource, Duration from, Duration to) => app.Look(db =>
    {
        db.Occupancies.Add(new Occupancy
        {
            Id = Domain.NewId.At(app.Clock), JobCardNumber = visit.Number, Phase = VisitPhase.Work, ResourceId = resource,
            Span = new Interval(app.Clock.Now + from, app.Clock.Now + to),
        });
        return db.SaveChangesAsync(Ct);
    });

    private Task<decimal> OnHand(string code) => app.Look(db => (
        from b in db.StockBalances join p in db.Parts on b.PartId equals p.Id where p.Code == code select b.OnHand).SumAsync(Ct));

    private Task<JobCardState> StateOf(TestVisit visit) =>
        app.Look(db => db.JobCards.Where(c => c.Number == visit.Number).Select(c => c.State).SingleAsync(Ct));

    private static async Task<JsonElement> Body(HttpResponseMessage answer) => await answer.Content.ReadFromJsonAsync<JsonElement>(Ct);
}
