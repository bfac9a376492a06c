using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Shims;
using Workshop.Web.Http;

namespace Workshop.Tests.Hosting;

/// <summary>What every test database holds: a workshop with two bays, three people, one engine model, stock and instruments.</summary>
public static class TestWorkshop
{
    public static readonly Guid Advisor = Id(1);
    public static readonly Guid Technician = Id(2);
    public static readonly Guid Manager = Id(3);
    public static readonly Guid EngineModel = Id(10);
    public static readonly Guid EngineModelVersion = Id(11);
    public static readonly Guid Bay1 = Id(20);
    public static readonly Guid Bay2 = Id(21);
    public static readonly Guid TechnicianResource = Id(22);
    public static readonly Guid AlignmentJig = Id(23);
    public static readonly Guid Stand1 = Id(24);
    public static readonly Guid Stand2 = Id(25);
    public static readonly Guid FeelerSet = Id(30);
    public static readonly Guid Micrometer = Id(31);
    public static readonly Guid SmallWrench = Id(32);
    public static readonly Guid DegreeWheel = Id(33);
    public static readonly Guid DialGauge = Id(34);
    public static readonly Guid OldDialGauge = Id(35);
    public static readonly Guid Shelf = Id(40);
    public static readonly Guid CompressionGauge = Id(50);
    public static readonly Guid LeakDownTester = Id(51);
    public static readonly Guid OldCompressionGauge = Id(52);
    public static readonly Guid ShimBox = Id(41);

