using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>One instrument: what it is, whether it may be used, its calibrations, and what happened to it.</summary>
public static class GetInstrument
{
    public sealed record Request(Guid Id);

    /// <param name="Against">Why it may not be used, in words that go on after its name; absent where it may.</param>
    /// <param name="Cycles">Torque wrenches: counted from ticks since the day of the last calibration.</param>
    /// <param name="CyclesAllowed">Torque wrenches: from one calibration to the next.</param>
    /// <param name="GoodFor">Torque wrenches: "5 to 25 N.m", not below a fifth of the rated maximum.</param>
    public sealed record Answer(
        Guid Id,
        InstrumentKind Kind,
        string Name,
        string SerialNumber,
        string Unit,
        decimal? RangeLowest,
        decimal? RangeHighest,
        decimal? Uncertainty,
        decimal? Graduation,
        decimal? LengthMm,
        string? Drive,
        int? CalibrationMonths,
        int? CalibrationCycles,
        LocalDate? CalibratedOn,
        LocalDate? CalibrationDueOn,
        InstrumentState State,
        bool MayBeUsed,
        string? Against,
        int? Cycles,
        int? CyclesAllowed,
        string? GoodFor,
        string Scale,
        string StateInWords,
        string CalibrationDueInWords,
        Guid? HolderId,
        string? Holder,
        IReadOnlyList<CalibrationLine> Calibrations,
        IReadOnlyList<EventLine> Events,
        uint RowVersion) : IHasVersion;

    public sealed record CalibrationLine(
        Guid Id, LocalDate DoneOn, LocalDate? DueOn, string Certificate, string Laboratory, decimal? Uncertainty, string EnteredBy, Instant EnteredAt);

    public sealed record EventLine(
        Guid Id, InstrumentEventKind Kind, Instant At, string EnteredBy, string? Holder, LocalDate? Until, string? Remark);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await (
            from instrument in db.Instruments.AsNoTracking()
            join person in db.People on instrument.HolderId equals person.Id into holders
            from holder in holders.DefaultIfEmpty()
            where instrument.Id == request.Id
            select new { I = instrument, Holder = (string?)holder!.Name, Version = EF.Property<uint>(instrument, MappingExtensions.RowVersion) })
            .SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound($"Instrument {request.Id}");
        }

        var (i, time) = (found.I, await WorkshopTimes.Read(db, ct));
        var today = time.DayOf(clock.GetCurrentInstant());
        var allowed = InstrumentStanding.CyclesOf(i);
        var cycles = (await WrenchesOnHand.Cycles(db, [i.Id], time, ct)).GetValueOrDefault(i.Id);
        var against = InstrumentStanding.ReasonAgainst(i, today, cycles);
        return new Answer(
            i.Id, i.Kind, i.Name, i.SerialNumber, i.Unit, i.RangeLowest, i.RangeHighest, i.Uncertainty, i.Graduation, i.LengthMm, i.Drive,
            i.CalibrationMonths, i.CalibrationCycles, i.CalibratedOn, InstrumentStanding.DueOn(i), i.State, against is null, against,
            allowed is null ? null : cycles, allowed, WrenchScale.Of(i)?.SayGoodRange(), i.Scale(), i.StateOn(today, cycles), i.CalibrationDue(today),
            i.HolderId, found.Holder, await Calibrations(db, i.Id, ct), await Events(db, i.Id, ct), found.Version);
    }

    private static Task<List<CalibrationLine>> Calibrations(WorkshopDbContext db, Guid id, CancellationToken ct) => (
        from calibration in db.Calibrations.AsNoTracking()
        join person in db.People on calibration.EnteredBy equals person.Id
        where calibration.InstrumentId == id
        orderby calibration.DoneOn descending, calibration.EnteredAt descending
        select new CalibrationLine(
            calibration.Id, calibration.DoneOn, calibration.DueOn, calibration.Certificate, calibration.Laboratory, calibration.Uncertainty,
            person.Name, calibration.EnteredAt)).ToListAsync(ct);

    private static Task<List<EventLine>> Events(WorkshopDbContext db, Guid id, CancellationToken ct) => (
        from happened in db.InstrumentEvents.AsNoTracking()
        join person in db.People on happened.EnteredBy equals person.Id
        join holder in db.People on happened.HolderId equals holder.Id into holders
        from holder in holders.DefaultIfEmpty()
        join remark in db.Remarks on happened.RemarkId equals remark.Id into remarks
        from remark in remarks.DefaultIfEmpty()
        where happened.InstrumentId == id
        orderby happened.At descending
        select new EventLine(
            happened.Id, happened.Kind, happened.At, person.Name, (string?)holder!.Name, happened.Until, (string?)remark!.Text)).ToListAsync(ct);
}
