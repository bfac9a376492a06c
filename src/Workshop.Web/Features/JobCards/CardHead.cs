using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Bookings;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;

namespace Workshop.Web.Features.JobCards;

/// <summary>
/// What stands on top of every page of a visit: which card, which motorcycle, by which specification, and the way to the
/// other stages. Shown by <c>&lt;partial name="_CardHead" model="Model.Head" /&gt;</c>.
/// </summary>
public sealed record CardHead
{
    public required JobCard Card { get; init; }

    public required string Registration { get; init; }

    /// <summary>Maker and model of the motorcycle.</summary>
    public required string Motorcycle { get; init; }

    /// <summary>Maker and name of the engine model.</summary>
    public required string EngineModel { get; init; }

    public required int SpecificationVersion { get; init; }

    public required Provenance Provenance { get; init; }

    /// <summary>The engine belongs to nothing real.</summary>
    public required bool Invented { get; init; }

    /// <summary>The specification says how the camshafts are driven and timed.</summary>
    public required bool HasCamDrives { get; init; }

    public required WorkshopTime Time { get; init; }

    /// <summary>The card's row version, for a form that changes it.</summary>
    public required uint RowVersion { get; init; }

    /// <summary>The stages of a visit, in the order in which they are done.</summary>
    public IReadOnlyList<(string Address, string Name)> Stages =>
    [
        ($"/job-cards/{Card.Number}", "Card"),
        ($"/job-cards/{Card.Number}/check-in", "Check-in"),
        ($"/job-cards/{Card.Number}/progress", "Progress"),
        ($"/job-cards/{Card.Number}/kit", "Kit"),
        ($"/job-cards/{Card.Number}/pick-list", "Pick list"),
        ($"/job-cards/{Card.Number}/torque-sheet", "Torque sheet"),
        ($"/job-cards/{Card.Number}/seals", "Seals"),
        ($"/job-cards/{Card.Number}/readings", "Readings"),
        ($"/job-cards/{Card.Number}/shims", "Shims"),
        ($"/job-cards/{Card.Number}/compression", "Compression"),
        ($"/job-cards/{Card.Number}/plugs", "Plugs"),
        .. HasCamDrives ? [($"/job-cards/{Card.Number}/cam-timing", "Cam timing")] : Array.Empty<(string, string)>(),
        ($"/job-cards/{Card.Number}/after-work", "After the work"),
        ($"/job-cards/{Card.Number}/findings", "Findings"),
        ($"/job-cards/{Card.Number}/estimate", "Estimate"),
        ($"/job-cards/{Card.Number}/sign-off", "Sign-off"),
        .. Card.State == JobCardState.SignedOff ? [($"/job-cards/{Card.Number}/record", "Record")] : Array.Empty<(string, string)>(),
        ($"/job-cards/{Card.Number}/papers", "Papers"),
    ];

    public static async Task<Outcome<CardHead>> Load(WorkshopDbContext db, int number, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(db);
        var found = await (
            from card in db.JobCards.AsNoTracking()
            join motorcycle in db.Motorcycles on card.MotorcycleId equals motorcycle.Id
            join version in db.EngineModelVersions on card.EngineModelVersionId equals version.Id
            join model in db.EngineModels on version.EngineModelId equals model.Id
            where card.Number == number
            select new
            {
                card, motorcycle, version, model, RowVersion = EF.Property<uint>(card, MappingExtensions.RowVersion),
            }).SingleOrDefaultAsync(ct);
        if (found is null)
        {
            return Problem.NotFound($"Job card {number}");
        }

        return new CardHead
        {
            Card = found.card,
            Registration = found.motorcycle.Registration,
            Motorcycle = $"{found.motorcycle.Maker} {found.motorcycle.Model}",
            EngineModel = $"{found.model.Maker} {found.model.Name}",
            SpecificationVersion = found.version.Version,
            Provenance = found.version.Specification.Provenance,
            Invented = found.model.Invented,
            HasCamDrives = found.version.Specification.CamDrives.Count > 0,
            Time = await WorkshopTimes.Read(db, ct),
            RowVersion = found.RowVersion,
        };
    }
}
