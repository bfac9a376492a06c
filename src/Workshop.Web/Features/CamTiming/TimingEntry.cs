using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Tooling;

namespace Workshop.Web.Features.CamTiming;

/// <summary>
/// One send of cam timing to a card, all or nothing: gathers every fault before anything is written, and knows what each new
/// row carries.
/// </summary>
internal sealed class TimingEntry
{
    private readonly List<FieldFault> faults = [];
    private readonly List<string> replaced = [];
    private readonly HashSet<string> drives = new(StringComparer.Ordinal);
    private readonly WorkshopDbContext db;
    private readonly OpenCard open;
    private readonly TimingRows known;
    private readonly RecordCamTiming.Request request;
    private readonly Actor actor;
    private readonly IClock clock;
    private readonly Instant now;
    private readonly Instant measuredAt;
    private readonly Guid measuredBy;
    private readonly Stage stage;
    private readonly IReadOnlyList<OpenedDrive> opened;
    private Guid? reasonId;

    private TimingEntry(
        WorkshopDbContext db, OpenCard open, TimingRows known, IReadOnlyList<OpenedDrive> opened,
        RecordCamTiming.Request request, Actor actor, IClock clock)
    {
        (this.db, this.open, this.known, this.opened, this.request, this.actor, this.clock) = (db, open, known, opened, request, actor, clock);
        now = clock.GetCurrentInstant();
        measuredAt = request.MeasuredAt ?? now;
        measuredBy = request.MeasuredBy ?? actor.PersonId;
        stage = request.Stage!.Value;
    }

    public int Written { get; private set; }

    private EngineSpecification Specification => open.Specification;

    /// <summary>Locks the card and reads what stands on it; refused where it is not open for work or nothing is stated.</summary>
    public static async Task<Outcome<TimingEntry>> Begin(
        WorkshopDbContext db, RecordCamTiming.Request request, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (open.Specification.CamDrives.Count == 0)
        {
            return Problem.Conflict("no-cam-drives",
                $"The specification of job card {request.Number} states nothing about cam timing; add the drives of the camshafts to the engine model first.");
        }

        var known = await TimingRows.Load(db, request.Number, ct);
        var facts = await SignOffCase.Gather(db, open, ct);
        var entry = new TimingEntry(
            db, open, known, OpenedDrive.Of(open.Specification.CamDrives, facts.ToBeTight), request, actor, clock);
        await entry.CheckWhoWhenAndWith(ct);
        return entry;
    }

    public void AddAlignments()
    {
        foreach (var (path, row) in Numbered(request.Alignments, "alignments"))
        {
            if (Add(CamTimingRules.FaultOfCamshaft($"{path}.camshaft", row.Camshaft, Specification)) || Early($"{path}.camshaft", row.Camshaft!))
            {
                continue;
            }

            Add(new CheckKey(row.Camshaft!, stage, TimingMethod.Alignment, null), path, row.Passes, request.JigId, []);
        }
    }

    public void AddLobes()
    {
        foreach (var (path, row) in Numbered(request.Lobes, "lobes"))
        {
            if (Add(CamTimingRules.FaultOfCamshaft($"{path}.camshaft", row.Camshaft, Specification))
                || Add(CamTimingRules.FaultOfSide($"{path}.side", row.Camshaft!, row.Side!.Value, Specification))
                || Early($"{path}.camshaft", row.Camshaft!))
            {
                continue;
            }

            Add(new CheckKey(row.Camshaft!, stage, TimingMethod.DegreeWheel, row.Side), path, null, request.DegreeWheelId,
                [.. RecordCamTiming.Rows(row.Readings)]);
        }
    }

    public void AddChains()
    {
        foreach (var (path, row) in Numbered(request.Chains, "chains"))
        {
            if (Add(CamTimingRules.FaultOfDrive($"{path}.drive", row.Drive, Specification)) || Add(FaultOfChain(path, row)))
            {
                continue;
            }

            var before = CamTimingRules.Standing(known.Chains, row.Drive!, stage);
            if (before is not null && known.Added.Contains(before.Id))
            {
                faults.Add(new FieldFault($"{path}.drive", $"{path}.drive is \"{row.Drive}\" for the second time in one send: once."));
                continue;
            }

            Replaces(before is not null, $"the {NameOf(row.Drive!)}");
            var reading = new ChainReading
            {
                Id = NewId.At(clock), EngineId = open.Card.EngineId, JobCardNumber = request.Number, DriveCode = row.Drive!, Stage = stage,
                Attempt = Attempts.After(before), ExtensionMm = row.ExtensionMm, AtStop = row.AtStop, LengthMm = row.LengthMm,
                InstrumentId = request.CaliperId, OdometerReadingId = open.CheckIn!.OdometerReadingId, MeasuredAt = measuredAt,
                MeasuredBy = measuredBy, EnteredBy = actor.PersonId, EnteredAt = now, SupersedesId = before?.Id,
                ReasonRemarkId = before is null ? null : Reason(),
            };
            known.Chains.Add(reading);
            known.Added.Add(reading.Id);
            db.ChainReadings.Add(reading);
            drives.Add(row.Drive!);
            Written++;
        }
    }

