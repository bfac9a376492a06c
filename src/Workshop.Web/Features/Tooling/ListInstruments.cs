using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>Instruments by name, with calibration, state and holder; of a feeler set its blades.</summary>
public static class ListInstruments
{
    public sealed record Request(string? After = null, int? Take = null, string? Kind = null);

    /// <param name="MayBeUsed">Nothing stands against it on the workshop's day: away, overdue, dropped, overloaded.</param>
    /// <param name="Cycles">Torque wrenches: counted from ticks since the day of the last calibration.</param>
    /// <param name="CyclesAllowed">Torque wrenches: from one calibration to the next.</param>
    public sealed record Row(
        Guid Id,
        InstrumentKind Kind,
        string Name,
        string SerialNumber,
        string Unit,
        decimal? RangeLowest,
        decimal? RangeHighest,
        decimal? Uncertainty,
        LocalDate? CalibratedOn,
        LocalDate? CalibrationDueOn,
        InstrumentState State,
        bool MayBeUsed,
        int? Cycles,
        int? CyclesAllowed,
        string? Holder,
        string Scale,
        string StateInWords,
        string CalibrationDueInWords,
        IReadOnlyList<Blade> Blades);

    /// <param name="MeasuredMm">By micrometer, where it was checked.</param>
    public sealed record Blade(Guid Id, decimal NominalMm, decimal? MeasuredMm, bool Withdrawn);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.Kind).IsWordOf<Request, InstrumentKind>();
            RuleFor(r => r.After).Must(after => after is null || TryRead(after, out _, out _))
                .WithMessage("{PropertyName} is \"{PropertyValue}\": send back what the page before gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var time = await WorkshopTimes.Read(db, ct);
        var today = time.DayOf(clock.GetCurrentInstant());
        var instruments = db.Instruments.AsNoTracking();
        if (Words.Read<InstrumentKind>(request.Kind) is { } kind)
        {
            instruments = instruments.Where(i => i.Kind == kind);
        }

        if (request.After is { } after && TryRead(after, out var id, out var name))
        {
            instruments = instruments.Where(i =>
                EF.Functions.GreaterThan(ValueTuple.Create(i.Name, i.Id), ValueTuple.Create(name, id)));
        }

        var slice = await (
            from instrument in instruments.OrderBy(i => i.Name).ThenBy(i => i.Id)
            join person in db.People on instrument.HolderId equals person.Id into holders
            from holder in holders.DefaultIfEmpty()
            select new { instrument, Holder = (string?)holder!.Name }).ToSlice(request.Take, r => Write(r.instrument), ct);
        var sets = slice.Rows.Select(r => r.instrument.Id).ToList();
        var blades = (await db.FeelerBlades.AsNoTracking().Where(b => sets.Contains(b.InstrumentId))
            .OrderBy(b => b.Nominal).ToListAsync(ct)).ToLookup(b => b.InstrumentId);
        var cycles = await WrenchesOnHand.Cycles(db, sets, time, ct);
        return new Slice<Row>(
            [.. slice.Rows.Select(r => RowOf(r.instrument, r.Holder, blades[r.instrument.Id], cycles.GetValueOrDefault(r.instrument.Id), today))],
            slice.Next);
    }

    private static Row RowOf(Instrument i, string? holder, IEnumerable<FeelerBlade> blades, int cycles, LocalDate today) => new(
        i.Id, i.Kind, i.Name, i.SerialNumber, i.Unit, i.RangeLowest, i.RangeHighest, i.Uncertainty, i.CalibratedOn, InstrumentStanding.DueOn(i),
        i.State, InstrumentStanding.ReasonAgainst(i, today, cycles) is null, InstrumentStanding.CyclesOf(i) is null ? null : cycles,
        InstrumentStanding.CyclesOf(i), holder, i.Scale(), i.StateOn(today, cycles), i.CalibrationDue(today),
        [.. blades.Select(b => new Blade(b.Id, b.Nominal.Millimetres, b.Measured?.Millimetres, b.Withdrawn))]);

    private static string Write(Instrument instrument) => $"{instrument.Id}_{instrument.Name}";

    private static bool TryRead(string after, out Guid id, out string name)
    {
        (id, name) = (default, "");
        if (after.Split('_', 2) is not [var first, var rest] || !Guid.TryParse(first, out id))
        {
            return false;
        }

        name = rest;
        return true;
    }
}
