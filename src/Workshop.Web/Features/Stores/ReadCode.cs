using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Paper;

namespace Workshop.Web.Features.Stores;

/// <summary>What a scanned code means: a place, a part, or a package of a part.</summary>
public static class ReadCode
{
    public sealed record Request(string Code);

    /// <param name="PlaceCode">Of a place; absent of a part.</param>
    /// <param name="PartCode">Of a part, the surviving one where the code is of one that was merged.</param>
    /// <param name="PackageQuantity">What one such package holds, in the part's unit; 1 for the part's own code.</param>
    public sealed record Answer(string Code, string? PlaceCode, string? PartCode, string Name, PartUnit? Unit, decimal? PackageQuantity);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct) =>
        await Of(db, PaperAddress.CodeIn(request.Code), ct) switch
        {
            ScannedThing.OfPlace { Code: var place } => new Answer(
                request.Code, place, null, await db.StoragePlaces.Where(p => p.Code == place).Select(p => p.Name).SingleAsync(ct), null, null),
            ScannedThing.OfPart part => new Answer(request.Code, null, part.Part.Code, part.Part.Name, part.Part.Unit, part.Package),
            _ => Problem.NotFound($"A place, a part or a package with the code \"{request.Code}\""),
        };

    internal static async Task<ScannedThing> Of(WorkshopDbContext db, string code, CancellationToken ct)
    {
        if (await db.StoragePlaces.AnyAsync(p => p.Code == code && !p.Retired, ct))
        {
            return new ScannedThing.OfPlace(code);
        }

        if ((await PartsByCode.Read(db, [code], ct)).TryGetValue(code, out var part))
        {
            return new ScannedThing.OfPart(part, 1);
        }

        var package = await db.PartScanCodes.AsNoTracking().Where(c => c.Code == code)
            .Join(db.Parts.AsNoTracking(), c => c.PartId, p => p.Id, (c, p) => new { Part = p, c.Quantity }).SingleOrDefaultAsync(ct);
        return package is null ? new ScannedThing.Unknown() : new ScannedThing.OfPart(package.Part, package.Quantity);
    }

    /// <summary>Whether a part or a package has it.</summary>
    internal static async Task<bool> IsOfPart(WorkshopDbContext db, string code, CancellationToken ct) =>
        await db.Parts.AnyAsync(p => p.Code == code, ct) || await db.PartScanCodes.AnyAsync(c => c.Code == code, ct);
}
