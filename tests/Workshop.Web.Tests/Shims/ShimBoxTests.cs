using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Xunit;
using static Workshop.Web.Tests.Shims.ShimStores;

namespace Workshop.Web.Tests.Shims;

/// <summary>Shims one by one: bought, fitted, out again, put away, moved across, counted, scrapped; all in the one ledger.</summary>
public sealed class ShimBoxTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_comes_in_lies_in_its_compartment_and_is_found_by_size()
    {
        var ids = await app.Receive(2.613m, 2, nominalMm: 2.625m);

        var found = (await app.GetShims($"?partCode={TestEngines.ShimPart}&fromMm=2.6&toMm=2.62")).GetProperty("rows");

        Assert.Equal(ids.Order(), found.EnumerateArray().Select(r => r.GetProperty("id").GetGuid()));
        var row = found[0];
        Assert.Equal((2.613m, 2.625m, "new", "box", "Shim box", "F8", 9m), (
            row.GetProperty("thicknessMm").GetDecimal(), row.GetProperty("nominalMm").GetDecimal(), row.GetProperty("condition").GetString(),
            row.GetProperty("where").GetString(), row.GetProperty("place").GetString(), row.GetProperty("compartment").GetString(),
            row.GetProperty("diameterMm").GetDecimal()));
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task A_shim_is_followed_from_the_parcel_through_an_engine_to_the_scrap()
    {
        var id = Assert.Single(await app.Receive(1.903m, 1, nominalMm: 1.9m));
        var first = await app.CheckedIn(odometerKm: 20_000);
        (await app.Fit(first, new { valve = "1-exhaust-1", fromBox = true, shimId = id })).EnsureSuccessStatusCode();
        Assert.Equal(id, (await app.ShimIn(first, "1-exhaust-1"))!.Id);
        Later(200);
        var second = await app.CheckedInAgain(first, 44_000);
        await app.MeasureOut(second, "1-exhaust-1", 1.899m);
        (await app.Fit(second, new { valve = "1-exhaust-1", thicknessMm = 1.85m, fromBox = true })).EnsureSuccessStatusCode();

        var onBench = await app.Shim(id);
        var away = await app.PostShims($"{id}/put-away", new { thicknessMm = 1.898, cleanedAndMeasured = true });
        var inBox = await app.Shim(id);
        var scrapped = await app.PostShims($"{id}/scrap", new { reason = "pitted", remark = "Two pits where the lobe runs" });

        Assert.Equal((ShimWhere.Bench, second.Number, StockCondition.Used), (onBench.Where, onBench.BenchCardNumber, onBench.Condition));
        Assert.Equal("Shim box, C9", (await away.Json()).GetProperty("place").GetString());
        Assert.Equal((ShimWhere.Box, Mm(1.898m), first.MotorcycleId), (inBox.Where, inBox.Thickness, inBox.CameFromMotorcycleId));
        Assert.Equal(HttpStatusCode.OK, scrapped.StatusCode);
        var told = await app.GetShims($"/{id}");
        Assert.Equal(
            ["received", "issued", "cameOut", "returned", "scrapped"],
            told.GetProperty("movements").EnumerateArray().Select(m => m.GetProperty("kind").GetString()));
        Assert.Equal("1-exhaust-1", told.GetProperty("movements")[1].GetProperty("valve").GetString());
        Assert.Equal(("pitted", "Two pits where the lobe runs"), (
            told.GetProperty("movements")[4].GetProperty("reason").GetString(), told.GetProperty("movements")[4].GetProperty("remark").GetString()));
        Assert.Equal(("gone", "scrapped"), (told.GetProperty("shim").GetProperty("where").GetString(), told.GetProperty("shim").GetProperty("gone").GetString()));
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task Put_away_only_what_is_confirmed_as_cleaned_and_measured_and_not_worn_out()
    {
        var (id, _) = await OnTheBench(2.4m, nominalMm: 2.4m);

        var unsaid = await app.PostShims($"{id}/put-away", new { thicknessMm = 2.4 });
        var worn = await app.PostShims($"{id}/put-away", new { thicknessMm = 2.365, cleanedAndMeasured = true });
        var unmeasured = await app.PostShims($"{id}/put-away", new { cleanedAndMeasured = true });

        Assert.Equal(HttpStatusCode.BadRequest, unsaid.StatusCode);
        Assert.Contains("zero the micrometer", (await unsaid.Json()).Fault("cleanedAndMeasured"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, worn.StatusCode);
        Assert.Contains("below its size of 2.40 mm", (await worn.Json()).Fault("thicknessMm"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, unmeasured.StatusCode);
        Assert.Equal(ShimWhere.Bench, (await app.Shim(id)).Where);
    }

    [Fact]
    public async Task Two_removed_shims_change_places_in_one_send_and_no_box_is_touched()
    {
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.301m);
        await app.MeasureOut(visit, "2-exhaust-1", 2.351m);

        var answer = await app.Fit(
            visit, new { valve = "1-exhaust-1", fromValve = "2-exhaust-1" }, new { valve = "2-exhaust-1", fromValve = "1-exhaust-1" });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(Mm(2.351m), (await app.ShimIn(visit, "1-exhaust-1"))!.Thickness);
        Assert.Equal(Mm(2.301m), (await app.ShimIn(visit, "2-exhaust-1"))!.Thickness);
        Assert.Equal(0m, await app.Look(db => db.StockMovements.Where(m => m.JobCardNumber == visit.Number && m.ShimId != null).SumAsync(m => m.OnHandChange, Ct)));
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task A_shim_that_was_moved_across_cannot_be_moved_or_put_away_once_more()
    {
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.302m);
        await app.MeasureOut(visit, "2-exhaust-1", 2.352m);
        (await app.Fit(visit, new { valve = "2-exhaust-1", fromValve = "1-exhaust-1" })).EnsureSuccessStatusCode();

        var again = await app.Fit(visit, new { valve = "1-intake-1", fromValve = "1-exhaust-1" });
        var away = await app.Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.0, fromBox = true, oldIntoBox = true });
        var itself = await app.Fit(visit, new { valve = "1-exhaust-1", fromValve = "1-exhaust-1" });

        Assert.Equal(
            [HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity],
            new[] { again.StatusCode, away.StatusCode, itself.StatusCode });
        Assert.Contains("elsewhere already", (await again.Json()).Fault("shims[0].fromValve"), StringComparison.Ordinal);
        Assert.Contains("elsewhere already", (await away.Json()).Fault("shims[0].oldIntoBox"), StringComparison.Ordinal);
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task A_shim_put_back_into_its_own_valve_moves_nothing()
    {
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.303m);

        (await app.Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.303 })).EnsureSuccessStatusCode();

        Assert.Equal(0, await app.Look(db => db.StockMovements.CountAsync(m => m.JobCardNumber == visit.Number && m.ShimId != null, Ct)));
    }

    [Fact]
    public async Task Another_shim_found_than_the_ledger_knows_is_said_and_the_known_one_is_missing()
    {
        var id = Assert.Single(await app.Receive(1.952m, 1));
        var first = await app.CheckedIn();
        (await app.Fit(first, new { valve = "1-exhaust-1", fromBox = true, shimId = id })).EnsureSuccessStatusCode();
        Later(100);
        var second = await app.CheckedInAgain(first, 36_000);
        await app.MeasureOut(second, "1-exhaust-1", 2.2m);

        var answer = await app.Fit(second, new { valve = "1-exhaust-1", thicknessMm = 2.1, fromBox = true, oldIntoBox = true });

        Assert.Contains((await answer.Json()).GetProperty("warnings").EnumerateArray(),
            w => w.GetString()!.Contains("1.952 mm was fitted by the ledger, 2.20 mm came out", StringComparison.Ordinal));
        Assert.Equal(ShimEnd.Missing, (await app.Shim(id)).Gone);
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task Scrapped_as_it_comes_out_it_never_goes_into_the_box()
    {
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.304m);

        var both = await app.Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.15, fromBox = true, oldIntoBox = true, oldScrapped = "blued" });
        (await app.Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.15, fromBox = true, oldScrapped = "blued" })).EnsureSuccessStatusCode();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, both.StatusCode);
        var gone = await app.Look(db => db.StockMovements.SingleAsync(m => m.JobCardNumber == visit.Number && m.Kind == MovementKind.Scrapped, Ct));
        Assert.Equal((ScrapReason.Blued, 0m), (gone.ScrapReason, gone.OnHandChange));
        Assert.Equal(ShimEnd.Scrapped, (await app.Shim(gone.ShimId!.Value)).Gone);
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task A_worn_out_shim_does_not_go_into_the_box_as_another_is_fitted()
    {
        var id = Assert.Single(await app.Receive(2.06m, 1, nominalMm: 2.05m));
        var first = await app.CheckedIn();
        (await app.Fit(first, new { valve = "1-exhaust-1", fromBox = true, shimId = id })).EnsureSuccessStatusCode();
        Later(100);
        var second = await app.CheckedInAgain(first, 40_000);

        // Within a hundredth of what the ledger knows it is the same shim; the ledger's own figure is then 2.060 - 0.010.
        await app.MeasureOut(second, "1-exhaust-1", 2.05m);
        (await app.Fit(second, new { valve = "1-exhaust-1", thicknessMm = 2.1, fromBox = true, oldIntoBox = true })).EnsureSuccessStatusCode();
        Assert.Equal((ShimWhere.Box, Mm(2.05m)), ((await app.Shim(id)).Where, (await app.Shim(id)).Thickness));

        var worn = Assert.Single(await app.Receive(2.006m, 1, nominalMm: 2.03m));
        var third = await app.CheckedIn();
        (await app.Fit(third, new { valve = "1-exhaust-1", fromBox = true, shimId = worn })).EnsureSuccessStatusCode();
        Later(100);
        var fourth = await app.CheckedInAgain(third, 40_000);
        await app.MeasureOut(fourth, "1-exhaust-1", 1.998m);
        var refused = await app.Fit(fourth, new { valve = "1-exhaust-1", thicknessMm = 2.1, fromBox = true, oldIntoBox = true });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("scrap it as worn", (await refused.Json()).Fault("shims[0].oldIntoBox"), StringComparison.Ordinal);
        Assert.Equal(ShimWhere.Engine, (await app.Shim(worn)).Where);
    }

    [Fact]
    public async Task What_a_card_fitted_and_took_out_again_is_new_still_however_often()
    {
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.305m);
        var ids = await app.Receive(2.155m, 8);
        foreach (var id in ids)
        {
            (await app.Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.155, fromBox = true, shimId = id })).EnsureSuccessStatusCode();
        }

        Assert.All(await Task.WhenAll(ids.Select(app.Shim)), shim => Assert.Equal(StockCondition.New, shim.Condition));
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task A_new_series_gets_its_box_and_takes_shims_in()
    {
        object Series(decimal smallest) => new
        {
            partCode = "S-25", name = "Shim 25 mm, disc over bucket", seat = "shimOverBucket", diameterMm = 25, smallestMm = smallest,
            largestMm = 3.2, stepMm = 0.04, box = "Shim box 25", columns = 6, source = "made up for this test",
        };

        var refused = await app.PostShims("series", Series(3.3m), Roles.Manager);
        var made = await app.PostShims("series", Series(2.0m), Roles.Manager);
        var again = await app.PostShims("series", Series(2.0m), Roles.Manager);
        var came = await app.PostShims("receipts", new { partCode = "S-25", thicknessMm = 2.08, quantity = 3 });

        Assert.Contains("largestMm is 3.2 mm: not below smallestMm (3.3 mm)", (await refused.Json()).Fault("largestMm"), StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.Created, 31), (made.StatusCode, (await made.Json()).GetProperty("sizes").GetInt32()));
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Equal("A3", (await came.Json()).GetProperty("compartment").GetString());
        var box = await app.GetShims("/boxes/S-25");
        Assert.Equal((3, 31, "A3"), (
            box.GetProperty("new").GetInt32(), box.GetProperty("compartments").GetArrayLength(),
            box.GetProperty("compartments").EnumerateArray().Single(c => c.GetProperty("new").GetInt32() > 0).GetProperty("address").GetString()));
    }

    [Fact]
    public async Task The_list_goes_on_page_by_page_and_loses_none()
    {
        var seen = new List<Guid>();
        string? after = null;
        do
        {
            var page = await app.GetShims($"?partCode={TestEngines.ShimPart}&toMm=2.0&take=5{(after is null ? "" : $"&after={Uri.EscapeDataString(after)}")}");
            seen.AddRange(page.GetProperty("rows").EnumerateArray().Select(r => r.GetProperty("id").GetGuid()));
            after = page.GetProperty("next").GetString();
        }
        while (after is not null);

        var thickest = Mm(2.0m);
        Assert.Equal(
            await app.Look(db => db.Shims.Where(s => s.PlaceId != null && s.Thickness <= thickest).OrderBy(s => s.Thickness).ThenBy(s => s.Id).Select(s => s.Id).ToListAsync(Ct)),
            seen);
    }

    private async Task<(Guid Id, TestVisit Visit)> OnTheBench(decimal thicknessMm, decimal? nominalMm = null)
    {
        var id = Assert.Single(await app.Receive(thicknessMm, 1, nominalMm));
        var first = await app.CheckedIn();
        (await app.Fit(first, new { valve = "1-exhaust-1", fromBox = true, shimId = id })).EnsureSuccessStatusCode();
        Later(100);
        var second = await app.CheckedInAgain(first, 40_000);
        await app.MeasureOut(second, "1-exhaust-1", thicknessMm);
        (await app.Fit(second, new { valve = "1-exhaust-1", thicknessMm = 2.05, fromBox = true })).EnsureSuccessStatusCode();
        Assert.Equal(ShimWhere.Bench, (await app.Shim(id)).Where);
        return (id, second);
    }

    private void Later(int days) => app.Clock.Now += Duration.FromDays(days);
}
