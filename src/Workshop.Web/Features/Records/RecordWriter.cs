using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Domain.Records;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.CamTiming;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Records;

/// <summary>
/// Writes the record of a card that is signed: gathers what stands, says it, and keeps all of it. Called at the end of the
/// sign-off, when due and expected are worked out anew; nothing is ever read again to show a record.
/// </summary>
internal static class RecordWriter
{
    /// <param name="open">Signed off and saved.</param>
    /// <param name="facts">Of the visit, as the sign-off looked at them.</param>
    /// <param name="written">What the person who signed wrote, by the names of <see cref="RecordWords"/>.</param>
    /// <param name="isLater">Written after the sign-off.</param>
    public static async Task Write(
        WorkshopDbContext db, OpenCard open, SignOffFacts facts, IReadOnlyDictionary<string, string> written, bool isLater, Actor actor, IClock clock,
        CancellationToken ct)
    {
        var number = open.Card.Number;
        var time = await WorkshopTimes.Read(db, ct);
        var findings = await RecordedFindings.Read(db, number, time, ct);
        var signed = await (
            from signOff in db.SignOffs.AsNoTracking()
            join person in db.People on signOff.SignedBy equals person.Id
            join reading in db.OdometerReadings on signOff.OdometerReadingId equals reading.Id
            where signOff.JobCardNumber == number
            select new { signOff.SignedAt, person.Name, Reading = reading }).SingleAsync(ct);
        var arrived = await (
            from checkIn in db.CheckIns.AsNoTracking()
            join reading in db.OdometerReadings on checkIn.OdometerReadingId equals reading.Id
            where checkIn.JobCardNumber == number
            select new { CheckIn = checkIn, reading.Count }).SingleOrDefaultAsync(ct);
        var profile = await db.WorkshopProfiles.AsNoTracking().SingleAsync(ct);
        var valves = await RecordedValves.Read(db, facts, time, ct);
        var motorcycle = await MotorcycleOf(db, open, ct);
        var document = new ServiceRecord
        {
            JobCardNumber = number,
            Workshop = profile.Name,
            Phone = profile.Phone,
            Motorcycle = motorcycle,
            ArrivedOn = arrived is null ? null : time.DayOf(arrived.CheckIn.CheckedInAt),
            SignedOn = time.DayOf(signed.SignedAt),
            SignedBy = signed.Name,
            OdometerIn = arrived?.Count,
            OdometerOut = signed.Reading.Count,
            OdometerUnit = signed.Reading.Unit,
            Items = await Items(db, open, ct),
            Clearances = valves.Lobes,
            Shims = valves.Shims,
            Measuring = valves.Measuring,
            Parts = await RecordedParts.Read(db, number, ct),
            Fasteners = await RecordedFasteners.Read(db, open, time, ct),
            CamTiming = await Timing(db, open, ct),
            Findings = findings.Findings,
            Agreed = await RecordedFindings.Agreed(db, open, clock, ct),
            NextDue = await RecordedAhead.Due(db, open, signed.Reading, RecordedLobes.LeftOutside(valves.Lobes), ct),
            Forecasts = await RecordedAhead.Forecasts(db, open, signed.Reading, ct),
            Specification = await Specification(db, open, ct),
            Arrival = RecordedChecks.Arrival(facts),
            Cylinders = RecordedChecks.Cylinders(facts),
            Plugs = RecordedChecks.Plugs(facts),
            AfterWork = await AfterWork(db, facts, ct),
            ComebackOf = await db.Comebacks.Where(c => c.JobCardNumber == number).Select(c => (int?)c.OfJobCardNumber).SingleOrDefaultAsync(ct),
        };
        var words = await Said(db, document, arrived?.CheckIn, ct);
        foreach (var (name, text) in written)
        {
            words[name] = text;
        }

        foreach (var (name, text) in findings.Words)
        {
            words[name] = text;
        }

        db.IssuedRecords.Add(new IssuedRecord
        {
            JobCardNumber = number, IssuedAt = clock.GetCurrentInstant(), IssuedBy = actor.PersonId, IsLater = isLater, Document = document, Words = words,
        });
        await db.SaveChangesAsync(ct);
    }

