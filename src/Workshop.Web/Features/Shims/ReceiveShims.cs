using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>New shims of one size come in and go into their box.</summary>
public static class ReceiveShims
{
    public sealed record Request
    {
        public string? PartCode { get; init; }

        /// <summary>The size as sold, in mm.</summary>
        public decimal? NominalMm { get; init; }

        /// <summary>As the micrometer reads it; one reading for all of the size, so measure each and send them apart where they differ.</summary>
        public decimal? ThicknessMm { get; init; }

        public int? Quantity { get; init; }
    }

    /// <param name="Compartment">Where they go; absent where the box has none for the size.</param>
    public sealed record Answer(string PartCode, ShimThickness ThicknessMm, int Quantity, string Place, string? Compartment, IReadOnlyList<Guid> ShimIds);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of the shims").IsAtMost(Limits.Code);
            RuleFor(r => r.ThicknessMm).IsGiven("what the micrometer reads, in mm").IsShimThickness();
            RuleFor(r => r.NominalMm).IsShimThickness();
            RuleFor(r => r.Quantity).IsGiven("how many came in").IsWhole(1, ReceiptRules.MostShims);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ShimBoxes.Named(db, request.PartCode!, ct)).TryGet(out var box, out var problem))
        {
            return problem;
        }

        if (ReceiptRules.Refuse(box.Part, request.Quantity!.Value, request.ThicknessMm) is { } refused)
        {
            return refused;
        }

        var thickness = ShimThickness.FromMillimetres(request.ThicknessMm!.Value);
        ShimThickness? nominal = request.NominalMm is { } mm ? ShimThickness.FromMillimetres(mm) : null;
        if (nominal is { } size && decimal.Abs(size - thickness) > box.Series.StepMm)
        {
            return Problem.Impossible("not-its-size", "thicknessMm",
                $"thicknessMm is {thickness}, but the size is {size}: more than a step of the series ({box.Series.StepMm:0.###} mm) apart. Zero the micrometer and measure again, or leave nominalMm out.");
        }

        var movements = ShimLedger.Receipt(
            box.Part.Id, box.Series.PlaceId, thickness, nominal, request.Quantity.Value, actor.PersonId, clock.GetCurrentInstant());
        await ShimLedger.Write(db, movements, ct);
        return new Answer(
            box.Part.Code, thickness, movements.Count, box.Place.Name,
            ShimBoxes.CompartmentOf(box.Place.Id, box.Series, thickness)?.Address, [.. movements.Select(m => m.ShimId!.Value)]);
    }
}
