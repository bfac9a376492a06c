using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// A part is not made any more, with or without one that takes its place; or it is again. What is there is used up; nothing more comes
/// in.
/// </summary>
public static class DiscontinuePart
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public string Code { get; init; } = "";

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public bool Discontinued { get; init; }

        /// <summary>The code of what takes its place, where there is such a part.</summary>
        public string? ReplacedBy { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.ReplacedBy).IsAtMost(Limits.Code);
            RuleFor(r => r.ReplacedBy).Empty().When(r => !r.Discontinued)
                .WithMessage("{PropertyName} is given, but the part is not discontinued; leave it empty.");
        }
    }

    public static async Task<Outcome<PartChanged>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PartToChange.Find(db, request.Code, request.RowVersion!.Value, ct)).TryGet(out var found, out var problem))
        {
            return problem;
        }

        var part = found.Part;
        Guid? replacement = null;
        if (!string.IsNullOrEmpty(request.ReplacedBy))
        {
            if (!(await PartsByCode.Find(db, request.ReplacedBy, "replacedBy", ct)).TryGet(out var other, out problem))
            {
                return problem;
            }

            string? why = other switch
            {
                _ when other.Id == part.Id => "the part itself; name another.",
                _ when other.Unit != part.Unit || other.Kind != part.Kind => "another kind of part, or kept in another unit.",
                _ when await LeadsBack(db, other.Id, part.Id, ct) => $"which is itself replaced by {part.Code} in the end.",
                _ => null,
            };
            if (why is not null)
            {
                return Problem.Impossible("replacement-unfit", "replacedBy", $"replacedBy is \"{request.ReplacedBy}\", {why}");
            }

            replacement = other.Id;
        }

        (part.Discontinued, part.ReplacedById) = (request.Discontinued, replacement);
        await db.SaveChangesAsync(ct);
        return new PartChanged(part.Code, part.Name, found.Version.CurrentValue);
    }

    private static async Task<bool> LeadsBack(WorkshopDbContext db, Guid from, Guid to, CancellationToken ct)
    {
        var seen = new HashSet<Guid>();
        for (Guid? at = from; at is { } id && seen.Add(id); at = await db.Parts.Where(p => p.Id == id).Select(p => p.ReplacedById).SingleAsync(ct))
        {
            if (id == to)
            {
                return true;
            }
        }

        return false;
    }
}
