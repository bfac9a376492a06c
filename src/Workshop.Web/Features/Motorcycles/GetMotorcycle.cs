using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Intervals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Measures;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Motorcycles;

/// <summary>A motorcycle with its whole history, newest first.</summary>
public static class GetMotorcycle
{
    public sealed record Request(Guid Id);

    public sealed record Answer : IHasVersion
    {
        public required Guid Id { get; init; }

        public required uint RowVersion { get; init; }

        public required string Registration { get; init; }

        public string? Vin { get; init; }

        /// <summary>What to look at again in the number; it is never refused.</summary>
        public required IReadOnlyList<string> VinWarnings { get; init; }

        public required string Maker { get; init; }

        public required string Model { get; init; }

        public required int ModelYear { get; init; }

        public required bool Retired { get; init; }

        public Owner? Owner { get; init; }

        /// <summary>The unit of the odometer that it has now.</summary>
        public required OdometerUnit OdometerUnit { get; init; }

        /// <summary>How far it is ridden in a year, and what that rests on.</summary>
        public required Riding Riding { get; init; }

        /// <summary>How it is ridden, where its maker shortens intervals for that.</summary>
        public required RidingUse Use { get; init; }

        public string? UseSaidBy { get; init; }

        public Instant? UseSaidAt { get; init; }

        /// <summary>Codes of its engine model's options that are fitted.</summary>
        public required IReadOnlyList<string> Options { get; init; }

        public required IReadOnlyList<Fitting> Engines { get; init; }

        public required IReadOnlyList<Instrument> Odometers { get; init; }

        public required IReadOnlyList<Reading> OdometerReadings { get; init; }

        public required IReadOnlyList<Done> DoneItems { get; init; }

        public required IReadOnlyList<Card> JobCards { get; init; }

        public required IReadOnlyList<Change> PartChanges { get; init; }

        /// <summary>The latest reading that stands.</summary>
        [JsonIgnore]
        public Reading? LastReading => OdometerReadings.FirstOrDefault(r => r.SupersededById is null && !r.Overruled);

        [JsonIgnore]
        public Fitting? Engine => Engines.FirstOrDefault(e => e.RemovedOn is null);
    }

    /// <param name="Phone">For those who book only, as the e-mail address is.</param>
    public sealed record Owner(Guid Id, string Name, string? Phone, string? Email);

    /// <param name="Basis">Own readings, one stretch, or a usual rate.</param>
    public sealed record Riding(
        [property: JsonPropertyName("kmPerYear")] Distance PerYear,
        [property: JsonPropertyName("slowestKmPerYear")] Distance Slowest,
        [property: JsonPropertyName("fastestKmPerYear")] Distance Fastest,
        RateBasis Basis);

    /// <param name="MotorcycleDistance">What the motorcycle had done when the engine went in.</param>
    /// <param name="EngineDistance">What the engine had done when it went in.</param>
    /// <param name="ClearanceReadings">How many readings of its valves there are.</param>
    public sealed record Fitting(
        Guid EngineId,
        Guid EngineModelId,
        string EngineModel,
        bool Invented,
        string SerialNumber,
        LocalDate FittedOn,
        LocalDate? RemovedOn,
        [property: JsonPropertyName("motorcycleKm")] Distance MotorcycleDistance,
        [property: JsonPropertyName("engineKm")] Distance EngineDistance,
        int ClearanceReadings);

    /// <param name="Offset">What the motorcycle had done when this instrument showed zero.</param>
    public sealed record Instrument(
        Guid Id, OdometerUnit Unit, LocalDate FittedOn, LocalDate? RemovedOn, [property: JsonPropertyName("offsetKm")] Distance Offset);

