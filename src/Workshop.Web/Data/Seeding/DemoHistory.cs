using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Drift;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Features.Stores;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// Writes the invented motorcycles and all their visits in the order of time, then books some for the days to come, and has
/// what is due and expected worked out as of today.
/// </summary>
internal sealed class DemoHistory(
    WorkshopDbContext db, DemoStaff staff, Stockroom stores, OpenDays openDays, DemoFleet fleet, FleetPlan plan)
{
    private const string Advisor = "greta";
    private const int BookedAhead = 6;
    private const int DeliveryDays = 4;
    private const int LongestSincePassingBy = 40;
    private const double NeverPasses = 0.3;
    private const int ValvesOfTheOpenOne = 16;
    private const int LeastSinceComeback = 3;
    private const int DaysUntilComeback = 9;
    private const double KmUntilComeback = 180;

    public async Task Write(Instant now, CancellationToken ct)
    {
        var random = new RandomSource(fleet.Seed);
        var writer = new VisitWriter(staff, stores, openDays, fleet, random);
        var booked = await AddMotorcycles(random, ct);
        var visits = plan.Visits.OrderBy(v => v.Day).ThenBy(v => v.Motorcycle.Index).ToLookup(v => v.Day < plan.BooksBegin);
        staff.SetClock(plan.BooksBegin, 8);
        await new PaperHistory(staff, booked).Write([.. visits[true]], ct);
        var numbers = new Dictionary<PlannedVisit, int>();
        foreach (var visit in visits[false])
        {
            numbers[visit] = await writer.Write(visit, booked[visit.Motorcycle.Index], null, ct);
        }

        await ComeBack(writer, booked, numbers, staff.Time.DayOf(now), ct);

        await ReadOdometers(booked, staff.Time.DayOf(now), random, ct);
        staff.Clock.Now = now;
        await stores.FillUp(now, ct);
        await stores.Discontinue(ct);
        db.ChangeTracker.Clear();
        await FitDrift(ct);
        await BookAhead(writer, booked, now, random, ct);
        await new DemoSuppliers(db, staff).Write(ct);
        await ExpectWhatIsShort(now, ct);
        await new DemoContacts(db, staff).Write(now, ct);
        await new DemoMoney(db, staff).Write(now, ct);
        await new DemoRecord(db, staff, writer, openDays).Write(booked.Values, now, ct);
    }

    /// <summary>One that was here for its valves not long ago comes back.</summary>
    private async Task ComeBack(
        VisitWriter writer, Dictionary<int, BookedMotorcycle> booked, Dictionary<PlannedVisit, int> numbers, LocalDate today, CancellationToken ct)
    {
        var latest = today.PlusDays(-LeastSinceComeback);
        var earlier = numbers.Keys.GroupBy(v => v.Motorcycle.Index).Select(g => g.MaxBy(v => v.Day)!)
            .Where(v => v.Purpose == VisitPurpose.ValveCheck && v.Day.PlusDays(DaysUntilComeback) < latest && v.Motorcycle.NowKm > v.Km + KmUntilComeback)
            .MaxBy(v => v.Day);
        if (earlier is null)
        {
            return;
        }

        var visit = earlier with
        {
            Purpose = VisitPurpose.OilService, Km = earlier.Km + KmUntilComeback,
            Day = openDays.FirstFree(earlier.Day.PlusDays(DaysUntilComeback), earlier.Motorcycle.EngineModel, VisitPurpose.OilService, latest),
        };
        await writer.Write(visit, booked[visit.Motorcycle.Index], (numbers[earlier], "Hard to start since its valves were done."), ct);
    }

    /// <summary>Every engine model is fitted, and with it what is expected and due of its motorcycles is written.</summary>
    private async Task FitDrift(CancellationToken ct)
    {
        var models = await db.EngineModels.AsNoTracking().Select(m => m.Id).Order().ToListAsync(ct);
        await Refits.Request(db, models, staff.Clock, ct);
        foreach (var model in models)
        {
            await new ModelRefit(db, staff.Clock, model).Run(ct);
            db.ChangeTracker.Clear();
        }
    }

    private async Task<Dictionary<int, BookedMotorcycle>> AddMotorcycles(RandomSource random, CancellationToken ct)
    {
        var models = await db.EngineModels.AsNoTracking().ToDictionaryAsync(m => (m.Maker, m.Name), m => m.Id, ct);
        var booked = new Dictionary<int, BookedMotorcycle>();
        foreach (var motorcycle in plan.Motorcycles.OrderBy(m => m.InServiceSince))
        {
            staff.SetClock(LocalDate.Max(motorcycle.InServiceSince, plan.BooksBegin.PlusDays(-1)), 12);
            var added = await staff.Do(Advisor, new AddMotorcycle.Request
            {
                Registration = motorcycle.Registration,
                Maker = motorcycle.Fleet.Maker,
                Model = motorcycle.Model,
                ModelYear = motorcycle.InServiceSince.Year,
                EngineModelId = models[(motorcycle.Fleet.Maker, motorcycle.Fleet.Name)],
                EngineSerialNumber = motorcycle.SerialNumber,
                OdometerUnit = motorcycle.Unit,
                InServiceSince = motorcycle.InServiceSince,
                OwnerName = motorcycle.Owner,
            }, AddMotorcycle.Handle, ct);
            booked.Add(motorcycle.Index, new BookedMotorcycle(motorcycle, added.Id, ClearanceSimulation.OfNewEngine(
                motorcycle.EngineModel.Specification, motorcycle.Fleet.Drift, random.Stream($"engine {motorcycle.Index}"))));
        }

        return booked;
    }

    /// <summary>Some passed by lately without an appointment, and somebody wrote down what their odometers showed.</summary>
    private async Task ReadOdometers(
        Dictionary<int, BookedMotorcycle> booked, LocalDate today, RandomSource random, CancellationToken ct)
    {
        var lastVisit = plan.Visits.GroupBy(v => v.Motorcycle.Index).ToDictionary(g => g.Key, g => g.Max(v => v.Day));
        foreach (var motorcycle in booked.Values.OrderBy(b => b.Plan.Index))
        {
            var draw = random.Stream($"passing by {motorcycle.Plan.Index}");
            var day = today.PlusDays(-draw.WholeNumber(1, LongestSincePassingBy));
            if (lastVisit.GetValueOrDefault(motorcycle.Plan.Index, motorcycle.Plan.InServiceSince) >= day.PlusDays(-LongestSincePassingBy)
                || draw.Chance(NeverPasses))
            {
                continue;
            }

            staff.SetClock(day, 10);
            await staff.Do(Advisor, new RecordOdometer.Request
            {
                MotorcycleId = motorcycle.Id,
                Odometer = motorcycle.Plan.Unit.CountOf(Distance.FromKilometres((decimal)motorcycle.Plan.NowKm)),
                ReadOn = day,
            }, RecordOdometer.Handle, ct);
        }
    }

    /// <summary>Those whose valve check is due first come next; one of them stands in the workshop already, to be cold by morning.</summary>
    private async Task BookAhead(
        VisitWriter writer, Dictionary<int, BookedMotorcycle> booked, Instant now, RandomSource random, CancellationToken ct)
    {
        var checks = await db.DueItems.AsNoTracking()
            .Where(d => d.ServiceItemCode == "valve-clearance-check")
            .OrderBy(d => d.ExpectedOn).ThenBy(d => d.MotorcycleId)
            .Select(d => d.MotorcycleId).ToListAsync(ct);
        var byId = booked.Values.ToDictionary(b => b.Id);
        var day = staff.Time.DayOf(now);
        string[] technicians = ["tilda", "bram"];

        await OpenInBay(writer, [.. checks.Where((_, i) => i % 2 == 0).Select(id => byId[id])], now, ct);

        // Every second one: the rest of what is overdue stays for somebody to book.
        foreach (var (id, index) in checks.Where((_, i) => i % 2 == 1).Take(BookedAhead).Select((id, index) => (id, index)))
        {
            var comes = day;
            day = openDays.After(day);
            var motorcycle = byId[id];
            var visit = new PlannedVisit(
                motorcycle.Plan, day, motorcycle.Plan.NowKm, VisitPurpose.ValveCheck, "FB-01", Sloppy: false);
            var number = await writer.BookSlot(visit, id, technicians[index % technicians.Length], comes, ct);
            if (index == 0)
            {
                await writer.CheckInNow(visit, number, random.Stream("standing here"), ct);
                await PickFirst(technicians[0], number, ct);
            }
        }
    }

    /// <summary>One with sixteen valves lies open in its bay, so that somebody can measure at once.</summary>
    private async Task OpenInBay(VisitWriter writer, IReadOnlyList<BookedMotorcycle> checks, Instant now, CancellationToken ct)
    {
        var today = staff.Time.DayOf(now);
        var begun = openDays.IsOpen(today) && staff.Time.At(now).TimeOfDay > new LocalTime(8, 10);
        var day = begun ? today : openDays.Before(today);
        var motorcycle = checks.First(m => m.Plan.EngineModel.Specification.Valves.Count >= ValvesOfTheOpenOne);
        await writer.OpenInBay(
            new PlannedVisit(motorcycle.Plan, day, motorcycle.Plan.NowKm, VisitPurpose.ValveCheck, "FB-01", Sloppy: false),
            motorcycle.Id, "tilda", begun, ct);
        staff.Clock.Now = now;
    }

    /// <summary>Somebody has begun to walk through the stores for the visit that is here.</summary>
    private async Task PickFirst(string technician, int number, CancellationToken ct)
    {
        foreach (var row in (await staff.Look(technician, new GetPickList.Request(number), GetPickList.Handle, ct)).ToPick.Take(2))
        {
            await staff.Do(technician, new PickParts.Request
            {
                Number = number, PartCode = row.PartCode, PlaceId = row.PlaceId, LotId = row.LotId, Quantity = row.Quantity,
            }, PickParts.Handle, ct);
        }
    }

    /// <summary>Of what the visits to come lack, half of the parts are on their way.</summary>
    private async Task ExpectWhatIsShort(Instant now, CancellationToken ct)
    {
        var missing = await staff.Look(Advisor, new ListShortages.Request(), ListShortages.Handle, ct);
        foreach (var part in missing.Parts.Where(p => p.ShortBy > 0).Where((_, index) => index % 2 == 0))
        {
            await staff.Do(Advisor, new ExpectDelivery.Request
            {
                PartCode = part.PartCode, Quantity = part.ShortBy, ExpectedOn = staff.Time.DayOf(now).PlusDays(DeliveryDays),
            }, ExpectDelivery.Handle, ct);
        }
    }
}
