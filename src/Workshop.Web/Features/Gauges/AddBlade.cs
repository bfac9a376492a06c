using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Tooling;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

/// <summary>One blade more in a feeler set, by what is marked on it: in mm, or in inch where the set is an inch set.</summary>
public static class AddBlade
{
    private const decimal SmallestIn = 0.0004m;
    private const decimal LargestIn = 0.118m;

    public sealed record Request
    {
        [JsonIgnore]
        public Guid InstrumentId { get; init; }

        public decimal? NominalMm { get; init; }

        /// <summary>Of inch sets, instead of nominalMm: "0.004".</summary>
        public decimal? NominalIn { get; init; }
    }

    public sealed record Answer(Guid BladeId, decimal NominalMm);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.NominalMm).IsClearance();
            RuleFor(r => r.NominalMm).Must((r, mm) => (mm is null) != (r.NominalIn is null))
                .WithMessage("nominalMm and nominalIn: give one of the two, what is marked on the blade.");
            RuleFor(r => r.NominalIn).IsWithin(SmallestIn, LargestIn, 4, "in");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await db.Instruments.AsNoTracking().SingleOrDefaultAsync(i => i.Id == request.InstrumentId, ct) is not { Kind: InstrumentKind.FeelerSet } set)
        {
            return Problem.NotFound($"Feeler set {request.InstrumentId}");
        }

        var field = request.NominalMm is null ? "nominalIn" : "nominalMm";
        if ((set.Unit == "in") != (request.NominalIn is not null))
        {
            return Problem.Impossible("unit-differs", field, $"{field} is given, but {set.Name} ({set.SerialNumber}) is marked in {set.Unit}; give what stands on the blade.");
        }

        var nominal = request.NominalMm is { } mm ? Clearance.FromMillimetres(mm) : Clearance.FromInches(request.NominalIn!.Value);
        if (await db.FeelerBlades.AnyAsync(b => b.InstrumentId == set.Id && b.Nominal == nominal, ct))
        {
            return Problem.Conflict("blade-there", $"{set.Name} ({set.SerialNumber}) has a blade of {nominal} already.");
        }

        var blade = new FeelerBlade { Id = NewId.At(clock), InstrumentId = set.Id, Nominal = nominal };
        db.FeelerBlades.Add(blade);
        await db.SaveChangesAsync(ct);
        return new Answer(blade.Id, nominal.Millimetres);
    }
}