    private static async Task<IReadOnlyList<RecordedCheck>> AfterWork(WorkshopDbContext db, SignOffFacts facts, CancellationToken ct)
    {
        var riders = facts.Finished.Rides.Select(r => r.RiderId).OfType<Guid>().ToHashSet();
        var names = riders.Count == 0 ? [] : await db.People.Where(p => riders.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name, ct);
        return RecordedChecks.AfterWork(facts, rider => names[rider]);
    }

    /// <summary>What people wrote beside what they saw.</summary>
    private static async Task<Dictionary<string, string>> Said(WorkshopDbContext db, ServiceRecord document, CheckIn? arrived, CancellationToken ct)
    {
        var names = document.Arrival.Concat(document.AfterWork).Select(c => c.RemarkId).OfType<Guid>().Distinct().ToDictionary(id => id, RecordWords.Said);
        if (arrived?.OwnersWordsRemarkId is { } owners)
        {
            names[owners] = RecordWords.OwnersWords;
        }

        if (arrived?.SeenOnArrivalRemarkId is { } seen)
        {
            names[seen] = RecordWords.SeenOnArrival;
        }

        Guid[] ids = [.. names.Keys];
        return ids.Length == 0
            ? new Dictionary<string, string>(StringComparer.Ordinal)
            : (await db.Remarks.AsNoTracking().Where(r => ids.Contains(r.Id) && r.Text != "").ToListAsync(ct)).ToDictionary(r => names[r.Id], r => r.Text, StringComparer.Ordinal);
    }

    private static async Task<RecordedMotorcycle> MotorcycleOf(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var card = open.Card;
        var motorcycle = await db.Motorcycles.AsNoTracking().SingleAsync(m => m.Id == card.MotorcycleId, ct);
        var engine = await (
            from e in db.Engines.AsNoTracking()
            join model in db.EngineModels on e.EngineModelId equals model.Id
            where e.Id == card.EngineId
            select new { e.SerialNumber, Model = $"{model.Maker} {model.Name}", model.Invented }).SingleAsync(ct);
        return new RecordedMotorcycle(
            motorcycle.Registration, motorcycle.Vin, motorcycle.Maker, motorcycle.Model, motorcycle.ModelYear, engine.Model, engine.SerialNumber, engine.Invented);
    }

    private static async Task<IReadOnlyList<RecordedItem>> Items(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var done = await db.DoneItems.Where(d => d.JobCardNumber == open.Card.Number).Select(d => d.ServiceItemCode).ToListAsync(ct);
        return [.. open.ItemsUnderWay.Select(i => new RecordedItem(i.Code, i.Name, done.Contains(i.Code)))];
    }

    private static async Task<IReadOnlyList<RecordedDrive>> Timing(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        if (open.Specification.CamDrives.Count == 0)
        {
            return [];
        }

        var rows = await TimingRows.Load(db, open.Card.Number, ct);
        return [.. open.Specification.CamDrives.Select(drive =>
        {
            var found = CamTimingView.Of(open.Specification, drive, Domain.Clearances.Stage.AsFound, rows);
            var left = CamTimingView.Of(open.Specification, drive, Domain.Clearances.Stage.AsLeft, rows);
            return new RecordedDrive(
                drive.Name,
                [.. found.Cams.Zip(left.Cams, (f, l) => new RecordedCam(f.Name, Said(f), Said(l))).Where(c => c.Found is not null || c.Left is not null)],
                found.Chain?.Words, left.Chain?.Words);
        }).Where(d => d.Cams.Count > 0 || d.Chain is not null || d.ChainLeft is not null)];

        static string? Said(CamTimingView.CamState cam) => cam.AlignmentPasses is null && cam.Lobes.Count == 0 ? null : cam.Words;
    }

    /// <summary>The documents of what the record states: of the specification as a whole, of limits and of torques.</summary>
    private static async Task<RecordedSpecification> Specification(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var version = await db.EngineModelVersions.Where(v => v.Id == open.Card.EngineModelVersionId).Select(v => v.Version).SingleAsync(ct);
        var stated = Domain.Kits.Opened.By(open.Specification, open.ItemsUnderWay).Fasteners.Select(f => f.Provenance)
            .Concat(open.Specification.Limits.Select(l => l.Provenance));
        return new RecordedSpecification(
            version, [.. stated.Prepend(open.Specification.Provenance).Select(p => p.Spoken()).Distinct(StringComparer.Ordinal)]);
    }
}