    public void AddChanges()
    {
        foreach (var (path, row) in Numbered(request.Changes, "changes"))
        {
            if (Add(CamTimingRules.FaultOfDrive($"{path}.drive", row.Drive, Specification)))
            {
                continue;
            }

            drives.Add(row.Drive!);
            if (known.Changes.Exists(c => c.DriveCode == row.Drive && c.Kind == row.Kind))
            {
                continue; // It stands on the card already.
            }

            var change = new ChainChange
            {
                Id = NewId.At(clock), EngineId = open.Card.EngineId, JobCardNumber = request.Number, DriveCode = row.Drive!, Kind = row.Kind!.Value,
                OdometerReadingId = open.CheckIn!.OdometerReadingId, HappenedAt = measuredAt, EnteredBy = actor.PersonId, EnteredAt = now,
            };
            known.Changes.Add(change);
            db.ChainChanges.Add(change);
            Written++;
        }
    }

    public async Task<Problem?> Finish(CancellationToken ct)
    {
        if (Attempts.FaultOfReason(request.Reason, replaced) is { } unsaid)
        {
            faults.Add(unsaid);
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("not-possible", faults);
        }

        await db.SaveChangesAsync(ct);
        return null;
    }

    public IReadOnlyList<CamTimingView.DriveState> Touched() =>
        [.. Specification.CamDrives.Where(d => drives.Contains(d.Code)).Select(d => CamTimingView.Of(Specification, d, stage, known))];

    private void Add(CheckKey key, string path, bool? passes, Guid? instrument, IReadOnlyList<RecordCamTiming.ReadingRow> readings)
    {
        var before = CamTimingRules.Standing(known.Checks.Where(c => c.Key == key)).SingleOrDefault();
        if (before is not null && known.Added.Contains(before.Id))
        {
            faults.Add(new FieldFault($"{path}.camshaft", $"{path}.camshaft is \"{key.Camshaft}\" for the second time in one send: once."));
            return;
        }

        Replaces(before is not null, CamTimingView.NameOf(Specification, key.Camshaft));
        var wheel = key.Method == TimingMethod.DegreeWheel;
        var id = NewId.At(clock);
        var check = new CamTimingCheck
        {
            Id = id, EngineId = open.Card.EngineId, JobCardNumber = request.Number, CamshaftCode = key.Camshaft, Stage = stage,
            Method = key.Method, Side = key.Side, Attempt = Attempts.After(before), Passes = passes,
            DeadCentre = wheel ? request.DeadCentre : null,
            StopBefore = wheel ? Angle(StopOf(request.StopBeforeDegrees)) : null,
            StopAfter = wheel ? Angle(StopOf(request.StopAfterDegrees)) : null,
            LiftMm = wheel ? request.LiftMm : null, Station = wheel ? request.Station : null, InRunningDirection = request.InRunningDirection,
            InstrumentId = instrument, DialGaugeId = wheel ? request.DialGaugeId : null,
            Readings = [.. readings.Select((r, i) => new CamTimingReading
            {
                CheckId = id, Repeat = i + 1, Opens = CrankAngle.FromDegrees(r.OpensDegrees!.Value), Closes = CrankAngle.FromDegrees(r.ClosesDegrees!.Value),
            })],
            OdometerReadingId = open.CheckIn!.OdometerReadingId, MeasuredAt = measuredAt, MeasuredBy = measuredBy, EnteredBy = actor.PersonId,
            EnteredAt = now, SupersedesId = before?.Id, ReasonRemarkId = before is null ? null : Reason(),
        };
        known.Checks.Add(check);
        known.Added.Add(id);
        db.CamTimingChecks.Add(check);
        drives.Add(Specification.CamDrives.First(d => d.CamshaftCodes().Contains(key.Camshaft)).Code);
        Written++;
    }

