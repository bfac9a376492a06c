using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Findings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;

namespace Workshop.Web.Data.Seeding;

/// <summary>A motorcycle of the fleet once it is in the books: its row, and the engine whose truth nobody else knows.</summary>
internal sealed record BookedMotorcycle(PlannedMotorcycle Plan, Guid Id, ClearanceSimulation Engine);

/// <summary>Writes one visit of the past from its booking to its sign-off, as the people of the workshop would have.</summary>
internal sealed class VisitWriter(DemoStaff staff, Stockroom stores, OpenDays openDays, DemoFleet fleet, RandomSource random)
{
    private const string Advisor = "greta";
    private const double RunningInKm = 5_000;
    private const double TimingFromKm = 40_000;
    private static readonly string[] AtValves = ["tilda", "bram"];
    private static readonly string[] AtService = ["milo"];

    private readonly Dictionary<string, string> initials = SeedFiles.Workshop().People
        .Where(p => p.Initials is not null).ToDictionary(p => p.Account, p => p.Initials!, StringComparer.Ordinal);

    /// <param name="visit">Of the past.</param>
    /// <param name="motorcycle">That comes.</param>
    /// <param name="comeback">The signed card because of which it comes, and why; nothing where it comes for itself.</param>
    /// <param name="ct">Ends it.</param>
    /// <param name="beforeSignOff">What happens on the card beside that; its number is given.</param>
    /// <returns>The card's number.</returns>
    public async Task<int> Write(PlannedVisit visit, BookedMotorcycle motorcycle, (int Of, string Why)? comeback, CancellationToken ct, Func<int, Task>? beforeSignOff = null)
    {
        var draw = random.Stream($"visit of {visit.Motorcycle.Registration} at {visit.Km:0}");
        var technician = draw.Pick(visit.Purpose == VisitPurpose.ValveCheck ? AtValves : AtService);
        staff.SetClock(visit.Day.PlusDays(-9), 11);
        await stores.FillUp(staff.Clock.Now, ct);
        var number = await Book(visit, motorcycle.Id, technician, ct, comeback);
        await CheckIn(visit, number, openDays.Before(visit.Day), draw, ct, comeback?.Why);

        staff.SetClock(visit.Day, 8, 5);
        var specification = visit.Motorcycle.EngineModel.Specification;
        var items = ItemsOf(visit).Select(i => specification.ServiceItems.Single(s => s.Code == i.Code)).ToList();
        await staff.Do(technician, new AcknowledgeCautions.Request
        {
            Number = number, Codes = [.. items.SelectMany(i => i.Cautions).Distinct()],
        }, AcknowledgeCautions.Handle, ct);

        var finishing = new FinishingWork(staff, specification, number, technician, draw.Stream("after the work"));
        await finishing.CountIn(items, ct);
        var work = new ValveWork(staff, stores, visit, motorcycle.Engine, number, technician, draw);
        var before = new BeforeWork(staff, visit, number, technician, draw.Stream("before the work"));
        var timing = new TimingWork(staff, visit, number, technician, draw.Stream("cam timing"));
        if (visit.Purpose == VisitPurpose.ValveCheck)
        {
            await work.Do(async () =>
            {
                await timing.AsFound(items.Exists(i => i.Kind == ServiceItemKind.CamTimingCheck), ct);
                await before.TestCylinders(work.Tight, ct);
            }, ct);
            if (work.Begun)
            {
                await timing.AsLeft(ct);
            }
        }
        else
        {
            if (visit.Motorcycle.Index == FleetPlan.ChainReadOften)
            {
                await timing.AsFound(timed: false, ct);
            }

            await before.TestCylinders([], ct);
        }

        if (items.Exists(i => i.Code == "spark-plugs"))
        {
            await before.RenewPlugs(ct);
        }

        staff.SetClock(visit.Day, 15);
        await Tighten(number, technician, Opened.By(specification, items.Where(i => work.Begun || !IsAdjustment(i))), work.Tightened, ct);
        await Inspect(number, technician, worn: visit.Purpose == VisitPurpose.ValveCheck && draw.Chance(0.3), ct);
        if (work.Tight.Count > 0)
        {
            await before.TestAsLeft(ct);
        }

        if (comeback is not null)
        {
            await staff.Do(technician, new RecordFinding.Request
            {
                Number = number, Place = "Intake rubber of cylinder 2", Text = "A clip was not quite tight and let false air in; tightened, starts well again.",
                Gravity = FindingGravity.Watch,
            }, RecordFinding.Handle, ct);
        }

        var ridden = draw.WholeNumber(0, 4);
        await finishing.Finish([.. items.Where(i => work.Begun || !IsAdjustment(i))], visit.Motorcycle.Unit.ToDistance(ridden).Kilometres, ct);
        staff.Clock.Now += Duration.FromMinutes(5);
        await (beforeSignOff?.Invoke(number) ?? Task.CompletedTask);
        await staff.Do(technician, new SignOffCard.Request
        {
            Number = number,
            Odometer = visit.OdometerCount + ridden,
            AcceptsOutsideLimits = work.LeavesOutside || timing.LeavesOutside,
            Remark = work.LeavesOutside ? "Owner told; comes back when the shims that are needed are here."
                : timing.LeavesOutside ? "Camshafts late, chain near its limit: owner told, the chain is to be renewed at a visit of its own."
                : null,
        }, SignOffCard.Handle, ct);
        return number;
    }

