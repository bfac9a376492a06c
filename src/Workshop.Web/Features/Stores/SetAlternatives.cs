using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Which parts do the same work: the whole list. It holds in both directions, however it was entered.</summary>
public static class SetAlternatives
{
    private const int Most = 50;

    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public string Code { get; init; } = "";

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        /// <summary>Lines without a part are left out.</summary>
        public IReadOnlyList<Alternative?>? Alternatives { get; init; }
    }

    public sealed record Alternative
    {
        public string? PartCode { get; init; }

        /// <summary>What is to be kept in mind.</summary>
        public string? Note { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Alternatives).Must(p => p is null || p.Count <= Most).WithMessage($"{{PropertyName}} has more than the {Most} lines that are allowed.");
            RuleForEach(r => r.Alternatives).ChildRules(alternative =>
            {
                alternative.RuleFor(a => a!.PartCode).IsAtMost(Limits.Code);
                alternative.RuleFor(a => a!.Note).IsAtMost(Limits.Name);
            });
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
        var lines = (request.Alternatives ?? []).Select((a, index) => (Path: $"alternatives[{index}].partCode", Line: a))
            .Where(a => !string.IsNullOrEmpty(a.Line?.PartCode)).ToList();
        var parts = await PartsByCode.Read(db, [.. lines.Select(l => l.Line!.PartCode!)], ct);
        var faults = new List<FieldFault>();
        var wanted = new Dictionary<Guid, string?>();
        foreach (var (path, line) in lines)
        {
            string? why = !parts.TryGetValue(line!.PartCode!, out var other) ? "no part has it; choose one of GET /api/v1/stock."
                : other.Id == part.Id ? "the part itself; name another."
                : other.Unit != part.Unit ? $"{other.Name}, kept by the {other.Unit.Spoken()} and not by the {part.Unit.Spoken()}."
                : !wanted.TryAdd(other.Id, string.IsNullOrWhiteSpace(line.Note) ? null : line.Note.Trim()) ? "it stands twice; once is allowed."
                : null;
            if (why is not null)
            {
                faults.Add(new FieldFault(path, $"{path} is \"{line.PartCode}\": {why}"));
            }
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("alternative-unfit", faults);
        }

        var standing = await db.PartAlternatives.Where(a => a.PartId == part.Id || a.AlternativeId == part.Id).ToListAsync(ct);
        Guid OtherOf(PartAlternative row) => row.PartId == part.Id ? row.AlternativeId : row.PartId;
        db.PartAlternatives.RemoveRange(standing.Where(a => !wanted.ContainsKey(OtherOf(a))));
        foreach (var (other, note) in wanted)
        {
            var rows = standing.Where(a => OtherOf(a) == other).ToList();
            rows.ForEach(row => row.Note = note);
            if (rows.Count == 0)
            {
                db.PartAlternatives.Add(new PartAlternative { PartId = part.Id, AlternativeId = other, Note = note });
            }
        }

        await db.SaveChangesAsync(ct);
        return new PartChanged(part.Code, part.Name, found.Version.CurrentValue);
    }
}