    /// <summary>With marks alone there is no reading to either side.</summary>
    private decimal? StopOf(decimal? degrees) => request.DeadCentre == DeadCentreMethod.Marks ? null : degrees;

    private static CrankAngle? Angle(decimal? degrees) => degrees is { } d ? CrankAngle.FromDegrees(d) : null;

    /// <summary>As left is measured when what holds the drive is tight again: until then the camshafts still move.</summary>
    private bool Early(string field, string camshaft)
    {
        var holding = stage == Stage.AsLeft ? opened.FirstOrDefault(o => o.Open.Count > 0 && o.Drive.CamshaftCodes().Contains(camshaft)) : null;
        return Add(holding is null ? null : new FieldFault(field,
            $"{field} is \"{camshaft}\" as left, which is not open yet. Tick on the torque sheet first: {string.Join(", ", holding.Open.Select(l => l.Fastener.Name))}."));
    }

    private FieldFault? FaultOfChain(string path, RecordCamTiming.ChainRow row)
    {
        var drive = Specification.CamDrives.First(d => d.Code == row.Drive);
        return drive.Tensioner is null && (row.ExtensionMm is not null || row.AtStop)
            ? new FieldFault($"{path}.extensionMm", $"{path}.extensionMm: the specification states no tensioner of the {drive.Name}.")
            : drive.Tensioner?.StopMm is { } stop && row.ExtensionMm > stop
            ? new FieldFault($"{path}.extensionMm", $"{path}.extensionMm is {row.ExtensionMm} mm: the tensioner goes out by {stop:0.##} mm at most.")
            : drive.Chain is null && row.LengthMm is not null
            ? new FieldFault($"{path}.lengthMm", $"{path}.lengthMm: the specification states no length of the chain of the {drive.Name}.")
            : null;
    }

    private async Task CheckWhoWhenAndWith(CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        faults.AddRange(await WhoAndWhen.FaultsOf(db, open, time, measuredAt, request.MeasuredBy, now, ct));
        var day = time.DayOf(measuredAt);
        foreach (var (field, id, kind) in new[]
        {
            ("jigId", request.JigId, InstrumentKind.AlignmentJig), ("degreeWheelId", request.DegreeWheelId, InstrumentKind.DegreeWheel),
            ("dialGaugeId", request.DialGaugeId, InstrumentKind.DialGauge), ("caliperId", request.CaliperId, InstrumentKind.Caliper),
        })
        {
            Add(await UsableInstrument.FaultOf(db, field, id, kind, day, ct));
        }
    }

    private bool Add(FieldFault? fault)
    {
        if (fault is not null)
        {
            faults.Add(fault);
        }

        return fault is not null;
    }

    private void Replaces(bool does, string what)
    {
        if (does)
        {
            replaced.Add(what);
        }
    }

    private Guid? Reason() => reasonId ??= Remarks.Add(db, request.Reason, actor, clock);

    private string NameOf(string drive) => Specification.CamDrives.First(d => d.Code == drive).Name;

    /// <summary>The rows that are there, each with its path as the caller wrote it.</summary>
    private static IEnumerable<(string Path, T Row)> Numbered<T>(IReadOnlyList<T?>? rows, string name)
        where T : class =>
        (rows ?? []).Select((row, index) => (Path: $"{name}[{index}]", Row: row)).Where(r => r.Row is not null).Select(r => (r.Path, r.Row!));
}

/// <summary>All that was written of cam timing on one card, superseded rows included, in order of entry.</summary>
internal sealed record TimingRows(List<CamTimingCheck> Checks, List<ChainReading> Chains, List<ChainChange> Changes)
{
    /// <summary>Ids of the checks and readings that a send has added.</summary>
    public HashSet<Guid> Added { get; } = [];

    public static async Task<TimingRows> Load(WorkshopDbContext db, int number, CancellationToken ct) => new(
        await db.CamTimingChecks.AsNoTracking().Where(c => c.JobCardNumber == number).OrderBy(c => c.Id).ToListAsync(ct),
        await db.ChainReadings.AsNoTracking().Where(r => r.JobCardNumber == number).OrderBy(r => r.Id).ToListAsync(ct),
        await db.ChainChanges.AsNoTracking().Where(c => c.JobCardNumber == number).OrderBy(c => c.Id).ToListAsync(ct));
}
