using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>A part that the stores did not know. Its code, kind and unit stay; shims come by their series.</summary>
public static class AddPart
{
    public sealed record Request : IPartFields
    {
        public string? Code { get; init; }

        public PartKind? Kind { get; init; }

        public PartUnit? Unit { get; init; }

        public string? Name { get; init; }

        public decimal? InnerDiameterMm { get; init; }

        public decimal? OuterDiameterMm { get; init; }

        public decimal? SectionMm { get; init; }

        public string? Material { get; init; }

        public string? Form { get; init; }

        public string? Designation { get; init; }

        public int? Hardness { get; init; }

        public bool FittedOnce { get; init; }

        public decimal? PackQuantity { get; init; }

        public int? ShelfLifeMonths { get; init; }

        public int? DeliveryDays { get; init; }

        public bool Stocked { get; init; } = true;
    }

    public sealed record Answer(string Code, string Name);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            Include(new PartFieldsValidator());
            RuleFor(r => r.Code).IsGiven("the stores' code of it").IsStockCode();
            RuleFor(r => r.Kind).IsGiven("what kind of part it is")
                .Must(k => k != PartKind.Shim).WithMessage("{PropertyName} is shim: shims come with their series, by diameter and form; add that under Shim box.");
            RuleFor(r => r.Unit).IsGiven("piece or millilitre");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await ReadCode.Of(db, request.Code!, ct) is not ScannedThing.Unknown || await db.StoragePlaces.AnyAsync(p => p.Code == request.Code, ct))
        {
            var sentence = $"code is \"{request.Code}\": a part, a package or a place has it, and a scanner could not tell them apart; choose another.";
            return Problem.Conflict("code-taken", sentence) with { Faults = [new FieldFault("code", sentence)] };
        }

        var part = new Part { Id = NewId.At(clock), Code = request.Code!, Name = request.Name!, Kind = request.Kind!.Value, Unit = request.Unit!.Value };
        PartFields.Set(part, request);
        db.Parts.Add(part);
        await db.SaveChangesAsync(ct);
        return new Answer(part.Code, part.Name);
    }
}
