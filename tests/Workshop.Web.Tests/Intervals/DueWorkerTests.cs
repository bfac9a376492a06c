using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Npgsql;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Tests.Motorcycles;
using Xunit;

namespace Workshop.Web.Tests.Intervals;

public sealed class DueWorkerTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private DueWorker Worker => app.Services.GetRequiredService<DueWorker>();

    [Fact]
    public async Task The_whole_fleet_is_reckoned_anew_when_a_manager_asks_and_says_how_far_it_is()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        await app.Look(db => db.DueItems.Where(d => d.MotorcycleId == motorcycle).ExecuteDeleteAsync(Ct));
        var manager = await app.As(Roles.Manager);

        var asked = await (await manager.PostAsync("/api/v1/due/recompute", null, Ct)).Json();
        var again = await (await manager.PostAsync("/api/v1/due/recompute", null, Ct)).Json();
        Assert.Equal(asked.GetProperty("id").GetGuid(), again.GetProperty("id").GetGuid());
        Assert.Equal(1, await Worker.SeeToAll(Ct));

        var progress = await manager.GetFromJsonAsync<JsonElement>("/api/v1/due/recompute", Ct);
        Assert.Equal(JsonValueKind.String, progress.GetProperty("finishedAt").ValueKind);
        Assert.Equal(progress.GetProperty("motorcycles").GetInt32(), progress.GetProperty("written").GetInt32());
        Assert.Equal(2, await app.Look(db => db.DueItems.CountAsync(d => d.MotorcycleId == motorcycle, Ct)));
        Assert.Equal(HttpStatusCode.Forbidden, (await advisor.PostAsync("/api/v1/due/recompute", null, Ct)).StatusCode);
    }

    [Fact]
    public async Task While_another_copy_of_the_service_is_at_it_this_one_leaves_it_alone()
    {
        await Ask();
        await using (var other = new NpgsqlConnection(app.Database.Connections.Direct))
        {
            await other.OpenAsync(Ct);
            await using var hold = new NpgsqlCommand("select pg_advisory_lock(6583653)", other);
            await hold.ExecuteScalarAsync(Ct);
            Assert.Equal(0, await Worker.SeeToAll(Ct));

            // Let go by word: a connection that is closed keeps its lock until its backend has ended, a moment later.
            await using var letGo = new NpgsqlCommand("select pg_advisory_unlock(6583653)", other);
            Assert.Equal(true, await letGo.ExecuteScalarAsync(Ct));
        }

        Assert.Equal(1, await Worker.SeeToAll(Ct));
    }

    /// <summary>As a kill leaves it: begun, two motorcycles written and committed, the others as they were.</summary>
    [Fact]
    public async Task A_request_whose_worker_was_killed_goes_on_after_the_last_motorcycle_that_was_written()
    {
        var advisor = await app.As(Roles.Advisor);
        for (var i = 0; i < 4; i++)
        {
            await advisor.AddMotorcycle();
        }

        var id = await Ask();
        await Worker.SeeToAll(Ct);
        var order = await app.Look(db => db.Motorcycles.OrderBy(m => m.Id).Select(m => m.Id).ToListAsync(Ct));
        await app.Look(async db =>
        {
            await db.DueItems.ExecuteDeleteAsync(Ct);
            var job = await db.DueRecomputes.SingleAsync(r => r.Id == id, Ct);
            (job.FinishedAt, job.LastMotorcycle, job.Written) = (null, order[1], 2);
            return await db.SaveChangesAsync(Ct);
        });

        await Worker.SeeToAll(Ct);

        var written = await app.Look(db => db.DueItems.Select(d => d.MotorcycleId).Distinct().ToListAsync(Ct));
        Assert.Equal(order.Skip(2).Order(), written.Order());
        var done = await app.Look(db => db.DueRecomputes.AsNoTracking().SingleAsync(r => r.Id == id, Ct));
        Assert.Equal((order.Count, 1), (done.Written, done.FleetRidingVersion is null ? 0 : 1));
        Assert.NotNull(done.FinishedAt);
    }

    /// <summary>
    /// Stopped for real in the middle: a motorcycle's row is held by somebody else, so that the worker waits within its batch; then it is
    /// told to stop. Nothing of the batch stays, and the next one sees it through.
    /// </summary>
    [Fact]
    public async Task What_is_stopped_within_a_batch_leaves_nothing_of_it_and_is_taken_up_again()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycle = await advisor.AddMotorcycle();
        var id = await Ask();
        await app.Look(db => db.DueItems.ExecuteDeleteAsync(Ct));
        await using (var other = new NpgsqlConnection(app.Database.Connections.Direct))
        {
            await other.OpenAsync(Ct);
            await using var transaction = await other.BeginTransactionAsync(Ct);
            await using var hold = new NpgsqlCommand("select 1 from motorcycles where id = $1 for update", other, transaction);
            hold.Parameters.AddWithValue(motorcycle);
            await hold.ExecuteScalarAsync(Ct);
            using var stop = CancellationTokenSource.CreateLinkedTokenSource(Ct);
            var working = Worker.SeeToAll(stop.Token);
            await Waiting(other);
            await stop.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => working);
        }

        Assert.Equal(0, await app.Look(db => db.DueItems.CountAsync(Ct)));
        Assert.Null((await app.Look(db => db.DueRecomputes.AsNoTracking().SingleAsync(r => r.Id == id, Ct))).FinishedAt);
        NpgsqlConnection.ClearAllPools();
        Assert.Equal(1, await Worker.SeeToAll(Ct));
        Assert.True(await app.Look(db => db.DueItems.AnyAsync(d => d.MotorcycleId == motorcycle, Ct)));
    }

    /// <summary>Until a session of the database waits for a lock; the one that holds it asks.</summary>
    private static async Task Waiting(NpgsqlConnection holder)
    {
        await using var ask = new NpgsqlCommand(
            "select count(*) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'", holder);
        while (await ask.ExecuteScalarAsync(Ct) is 0L)
        {
            await Task.Yield();
        }
    }

    private Task<Guid> Ask() => app.Look(async db =>
    {
        var job = new DueRecompute { Id = NewId.At(app.Clock), RequestedAt = app.Clock.Now };
        db.DueRecomputes.Add(job);
        await db.SaveChangesAsync(Ct);
        return job.Id;
    });
}
