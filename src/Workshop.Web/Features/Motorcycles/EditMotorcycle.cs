using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>Changes what is known of a motorcycle and its owner; the whole of it is sent, with the version that was read.</summary>
public static class EditMotorcycle
{
    public sealed record Request : IMotorcycleFields, IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Registration { get; init; }

        public string? Vin { get; init; }

        public string? Maker { get; init; }

        public string? Model { get; init; }

        public int? ModelYear { get; init; }

        /// <summary>Of the engine that is fitted now.</summary>
        public string? EngineSerialNumber { get; init; }

        /// <summary>Off the road for good, or gone elsewhere: no longer listed, due for nothing, its history kept.</summary>
        public bool Retired { get; init; }

        /// <summary>How it is ridden; who said so and when is kept.</summary>
        public RidingUse Use { get; init; }

        /// <summary>Codes of its engine model's options that are fitted; all of them, absent where there are none.</summary>
        public IReadOnlyList<string>? Options { get; init; }

        /// <summary>It changed hands: the owner below is another person. Else the owner's details are mended.</summary>
        public bool NewOwner { get; init; }

        public string? OwnerName { get; init; }

        public string? OwnerPhone { get; init; }

        public string? OwnerEmail { get; init; }
    }

    public sealed record Answer(Guid Id, uint RowVersion, IReadOnlyList<string> Warnings) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            Include(new MotorcycleFieldsValidator());
            RuleFor(r => r.EngineSerialNumber).IsAtMost(Limits.Name);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var motorcycle = await db.Motorcycles.FindAsync([request.Id], ct);
        if (motorcycle is null)
        {
            return Problem.NotFound($"Motorcycle {request.Id}");
        }

        if (await MotorcycleFields.Taken(db, request.Registration!, except: request.Id, ct) is { } taken)
        {
            return taken;
        }

        motorcycle.Registration = request.Registration!;
        motorcycle.Vin = MotorcycleFields.VinAsStored(request.Vin);
        motorcycle.Maker = request.Maker!;
        motorcycle.Model = request.Model!;
        motorcycle.ModelYear = request.ModelYear!.Value;
        motorcycle.Retired = request.Retired;
        if (motorcycle.Use != request.Use)
        {
            (motorcycle.Use, motorcycle.UseSaidBy, motorcycle.UseSaidAt) = (request.Use, actor.PersonId, clock.GetCurrentInstant());
        }

        if (await UnknownOptions(motorcycle, request, db, clock, ct) is { } unknown)
        {
            return unknown;
        }

        motorcycle.Options = [.. request.Options ?? []];
        await ChangeOwner(motorcycle, request, db, clock, ct);
        await ChangeEngineNumber(request, db, ct);

        // Owner and engine are rows of their own: the motorcycle's row is written in any case, so that its version covers all.
        var row = db.Entry(motorcycle);
        row.State = EntityState.Modified;
        var version = row.Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await DueRows.Rewrite(db, motorcycle.Id, clock, ct);
        return new Answer(motorcycle.Id, version.CurrentValue, MotorcycleFields.Warnings(motorcycle.Vin));
    }

    /// <summary>What is fitted already may stay, although another engine came in since.</summary>
    private static async Task<Problem?> UnknownOptions(
        Motorcycle motorcycle, Request request, WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        var today = (await WorkshopTimes.Read(db, ct)).DayOf(clock.GetCurrentInstant());
        var known = (await FittedEngine.On(db, motorcycle.Id, today, ct))?.Specification.Options.Select(o => o.Code).ToList() ?? [];
        var faults = (request.Options ?? []).Select((code, i) => (Code: code, Field: $"options[{i}]"))
            .Where(o => !known.Contains(o.Code) && !motorcycle.Options.Contains(o.Code))
            .Select(o => new FieldFault(o.Field, known.Count == 0
                ? $"{o.Field} is \"{o.Code}\": its engine model knows no options."
                : $"{o.Field} is \"{o.Code}\": the engine model has {string.Join(", ", known)}."))
            .ToList();
        return faults.Count == 0 ? null : Problem.Impossible("option-unknown", faults);
    }

    private static async Task ChangeOwner(
        Motorcycle motorcycle, Request request, WorkshopDbContext db, IClock clock, CancellationToken ct)
    {
        var owner = motorcycle.OwnerId is { } ownerId && !request.NewOwner
            ? await db.People.SingleAsync(p => p.Id == ownerId, ct)
            : null;
        if (string.IsNullOrWhiteSpace(request.OwnerName) || owner is null)
        {
            var other = MotorcycleFields.NewOwner(request, clock);
            if (other is not null)
            {
                db.People.Add(other);
            }

            motorcycle.OwnerId = other?.Id;
            return;
        }

        owner.Name = request.OwnerName;
        owner.Phone = request.OwnerPhone;
        owner.Email = request.OwnerEmail;
    }

    private static async Task ChangeEngineNumber(Request request, WorkshopDbContext db, CancellationToken ct)
    {
        var engine = await (
            from fitting in db.EngineFittings
            join fitted in db.Engines on fitting.EngineId equals fitted.Id
            where fitting.MotorcycleId == request.Id && fitting.RemovedOn == null
            select fitted).SingleOrDefaultAsync(ct);
        if (engine is not null)
        {
            engine.SerialNumber = request.EngineSerialNumber ?? "";
        }
    }
}
