using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Tooling;

namespace Workshop.Web.Features.Compression;

/// <summary>One send of compression and leak-down to a card: gathers every fault before anything is written.</summary>
internal sealed class CompressionEntry
{
    private readonly List<FieldFault> faults = [];
    private readonly List<string> replaced = [];
    private readonly List<CylinderTest> added = [];
    private readonly WorkshopDbContext db;
    private readonly OpenCard open;
    private readonly RecordCompression.Request request;
    private readonly Actor actor;
    private readonly IClock clock;
    private readonly Instant now;
    private readonly Instant measuredAt;
    private readonly IReadOnlyList<CylinderTest> before;
    private readonly IReadOnlyList<ClearanceReading> readings;
    private Guid? reasonId;

    private CompressionEntry(
        WorkshopDbContext db, OpenCard open, RecordCompression.Request request, Actor actor, IClock clock,
        IReadOnlyList<CylinderTest> before, IReadOnlyList<ClearanceReading> readings)
    {
        (this.db, this.open, this.request, this.actor, this.clock, this.before, this.readings) = (db, open, request, actor, clock, before, readings);
        now = clock.GetCurrentInstant();
        measuredAt = request.MeasuredAt ?? now;
    }

    public int Written => added.Count;

    /// <summary>Locks the card and reads what stands on it; refused where it is not open for work.</summary>
    public static async Task<Outcome<CompressionEntry>> Begin(
        WorkshopDbContext db, RecordCompression.Request request, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var entry = new CompressionEntry(
            db, open, request, actor, clock,
            await db.CylinderTests.AsNoTracking().Where(t => t.JobCardNumber == request.Number).ToListAsync(ct),
            await db.ClearanceReadings.AsNoTracking().Where(r => r.JobCardNumber == request.Number).ToListAsync(ct));
        await entry.CheckWhoWhenAndWith(ct);
        return entry;
    }

    public async Task<Problem?> Write(CancellationToken ct)
    {
        foreach (var (row, index) in (request.Cylinders ?? []).Select((row, index) => (row, index)))
        {
            if (row is not null)
            {
                Add($"cylinders[{index}]", row);
            }
        }

        if (Attempts.FaultOfReason(request.Reason, replaced) is { } unsaid)
        {
            faults.Add(unsaid);
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("not-possible", faults);
        }

        db.CylinderTests.AddRange(added);
        await db.SaveChangesAsync(ct);
        return null;
    }

    /// <summary>What each cylinder shows at that stage, with what was sent.</summary>
    public IReadOnlyList<CylinderView> Cylinders() => CylinderView.Of(
        CylinderFindings.Of(open.Specification, [.. before, .. added], request.Stage!.Value, AskedChecks.TightValves(open.Specification, readings)));

    private void Add(string path, RecordCompression.Row row)
    {
        var numbers = open.Specification.Layout.Cylinders.Select(c => c.Number).Order().ToList();
        if (!numbers.Contains(row.Cylinder!.Value))
        {
            faults.Add(new FieldFault($"{path}.cylinder", $"{path}.cylinder is {row.Cylinder}: the engine has {string.Join(", ", numbers)}."));
            return;
        }

        Add(path, row, CylinderTestMethod.Dry, Of(row.DryKpa, row.DryBar));
        Add(path, row, CylinderTestMethod.Wet, Of(row.WetKpa, row.WetBar));
        Add(path, row, CylinderTestMethod.LeakDown, row.LossPercent is null ? null : Of(request.TestKpa, request.TestBar));
    }

    private void Add(string path, RecordCompression.Row row, CylinderTestMethod method, Pressure? pressure)
    {
        if (pressure is not { } measured)
        {
            return;
        }

        var key = new CylinderTestKey(row.Cylinder!.Value, method, request.Stage!.Value);
        if (added.Exists(t => t.Key == key))
        {
            faults.Add(new FieldFault($"{path}.cylinder", $"{path}.cylinder is {row.Cylinder} for the second time in one send: once."));
            return;
        }

        var leakDown = method == CylinderTestMethod.LeakDown;
        if (leakDown && measured.Kilopascals == 0)
        {
            faults.Add(new FieldFault("testKpa", "testKpa is 0: nothing leaks without pressure; above 0 is allowed."));
            return;
        }

        var standing = Attempts.Last(before.Where(t => t.Key == key));
        if (standing is not null)
        {
            replaced.Add($"cylinder {row.Cylinder}, {method.Spoken()}");
        }

        added.Add(new CylinderTest
        {
            Id = NewId.At(clock), EngineId = open.Card.EngineId, JobCardNumber = request.Number, Cylinder = row.Cylinder.Value, Method = method,
            Stage = request.Stage.Value, Attempt = Attempts.After(standing), Pressure = measured, LossPercent = leakDown ? row.LossPercent : null,
            HeardAtIntake = leakDown && row.HeardAtIntake, HeardAtExhaust = leakDown && row.HeardAtExhaust,
            HeardAtCrankcase = leakDown && row.HeardAtCrankcase, HeardInCoolant = leakDown && row.HeardInCoolant,
            Warmth = request.Warmth!.Value, ThrottleOpen = !leakDown && request.ThrottleOpen,
            Tries = leakDown ? null : row.Tries,
            InstrumentId = leakDown ? request.LeakDownTesterId : request.GaugeId, OdometerReadingId = open.CheckIn!.OdometerReadingId,
            MeasuredAt = measuredAt, MeasuredBy = request.MeasuredBy ?? actor.PersonId, EnteredBy = actor.PersonId, EnteredAt = now,
            SupersedesId = standing?.Id, ReasonRemarkId = standing is null ? null : reasonId ??= Remarks.Add(db, request.Reason, actor, clock),
        });
    }

    private static Pressure? Of(decimal? kpa, decimal? bar) =>
        kpa is { } k ? Pressure.FromKilopascals(k) : bar is { } b ? Pressure.FromKilopascals(b * Pressure.KilopascalsPerBar) : null;

    private async Task CheckWhoWhenAndWith(CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        faults.AddRange(await WhoAndWhen.FaultsOf(db, open, time, measuredAt, request.MeasuredBy, now, ct));
        var day = time.DayOf(measuredAt);
        foreach (var (field, id, kind) in new[]
        {
            ("gaugeId", request.GaugeId, InstrumentKind.CompressionGauge), ("leakDownTesterId", request.LeakDownTesterId, InstrumentKind.LeakDownTester),
        })
        {
            if (await UsableInstrument.FaultOf(db, field, id, kind, day, ct) is { } fault)
            {
                faults.Add(fault);
            }
        }
    }
}