    /// <param name="Odometer">Whole units, as typed.</param>
    /// <param name="SupersededById">The correction that stands in its place.</param>
    /// <param name="Reason">Why it corrects an earlier one, or is right though it looks like a slip.</param>
    public sealed record Reading(
        Guid Id,
        LocalDate ReadOn,
        int Odometer,
        OdometerUnit Unit,
        [property: JsonPropertyName("distanceKm")] Distance Distance,
        int? JobCardNumber,
        Guid? SupersedesId,
        Guid? SupersededById,
        string? Reason,
        string EnteredBy,
        Instant EnteredAt)
    {
        /// <summary>A reading that was entered later and confirmed contradicts it.</summary>
        public bool Overruled { get; init; }
    }

    public sealed record Done(
        string Code, LocalDate DoneOn, [property: JsonPropertyName("distanceKm")] Distance Distance, int? JobCardNumber, string DoneBy)
    {
        /// <summary>As the engine model names it now; the code where it no longer does.</summary>
        public string Name { get; init; } = Code;
    }

    /// <param name="ComebackOf">The earlier visit because of which it came; absent where it came for itself.</param>
    public sealed record Card(int Number, JobCardState State, Instant StartsAt, Instant EndsAt, int? ComebackOf, string? ComebackReason);

    public sealed record Change(
        Guid Id,
        Guid EngineId,
        ValvePart Part,
        PartChangeKind Kind,
        ValveKey? Valve,
        LocalDate ChangedOn,
        [property: JsonPropertyName("distanceKm")] Distance Distance,
        int? JobCardNumber,
        string? Remark,
        string EnteredBy);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var found = await (
            from motorcycle in db.Motorcycles.AsNoTracking()
            join person in db.People on motorcycle.OwnerId equals person.Id into owners
            from owner in owners.DefaultIfEmpty()
            where motorcycle.Id == request.Id
            select new { motorcycle, owner, RowVersion = EF.Property<uint>(motorcycle, MappingExtensions.RowVersion) })
            .SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound($"Motorcycle {request.Id}");
        }

        var history = new MotorcycleHistory(db, request.Id);
        var engines = await history.Engines(ct);
        var odometers = await history.Odometers(ct);
        var known = (await Intervals.Odometers.Load(db, [request.Id], ct))[request.Id];
        var counting = known.Standing.Readings.Select(r => r.Id).ToHashSet();
        var readings = (await history.OdometerReadings(ct))
            .ConvertAll(r => r with { Overruled = r.SupersededById is null && !counting.Contains(r.Id) });
        return new Answer
        {
            Id = found.motorcycle.Id,
            RowVersion = found.RowVersion,
            Registration = found.motorcycle.Registration,
            Vin = found.motorcycle.Vin,
            VinWarnings = MotorcycleFields.Warnings(found.motorcycle.Vin),
            Maker = found.motorcycle.Maker,
            Model = found.motorcycle.Model,
            ModelYear = found.motorcycle.ModelYear,
            Retired = found.motorcycle.Retired,
            Owner = found.owner is null ? null : Policies.SeesContactData(actor)
                ? new Owner(found.owner.Id, found.owner.Name, found.owner.Phone, found.owner.Email)
                : new Owner(found.owner.Id, found.owner.Name, null, null),
            OdometerUnit = odometers[0].Unit,
            Riding = RidingOf(RidingRate.Of(known.Track, await FleetRidings.Current(db, ct))),
            Use = found.motorcycle.Use,
            UseSaidBy = await db.People.Where(p => p.Id == found.motorcycle.UseSaidBy).Select(p => p.Name).SingleOrDefaultAsync(ct),
            UseSaidAt = found.motorcycle.UseSaidAt,
            Options = found.motorcycle.Options,
            Engines = engines,
            Odometers = odometers,
            OdometerReadings = readings,
            DoneItems = await history.DoneItems(engines, ct),
            JobCards = await history.JobCards(ct),
            PartChanges = await history.PartChanges([.. engines.Select(e => e.EngineId)], ct),
        };
    }

    private static Riding RidingOf(RidingRate rate) => new(
        RidingRate.Yearly(rate.PerDay), RidingRate.Yearly(rate.Slowest), RidingRate.Yearly(rate.Fastest), rate.Basis);
}
