using NodaTime;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Statistics;
using Workshop.Domain.Tooling;
using Workshop.Web.Features.CamTiming;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// Cam timing at one visit: checked as found where it is booked, the tensioner read, and after an adjustment checked as left and
/// once more after the tensioner. Chains of the demo grow by a line of their own, and make the camshafts late when they are long.
/// </summary>
internal sealed class TimingWork(DemoStaff staff, PlannedVisit visit, int number, string technician, RandomSource draw)
{
    // Invented: what a chain has grown by before the camshafts lag, and how far they lag for each mm beyond.
    private const double GrowthWithoutLagMm = 5;
    private const decimal LagPerMm = 0.72m;

    private readonly EngineSpecification specification = visit.Motorcycle.EngineModel.Specification;

    /// <summary>A camshaft is left later than is permitted, and somebody has to accept that.</summary>
    public bool LeavesOutside { get; private set; }

    /// <summary>As found: by degree wheel where the maker states events, else by alignment; and the tensioner.</summary>
    public async Task AsFound(bool timed, CancellationToken ct)
    {
        staff.SetClock(visit.Day, 10, 10);
        var wheel = timed && specification.CamDrives.Any(d => d.Lobes.Any(l => l.Opens is not null));
        var answer = await staff.Do(technician, new RecordCamTiming.Request
        {
            Number = number,
            Stage = Stage.AsFound,
            InRunningDirection = true,
            CaliperId = staff.First(InstrumentKind.Caliper),
            DegreeWheelId = wheel ? staff.First(InstrumentKind.DegreeWheel) : null,
            DialGaugeId = wheel ? staff.First(InstrumentKind.DialGauge) : null,
            DeadCentre = wheel ? DeadCentreMethod.PositiveStop : null,
            StopBeforeDegrees = wheel ? 31 : null,
            StopAfterDegrees = wheel ? 32 : null,
            LiftMm = wheel ? specification.CamDrives[0].Lobes[0].AtLiftMm : null,
            Station = wheel ? specification.CamDrives[0].Lobes[0].MeasuredAt : null,
            Alignments = timed && !wheel ? Passing(specification.CamDrives) : null,
            Lobes = wheel ? [.. specification.CamDrives.SelectMany(d => d.Lobes.Select(l => Measured(d, l)))] : null,
            Chains = [.. specification.CamDrives.Where(d => d.Tensioner is not null).Select(d => new RecordCamTiming.ChainRow { Drive = d.Code, ExtensionMm = Read(d) })],
        }, RecordCamTiming.Handle, ct);
        LeavesOutside = answer.Drives.SelectMany(d => d.Cams).Any(c => c.Verdict is TimingVerdict.Early or TimingVerdict.Late);
    }

    /// <summary>After an adjustment that had the tensioner out: marks right again, and the tensioner's release confirmed.</summary>
    public async Task AsLeft(CancellationToken ct)
    {
        var adjustment = specification.ServiceItems.First(i => i.Kind == ServiceItemKind.ValveClearanceAdjustment);
        var opened = Domain.Kits.Opened.By(specification, [adjustment]).Fasteners.Select(f => f.Code).ToHashSet(StringComparer.Ordinal);
        var drives = specification.CamDrives.Where(d => d.SprocketBolts.Concat(d.TensionerFasteners).Any(opened.Contains)).ToList();
        if (drives.Count == 0)
        {
            return;
        }

        staff.Clock.Now += Duration.FromMinutes(5);
        await staff.Do(technician, new RecordCamTiming.Request
        {
            Number = number, Stage = Stage.AsLeft, InRunningDirection = true, Alignments = Passing(drives),
        }, RecordCamTiming.Handle, ct);
        foreach (var drive in drives)
        {
            var bolt = specification.Fasteners.FirstOrDefault(f => drive.SprocketBolts.Contains(f.Code));
            await staff.Do(technician, new ConfirmCamRecheck.Request
            {
                Number = number, Drive = drive.Code, TensionerWentInAtRest = true, TensionerReleased = true,
                WrenchId = drive.RecheckSprocketBolts ? staff.WrenchFor(bolt!) : null,
            }, ConfirmCamRecheck.Handle, ct);
        }
    }

    private static List<RecordCamTiming.AlignmentRow> Passing(IEnumerable<CamDrive> drives) =>
        [.. drives.SelectMany(d => d.CamshaftCodes()).Select(c => new RecordCamTiming.AlignmentRow { Camshaft = c, Passes = true })];

    private RecordCamTiming.LobeRow Measured(CamDrive drive, LobeTiming lobe)
    {
        var lag = (decimal)Math.Max(0, Extension(drive) - New(drive) - GrowthWithoutLagMm) * LagPerMm;
        var late = lobe.Side == Side.Intake ? lag : lag - 0.4m;
        return new RecordCamTiming.LobeRow
        {
            Camshaft = lobe.Camshaft, Side = lobe.Side,
            Readings = [.. Enumerable.Range(0, 3).Select(_ => Turn(CamEvents.Of(lobe)!.Value.Advanced(CrankAngle.FromDegrees(-late))))],
        };
    }

    /// <summary>A wheel is read to a quarter of a degree; this one stands half a degree off.</summary>
    private RecordCamTiming.ReadingRow Turn(CamEvents events) => new()
    {
        OpensDegrees = Quarter(events.Opens.Degrees - 0.5m), ClosesDegrees = Quarter(events.Closes.Degrees + 0.5m),
    };

    private decimal Quarter(decimal degrees) => decimal.Round((degrees + (decimal)draw.Normal(0, 0.2)) * 4, MidpointRounding.AwayFromZero) / 4;

    private decimal Read(CamDrive drive)
    {
        var read = (decimal)Math.Max(0, Extension(drive) + draw.Normal(0, 0.15));
        return drive.Tensioner!.StepMm is { } step
            ? decimal.Min(decimal.Floor(read / step) * step, drive.Tensioner.StopMm ?? decimal.MaxValue)
            : decimal.Min(decimal.Round(read, 1), drive.Tensioner.StopMm ?? decimal.MaxValue);
    }

    /// <summary>Four fifths of the way from new to the limit in 130,000 km or so, each chain at its own pace.</summary>
    private double Extension(CamDrive drive)
    {
        var pace = new RandomSource((ulong)(visit.Motorcycle.Index + 1)).Stream(drive.Code).Normal(0.8, 0.06) * ((double)drive.Tensioner!.LimitMm - New(drive)) / 13;
        return New(drive) + (pace * visit.Km / 10_000);
    }

    private static double New(CamDrive drive) => (double)(drive.Tensioner?.NewMm ?? 0);
}
