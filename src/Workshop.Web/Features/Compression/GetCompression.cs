using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Tooling;

namespace Workshop.Web.Features.Compression;

/// <summary>Compression and leak-down of a visit: why it is asked for, what is stated, what was measured, every entry, and earlier visits of the engine.</summary>
public static class GetCompression
{
    public sealed record Request(int Number);

    /// <param name="Because">What of the visit speaks for it; empty where nothing does.</param>
    /// <param name="Asked">Why the engine model holds the sign-off until it is measured; absent where it does not.</param>
    /// <param name="Waits">The card is open, and a cylinder is still to be measured for its sign-off.</param>
    /// <param name="Stated">In words; absent where the engine model states nothing.</param>
    /// <param name="Earlier">Newest first, as they were left, or found where nothing was measured as left.</param>
    public sealed record Answer(
        int Number, IReadOnlyList<string> Because, string? Asked, bool Waits, string? Stated, CompressionLimits? Limits,
        IReadOnlyList<CylinderView> AsFound, IReadOnlyList<CylinderView> AsLeft, IReadOnlyList<Entry> History, IReadOnlyList<Visit> Earlier);

    /// <param name="Instrument">Its name and serial number, with how it stood with its calibration on that day.</param>
    /// <param name="Counts">No later entry took its place.</param>
    public sealed record Entry(
        Guid Id, int Cylinder, CylinderTestMethod Method, Stage Stage, int Attempt, string Said, string How, string? Instrument, Instant MeasuredAt,
        string MeasuredBy, bool Counts, string? Reason);

    /// <param name="Stage">At which it was measured.</param>
    public sealed record Visit(int JobCardNumber, LocalDate Day, Stage Stage, int OdometerCount, string OdometerUnit, IReadOnlyList<CylinderView> Cylinders);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Find(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var specification = open.Specification;
        var facts = await SignOffCase.Gather(db, open, ct);
        var tight = AskedChecks.TightValves(specification, facts.Readings);
        var limits = specification.Compression;
        return new Answer(
            request.Number,
            CompressionAsked.Because(specification, facts.Readings, facts.Arrival),
            AskedChecks.Find(facts, VisitCheckKind.Compression)?.Because,
            open.Card.State == JobCardState.CheckedIn && new CompressionIsMeasured().Against(facts).Count > 0,
            limits?.Spoken(),
            limits,
            CylinderView.Of(CylinderFindings.Of(specification, facts.CylinderTests, Stage.AsFound, tight)),
            CylinderView.Of(CylinderFindings.Of(specification, facts.CylinderTests, Stage.AsLeft, [])),
            await History(db, request.Number, ct),
            await Earlier(db, open, ct));
    }

    private static async Task<IReadOnlyList<Entry>> History(WorkshopDbContext db, int number, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var rows = await (
            from test in db.CylinderTests.AsNoTracking()
            join person in db.People on test.MeasuredBy equals person.Id
            join instrument in db.Instruments.AsNoTracking() on test.InstrumentId equals instrument.Id into instruments
            from instrument in instruments.DefaultIfEmpty()
            join reason in db.Remarks on test.ReasonRemarkId equals reason.Id into reasons
            from reason in reasons.DefaultIfEmpty()
            where test.JobCardNumber == number
            orderby test.MeasuredAt, test.Cylinder, test.Method, test.Attempt
            select new { test, person.Name, instrument, Reason = reason.Text }).ToListAsync(ct);
        var superseded = rows.Select(r => r.test.SupersedesId).OfType<Guid>().ToHashSet();
        return [.. rows.Select(r => new Entry(
            r.test.Id, r.test.Cylinder, r.test.Method, r.test.Stage, r.test.Attempt, r.test.Spoken(), How(r.test),
            r.instrument is null ? null : InstrumentSaid.On(r.instrument, time.DayOf(r.test.MeasuredAt)),
            r.test.MeasuredAt, r.Name, !superseded.Contains(r.test.Id), r.Reason))];
    }

    private static string How(CylinderTest test) => test.Method == CylinderTestMethod.LeakDown
        ? $"engine {test.Warmth.Spoken()}"
        : $"engine {test.Warmth.Spoken()}, throttle {(test.ThrottleOpen ? "open" : "not open")}{(test.Tries is { } tries ? $", {tries} turns" : "")}";

    private static async Task<IReadOnlyList<Visit>> Earlier(WorkshopDbContext db, OpenCard open, CancellationToken ct)
    {
        var tests = await db.CylinderTests.AsNoTracking()
            .Where(t => t.EngineId == open.Card.EngineId && t.JobCardNumber != open.Card.Number
                && db.JobCards.Any(c => c.Number == t.JobCardNumber && c.StartsAt < open.Card.StartsAt)).ToListAsync(ct);
        var readings = tests.Select(t => t.OdometerReadingId).Distinct().ToList();
        var odometers = readings.Count == 0 ? []
            : await db.OdometerReadings.AsNoTracking().Where(r => readings.Contains(r.Id)).ToDictionaryAsync(r => r.Id, ct);
        return [.. tests.GroupBy(t => t.JobCardNumber)
            .Select(visit =>
            {
                var odometer = odometers[visit.First().OdometerReadingId];
                var stage = visit.Any(t => t.Stage == Stage.AsLeft) ? Stage.AsLeft : Stage.AsFound;
                return new Visit(visit.Key, odometer.ReadOn, stage, odometer.Count, odometer.Unit.Symbol(),
                    CylinderView.Of(CylinderFindings.Of(open.Specification, [.. visit], stage, [])));
            })
            .OrderByDescending(v => v.Day).ThenByDescending(v => v.JobCardNumber)];
    }
}
