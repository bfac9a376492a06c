using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>A shim that came out goes from the bench into its box, with the thickness that the micrometer reads now.</summary>
public static class PutShimAway
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        /// <summary>As the micrometer reads it, in mm; never the stamped figure.</summary>
        public decimal? ThicknessMm { get; init; }

        /// <summary>It was cleaned, dried, and measured with a micrometer that was zeroed first.</summary>
        public bool CleanedAndMeasured { get; init; }
    }

    public sealed record Answer(Guid Id, ShimThickness ThicknessMm, StockCondition Condition, string Place);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.ThicknessMm).IsGiven("what the micrometer reads, in mm").IsShimThickness();
            RuleFor(r => r.CleanedAndMeasured).Must(done => done).WithMessage(
                "cleanedAndMeasured is not confirmed: clean and dry the shim, zero the micrometer, measure, then confirm it.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ShimBoxes.ToMove(db, request.Id, ct)).TryGet(out var found, out var problem))
        {
            return problem;
        }

        var (shim, home) = found;
        if (shim.Where != ShimWhere.Bench)
        {
            return shim.Where == ShimWhere.Box
                ? Problem.Conflict("in-the-box", $"The shim of {shim.Thickness} is in the box already.")
                : ShimBoxes.NotAtHand(shim);
        }

        var measured = ShimThickness.FromMillimetres(request.ThicknessMm!.Value);
        if (UsedShims.IsWornOut(shim.Nominal, measured))
        {
            return Problem.Impossible("worn-out", "thicknessMm",
                $"thicknessMm is {measured}: more than {UsedShims.MostWearMm} mm below its size of {shim.Nominal}. Measure again; where it is so, scrap the shim as worn.");
        }

        var now = clock.GetCurrentInstant();
        await ShimLedger.Write(db,
        [
            new StockMovement
            {
                Id = NewId.At(now), PartId = shim.PartId, PlaceId = home, ShimId = shim.Id, Thickness = measured,
                Condition = shim.Condition, Kind = MovementKind.Returned, OnHandChange = 1, ReservedChange = 0,
                JobCardNumber = shim.BenchCardNumber, MovedBy = actor.PersonId, MovedAt = now,
            },
        ], ct);
        var place = await db.StoragePlaces.AsNoTracking().SingleAsync(p => p.Id == home, ct);
        var series = await db.ShimSeries.AsNoTracking().SingleOrDefaultAsync(s => s.PartId == shim.PartId, ct);
        return new Answer(shim.Id, measured, shim.Condition, ShimBoxes.Say(place.Name, place.Id, series, measured));
    }
}
