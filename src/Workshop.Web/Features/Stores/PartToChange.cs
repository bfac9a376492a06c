using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Workshop.Domain.Outcomes;
using Workshop.Domain.Stores;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>A part's own row to be changed, by its own code: a part that was merged is not changed any more.</summary>
internal sealed record PartToChange(Part Part, PropertyEntry<Part, uint> Version)
{
    /// <param name="version">That the caller saw; a row that has another by then is refused as it is saved.</param>
    public static async Task<Outcome<PartToChange>> Find(WorkshopDbContext db, string code, uint version, CancellationToken ct)
    {
        await db.Database.ExecuteSqlAsync($"select 1 from parts where code = {code} for no key update", ct);
        var part = await db.Parts.SingleOrDefaultAsync(p => p.Code == code, ct);
        if (part is null)
        {
            return Problem.NotFound($"Part {code}");
        }

        if (part.MergedIntoId is { } other)
        {
            var survivor = await db.Parts.Where(p => p.Id == other).Select(p => p.Code).SingleAsync(ct);
            return Problem.Conflict("part-merged", $"{part.Code} was merged into {survivor}; change that one.");
        }

        // What belongs to it (codes, alternatives) is in rows of its own: its row is written in any case, so that its version covers all.
        var row = db.Entry(part);
        row.State = EntityState.Modified;
        var property = row.Property<uint>(MappingExtensions.RowVersion);
        property.OriginalValue = version;
        return new PartToChange(part, property);
    }
}

/// <summary>A part was changed.</summary>
public sealed record PartChanged(string Code, string Name, uint RowVersion) : Http.IHasVersion;
