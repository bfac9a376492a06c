using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Finishing;
using Workshop.Domain.JobCards;
using Workshop.Domain.Statistics;
using Workshop.Domain.Tooling;
using Workshop.Web.Features.Finishing;

namespace Workshop.Web.Data.Seeding;

/// <summary>What the engine model asks for before covers come off and after the work is closed, at one visit.</summary>
internal sealed class FinishingWork(DemoStaff staff, EngineSpecification specification, int number, string technician, RandomSource draw)
{
    private const decimal HotC = 86;
    private const int RunMinutes = 10;
    private const int Rags = 6;

    /// <summary>Counted to the engine where that is asked for; before anything is measured.</summary>
    public Task CountIn(IReadOnlyCollection<ServiceItem> items, CancellationToken ct) => Count(items, CountWay.WentIn, ct);

    /// <summary>Everything that follows the work. The clock stands where it was closed, and moves on.</summary>
    /// <param name="begun">Items that were begun.</param>
    /// <param name="riddenKm">As the odometer says; nobody rode where it is 0.</param>
    public async Task Finish(IReadOnlyList<ServiceItem> begun, decimal riddenKm, CancellationToken ct)
    {
        var asked = AskedChecks.Of(specification, begun, [], complaint: false).ToDictionary(a => a.Kind);
        await Count(begun, CountWay.CameBack, ct);
        if (asked.TryGetValue(VisitCheckKind.Balance, out var balance))
        {
            await Balance(balance.Stated!.Balance!, ct);
        }

        if (asked.ContainsKey(VisitCheckKind.LeakCheck))
        {
            await LookForLeaks(begun, ct);
        }

        if (asked.ContainsKey(VisitCheckKind.TestRide))
        {
            await Ride(riddenKm, ct);
        }

        if (asked.TryGetValue(VisitCheckKind.Recheck, out var recheck))
        {
            await LookAgain(recheck, ct);
        }

        if (asked.ContainsKey(VisitCheckKind.ReminderReset))
        {
            await staff.Do(technician, new RecordReminder.Request { Number = number, Outcome = ReminderOutcome.Reset }, RecordReminder.Handle, ct);
        }
    }

    private async Task Count(IReadOnlyCollection<ServiceItem> items, CountWay way, CancellationToken ct)
    {
        if (AskedChecks.Of(specification, items, [], complaint: false).All(a => a.Kind != VisitCheckKind.PartsCounted))
        {
            return;
        }

        string[] usual = ["feeler-blades", "turning-tool", "rags"];
        await staff.Do(technician, new CountThings.Request
        {
            Number = number,
            Taps = [.. usual.Select(thing => new CountThings.Tap { Thing = thing, Way = way, Change = thing == "rags" ? Rags : 1 })],
        }, CountThings.Handle, ct);
    }

    /// <summary>Apart by half of what is allowed before, by a fifth after.</summary>
    private async Task Balance(BalanceFigures figures, CancellationToken ct)
    {
        foreach (var (stage, share) in new[] { (Stage.AsFound, 0.5m), (Stage.AsLeft, 0.2m) })
        {
            staff.Clock.Now += Duration.FromMinutes(6);
            var cylinders = specification.Layout.Cylinders;
            await staff.Do(technician, new RecordBalance.Request
            {
                Number = number, Stage = stage, SpeedRpm = figures.SpeedRpm, HotAtC = HotC, HotOf = HotPart.Coolant, GaugeId = staff.First(InstrumentKind.VacuumGauge),
                Cylinders = [.. cylinders.Select((c, i) => new RecordBalance.CylinderRow
                {
                    Cylinder = c.Number, VacuumKpa = decimal.Round(27 + (figures.Tolerance.Kilopascals * share * i / (cylinders.Count - 1)), 2),
                })],
            }, RecordBalance.Handle, ct);
        }
    }

    private async Task LookForLeaks(IReadOnlyList<ServiceItem> begun, CancellationToken ct)
    {
        staff.Clock.Now += Duration.FromMinutes(RunMinutes);
        var weeps = draw.Chance(0.15);
        await staff.Do(technician, new RecordLeakCheck.Request
        {
            Number = number, RunMinutes = RunMinutes,
            Places = [.. LeakPlaces.Of(specification, begun).Select((place, i) => new RecordLeakCheck.PlaceRow
            {
                Code = place.Code, State = weeps && i == 0 ? LeakState.Weeping : LeakState.Dry, Words = weeps && i == 0 ? "Damp at one corner, no drop; watched." : null,
            })],
        }, RecordLeakCheck.Handle, ct);
    }

    private async Task Ride(decimal km, CancellationToken ct)
    {
        staff.Clock.Now += Duration.FromMinutes(15);
        await staff.Do(technician, km > 0
            ? new RecordTestRide.Request { Number = number, DistanceKm = decimal.Max(0.1m, decimal.Round(km, 1)), Words = draw.Chance(0.3) ? "Even pull, no noise from the valves." : null }
            : new RecordTestRide.Request { Number = number, WhyNot = draw.Chance(0.5) ? WhyNotRidden.Weather : WhyNotRidden.OwnersWish },
            RecordTestRide.Handle, ct);
    }

    private async Task LookAgain(AskedCheck asked, CancellationToken ct)
    {
        if (asked.Stated?.OilAfterRun == true)
        {
            staff.Clock.Now += Duration.FromMinutes(5);
            await staff.Do(technician, new RecordRecheck.Request { Number = number, Point = RecheckPoint.OilAfterRun, InOrder = true }, RecordRecheck.Handle, ct);
        }

        if (asked.Cooled is { } cooled)
        {
            staff.Clock.Now += Duration.FromMinutes((long)(cooled.CoolHours * 60) + 1);
            await staff.Do(technician, new RecordRecheck.Request { Number = number, Point = RecheckPoint.Cooled, InOrder = true, Words = "Dry and quiet." }, RecordRecheck.Handle, ct);
        }
    }
}
