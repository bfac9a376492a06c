using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Web.Data;

namespace Workshop.Tests.Hosting;

/// <summary>A visit that stands in the database: its card, its motorcycle and engine, the odometer reading of its check-in.</summary>
public sealed record TestVisit(int Number, Guid MotorcycleId, Guid EngineId, Guid EngineModelVersionId, Guid? OdometerReadingId)
{
    /// <summary>The address of the card in the API.</summary>
    public string Api => $"/api/v1/job-cards/{Number}";

    /// <summary>The address of the card's pages.</summary>
    public string Pages => $"/job-cards/{Number}";
}

/// <summary>
/// Visits as rows, for tests of what comes after booking and check-in: in one call a motorcycle, its engine, and a card that
/// is booked or checked in at the test's clock.
/// </summary>
public static class TestVisits
{
    private static readonly LocalDate InServiceSince = new(2020, 1, 1);

    private static int plates;

    /// <summary>Items as most visits have them: the check, its adjustment as likely, oil and filter.</summary>
    public static IReadOnlyDictionary<string, Likelihood> UsualItems { get; } = new Dictionary<string, Likelihood>
    {
        [TestEngines.ValveCheck] = Likelihood.Certain,
        [TestEngines.Adjustment] = Likelihood.Likely,
        [TestEngines.OilService] = Likelihood.Certain,
    };

    /// <summary>A new motorcycle, checked in at <paramref name="odometerKm"/>.</summary>
    public static async Task<TestVisit> CheckedIn(
        this WorkshopApp app,
        int odometerKm = 24_000,
        IReadOnlyDictionary<string, Likelihood>? items = null,
        EngineSpecification? specification = null)
    {
        var booked = await app.Booked(items, specification);
        return await app.CheckIn(booked, odometerKm);
    }

    /// <summary>A new motorcycle, booked for now.</summary>
    public static Task<TestVisit> Booked(
        this WorkshopApp app,
        IReadOnlyDictionary<string, Likelihood>? items = null,
        EngineSpecification? specification = null) => app.Look(async db =>
    {
        var now = app.Clock.Now;
        var (model, version) = specification is null
            ? (TestWorkshop.EngineModel, TestWorkshop.EngineModelVersion)
            : AddEngineModel(db, specification, now);
        var plate = Interlocked.Increment(ref plates);
        var motorcycle = new Motorcycle
        {
            Id = NewId.At(now), Registration = $"VISIT {plate}", Maker = "Testwerk", Model = "Twin 600", ModelYear = 2020,
        };
        var engine = new Engine { Id = NewId.At(now), EngineModelId = model, SerialNumber = $"E-{plate}" };
        db.AddRange(motorcycle, engine);
        db.EngineFittings.Add(new EngineFitting
        {
            Id = NewId.At(now), EngineId = engine.Id, MotorcycleId = motorcycle.Id, FittedOn = InServiceSince,
        });
        db.Odometers.Add(new Odometer
        {
            Id = NewId.At(now), MotorcycleId = motorcycle.Id, Unit = OdometerUnit.Kilometres, FittedOn = InServiceSince,
        });
        return await AddCard(db, motorcycle.Id, engine.Id, version, items ?? UsualItems, now);
    });

    /// <summary>The same motorcycle comes again, at the test's clock of now.</summary>
    public static async Task<TestVisit> CheckedInAgain(
        this WorkshopApp app, TestVisit earlier, int odometerKm, IReadOnlyDictionary<string, Likelihood>? items = null)
    {
        var booked = await app.Look(db => AddCard(
            db, earlier.MotorcycleId, earlier.EngineId, earlier.EngineModelVersionId, items ?? UsualItems, app.Clock.Now));
        return await app.CheckIn(booked, odometerKm);
    }

    /// <summary>Checks a booked visit in, its engine cold since the evening before.</summary>
    public static Task<TestVisit> CheckIn(this WorkshopApp app, TestVisit booked, int odometerKm) => app.Look(async db =>
    {
        var now = app.Clock.Now;
        var odometer = await db.Odometers.SingleAsync(o => o.MotorcycleId == booked.MotorcycleId && o.RemovedOn == null);
        var reading = new OdometerReading
        {
            Id = NewId.At(now), OdometerId = odometer.Id, MotorcycleId = booked.MotorcycleId,
            ReadOn = now.InUtc().Date, Count = odometerKm, Unit = odometer.Unit, Distance = odometer.DistanceAt(odometerKm),
            JobCardNumber = booked.Number, MeasuredBy = TestWorkshop.Advisor, EnteredBy = TestWorkshop.Advisor, EnteredAt = now,
        };
        db.OdometerReadings.Add(reading);
        db.CheckIns.Add(new CheckIn
        {
            JobCardNumber = booked.Number, OdometerReadingId = reading.Id, EngineStoppedAt = now - Duration.FromHours(14),
            CheckedInBy = TestWorkshop.Advisor, CheckedInAt = now,
        });
        (await db.JobCards.SingleAsync(c => c.Number == booked.Number)).State = JobCardState.CheckedIn;
        await db.SaveChangesAsync();
        return booked with { OdometerReadingId = reading.Id };
    });

    private static async Task<TestVisit> AddCard(
        WorkshopDbContext db, Guid motorcycle, Guid engine, Guid version, IReadOnlyDictionary<string, Likelihood> items, Instant now)
    {
        var card = new JobCard
        {
            MotorcycleId = motorcycle, EngineId = engine, EngineModelVersionId = version, BookedBy = TestWorkshop.Advisor,
            BookedAt = now, StartsAt = now, EndsAt = now + Duration.FromHours(4),
        };
        db.JobCards.Add(card);
        await db.SaveChangesAsync();
        foreach (var (code, likelihood) in items)
        {
            db.JobCardItems.Add(new JobCardItem { JobCardNumber = card.Number, ServiceItemCode = code, Likelihood = likelihood });
        }

        await db.SaveChangesAsync();
        return new TestVisit(card.Number, motorcycle, engine, version, null);
    }

    private static (Guid Model, Guid Version) AddEngineModel(WorkshopDbContext db, EngineSpecification specification, Instant now)
    {
        var model = new EngineModel
        {
            Id = NewId.At(now), Maker = "Testwerk", Name = $"Engine {Interlocked.Increment(ref plates)}", Invented = true, CurrentVersion = 1,
        };
        var version = new EngineModelVersion
        {
            Id = NewId.At(now), EngineModelId = model.Id, Version = 1, Specification = specification,
            CreatedBy = TestWorkshop.Manager, CreatedAt = now,
        };
        db.AddRange(model, version);
        return (model.Id, version.Id);
    }
}