    /// <summary>Books a visit of the days to come: the first slot with that technician for who brings it not before a day's noon.</summary>
    public async Task<int> BookSlot(PlannedVisit visit, Guid motorcycleId, string technician, LocalDate comes, CancellationToken ct)
    {
        var wishes = new Wishes
        {
            NotBefore = (comes + new LocalTime(12, 0)).InZoneLeniently(staff.Time.Zone).ToInstant(),
            TechnicianId = staff.ResourceOf(ResourceKind.Technician, initials[technician]),
        };
        var found = await staff.Look(Advisor, new FindSlots.Request
        {
            MotorcycleId = motorcycleId, Items = [.. ItemsOf(visit)], Wishes = wishes, Count = 1,
        }, FindSlots.Handle, ct);
        var slot = found.Slots[0];
        return (await staff.Do(Advisor, new BookVisit.Request
        {
            MotorcycleId = motorcycleId, Items = [.. ItemsOf(visit)], BayId = slot.BayId, TechnicianId = slot.TechnicianId,
            StartsAt = slot.StartsAt, Wishes = wishes,
        }, BookVisit.Handle, ct)).Number;
    }

    /// <summary>
    /// A visit that is under way: brought the working day before, covers coming off since eight, nothing measured yet. It stands in
    /// its bay for somebody to measure.
    /// </summary>
    /// <param name="visit">Of a day that has come.</param>
    /// <param name="motorcycleId">Which.</param>
    /// <param name="technician">Who is at it.</param>
    /// <param name="clockRuns">It is that day, and the technician's clock runs.</param>
    /// <param name="ct">Ends it.</param>
    public async Task OpenInBay(PlannedVisit visit, Guid motorcycleId, string technician, bool clockRuns, CancellationToken ct)
    {
        staff.SetClock(visit.Day.PlusDays(-9), 11);
        var number = await Book(visit, motorcycleId, technician, ct);
        await CheckIn(visit, number, openDays.Before(visit.Day), random.Stream("under way"), ct);
        staff.SetClock(visit.Day, 8, 5);
        await staff.Do(technician, new BeginPhase.Request { Number = number, Phase = VisitPhase.Work }, BeginPhase.Handle, ct);
        if (clockRuns)
        {
            await staff.Do(technician, new ClockOn.Request { Number = number }, ClockOn.Handle, ct);
        }

        var before = Cautions.InOrder(ItemsOf(visit).SelectMany(i => visit.Motorcycle.EngineModel.Specification.ServiceItems.Single(s => s.Code == i.Code).Cautions))
            .Where(c => BaySteps.CautionsOf(BayStep.Open).Contains(c.Stage)).Select(c => c.Code).ToList();
        await staff.Do(technician, new AcknowledgeCautions.Request { Number = number, Codes = before }, AcknowledgeCautions.Handle, ct);
        var specification = visit.Motorcycle.EngineModel.Specification;
        await new FinishingWork(staff, specification, number, technician, random.Stream("counted in")).CountIn(
            [.. ItemsOf(visit).Select(i => specification.ServiceItems.Single(s => s.Code == i.Code))], ct);
    }

    /// <summary>Books a visit of the past, at the clock's time.</summary>
    private async Task<int> Book(
        PlannedVisit visit, Guid motorcycleId, string technician, CancellationToken ct, (int Of, string Why)? comeback = null) =>
        (await staff.Do(Advisor, new BookVisit.Request
        {
            MotorcycleId = motorcycleId,
            Items = [.. ItemsOf(visit)],
            BayId = staff.ResourceOf(ResourceKind.Bay, visit.Purpose == VisitPurpose.ValveCheck ? "Bay 1" : "Bay 2"),
            TechnicianId = staff.ResourceOf(ResourceKind.Technician, initials[technician]),
            Day = visit.Day,
            Time = new LocalTime(8, 0),
            ComebackOf = comeback?.Of,
            ComebackReason = comeback?.Why,
        }, BookVisit.Handle, ct)).Number;

