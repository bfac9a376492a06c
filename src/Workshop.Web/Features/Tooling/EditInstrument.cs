using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Tooling;

/// <summary>
/// Changes what is known of an instrument; the whole of it is sent, with the version that was read. Kind and unit stay, since what was
/// measured with it is in that unit: one that was entered wrong is withdrawn and entered anew.
/// </summary>
public static class EditInstrument
{
    public sealed record Request : IInstrumentFields, IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

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

    public sealed record Answer(Guid Id, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new InstrumentFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await InstrumentLock.Take(db, request.Id, ct)).TryGet(out var instrument, out var problem))
        {
            return problem;
        }

        instrument.Take(request);
        if (InstrumentRules.Faults(instrument) is { Count: > 0 } faults)
        {
            return Problem.Impossible("instrument", faults);
        }

        if (await InstrumentLock.SerialTaken(db, instrument, ct) is { } taken)
        {
            return taken;
        }

        return new Answer(instrument.Id, await InstrumentLock.Save(db, instrument, request.RowVersion!.Value, ct));
    }
}
