using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.JobCards;
using Xunit;

namespace Workshop.Web.Tests.Kits;

public sealed class PickListTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_list_walks_through_the_places_in_order_and_says_how_many_of_which_lot()
    {
        var (far, near) = (await app.Place("Far shelf", 20), await app.Place("Near shelf", 10));
        await app.Ring("walk-a", 5, far);
        await app.Ring("walk-b", 1, near, "L-new", new LocalDate(2027, 1, 1));
        await app.Ring("walk-b", 1, far, "L-old", new LocalDate(2026, 4, 1));
        await app.Ring("walk-b", 9, near, "L-dead", new LocalDate(2026, 2, 1));
        var visit = await app.DrainVisit(("walk-a", 3), ("walk-b", 2));

        var list = await (await app.As(Roles.Technician)).Get($"{visit.Api}/pick-list");

        Assert.Equal(
            [("Near shelf", "walk-b", "L-new", 1m), ("Far shelf", "walk-a", null, 3m), ("Far shelf", "walk-b", "L-old", 1m)],
            list.GetProperty("toPick").EnumerateArray().Select(r => (
                r.GetProperty("place").GetString()!, r.GetProperty("partCode").GetString()!, r.GetProperty("lot").GetString(), r.GetProperty("quantity").GetDecimal())));
        Assert.Empty(list.GetProperty("missing").EnumerateArray());
    }

    [Fact]
    public async Task Lines_are_taken_one_by_one_by_tap_or_by_scanned_package_and_the_rest_at_once()
    {
        await app.Ring("pick-a", 5);
        var package = await app.Ring("pick-b", 5);
        await app.Ring("pick-c", 5);
        await app.Look(db =>
        {
            db.PartScanCodes.Add(new PartScanCode { Code = "4000000000013", PartId = package, Quantity = 10 });
            return db.SaveChangesAsync(Ct);
        });
        var visit = await app.DrainVisit(("pick-a", 2), ("pick-b", 1), ("pick-c", 1));
        var technician = await app.As(Roles.Technician);

        Assert.Equal(HttpStatusCode.OK, (await technician.Pick(visit, new { partCode = "pick-a", placeId = TestWorkshop.Shelf, quantity = 2 })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await technician.Pick(visit, new { partCode = "4000000000013" })).StatusCode);
        var again = await technician.Pick(visit, new { partCode = "4000000000013" });
        var all = await (await technician.Pick(visit, new { })).Body();

        Assert.Equal((HttpStatusCode.Conflict, "picked-already"), (again.StatusCode, (await again.Body()).GetProperty("code").GetString()));
        Assert.Empty(all.GetProperty("toPick").EnumerateArray());
        Assert.Equal(
            [("pick-a", 2m), ("pick-b", 1m), ("pick-c", 1m)],
            all.GetProperty("onBench").EnumerateArray().Select(r => (r.GetProperty("partCode").GetString()!, r.GetProperty("quantity").GetDecimal())));
        Assert.Equal((3m, 0m), await app.Balance("pick-a"));
        Assert.Equal((4m, 0m), await app.Balance("pick-b"));
    }

    [Fact]
    public async Task Two_picks_of_the_last_ring_at_once_are_one_and_the_other_says_what_is_there_instead()
    {
        var ring = await app.Ring("last-pick", 1);
        await app.Alternatives(ring, await app.Ring("last-pick-al", 4), "aluminium instead of copper");
        var visits = new[] { await app.DrainVisit(("last-pick", 1)), await app.DrainVisit(("last-pick", 1)) };
        var technician = await app.As(Roles.Technician);

        var answers = await Task.WhenAll(visits.Select(v => technician.Pick(v, new { partCode = "last-pick" })));

        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
        var refused = await Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Conflict).Body();
        Assert.Equal("not-there", refused.GetProperty("code").GetString());
        Assert.Equal(
            "1 wanted. Ring last-pick (last-pick): 1 missing; there is none. Instead: Ring last-pick-al (last-pick-al), 4 free, aluminium instead of copper.",
            refused.GetProperty("detail").GetString());
        Assert.Equal("last-pick-al", refused.GetProperty("alternatives")[0].GetProperty("partCode").GetString());
        Assert.Equal((0m, 0m), await app.Balance("last-pick"));
    }

    [Fact]
    public async Task Sixteen_picks_at_once_by_eight_cards_take_no_more_than_is_there()
    {
        await app.Ring("race-pick", 5);
        var visits = new List<TestVisit>();
        for (var i = 0; i < 8; i++)
        {
            visits.Add(await app.DrainVisit(("race-pick", 2)));
        }

        var technician = await app.As(Roles.Technician);
        var answers = await Task.WhenAll(visits.Concat(visits).Select(v => technician.Pick(v, new { partCode = "race-pick", quantity = 1 })));

        Assert.Equal(5, answers.Count(a => a.StatusCode == HttpStatusCode.OK));
        Assert.Equal(11, answers.Count(a => a.StatusCode == HttpStatusCode.Conflict));
        Assert.Equal((0m, 0m), await app.Balance("race-pick"));
    }

    [Fact]
    public async Task What_another_card_holds_is_not_picked_and_is_said()
    {
        await app.Ring("held-pick", 1);
        var (holder, other) = (await app.DrainVisit(("held-pick", 1)), await app.DrainVisit(("held-pick", 1)));
        var technician = await app.As(Roles.Technician);
        (await technician.PostAsync(new Uri($"{holder.Api}/kit/reservation", UriKind.Relative), null, Ct)).EnsureSuccessStatusCode();

        var refused = await technician.Pick(other, new { partCode = "held-pick" });
        var page = await (await TestPages.SignedIn(app, Roles.Technician)).Open($"{other.Pages}/pick-list");

        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Contains("there is 1 on Shelf A (held for other cards)", (await refused.Body()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Contains("1 on Shelf A (held for other cards)", page.MainText, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await technician.Pick(holder, new { partCode = "held-pick" })).StatusCode);
    }

    [Fact]
    public async Task What_expires_before_the_visit_is_never_offered()
    {
        await app.Ring("old-ring", 4, lot: "L-1", expiresOn: new LocalDate(2026, 3, 1));
        var visit = await app.DrainVisit(("old-ring", 1));
        var technician = await app.As(Roles.Technician);

        var refused = await technician.Pick(visit, new { partCode = "old-ring" });
        var line = (await technician.Get($"{visit.Api}/kit")).GetProperty("lines")[0];

        Assert.Contains("4 on Shelf A, lot L-1 (past its day)", (await refused.Body()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal((1m, 4m), (line.GetProperty("shortBy").GetDecimal(), line.GetProperty("expired").GetDecimal()));
    }

    [Fact]
    public async Task What_was_not_used_goes_back_by_hand_or_at_sign_off_and_more_is_taken_there()
    {
        var place = await app.Place("Return shelf", 5);
        await app.Ring("back-ring", 9, place);
        await app.Ring("more-ring", 9, place);
        var technician = await app.As(Roles.Technician);
        var visit = await app.Finish(await app.DrainVisit(("back-ring", 2), ("more-ring", 1)), technician);

        await technician.Pick(visit, new { partCode = "back-ring", quantity = 5 });
        var back = await technician.PostAsJsonAsync($"{visit.Api}/pick-list/returns", new { partCode = "back-ring", quantity = 1 }, Ct);
        var tooMany = await technician.PostAsJsonAsync($"{visit.Api}/pick-list/returns", new { partCode = "back-ring", quantity = 5 }, Ct);
        Assert.Equal((5m, 0m), await app.Balance("back-ring"));
        var signed = await technician.PostAsJsonAsync($"{visit.Api}/sign-off", new
        {
            odometer = 24_001, extraParts = new[] { new { partCode = "more-ring", quantity = 2 } },
        }, Ct);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.OK), (back.StatusCode, tooMany.StatusCode, signed.StatusCode));
        Assert.Equal((7m, 0m), await app.Balance("back-ring"));
        Assert.Equal((6m, 0m), await app.Balance("more-ring"));
        Assert.All(
            await app.Look(db => db.StockMovements.Where(m => m.JobCardNumber == visit.Number && m.Kind == MovementKind.Returned).ToListAsync(Ct)),
            m => Assert.Equal(place, m.PlaceId));
    }

    [Fact]
    public async Task Work_that_begins_takes_what_is_reserved_to_the_bench_and_a_cancelled_visit_puts_it_back()
    {
        await app.Ring("begin-ring", 1);
        var visit = await app.DrainVisit(("begin-ring", 2));
        var technician = await app.As(Roles.Technician);
        (await technician.PostAsync(new Uri($"{visit.Api}/kit/reservation", UriKind.Relative), null, Ct)).EnsureSuccessStatusCode();

        var begun = await (await technician.PostAsJsonAsync($"{visit.Api}/phases", new { phase = "work" }, Ct)).Body();
        var taken = await app.Balance("begin-ring");

        Assert.Contains("Ring begin-ring: 1 short.", begun.GetProperty("warnings").EnumerateArray().Select(w => w.GetString()));
        Assert.Equal((0m, 0m), taken);

        var cancelled = await app.CheckedIn(items: KitStock.OilOnly, specification: KitStock.Drain(("begin-other", 1)));
        await app.Ring("begin-other", 3);
        await technician.Pick(cancelled, new { partCode = "begin-other" });
        (await (await app.As(Roles.Advisor)).PostAsJsonAsync($"{cancelled.Api}/cancel", new { reason = "Owner rode home." }, Ct)).EnsureSuccessStatusCode();
        Assert.Equal((3m, 0m), await app.Balance("begin-other"));
    }

    [Fact]
    public async Task The_page_takes_a_line_keeps_a_wrong_code_and_puts_back()
    {
        await app.Ring("page-ring", 3);
        var visit = await app.DrainVisit(("page-ring", 1));
        var pages = await TestPages.SignedIn(app, Roles.Technician);

        var wrong = await pages.Send($"{visit.Pages}/pick-list", new() { ["Input.PartCode"] = "no-such-code" }, "#scan");
        var sent = await pages.Send($"{visit.Pages}/pick-list", []);
        var after = await pages.Open(sent.Location!);
        var back = await pages.Send(after, $"{visit.Pages}/pick-list", [], "form[action*=Return]");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        Assert.Equal("no-such-code", wrong.Html.QuerySelector("#Input_PartCode")!.GetAttribute("value"));
        Assert.Contains("Scan or type a code is \"no-such-code\": no part has this code, and no package of one.", wrong.Faults);
        Assert.Contains("The whole kit is on the bench.", after.MainText, StringComparison.Ordinal);
        Assert.Equal($"{visit.Pages}/pick-list#bench", back.Location);
        Assert.Equal((3m, 0m), await app.Balance("page-ring"));
    }

    [Fact]
    public async Task A_part_that_was_merged_counts_as_the_part_that_it_was_found_to_be()
    {
        var kept = await app.Ring("merged-kept", 5);
        var gone = await app.Ring("merged-gone");
        await app.Look(db => db.Parts.Where(p => p.Id == gone).ExecuteUpdateAsync(p => p.SetProperty(x => x.MergedIntoId, kept), Ct));
        var visit = await app.DrainVisit(("merged-gone", 1), ("merged-kept", 1));
        var technician = await app.As(Roles.Technician);

        var line = Assert.Single((await technician.Get($"{visit.Api}/kit")).GetProperty("lines").EnumerateArray());
        var picked = await (await technician.Pick(visit, new { partCode = "merged-gone" })).Body();

        Assert.Equal(("merged-kept", 2m), (line.GetProperty("partCode").GetString(), line.GetProperty("needed").GetDecimal()));
        Assert.Equal(2, picked.GetProperty("onBench")[0].GetProperty("quantity").GetDecimal());
        Assert.Equal((3m, 0m), await app.Balance("merged-kept"));
    }
}
