using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>One instrument more, of any kind. Its calibration is recorded by its certificate; a wrench is not offered before.</summary>
public static class AddInstrument
{
    public sealed record Request : IInstrumentFields
    {
        public InstrumentKind? Kind { get; init; }

        /// <summary>Of its scale: mm, in, N.m, lbf.ft, lbf.in, kgf.m, kgf.cm, °C, degree. Stays as it is.</summary>
        public string? Unit { get; init; }

        public string? Name { get; init; }

        public string? SerialNumber { get; init; }

        public decimal? RangeLowest { get; init; }

        public decimal? RangeHighest { get; init; }

        public decimal? Uncertainty { get; init; }

        public decimal? Graduation { get; init; }

        public decimal? LengthMm { get; init; }

        public string? Drive { get; init; }

        public int? CalibrationMonths { get; init; }

        public int? CalibrationCycles { get; init; }
    }

    public sealed record Answer(Guid Id);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Kind).IsChosen("what it is", InstrumentWords.Spoken);
            RuleFor(r => r.Unit).IsGiven("the unit of its scale").IsAtMost(Limits.Unit);
            Include(new InstrumentFieldsValidator());
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var instrument = new Instrument { Id = NewId.At(clock), Kind = request.Kind!.Value, Name = "", SerialNumber = "", Unit = request.Unit! };
        instrument.Take(request);
        if (InstrumentRules.Faults(instrument) is { Count: > 0 } faults)
        {
            return Problem.Impossible("instrument", faults);
        }

        if (await InstrumentLock.SerialTaken(db, instrument, ct) is { } taken)
        {
            return taken;
        }

        db.Instruments.Add(instrument);
        await db.SaveChangesAsync(ct);
        return new Answer(instrument.Id);
    }
}
