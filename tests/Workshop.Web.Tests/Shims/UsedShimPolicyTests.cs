using System.Net;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Shims;
using Workshop.Web.Tests.Clearances;
using Xunit;
using static Workshop.Web.Tests.Shims.ShimStores;

namespace Workshop.Web.Tests.Shims;

/// <summary>Never, own machine only, yes: what may be fitted obeys it, and so does every fitting.</summary>
public sealed class UsedShimPolicyTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_used_shim_is_offered_and_fitted_only_where_the_policy_lets_it()
    {
        await app.SetPolicy("yes");
        var own = await app.CheckedIn();
        await app.MeasureOut(own, "1-exhaust-1", 2.017m);
        (await app.Fit(own, new { valve = "1-exhaust-1", thicknessMm = 1.9, fromBox = true, oldIntoBox = true })).EnsureSuccessStatusCode();
        var used = Assert.Single(await Available(own), s => s.Thickness == Mm(2.017m));
        var other = await app.CheckedIn();
        var thickness = Mm(2.017m);
        var id = await app.Look(db => db.Shims.Where(s => s.Thickness == thickness).Select(s => s.Id).SingleAsync(Ct));
        object Fitting(string valve) => new { valve, fromBox = true, shimId = id };

        Assert.Equal((LotSource.Box, StockCondition.Used, 1, "Shim box, D4"), (used.Source, used.Condition, used.Count, used.Place));
        Assert.Contains(used, await Available(other));

        await app.SetPolicy("ownMachineOnly");
        Assert.DoesNotContain(used, await Available(other));
        Assert.Contains(used, await Available(own));
        var foreign = await app.Fit(other, Fitting("2-exhaust-1"));
        Assert.Equal(HttpStatusCode.Conflict, foreign.StatusCode);
        Assert.Contains("\"own machine only\"", (await foreign.Json()).Fault("shims[0].shimId"), StringComparison.Ordinal);

        await app.SetPolicy("never");
        Assert.DoesNotContain(await Available(own), s => s.Condition == StockCondition.Used);
        Assert.Equal(HttpStatusCode.Conflict, (await app.Fit(own, Fitting("2-exhaust-1"))).StatusCode);

        await app.SetPolicy("ownMachineOnly");
        Assert.Equal(HttpStatusCode.OK, (await app.Fit(own, Fitting("2-exhaust-1"))).StatusCode);
        await app.SetPolicy("yes");
        await app.LedgerAgrees();
    }

    [Fact]
    public async Task What_came_out_at_this_visit_is_offered_with_its_valve_until_it_is_fitted()
    {
        await app.SetPolicy("yes");
        var visit = await app.CheckedIn();
        await app.MeasureOut(visit, "1-exhaust-1", 2.021m);
        (await app.Fit(visit, new { valve = "1-exhaust-1", thicknessMm = 2.1, fromBox = true })).EnsureSuccessStatusCode();
        var benched = Assert.Single(await Available(visit), s => s.Source == LotSource.Bench);
        (await app.Fit(visit, new { valve = "2-exhaust-1", fromValve = "1-exhaust-1" })).EnsureSuccessStatusCode();

        Assert.Equal((Mm(2.021m), "1-exhaust-1", 1), (benched.Thickness, benched.Valve.ToString(), benched.Count));
        Assert.DoesNotContain(await Available(visit), s => s.Source == LotSource.Bench);
    }

    [Fact]
    public async Task The_manager_sets_the_policy_and_nobody_else()
    {
        var technician = await app.PostShims("policy", new { usedShims = "never" }, Roles.Technician);
        var wrong = await app.PostShims("policy", new { }, Roles.Manager);
        await app.SetPolicy("yes");

        Assert.Equal(HttpStatusCode.Forbidden, technician.StatusCode);
        Assert.Contains("never, ownMachineOnly or yes", (await wrong.Json()).Fault("usedShims"), StringComparison.Ordinal);
        Assert.Equal("yes", (await app.GetShims("/policy")).GetProperty("usedShims").GetString());
    }

    private Task<IReadOnlyList<ShimLot>> Available(TestVisit visit) => app.Look(async db =>
        await ShimBox.Lots(db, (await OpenCard.Find(db, visit.Number, Ct)).Value, Ct));
}
