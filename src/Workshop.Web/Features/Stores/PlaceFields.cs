using FluentValidation;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Outcomes;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>What is typed about a place, new or changed.</summary>
public interface IPlaceFields
{
    string? Name { get; }

    string? Code { get; }

    int? WalkOrder { get; }
}

internal sealed class PlaceFieldsValidator : AbstractValidator<IPlaceFields>
{
    public const int LastOnAWalk = 100_000;

    public PlaceFieldsValidator()
    {
        RuleFor(r => r.Name).IsGiven("what the place is called").IsAtMost(Limits.Name);
        RuleFor(r => r.Code).IsStockCode();
        RuleFor(r => r.WalkOrder).IsWhole(0, LastOnAWalk);
    }
}

internal static class PlaceFields
{
    /// <summary>
    /// Refuses a name or a code that another place has, and a code that is a part's or a package's: one scan means one thing.
    /// </summary>
    public static async Task<Problem?> Taken(WorkshopDbContext db, IPlaceFields fields, Guid? except, CancellationToken ct)
    {
        var others = await db.StoragePlaces.AsNoTracking()
            .Where(p => p.Id != except && (p.Name == fields.Name || p.Code == fields.Code)).ToListAsync(ct);
        var faults = new List<FieldFault>();
        if (others.Any(p => p.Name == fields.Name))
        {
            faults.Add(new FieldFault("name", $"name is \"{fields.Name}\": another place is called that; choose another."));
        }

        if (others.FirstOrDefault(p => p.Code == fields.Code) is { } other)
        {
            faults.Add(new FieldFault("code", $"code is \"{fields.Code}\": {other.Name} has it; choose another."));
        }
        else if (!string.IsNullOrEmpty(fields.Code) && await ReadCode.IsOfPart(db, fields.Code, ct))
        {
            faults.Add(new FieldFault("code", $"code is \"{fields.Code}\": a part or a package has it, and a scanner could not tell them apart; choose another."));
        }

        return faults.Count == 0 ? null
            : Problem.Conflict("place-taken", string.Join(" ", faults.Select(f => f.Sentence))) with { Faults = faults };
    }
}