    /// <summary>A Monday morning.</summary>
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 8, 0);

    public const string Password = "correct-horse-battery";

    public static async Task Fill(IServiceProvider services)
    {
        var db = services.GetRequiredService<WorkshopDbContext>();
        db.WorkshopProfiles.Add(new WorkshopProfile { Name = "Test workshop", TimeZone = "Europe/Vienna", Invented = true });
        foreach (var day in Enumerable.Range(1, 5))
        {
            db.OpeningHours.Add(new OpeningHours
            {
                Weekday = (IsoDayOfWeek)day, OpensAt = new LocalTime(8, 0), ClosesAt = new LocalTime(17, 0),
            });
        }

        db.People.AddRange(
            new Person { Id = Advisor, Name = "Ada Visor", IsStaff = true },
            new Person { Id = Technician, Name = "Tek Nician", IsStaff = true },
            new Person { Id = Manager, Name = "Mana Ger", IsStaff = true });
        db.EngineModels.Add(new EngineModel
        {
            Id = EngineModel, Maker = "Testwerk", Name = "Twin 600", Invented = true, CurrentVersion = 1,
        });
        db.EngineModelVersions.Add(new EngineModelVersion
        {
            Id = EngineModelVersion, EngineModelId = EngineModel, Version = 1, Specification = TestEngines.Twin(),
            CreatedBy = Manager, CreatedAt = Start,
        });
        db.Resources.AddRange(
            new Resource { Id = Bay1, Kind = ResourceKind.Bay, Name = "Bay 1", Capabilities = ["lift"] },
            new Resource { Id = Bay2, Kind = ResourceKind.Bay, Name = "Bay 2" },
            new Resource
            {
                Id = TechnicianResource, Kind = ResourceKind.Technician, Name = "TN", PersonId = Technician,
                Capabilities = ["valve work"],
            },
            new Resource
            {
                Id = AlignmentJig, Kind = ResourceKind.SpecialTool, Name = "Cam alignment jig", Capabilities = ["cam-alignment-jig"],
            },
            new Resource { Id = Stand1, Kind = ResourceKind.ParkingPlace, Name = "Stand 1" },
            new Resource { Id = Stand2, Kind = ResourceKind.ParkingPlace, Name = "Stand 2" });
        AddInstruments(db);
        AddStock(db);
        await db.SaveChangesAsync();
        await AddAccounts(services);
    }

    private static void AddInstruments(WorkshopDbContext db)
    {
        db.Instruments.AddRange(
            new Instrument
            {
                Id = FeelerSet, Kind = InstrumentKind.FeelerSet, Name = "Feeler set, steps of 0.01 mm", SerialNumber = "F-1", Unit = "mm",
                CalibratedOn = new LocalDate(2026, 1, 5), CalibrationDueOn = new LocalDate(2028, 1, 5),
            },
            new Instrument
            {
                Id = Micrometer, Kind = InstrumentKind.Micrometer, Name = "Micrometer 0 to 25 mm", SerialNumber = "M-1", Unit = "mm",
                Uncertainty = 0.002m, CalibratedOn = new LocalDate(2026, 1, 5), CalibrationDueOn = new LocalDate(2028, 1, 5),
            },
            new Instrument
            {
                Id = SmallWrench, Kind = InstrumentKind.TorqueWrench, Name = "Torque wrench 5 to 25 N.m", SerialNumber = "W-1", Unit = "N.m",
                RangeLowest = 5, RangeHighest = 25, Uncertainty = 4, CalibratedOn = new LocalDate(2026, 1, 5),
                CalibrationDueOn = new LocalDate(2028, 1, 5),
            },
            new Instrument { Id = DegreeWheel, Kind = InstrumentKind.DegreeWheel, Name = "Degree wheel", SerialNumber = "D-1", Unit = "degree" },
            new Instrument
            {
                Id = DialGauge, Kind = InstrumentKind.DialGauge, Name = "Dial gauge", SerialNumber = "G-1", Unit = "mm",
                CalibratedOn = new LocalDate(2026, 1, 5), CalibrationDueOn = new LocalDate(2028, 1, 5),
            },
            new Instrument { Id = CompressionGauge, Kind = InstrumentKind.CompressionGauge, Name = "Compression gauge", SerialNumber = "C-1", Unit = "bar" },
            new Instrument { Id = LeakDownTester, Kind = InstrumentKind.LeakDownTester, Name = "Leak-down tester", SerialNumber = "L-1", Unit = "bar" },
            new Instrument
            {
                Id = OldCompressionGauge, Kind = InstrumentKind.CompressionGauge, Name = "Compression gauge", SerialNumber = "C-0", Unit = "bar",
                CalibratedOn = new LocalDate(2023, 1, 5), CalibrationDueOn = new LocalDate(2025, 1, 5),
            },
            new Instrument
            {
                Id = OldDialGauge, Kind = InstrumentKind.DialGauge, Name = "Dial gauge", SerialNumber = "G-0", Unit = "mm",
                CalibratedOn = new LocalDate(2023, 1, 5), CalibrationDueOn = new LocalDate(2025, 1, 5),
            });
        for (var hundredths = 5; hundredths <= 40; hundredths++)
        {
            db.FeelerBlades.Add(new FeelerBlade
            {
                Id = Id(1000 + hundredths), InstrumentId = FeelerSet, Nominal = Clearance.FromMillimetres(hundredths / 100m),
            });
        }
    }

    private static void AddStock(WorkshopDbContext db)
    {
        db.StoragePlaces.AddRange(
            new StoragePlace { Id = Shelf, Name = "Shelf A" }, new StoragePlace { Id = ShimBox, Name = "Shim box" });
        Receive(db, 50, TestEngines.DrainRing, "Sealing ring 14 x 18 x 1.5", PartKind.SealingRing, PartUnit.Piece, 10);
        Receive(db, 51, TestEngines.CoverGasket, "Head cover gasket", PartKind.Gasket, PartUnit.Piece, 2);
        Receive(db, 52, TestEngines.PlugWellRing, "Plug well O-ring", PartKind.ORing, PartUnit.Piece, 8);
        Receive(db, 53, TestEngines.OilFilter, "Oil filter", PartKind.General, PartUnit.Piece, 3);
        Receive(db, 54, TestEngines.Oil, "Engine oil 10W-40", PartKind.Fluid, PartUnit.Millilitre, 20_000);
        db.Parts.Add(new Part
        {
            Id = Id(55), Code = TestEngines.ShimPart, Name = "Shim 9 mm, disc under finger follower", Kind = PartKind.Shim, Unit = PartUnit.Piece,
        });
        db.ShimSeries.Add(new ShimSeries
        {
            PartId = Id(55), Seat = ValveTrainKind.ShimUnderFingerFollower, DiameterMm = 9, Smallest = ShimThickness.FromMillimetres(1.2m),
            Largest = ShimThickness.FromMillimetres(3.2m), StepMm = 0.025m, PlaceId = ShimBox, Columns = 10, Source = "made up for tests",
        });
        for (var step = 0; step <= 24; step++)
        {
            db.StockMovements.AddRange(ShimLedger.Receipt(
                Id(55), ShimBox, ShimThickness.FromMillimetres(1.8m + (step * 0.025m)), null, 2, Manager, Start));
        }
    }

    private static void Receive(
        WorkshopDbContext db, int id, string code, string name, PartKind kind, PartUnit unit, decimal quantity)
    {
        db.Parts.Add(new Part { Id = Id(id), Code = code, Name = name, Kind = kind, Unit = unit });
        db.StockMovements.Add(Movement(3000 + id, Id(id), Shelf, quantity));
    }

    private static StockMovement Movement(int id, Guid part, Guid place, decimal quantity) => new()
    {
        Id = Id(id), PartId = part, PlaceId = place, Kind = MovementKind.Received,
        OnHandChange = quantity, ReservedChange = 0, MovedBy = Manager, MovedAt = Start,
    };

    private static async Task AddAccounts(IServiceProvider services)
    {
        var roles = services.GetRequiredService<RoleManager<IdentityRole<Guid>>>();
        var accounts = services.GetRequiredService<UserManager<Account>>();
        foreach (var (role, person) in new[]
        {
            (Roles.Advisor, Advisor), (Roles.Technician, Technician), (Roles.Manager, Manager),
        })
        {
            await roles.CreateAsync(new IdentityRole<Guid>(role) { Id = Domain.NewId.At(Start) });
            var account = new Account { Id = Domain.NewId.At(Start), UserName = role, PersonId = person };
            var made = await accounts.CreateAsync(account, Password);
            if (!made.Succeeded)
            {
                throw new InvalidOperationException(string.Join(" ", made.Errors.Select(e => e.Description)));
            }

            await accounts.AddToRoleAsync(account, role);
        }
    }

    private static Guid Id(int number) => new(number, 0, 0, [0, 0, 0, 0, 0, 0, 0, 1]);
}