    /// <summary>Brought the working day before, so that the engine is cold in the morning.</summary>
    public Task CheckIn(PlannedVisit visit, int number, LocalDate day, RandomSource draw, CancellationToken ct, string? ownersWords = null)
    {
        staff.SetClock(day, 15, 30);
        return CheckInNow(visit, number, draw, ct, ownersWords);
    }

    public Task CheckInNow(PlannedVisit visit, int number, RandomSource draw, CancellationToken ct, string? ownersWords = null)
    {
        var words = draw.Chance(0.6) ? draw.Pick(fleet.OwnersWords) : null;
        return staff.Do(Advisor, new CheckInMotorcycle.Request
        {
            Number = number,
            OdometerCount = visit.OdometerCount,
            OwnersWords = ownersWords ?? words,
            SeenOnArrival = draw.Chance(0.5) ? draw.Pick(fleet.SeenOnArrival) : null,
            Arrival = BeforeWork.Seen(ownersWords ?? words, draw.Stream("arrival")),
            NothingElseSeen = true,
            EngineStoppedAt = staff.Clock.Now - Duration.FromMinutes(draw.WholeNumber(3, 25)),
        }, CheckInMotorcycle.Handle, ct);
    }

    /// <summary>What is done together: the small things whose turn comes with so many kilometres, as many as fit into a day.</summary>
    private static IEnumerable<BookVisit.Item> ItemsOf(PlannedVisit visit)
    {
        var items = visit.Motorcycle.EngineModel.Specification.ServiceItems;
        List<string> codes = ["engine-oil-and-filter"];
        if (visit.Purpose == VisitPurpose.OilService)
        {
            codes.AddRange(["coolant", "throttle-synchronisation"]);
            return codes.Where(c => items.Any(i => i.Code == c)).Select(Certain);
        }

        var check = items.First(i => i.Kind == ServiceItemKind.ValveClearanceCheck);
        codes.Add(check.Code);
        codes.AddRange(visit.Km > RunningInKm ? ["spark-plugs", "air-filter", "brake-fluid"] : []);
        codes.AddRange(visit.Km > TimingFromKm ? ["cam-timing-check"] : []);
        return codes.Where(c => items.Any(i => i.Code == c)).Select(Certain).Append(new BookVisit.Item
        {
            Code = check.AdjustmentItem, Likelihood = visit.Km > TimingFromKm ? Likelihood.Likely : Likelihood.Possible,
        });

        static BookVisit.Item Certain(string code) => new() { Code = code, Likelihood = Likelihood.Certain };
    }

    private static bool IsAdjustment(ServiceItem item) => item.Kind == ServiceItemKind.ValveClearanceAdjustment;

    private async Task Tighten(int number, string technician, Opened opened, IReadOnlySet<string> tight, CancellationToken ct)
    {
        foreach (var fastener in opened.Fasteners.Reverse().Where(f => !tight.Contains(f.Code)))
        {
            staff.Clock.Now += Duration.FromMinutes(1);
            await staff.Tighten(technician, number, fastener, ct);
        }
    }

    /// <summary>Every seal that may go back in is looked at; the first place's are worn, or all are fit.</summary>
    private async Task Inspect(int number, string technician, bool worn, CancellationToken ct)
    {
        var seals = (await staff.Look(technician, new GetSeals.Request(number), GetSeals.Handle, ct)).Seals;
        var wornAt = worn ? seals.FirstOrDefault(s => s.Policy == SealPolicy.InspectAndReuse)?.PlaceCode : null;
        List<InspectSeals.Row> rows =
        [
            .. seals.Where(s => s.Policy == SealPolicy.InspectAndReuse || s.PlaceCode == wornAt).Select(s => new InspectSeals.Row
            {
                PlaceCode = s.PlaceCode, PartCode = s.PartCode, Verdict = s.PlaceCode == wornAt ? SealVerdict.Replaced : SealVerdict.Fit,
                Remark = s.PlaceCode == wornAt ? "Hard and flattened." : null,
            }),
        ];
        if (rows.Count > 0)
        {
            await staff.Do(technician, new InspectSeals.Request { Number = number, Seals = rows }, InspectSeals.Handle, ct);
        }
    }
}
