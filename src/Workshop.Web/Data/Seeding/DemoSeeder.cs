using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;

namespace Workshop.Web.Data.Seeding;

/// <summary>Writes the invented workshop into an empty database, inside the caller's transaction.</summary>
internal static class DemoSeeder
{
    private const int YearsOfHolidays = 3;

    public static async Task Write(IServiceProvider services, Accounts accounts, CancellationToken ct)
    {
        var db = services.GetRequiredService<WorkshopDbContext>();
        var clock = services.GetRequiredService<IClock>();
        var workshop = SeedFiles.Workshop();
        var profile = new WorkshopProfile
        {
            Name = workshop.Name, TimeZone = workshop.TimeZone, Phone = workshop.Phone, DriftThreshold = workshop.DriftThreshold, Invented = true,
        };
        var today = WorkshopTime.Of(profile).DayOf(clock.GetCurrentInstant());
        db.WorkshopProfiles.Add(profile);
        AddCalendar(db, workshop, today);
        AddPlaces(db, workshop, clock);
        var people = AddPeople(db, workshop, clock);
        await db.SaveChangesAsync(ct);

        foreach (var (demo, person) in people)
        {
            await accounts.Add(person, demo.Account, demo.Roles);
        }

        // From here on rows say who made them, and the manager set the workshop up.
        var manager = people.First(p => p.Demo.Roles.Contains(Roles.Manager)).Person;
        await db.Database.ExecuteSqlAsync($"select set_config('workshop.person', {manager.Id.ToString()}, true)", ct);
        var engineModels = SeedFiles.EngineModels();
        AddEngineModels(db, engineModels, manager.Id, clock);
        var instruments = new DemoInstruments(db, workshop, manager.Id, WorkshopTime.Of(profile), clock);
        instruments.Add();
        await db.SaveChangesAsync(ct);

        var (fleet, openDays, time) = (SeedFiles.Fleet(), new OpenDays(workshop), WorkshopTime.Of(profile));
        var plan = new FleetPlan(fleet, openDays, today, engineModels);
        var history = new HistoryClock(time.WholeDay(plan.BooksBegin.PlusDays(-20)).Start);
        var stores = new Stockroom(db, workshop, manager.Id);
        await stores.Open(history.Now, ct);
        var staff = await DemoStaff.Assemble(db, services, people, time, history, ct);
        await new DemoHistory(db, staff, stores, openDays, fleet, plan).Write(clock.GetCurrentInstant(), ct);
        await instruments.Drop(ct);
        await new DemoStores(db, staff, workshop).Write(clock.GetCurrentInstant(), ct);
        await new DemoGauges(db, staff).Write(clock.GetCurrentInstant(), ct);
    }

    private static void AddCalendar(WorkshopDbContext db, DemoWorkshop workshop, LocalDate today)
    {
        db.OpeningHours.AddRange(workshop.OpeningHours.Select(h => new OpeningHours
        {
            Weekday = h.Weekday, OpensAt = h.OpensAt, ClosesAt = h.ClosesAt,
        }));
        db.Holidays.AddRange(
            from year in Enumerable.Range(today.Year, YearsOfHolidays)
            from holiday in workshop.Holidays
            select new Holiday { Day = new LocalDate(year, holiday.Month, holiday.Day), Name = holiday.Name });
    }

    private static void AddPlaces(WorkshopDbContext db, DemoWorkshop workshop, IClock clock)
    {
        Resource Of(ResourceKind kind, string name, IReadOnlyList<string> capabilities) => new()
        {
            Id = NewId.At(clock), Kind = kind, Name = name, Capabilities = [.. capabilities],
        };
        db.Resources.AddRange(workshop.Bays.Select(b => Of(ResourceKind.Bay, b.Name, b.Capabilities)));
        db.Resources.AddRange(workshop.SpecialTools.Select(t => Of(ResourceKind.SpecialTool, t.Name, t.Capabilities)));
        db.Resources.AddRange(workshop.ParkingPlaces.Select(p => Of(ResourceKind.ParkingPlace, p, [])));
    }

    private static List<(DemoPerson Demo, Person Person)> AddPeople(WorkshopDbContext db, DemoWorkshop workshop, IClock clock)
    {
        var people = workshop.People
            .Select(p => (Demo: p, Person: new Person { Id = NewId.At(clock), Name = p.Name, IsStaff = true }))
            .ToList();
        db.People.AddRange(people.Select(p => p.Person));
        foreach (var (demo, person) in people.Where(p => p.Demo.Initials is not null))
        {
            var technician = new Resource
            {
                Id = NewId.At(clock), Kind = ResourceKind.Technician, Name = demo.Initials!, PersonId = person.Id,
                Capabilities = [.. demo.Skills ?? []], Grade = demo.Grade,
            };
            db.Resources.Add(technician);
            AddHours(db, workshop, demo, technician.Id, clock);
        }

        return people;
    }

    private static void AddHours(WorkshopDbContext db, DemoWorkshop workshop, DemoPerson demo, Guid technician, IClock clock)
    {
        var own = demo.Hours?.SelectMany(h => h.Weekdays, (h, day) => new WorkingHours
        {
            ResourceId = technician, Weekday = day, StartsAt = h.StartsAt, EndsAt = h.EndsAt,
        }).ToList();
        db.WorkingHours.AddRange(own ?? []);
        if (demo is { BreakFrom: { } from, BreakUntil: { } until })
        {
            db.WorkBreaks.AddRange((own?.Select(h => h.Weekday) ?? workshop.OpeningHours.Select(h => h.Weekday)).Select(day => new WorkBreak
            {
                Id = NewId.At(clock), ResourceId = technician, Weekday = day, StartsAt = from, EndsAt = until,
            }));
        }
    }

    private static void AddEngineModels(
        WorkshopDbContext db, IReadOnlyList<SeedEngineModel> engineModels, Guid manager, IClock clock)
    {
        foreach (var seed in engineModels)
        {
            var model = new EngineModel
            {
                Id = NewId.At(clock), Maker = seed.Maker, Name = seed.Name, Invented = seed.Invented, CurrentVersion = 1,
            };
            db.EngineModels.Add(model);
            db.EngineModelVersions.Add(new EngineModelVersion
            {
                Id = NewId.At(clock), EngineModelId = model.Id, Version = 1, Specification = seed.Specification,
                CreatedBy = manager, CreatedAt = clock.GetCurrentInstant(),
            });
        }
    }
}
