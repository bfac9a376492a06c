using NodaTime;
using Workshop.Domain.Arrivals;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Ignition;
using Workshop.Domain.Statistics;
using Workshop.Domain.Tooling;
using Workshop.Web.Features.Arrivals;
using Workshop.Web.Features.Compression;
using Workshop.Web.Features.Ignition;

namespace Workshop.Web.Data.Seeding;

/// <summary>
/// What is seen and measured before the work of one visit: its state on arrival, cylinders where something speaks for testing them, and
/// the plugs where they are due. Figures are invented: sound cylinders lose a little, one with a tight valve more, at its own side.
/// </summary>
internal sealed class BeforeWork(DemoStaff staff, PlannedVisit visit, int number, string technician, RandomSource draw)
{
    private const decimal TestBar = 6m;

    private readonly EngineSpecification specification = visit.Motorcycle.EngineModel.Specification;

    /// <summary>What is noted at the door. What the owner says may be a complaint.</summary>
    public static IReadOnlyList<RecordArrival.Row> Seen(string? ownersWords, RandomSource draw)
    {
        var rows = new List<RecordArrival.Row>();
        if (ownersWords?.Contains("start", StringComparison.Ordinal) == true)
        {
            rows.Add(Row(ArrivalKind.Complaint, ArrivalSubject.HardStarting, ArrivalState.Noted, ownersWords));
        }

        if (draw.Chance(0.15))
        {
            rows.Add(Row(ArrivalKind.Leak, ArrivalSubject.EngineOil, ArrivalState.Weeping, place: "drain plug"));
        }

        if (draw.Chance(0.15))
        {
            rows.Add(Row(ArrivalKind.Damage, ArrivalSubject.LeftSide, ArrivalState.Noted, "scratch, shown to the owner", "left crankcase cover"));
        }

        rows.AddRange(ArrivalRules.SubjectsOf(ArrivalKind.Level).Select(subject => Row(
            ArrivalKind.Level, subject,
            subject == ArrivalSubject.Clutch ? ArrivalState.NotFitted : draw.Chance(0.1) ? ArrivalState.Low : ArrivalState.AtMark)));
        rows.Add(Row(ArrivalKind.Fuel, ArrivalSubject.Fuel, draw.Pick(new[] { ArrivalState.Reserve, ArrivalState.Quarter, ArrivalState.Half, ArrivalState.Full })));
        rows.Add(Row(ArrivalKind.Left, ArrivalSubject.Keys, ArrivalState.Noted));
        return rows;
    }

    /// <summary>Leak-down of every cylinder, as the covers are off, where a valve is tight or the owner complains.</summary>
    public async Task TestCylinders(IReadOnlyCollection<ValveKey> tight, CancellationToken ct)
    {
        var asked = await staff.Look(technician, new GetCompression.Request(number), GetCompression.Handle, ct);
        if (asked.Because.Count == 0)
        {
            return;
        }

        staff.SetClock(visit.Day, 10, 20);
        await staff.Do(technician, new RecordCompression.Request
        {
            Number = number, Stage = Stage.AsFound, Warmth = EngineWarmth.Cold, LeakDownTesterId = staff.First(InstrumentKind.LeakDownTester), TestBar = TestBar,
            Cylinders = [.. specification.Layout.Cylinders.Select(c => Leaking(c.Number, [.. tight.Where(v => v.Cylinder == c.Number)]))],
        }, RecordCompression.Handle, ct);
    }

    /// <summary>Once more by compression, warm, when everything is closed.</summary>
    public async Task TestAsLeft(CancellationToken ct)
    {
        var limits = specification.Compression!;
        await staff.Do(technician, new RecordCompression.Request
        {
            Number = number, Stage = Stage.AsLeft, Warmth = EngineWarmth.Warm, ThrottleOpen = true, GaugeId = staff.First(InstrumentKind.CompressionGauge),
            Cylinders = [.. specification.Layout.Cylinders.Select(c => new RecordCompression.Row
            {
                Cylinder = c.Number, DryBar = decimal.Round(limits.Least.Bar + (decimal)draw.Uniform(0.6, 1.5), 1), Tries = draw.WholeNumber(5, 8),
            })],
        }, RecordCompression.Handle, ct);
    }

    /// <summary>Every plug comes out as its cylinder burns, and a new one goes in.</summary>
    public async Task RenewPlugs(CancellationToken ct)
    {
        var stated = specification.SparkPlugs!;
        staff.SetClock(visit.Day, 10, 30);
        await staff.Do(technician, new RecordPlugs.Request
        {
            Number = number, Gauge = GapGauge.Wire, InstrumentId = staff.First(InstrumentKind.PlugGauge),
            Plugs = [.. PlugRules.PlugsOf(specification).Select(key => new RecordPlugs.Row
            {
                Cylinder = key.Cylinder, Plug = key.Plug,
                Condition = draw.Chance(0.75) ? PlugCondition.Normal : draw.Pick(new[] { PlugCondition.Sooty, PlugCondition.WornElectrode, PlugCondition.Oily }),
                GapFoundMm = stated.GapLargestMm + (draw.WholeNumber(0, 4) * 0.05m), Renewed = true,
                GapLeftMm = (stated.GapSmallestMm + stated.GapLargestMm) / 2,
            })],
        }, RecordPlugs.Handle, ct);
    }

    private RecordCompression.Row Leaking(int cylinder, IReadOnlyCollection<ValveKey> tight) => new()
    {
        Cylinder = cylinder, LossPercent = draw.WholeNumber(4, 9) + (tight.Count * draw.WholeNumber(7, 12)), HeardAtCrankcase = tight.Count == 0,
        HeardAtIntake = tight.Any(v => v.Side == Side.Intake), HeardAtExhaust = tight.Any(v => v.Side == Side.Exhaust),
    };

    private static RecordArrival.Row Row(ArrivalKind kind, ArrivalSubject subject, ArrivalState state, string? words = null, string? place = null) =>
        new() { Kind = kind, Subject = subject, State = state, Place = place, Words = words };
}
