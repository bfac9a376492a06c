using System.Net;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Tests.Clearances;
using Xunit;
using static Workshop.Web.Tests.Shims.ShimStores;

namespace Workshop.Web.Tests.Shims;

public sealed class ShimCountTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_difference_asks_for_its_reason_and_then_moves_the_ledger()
    {
        await app.Receive(2.701m, 4);
        await app.Receive(2.702m, 1);
        var lines = new[]
        {
            new { thicknessMm = 2.701, counted = (int?)2, expected = (int?)4 }, new { thicknessMm = 2.702, counted = (int?)3, expected = (int?)1 },
            new { thicknessMm = 2.703, counted = (int?)null, expected = (int?)null },
        };

        var unexplained = await app.PostShims("counts", new { partCode = TestEngines.ShimPart, lines });
        var explained = await app.PostShims("counts", new { partCode = TestEngines.ShimPart, lines, reason = "Two lay in the wrong compartment" });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, unexplained.StatusCode);
        Assert.Contains("2.701 mm, new: 4 by the ledger, 2 counted", (await unexplained.Json()).Fault("reason"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, explained.StatusCode);
        var told = await explained.Json();
        Assert.Equal((2, 2), (told.GetProperty("sizes").GetInt32(), told.GetProperty("differences").GetArrayLength()));
        Assert.Equal((2, 3), (await Count(2.701m), await Count(2.702m)));
        var thickness = Mm(2.701m);
        Assert.Equal(2, await app.Look(db => db.Shims.CountAsync(s => s.Thickness == thickness && s.Gone == ShimEnd.Missing, Ct)));
        Assert.Equal("Two lay in the wrong compartment", await app.Look(db => (
            from movement in db.StockMovements
            join remark in db.Remarks on movement.ReasonRemarkId equals remark.Id
            where movement.Kind == MovementKind.Counted && movement.Thickness == thickness
            select remark.Text).Distinct().SingleAsync(Ct)));
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task A_count_that_agrees_asks_for_nothing_and_writes_nothing()
    {
        await app.Receive(2.711m, 2);
        var before = await app.Look(db => db.StockMovements.CountAsync(Ct));

        var answer = await app.PostShims("counts", new { partCode = TestEngines.ShimPart, lines = new[] { new { thicknessMm = 2.711, counted = 2 } } });

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(before, await app.Look(db => db.StockMovements.CountAsync(Ct)));
    }

    [Fact]
    public async Task What_moved_while_somebody_counted_is_counted_again()
    {
        var ids = await app.Receive(2.721m, 3);
        var visit = await app.CheckedIn();
        (await app.Fit(visit, new { valve = "1-exhaust-1", fromBox = true, shimId = ids[0] })).EnsureSuccessStatusCode();

        var answer = await app.PostShims("counts", new
        {
            partCode = TestEngines.ShimPart, lines = new[] { new { thicknessMm = 2.721, counted = 3, expected = 3 } }, reason = "x",
        });

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("3 when the count began, 2 now", (await answer.Json()).Fault("lines[0].counted"), StringComparison.Ordinal);
        Assert.Equal(2, await Count(2.721m));
    }

    [Fact]
    public async Task A_size_counted_twice_a_box_that_is_none_and_nothing_counted_are_refused()
    {
        object Twice(double mm) => new { thicknessMm = mm, counted = 1 };

        var twice = await app.PostShims("counts", new { partCode = TestEngines.ShimPart, lines = new[] { Twice(2.731), Twice(2.731) }, reason = "x" });
        var none = await app.PostShims("counts", new { partCode = TestEngines.Oil, lines = new[] { Twice(2.731) }, reason = "x" });
        var nothing = await app.PostShims("counts", new { partCode = TestEngines.ShimPart, lines = Array.Empty<object>() });

        Assert.Contains("stands twice", (await twice.Json()).Fault("lines[1].thicknessMm"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        Assert.Contains("at least one size", (await nothing.Json()).Fault("lines"), StringComparison.Ordinal);
    }

    private Task<int> Count(decimal thickness)
    {
        var mm = Mm(thickness);
        return app.Look(db => db.Shims.CountAsync(s => s.Thickness == mm && s.PlaceId != null, Ct));
    }
}
