using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Intervals;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Tests.Hosting;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;
using Xunit;

namespace Workshop.Web.Tests.Intervals;

public sealed class DueRowsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private static readonly LocalDate InServiceSince = new(2024, 3, 2);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_new_motorcycle_is_due_for_the_first_occurrence_of_each_item_that_has_an_interval()
    {
        var motorcycle = await Add();

        await Rewrite(motorcycle);

        var rows = await Rows(motorcycle);
        Assert.Equal([TestEngines.OilService, TestEngines.ValveCheck], rows.Select(r => r.ServiceItemCode));
        Assert.Equal(Distance.FromKilometres(1_000), rows[0].DueAt);
        Assert.Equal(new LocalDate(2024, 9, 2), rows[0].DueOn);
        Assert.Null(rows[0].LastDoneOn);
        Assert.Equal(RateBasis.Assumed, rows[0].RateBasis);
        Assert.Null(rows[1].DueOn);
    }

    [Fact]
    public async Task What_was_done_counts_from_there_and_rows_are_changed_in_place()
    {
        var motorcycle = await Add();
        await Rewrite(motorcycle);
        await Read(motorcycle, InServiceSince.PlusDays(365), 10_000);
        await Do(motorcycle, InServiceSince.PlusDays(365), 10_000);

        await Rewrite(motorcycle);
        await Rewrite(motorcycle);

        var oil = Assert.Single(await Rows(motorcycle), r => r.ServiceItemCode == TestEngines.OilService);
        Assert.Equal(Distance.FromKilometres(20_000), oil.DueAt);
        Assert.Equal(new LocalDate(2026, 3, 2), oil.DueOn);
        Assert.Equal(InServiceSince.PlusDays(365), oil.LastDoneOn);
        Assert.Equal(RateBasis.Borrowed, oil.RateBasis);
    }

    [Fact]
    public async Task A_retired_motorcycle_is_due_for_nothing()
    {
        var motorcycle = await Add();
        await Rewrite(motorcycle);
        await app.Look(async db =>
        {
            (await db.Motorcycles.SingleAsync(m => m.Id == motorcycle, Ct)).Retired = true;
            return await db.SaveChangesAsync(Ct);
        });

        await Rewrite(motorcycle);

        Assert.Empty(await Rows(motorcycle));
    }

    [Fact]
    public async Task What_was_done_at_a_mistyped_reading_counts_from_its_correction()
    {
        var motorcycle = await Add();
        var day = InServiceSince.PlusDays(365);
        var typed = await Read(motorcycle, day, 100_000);
        await Do(motorcycle, day, 100_000);
        await Read(motorcycle, day, 10_000, supersedes: typed);

        await Rewrite(motorcycle);

        Assert.Equal(
            Distance.FromKilometres(20_000), (await Rows(motorcycle)).Single(r => r.ServiceItemCode == TestEngines.OilService).DueAt);
    }

    [Fact]
    public async Task What_was_done_to_the_engine_before_does_not_count_for_the_one_that_is_in_now()
    {
        var motorcycle = await Add();
        await Read(motorcycle, InServiceSince.PlusDays(300), 9_000);
        await Do(motorcycle, InServiceSince.PlusDays(300), 9_000);
        var swap = InServiceSince.PlusDays(400);
        await app.Look(async db =>
        {
            (await db.EngineFittings.SingleAsync(f => f.MotorcycleId == motorcycle, Ct)).RemovedOn = swap;
            await db.SaveChangesAsync(Ct);
            var engine = new Engine { Id = NewId.At(app.Clock), EngineModelId = TestWorkshop.EngineModel, SerialNumber = "second" };
            db.Add(engine);
            db.Add(new EngineFitting
            {
                Id = NewId.At(app.Clock), EngineId = engine.Id, MotorcycleId = motorcycle, FittedOn = swap,
                MotorcycleDistance = Distance.FromKilometres(12_000), EngineDistance = Distance.FromKilometres(500),
            });
            return await db.SaveChangesAsync(Ct);
        });

        await Rewrite(motorcycle);

        var oil = (await Rows(motorcycle)).Single(r => r.ServiceItemCode == TestEngines.OilService);
        Assert.Equal(Distance.FromKilometres(12_500), oil.DueAt);
        Assert.Null(oil.LastDoneOn);
    }

    [Fact]
    public async Task The_whole_fleet_is_rewritten_as_each_motorcycle_would_be()
    {
        var motorcycles = new List<Guid>();
        for (var i = 0; i < 7; i++)
        {
            motorcycles.Add(await Add());
            await Read(motorcycles[i], InServiceSince.PlusDays(100 + i), 1_000 * (i + 1));
        }

        foreach (var motorcycle in motorcycles)
        {
            await Rewrite(motorcycle);
        }

        var each = await Figures(motorcycles);
        await app.Look(async db => await db.DueItems.Where(d => motorcycles.Contains(d.MotorcycleId)).ExecuteDeleteAsync(Ct));

        await app.Look(async db =>
        {
            await db.DueVisits.Where(d => motorcycles.Contains(d.MotorcycleId)).ExecuteDeleteAsync(Ct);
            await using var transaction = await db.Database.BeginTransactionAsync(Ct);
            await DueRows.Rewrite(db, motorcycles, app.Clock, Ct);
            await transaction.CommitAsync(Ct);
            return 0;
        });

        Assert.Equal(14, each.Count);
        Assert.Equal(7, await app.Look(db => db.DueVisits.CountAsync(v => motorcycles.Contains(v.MotorcycleId), Ct)));
        Assert.Equal(each, await Figures(motorcycles));
    }

    [Fact]
    public async Task A_row_that_says_what_it_said_before_is_not_written_again()
    {
        var motorcycle = await Add();
        await Rewrite(motorcycle);
        var (before, now) = (await Rows(motorcycle), app.Clock.Now);
        app.Clock.Now += Duration.FromHours(1);

        await Rewrite(motorcycle);
        Assert.All(await Rows(motorcycle), row => Assert.Equal(now, row.ComputedAt));
        await Read(motorcycle, InServiceSince.PlusDays(300), 900);
        await Rewrite(motorcycle);

        Assert.All(await Rows(motorcycle), row => Assert.Equal(app.Clock.Now, row.ComputedAt));
        Assert.Equal(before.Select(r => r.ServiceItemCode), (await Rows(motorcycle)).Select(r => r.ServiceItemCode));
        app.Clock.Now = now;
    }

    [Fact]
    public async Task One_motorcycle_costs_as_many_questions_in_a_large_fleet_as_in_a_small_one()
    {
        var one = await Add();
        await Rewrite(one);
        var before = await Questions(() => Rewrite(one));
        for (var i = 0; i < 25; i++)
        {
            await Rewrite(await Add());
        }

        Assert.Equal(before, await Questions(() => Rewrite(one)));
        Assert.InRange(before, 1, 20);
    }

    [Fact]
    public async Task The_visit_of_a_motorcycle_says_when_it_comes_up_and_what_it_takes()
    {
        var motorcycle = await Add();
        await Read(motorcycle, InServiceSince.PlusDays(300), 900);
        await Rewrite(motorcycle);

        var visit = await app.Look(db => db.DueVisits.AsNoTracking().SingleAsync(v => v.MotorcycleId == motorcycle, Ct));
        var rows = await Rows(motorcycle);

        Assert.Equal((TestWorkshop.EngineModel, Distance.FromKilometres(100), 30, 0), (visit.EngineModelId, visit.Left, visit.LabourMinutes, visit.SavesMinutes));
        Assert.Equal(rows[0].ComesOn, visit.ComesOn);
        Assert.Equal([DueAdvice.First, DueAdvice.Later], rows.Select(r => r.Advice));
    }

    private async Task<int> Questions(Func<Task> ask)
    {
        using var counted = new CountedCommands(app);
        await ask();
        return counted.Count;
    }

    private async Task<List<string>> Figures(List<Guid> motorcycles) =>
        [.. (await app.Look(db => db.DueItems.AsNoTracking().Where(d => motorcycles.Contains(d.MotorcycleId)).ToListAsync(Ct)))
            .Select(d => $"{d.MotorcycleId} {d.ServiceItemCode} {d.DueAt} {d.DueOn} {d.ExpectedOn} {d.EarliestOn} {d.LatestOn} {d.RateBasis}")
            .Order(StringComparer.Ordinal)];

    private Task<List<DueItem>> Rows(Guid motorcycle) => app.Look(db => db.DueItems.AsNoTracking()
        .Where(d => d.MotorcycleId == motorcycle).OrderBy(d => d.ServiceItemCode).ToListAsync(Ct));

    private Task<int> Rewrite(Guid motorcycle) => app.Look(async db =>
    {
        await using var transaction = await db.Database.BeginTransactionAsync(Ct);
        await DueRows.Rewrite(db, motorcycle, app.Clock, Ct);
        await transaction.CommitAsync(Ct);
        return 0;
    });

    private Task<Guid> Add() => app.Look(async db =>
    {
        var id = NewId.At(app.Clock);
        var engine = NewId.At(app.Clock);
        db.Add(new Motorcycle { Id = id, Registration = id.ToString()[^12..], Maker = "Testwerk", Model = "Twin 600", ModelYear = 2024 });
        db.Add(new Engine { Id = engine, EngineModelId = TestWorkshop.EngineModel, SerialNumber = "" });
        db.Add(new EngineFitting { Id = NewId.At(app.Clock), EngineId = engine, MotorcycleId = id, FittedOn = InServiceSince });
        db.Add(new Odometer { Id = NewId.At(app.Clock), MotorcycleId = id, Unit = OdometerUnit.Kilometres, FittedOn = InServiceSince });
        await db.SaveChangesAsync(Ct);
        return id;
    });

    private Task<Guid> Read(Guid motorcycle, LocalDate on, int km, Guid? supersedes = null) => app.Look(async db =>
    {
        var odometer = await db.Odometers.SingleAsync(o => o.MotorcycleId == motorcycle, Ct);
        var reading = new OdometerReading
        {
            Id = NewId.At(app.Clock), OdometerId = odometer.Id, MotorcycleId = motorcycle, ReadOn = on, Count = km, Unit = odometer.Unit,
            Distance = odometer.DistanceAt(km), SupersedesId = supersedes, MeasuredBy = TestWorkshop.Advisor,
            EnteredBy = TestWorkshop.Advisor, EnteredAt = app.Clock.Now,
        };
        db.Add(reading);
        await db.SaveChangesAsync(Ct);
        return reading.Id;
    });

    private Task<int> Do(Guid motorcycle, LocalDate on, int km) => app.Look(async db =>
    {
        db.Add(new DoneItem
        {
            Id = NewId.At(app.Clock), MotorcycleId = motorcycle, ServiceItemCode = TestEngines.OilService, DoneOn = on,
            Distance = Distance.FromKilometres(km), DoneBy = TestWorkshop.Technician, EnteredAt = app.Clock.Now,
        });
        return await db.SaveChangesAsync(Ct);
    });
}
