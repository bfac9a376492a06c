using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>A new kind of shim for the stores: its sizes, and the box that holds them.</summary>
public static class AddShimSeries
{
    private const decimal SmallestStepMm = 0.005m;
    private const decimal LargestStepMm = 0.1m;
    private const decimal SmallestDiameterMm = 3;
    private const decimal LargestDiameterMm = 50;

    public sealed record Request
    {
        /// <summary>The stores' code; an engine model's specification names it.</summary>
        public string? PartCode { get; init; }

        public string? Name { get; init; }

        public ValveTrainKind? Seat { get; init; }

        public decimal? DiameterMm { get; init; }

        public decimal? SmallestMm { get; init; }

        public decimal? LargestMm { get; init; }

        public decimal? StepMm { get; init; }

        /// <summary>The box's name; a place of that name is made where there is none.</summary>
        public string? Box { get; init; }

        /// <summary>Compartments in a row of the box.</summary>
        public int? Columns { get; init; }

        /// <summary>Where the sizes are taken from.</summary>
        public string? Source { get; init; }
    }

    public sealed record Answer(string PartCode, int Sizes, string Box);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code").IsAtMost(Limits.Code);
            RuleFor(r => r.Name).IsGiven("what it is called").IsAtMost(Limits.Name);
            RuleFor(r => r.Seat).IsGiven("shimUnderBucket, shimOverBucket or shimUnderFingerFollower")
                .Must(s => s != ValveTrainKind.ScrewAndLocknut).WithMessage("seat is screwAndLocknut, which takes no shims.");
            RuleFor(r => r.DiameterMm).IsGiven("the diameter in mm").IsWithin(SmallestDiameterMm, LargestDiameterMm, 3, "mm");
            RuleFor(r => r.SmallestMm).IsGiven("the thinnest size in mm").IsShimThickness();
            RuleFor(r => r.LargestMm).IsGiven("the thickest size in mm").IsShimThickness()
                .Must((r, mm) => mm is null || r.SmallestMm is null || mm >= r.SmallestMm)
                .WithMessage((r, mm) => $"largestMm is {mm} mm: not below smallestMm ({r.SmallestMm} mm) is allowed.");
            RuleFor(r => r.StepMm).IsGiven("the step between sizes in mm").IsWithin(SmallestStepMm, LargestStepMm, 3, "mm");
            RuleFor(r => r.Box).IsGiven("the name of the box").IsAtMost(Limits.Name);
            RuleFor(r => r.Columns).IsGiven("how many compartments are in a row of the box")
                .IsWhole(ShimSeries.SmallestColumns, ShimSeries.LargestColumns);
            RuleFor(r => r.Source).IsGiven("where the sizes are taken from").IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var part = await db.Parts.SingleOrDefaultAsync(p => p.Code == request.PartCode, ct);
        if (part is not null && (part.Kind != PartKind.Shim || await db.ShimSeries.AnyAsync(s => s.PartId == part.Id, ct)))
        {
            return Problem.Conflict("part-exists", $"partCode is \"{part.Code}\": the stores have it already, {part.Name}.");
        }

        part ??= db.Parts.Add(new Part
        {
            Id = NewId.At(clock), Code = request.PartCode!, Name = request.Name!, Kind = PartKind.Shim, Unit = PartUnit.Piece,
            OuterDiameterMm = request.DiameterMm,
        }).Entity;
        var place = await db.StoragePlaces.SingleOrDefaultAsync(p => p.Name == request.Box, ct)
            ?? db.StoragePlaces.Add(new StoragePlace { Id = NewId.At(clock), Name = request.Box! }).Entity;
        var series = new ShimSeries
        {
            PartId = part.Id, Seat = request.Seat!.Value, DiameterMm = request.DiameterMm!.Value,
            Smallest = ShimThickness.FromMillimetres(request.SmallestMm!.Value), Largest = ShimThickness.FromMillimetres(request.LargestMm!.Value),
            StepMm = request.StepMm!.Value, PlaceId = place.Id, Columns = request.Columns!.Value, Source = request.Source!,
        };
        db.ShimSeries.Add(series);
        await db.SaveChangesAsync(ct);
        return new Answer(part.Code, BoxMap.Of(series).Compartments.Count, place.Name);
    }
}
