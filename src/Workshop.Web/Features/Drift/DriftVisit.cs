using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Clearances;
using Workshop.Domain.Measures;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Drift;

/// <summary>A visit at which an engine was read, and whether its readings count.</summary>
/// <param name="ReadingId">One of its readings, which names it to <see cref="LeaveOutVisit"/>.</param>
/// <param name="JobCardNumber">Absent for old worksheets.</param>
/// <param name="EngineKm">What the engine had done.</param>
/// <param name="Readings">How many were taken, those that do not enter for reasons of their own included.</param>
/// <param name="LeftOut">Left out on a person's word.</param>
/// <param name="Decisions">Who left it out or took it in again, latest first.</param>
public sealed record DriftVisit(
    Guid ReadingId, int? JobCardNumber, LocalDate MeasuredOn, Distance EngineKm, int Readings, bool LeftOut,
    IReadOnlyList<DriftVisit.Decision> Decisions)
{
    public sealed record Decision(bool LeftOut, string By, Instant At, string Why);

    internal static async Task<IReadOnlyList<DriftVisit>> Load(
        WorkshopDbContext db, EngineDrift known, WorkshopTime time, CancellationToken ct)
    {
        var decided = (await (
                from visit in db.LeftOutVisits.AsNoTracking()
                join person in db.People on visit.DecidedBy equals person.Id
                join remark in db.Remarks on visit.ReasonRemarkId equals remark.Id
                where visit.EngineId == known.Engine.EngineId
                orderby visit.DecidedAt descending, visit.Id descending
                select new { visit.JobCardNumber, visit.OdometerReadingId, visit.LeftOut, person.Name, visit.DecidedAt, remark.Text }).ToListAsync(ct))
            .ToLookup(
                d => KeyOf(d.JobCardNumber, d.OdometerReadingId),
                d => new Decision(d.LeftOut, d.Name, d.DecidedAt, d.Text));
        return
        [
            .. known.Engine.Lobes
                .SelectMany(lobe => lobe.Legs.SelectMany(l => l.Readings).Select(r => (r.Reading, r.At))
                    .Concat(lobe.LeftOut.Select(o => (o.Reading, o.At))))
                .GroupBy(r => KeyOf(r.Reading.JobCardNumber, r.Reading.OdometerReadingId))
                .Select(visit => (First: visit.MinBy(r => (r.Reading.MeasuredAt, r.Reading.Id)), Readings: visit.Count(), Decisions: decided[visit.Key].ToList()))
                .OrderByDescending(v => v.First.At).ThenByDescending(v => v.First.Reading.MeasuredAt)
                .Select(v => Of(v.First.Reading, v.First.At, v.Readings, v.Decisions, time)),
        ];
    }

    private static DriftVisit Of(ClearanceReading first, Distance at, int readings, List<Decision> decisions, WorkshopTime time) => new(
        first.Id, first.JobCardNumber, time.DayOf(first.MeasuredAt), at, readings, decisions is [{ LeftOut: true }, ..], decisions);

    /// <summary>A card is a visit; without one the odometer reading is.</summary>
    private static (int?, Guid?) KeyOf(int? card, Guid odometerReading) => card is null ? (null, odometerReading) : (card, null);
}
