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
using Workshop.Web.Features.Bookings;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

/// <summary>
/// A blade of a feeler set was held against a micrometer, or looked at: it stays in the set, or is withdrawn as bent or worn, with
/// why. A withdrawn blade that was straightened out as a mistake comes back by another check.
/// </summary>
public static class CheckBlade
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid BladeId { get; init; }

        /// <summary>As the micrometer reads it; empty where it was only looked at.</summary>
        public decimal? MeasuredMm { get; init; }

        public Guid? MicrometerId { get; init; }

        public bool Withdrawn { get; init; }

        /// <summary>Asked for where the blade is withdrawn, or comes back.</summary>
        public string? Remark { get; init; }
    }

    /// <param name="DeviationMm">Measured less nominal.</param>
    public sealed record Answer(Guid BladeId, decimal NominalMm, decimal? MeasuredMm, decimal? DeviationMm, bool Withdrawn);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.MeasuredMm).IsClearance();
            RuleFor(r => r.MicrometerId).IsGiven("the micrometer that measured it").When(r => r.MeasuredMm is not null);
            RuleFor(r => r.MicrometerId).Null().When(r => r.MeasuredMm is null)
                .WithMessage("micrometerId is given, but measuredMm is not; give what it reads, or leave both out.");
            RuleFor(r => r.Remark).IsGiven("what is wrong with the blade").When(r => r.Withdrawn).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from feeler_blades where id = {request.BladeId} for no key update", ct);
        if (await db.FeelerBlades.SingleOrDefaultAsync(b => b.Id == request.BladeId, ct) is not { } blade)
        {
            return Problem.NotFound($"Feeler blade {request.BladeId}");
        }

        var now = clock.GetCurrentInstant();
        if (request.MicrometerId is { } id)
        {
            var today = (await WorkshopTimes.Read(db, ct)).DayOf(now);
            var micrometer = await db.Instruments.AsNoTracking().SingleOrDefaultAsync(i => i.Id == id, ct);
            if (micrometer is not { Kind: InstrumentKind.Micrometer })
            {
                return Problem.Impossible("no-micrometer", "micrometerId",
                    $"micrometerId is {id}: no micrometer of the workshop has it; choose one of GET /api/v1/instruments?kind=micrometer.");
            }

            if (!micrometer.MayBeUsedOn(today))
            {
                return Problem.Impossible("micrometer-unfit", "micrometerId",
                    $"micrometerId: {micrometer.Name} ({micrometer.SerialNumber}) is {micrometer.StateOn(today)}; choose another.");
            }
        }

        if (blade.Withdrawn && !request.Withdrawn && string.IsNullOrWhiteSpace(request.Remark))
        {
            return Problem.Impossible("why-back", "remark", "remark is empty: the blade is withdrawn; say why it comes back into the set.");
        }

        Clearance? measured = request.MeasuredMm is { } mm ? Clearance.FromMillimetres(mm) : null;
        var remark = string.IsNullOrWhiteSpace(request.Remark)
            ? null
            : new Remark { Id = NewId.At(now), Text = request.Remark.Trim(), WrittenBy = actor.PersonId, WrittenAt = now };
        if (remark is not null)
        {
            db.Remarks.Add(remark);
        }

        db.BladeChecks.Add(new BladeCheck
        {
            Id = NewId.At(now), BladeId = blade.Id, Measured = measured, MicrometerId = request.MicrometerId, Withdrawn = request.Withdrawn,
            RemarkId = remark?.Id, CheckedBy = actor.PersonId, CheckedAt = now,
        });
        blade.Measured = measured ?? blade.Measured;
        blade.Withdrawn = request.Withdrawn;
        await db.SaveChangesAsync(ct);
        return new Answer(
            blade.Id, blade.Nominal.Millimetres, blade.Measured?.Millimetres, blade.Measured?.Millimetres - blade.Nominal.Millimetres, blade.Withdrawn);
    }
}
