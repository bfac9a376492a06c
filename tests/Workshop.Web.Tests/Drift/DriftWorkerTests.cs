using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;
using Workshop.Domain.Clearances;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Drift;
using Xunit;

namespace Workshop.Web.Tests.Drift;

public sealed class DriftWorkerTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_refit_waits_until_no_more_comes_and_is_done_once_for_all_that_came()
    {
        var (model, _) = await Fleet(engines: 4);
        await Ask(model);
        app.Clock.Now += Duration.FromSeconds(3);
        await Ask(model);
        app.Clock.Now += Duration.FromSeconds(3);

        await Worker.SeeToAll(Ct);
        Assert.NotNull((await RefitOf(model)).WantedSince);
        app.Clock.Now += Duration.FromSeconds(2);
        await Worker.SeeToAll(Ct);

        var refit = await RefitOf(model);
        Assert.Equal((null, 1, 4, 4, false), (refit.WantedSince, refit.FitVersion, refit.Engines, refit.EnginesWritten, refit.UnderWay));
    }

    [Fact]
    public async Task What_never_falls_quiet_is_not_put_off_for_ever()
    {
        var (model, _) = await Fleet(engines: 4);
        for (var second = 0; second <= 60; second += 4)
        {
            await Ask(model);
            app.Clock.Now += Duration.FromSeconds(4);
        }

        await Worker.SeeToAll(Ct);
        Assert.Equal(1, (await RefitOf(model)).FitVersion);
    }

    [Fact]
    public async Task While_another_copy_of_the_service_refits_this_one_leaves_it_alone()
    {
        var (model, _) = await Fleet(engines: 4);
        await Ask(model);
        await using (var other = new NpgsqlConnection(app.Database.Connections.Direct))
        {
            await other.OpenAsync(Ct);
            await using var hold = new NpgsqlCommand("select pg_advisory_lock(431416239732)", other);
            await hold.ExecuteScalarAsync(Ct);
            Assert.Equal(0, await app.Refit());
            await using var release = new NpgsqlCommand("select pg_advisory_unlock(431416239732)", other);
            await release.ExecuteScalarAsync(Ct);
        }

        await app.Refit();
        Assert.Equal(1, (await RefitOf(model)).FitVersion);
    }

    [Fact]
    public async Task A_refit_whose_worker_was_killed_goes_on_after_the_last_engine_that_was_written()
    {
        var (model, engines) = await Fleet(engines: 4);
        await Ask(model);
        await app.Refit();
        var before = app.Clock.Now;
        var second = engines.Order().ElementAt(1);
        await app.Look(async db =>
        {
            var refit = await db.DriftRefits.SingleAsync(r => r.EngineModelId == model, Ct);
            (refit.StartedAt, refit.FinishedAt, refit.LastEngine, refit.EnginesWritten) = (app.Clock.Now, null, second, 2);
            return await db.SaveChangesAsync(Ct);
        });
        app.Clock.Now += Duration.FromMinutes(1);

        await Worker.SeeToAll(Ct);

        var written = await app.Look(db => db.EngineOutlooks.AsNoTracking().Where(o => engines.Contains(o.EngineId))
            .ToDictionaryAsync(o => o.EngineId, o => o.ComputedAt, Ct));
        Assert.All(engines, e => Assert.Equal(e.CompareTo(second) > 0, written[e] > before));
        Assert.Equal((4, 1), ((await RefitOf(model)).EnginesWritten, (await RefitOf(model)).FitVersion));
    }

    [Fact]
    public async Task A_change_that_comes_while_a_refit_is_under_way_is_seen_to_after_it()
    {
        var (model, _) = await Fleet(engines: 4);
        await Ask(model);
        await app.Look(async db =>
        {
            var refit = await db.DriftRefits.SingleAsync(r => r.EngineModelId == model, Ct);
            (refit.StartedAt, refit.WantedSince) = (app.Clock.Now, app.Clock.Now);
            return await db.SaveChangesAsync(Ct);
        });

        await app.Refit();

        Assert.Equal((2, null, false), ((await RefitOf(model)).FitVersion, (await RefitOf(model)).WantedSince, (await RefitOf(model)).UnderWay));
    }

    [Fact]
    public async Task Every_engine_has_forecasts_of_the_new_fit_and_an_outlook()
    {
        var (model, engines) = await Fleet(engines: 5);
        await Ask(model);
        await app.Refit();

        var fit = await app.Look(db => db.DriftFits.AsNoTracking().SingleAsync(f => f.EngineModelId == model, Ct));
        Assert.Null(fit.WhyNot);
        Assert.Equal((5 * 6 * 2, 5 * 6), (fit.Readings, fit.Fit!.Valves));
        Assert.InRange(fit.Fit.Slopes.Single(s => s.Side == Side.Exhaust).MeanMm.Value, -0.02, -0.002);
        var rows = await app.Look(db => db.ClearanceForecasts.AsNoTracking().Where(f => engines.Contains(f.EngineId)).ToListAsync(Ct));
        Assert.Equal(5 * 6, rows.Count);
        Assert.All(rows, r => Assert.Equal((1, 2, null), (r.FitVersion, r.Readings, r.Reason)));
        Assert.All(rows, r => Assert.True(r.LeavesLimitsEarliestAt <= r.LeavesLimitsAt && r.OutsideAtNextCheck is >= 0 and <= 1));
        var outlooks = await app.Look(db => db.EngineOutlooks.AsNoTracking().Where(o => engines.Contains(o.EngineId)).ToListAsync(Ct));
        Assert.All(outlooks, o => Assert.True(o.OutsideAtNextCheck >= rows.Where(r => r.EngineId == o.EngineId).Max(r => r.OutsideAtNextCheck) - 1e-6));
        Assert.All(outlooks, o => Assert.Equal(rows.Where(r => r.EngineId == o.EngineId).Min(r => r.LeavesLimitsOn), o.SoonestOn));
    }

    [Fact]
    public async Task A_model_with_few_readings_borrows_from_its_kind_and_says_so()
    {
        var (many, _) = await Fleet(engines: 16);
        var (few, engines) = await Fleet(engines: 1);
        await Ask(many);
        await app.Refit();
        await Ask(few);
        await app.Refit();

        var fit = (await app.Look(db => db.DriftFits.AsNoTracking().Where(f => f.EngineModelId == few).OrderByDescending(f => f.Version).FirstAsync(Ct))).Fit!;
        Assert.Equal(FitSource.Borrowed, fit.Source);
        Assert.Contains(fit.Warnings, w => w.Kind == DriftWarningKind.Borrows);
        Assert.True(await app.Look(db => db.DriftPools.AnyAsync(p => p.Kind == ValveTrainKind.ShimUnderFingerFollower && p.Pool != null, Ct)));
        Assert.All(
            await app.Look(db => db.ClearanceForecasts.AsNoTracking().Where(f => engines.Contains(f.EngineId)).ToListAsync(Ct)),
            r => Assert.Null(r.Reason));
    }

    [Fact]
    public async Task A_kept_fit_comes_back_as_it_was()
    {
        var (model, _) = await Fleet(engines: 4);
        await app.Knows(model);

        var kept = await app.Look(db => db.DriftFits.AsNoTracking().SingleAsync(f => f.EngineModelId == model, Ct));

        Assert.Equivalent(KnownDrift.Fit, kept.Fit, strict: true);
    }

    private DriftWorker Worker => app.Services.GetRequiredService<DriftWorker>();

    private Task<bool> Ask(Guid model) => app.Look(async db =>
    {
        await Refits.Request(db, [model], app.Clock, Ct);
        return true;
    });

    private Task<DriftRefit> RefitOf(Guid model) => app.Look(db => db.DriftRefits.AsNoTracking().SingleAsync(r => r.EngineModelId == model, Ct));

    /// <summary>Engines of a model of their own, each checked at 20,000 and 44,000 km, drifting by about 0.01 mm per 10,000 km.</summary>
    private async Task<(Guid Model, List<Guid> Engines)> Fleet(int engines)
    {
        var now = app.Clock.Now;
        var first = await app.CheckedIn(20_000, specification: TestEngines.Twin());
        var model = await app.Look(db => db.Engines.Where(e => e.Id == first.EngineId).Select(e => e.EngineModelId).SingleAsync(Ct));
        var ids = new List<Guid> { first.EngineId };
        await ReadAll(first, 0, 0);
        await ReadAll(await app.CheckedInAgain(first, 44_000), 0, 1);
        for (var i = 1; i < engines; i++)
        {
            var next = await app.CheckedIn(20_000, specification: TestEngines.Twin());
            await app.Look(async db =>
            {
                await db.Engines.Where(e => e.Id == next.EngineId).ExecuteUpdateAsync(s => s.SetProperty(e => e.EngineModelId, model), Ct);
                return true;
            });
            ids.Add(next.EngineId);
            await ReadAll(next, i, 0);
            await ReadAll(await app.CheckedInAgain(next, 44_000), i, 1);
        }

        app.Clock.Now = now;
        return (model, ids);
    }

    private async Task ReadAll(TestVisit visit, int engine, int check)
    {
        foreach (var (lobe, number) in ReadingRules.LobesOf(TestEngines.Twin()).Select((l, n) => (l, n)))
        {
            var setTo = ReadingRules.LimitsOf(TestEngines.Twin(), lobe).SetTo.Millimetres;
            var level = 0.01m * (((7 * engine) + (3 * number)) % 5 - 2);
            var drift = -0.02m - (0.01m * check * (1 + ((engine + number) % 3)));
            await app.Read(visit, lobe.Valve, Stage.AsFound, setTo + level + drift, setTo + level + drift + 0.01m, lobe.Lobe);
        }
    }
}
