using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>Takes a motorcycle into the books, with its engine, its odometer and its owner.</summary>
public static class AddMotorcycle
{
    public sealed record Request : IMotorcycleFields
    {
        public string? Registration { get; init; }

        public string? Vin { get; init; }

        public string? Maker { get; init; }

        public string? Model { get; init; }

        public int? ModelYear { get; init; }

        public Guid? EngineModelId { get; init; }

        public string? EngineSerialNumber { get; init; }

        public OdometerUnit OdometerUnit { get; init; }

        /// <summary>The day from which the engine and the odometer count; new machines start at zero then.</summary>
        public LocalDate? InServiceSince { get; init; }

        /// <summary>Somebody who owns another motorcycle here; name, phone and address are then left out.</summary>
        public Guid? OwnerId { get; init; }

        public string? OwnerName { get; init; }

        public string? OwnerPhone { get; init; }

        public string? OwnerEmail { get; init; }
    }

    public sealed record Answer(Guid Id, IReadOnlyList<string> Warnings);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            Include(new MotorcycleFieldsValidator());
            RuleFor(r => r.EngineModelId).IsGiven("the engine model that the motorcycle has");
            RuleFor(r => r.EngineSerialNumber).IsAtMost(Limits.Name);
            RuleFor(r => r.OwnerId).Null().When(r => !string.IsNullOrEmpty(r.OwnerName))
                .WithMessage("{PropertyName} is given beside an owner's name: give one or the other.");
            RuleFor(r => r.InServiceSince).IsGiven("the day on which it was first used, or the best guess");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var engineModel = await db.EngineModels.FindAsync([request.EngineModelId], ct);
        if (engineModel is null)
        {
            return Problem.Impossible("engine-model-unknown", "engineModelId",
                $"engineModelId is {request.EngineModelId}: no engine model has it; choose one of GET /api/v1/engine-models.");
        }

        if (await MotorcycleFields.Taken(db, request.Registration!, except: null, ct) is { } taken)
        {
            return taken;
        }

        if (request.OwnerId is { } known && !await db.People.AnyAsync(p => p.Id == known && !p.IsStaff && p.ErasedAt == null, ct))
        {
            return Problem.Impossible("owner-unknown", "ownerId", $"ownerId is {known}: no customer has it.");
        }

        var since = request.InServiceSince!.Value;
        var owner = MotorcycleFields.NewOwner(request, clock);
        var motorcycle = new Motorcycle
        {
            Id = NewId.At(clock),
            Registration = request.Registration!,
            Vin = MotorcycleFields.VinAsStored(request.Vin),
            Maker = request.Maker!,
            Model = request.Model!,
            ModelYear = request.ModelYear!.Value,
            OwnerId = request.OwnerId ?? owner?.Id,
        };
        var engine = new Engine
        {
            Id = NewId.At(clock),
            EngineModelId = engineModel.Id,
            SerialNumber = request.EngineSerialNumber ?? "",
        };
        if (owner is not null)
        {
            db.People.Add(owner);
        }

        db.Motorcycles.Add(motorcycle);
        db.Engines.Add(engine);
        db.EngineFittings.Add(new EngineFitting
        {
            Id = NewId.At(clock), EngineId = engine.Id, MotorcycleId = motorcycle.Id, FittedOn = since,
        });
        db.Odometers.Add(new Odometer
        {
            Id = NewId.At(clock), MotorcycleId = motorcycle.Id, Unit = request.OdometerUnit, FittedOn = since,
        });
        await ForecastRows.Rewrite(db, engine.Id, clock, ct);
        await DueRows.Rewrite(db, motorcycle.Id, clock, ct);
        return new Answer(motorcycle.Id, MotorcycleFields.Warnings(request.Vin));
    }
}
