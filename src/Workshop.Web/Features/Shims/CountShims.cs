using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>
/// What lies in a box is counted, size by size; a difference is explained and moves the ledger. Sizes that are left out are
/// not counted.
/// </summary>
public static class CountShims
{
    private const int MostLines = 1000;
    private const int MostOfOne = 500;

    public sealed record Request
    {
        public string? PartCode { get; init; }

        public IReadOnlyList<Line?>? Lines { get; init; }

        /// <summary>Why the box and the ledger differ; asked for where they do.</summary>
        public string? Reason { get; init; }
    }

    public sealed record Line
    {
        public decimal? ThicknessMm { get; init; }

        /// <summary>New where it is not given.</summary>
        public StockCondition? Condition { get; init; }

        /// <summary>Empty: not counted.</summary>
        public int? Counted { get; init; }

        /// <summary>What the ledger said when the count began; where it is given and has changed since, the count is refused.</summary>
        public int? Expected { get; init; }
    }

    public sealed record Answer(string PartCode, int Sizes, IReadOnlyList<Difference> Differences);

    public sealed record Difference(ShimThickness ThicknessMm, StockCondition Condition, int Expected, int Counted);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.PartCode).IsGiven("the stores' code of the shims").IsAtMost(Limits.Code);
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            RuleFor(r => r.Lines).Must(l => l?.Any(line => line?.Counted is not null) == true)
                .WithMessage("{PropertyName} is empty: give at least one size with what was counted.")
                .Must(l => l is null || l.Count <= MostLines).WithMessage($"{{PropertyName}} has more than the {MostLines} lines that are allowed.");
            RuleForEach(r => r.Lines).ChildRules(line =>
            {
                line.RuleFor(l => l!.ThicknessMm).IsGiven("the thickness in mm").When(l => l?.Counted is not null).IsShimThickness();
                line.RuleFor(l => l!.Counted).IsWhole(0, MostOfOne);
            });
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ShimBoxes.Locked(db, request.PartCode!, ct)).TryGet(out var box, out var problem))
        {
            return problem;
        }

        var counted = request.Lines!
            .Select((line, index) => (Path: $"lines[{index}]", Line: line))
            .Where(l => l.Line?.Counted is not null)
            .Select(l => (l.Path, Size: (Thickness: ShimThickness.FromMillimetres(l.Line!.ThicknessMm!.Value), Condition: l.Line.Condition ?? StockCondition.New), l.Line))
            .ToList();
        if (counted.GroupBy(c => c.Size).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            return Problem.Impossible("counted-twice", $"{twice.Last().Path}.thicknessMm",
                $"{twice.Last().Path}.thicknessMm is {twice.Key.Thickness}, {twice.Key.Condition.Spoken()}: it stands twice in this count; once is allowed.");
        }

        var (part, place) = (box.Part.Id, box.Place.Id);
        var there = (await db.Shims.AsNoTracking().Where(s => s.PartId == part && s.PlaceId == place).OrderBy(s => s.Id).ToListAsync(ct))
            .ToLookup(s => (s.Thickness, s.Condition));
        var moved = counted.Where(c => c.Line.Expected is { } expected && expected != there[c.Size].Count()).ToList();
        if (moved.Count > 0)
        {
            var faults = moved.Select(c => new FieldFault($"{c.Path}.counted",
                $"{c.Path}.counted of {c.Size.Thickness}, {c.Size.Condition.Spoken()}: {c.Line.Expected} when the count began, {there[c.Size].Count()} now. Count it again.")).ToList();
            return Problem.Conflict("moved-meanwhile", string.Join(" ", faults.Select(f => f.Sentence))) with { Faults = faults };
        }

        var differences = counted
            .Select(c => new Difference(c.Size.Thickness, c.Size.Condition, there[c.Size].Count(), c.Line.Counted!.Value))
            .Where(d => d.Expected != d.Counted).ToList();
        if (differences.Count > 0 && string.IsNullOrWhiteSpace(request.Reason))
        {
            var named = string.Join(", ", differences.Select(d => $"{d.ThicknessMm}, {d.Condition.Spoken()}: {d.Expected} by the ledger, {d.Counted} counted"));
            return Problem.Impossible("difference-unexplained", "reason", $"reason is empty: say why box and ledger differ ({named}).");
        }

        var now = clock.GetCurrentInstant();
        var remark = differences.Count == 0 ? null : new Remark
        {
            Id = NewId.At(now), Text = request.Reason!.Trim(), WrittenBy = actor.PersonId, WrittenAt = now,
        };
        if (remark is not null)
        {
            db.Remarks.Add(remark);
            await db.SaveChangesAsync(ct);
        }

        StockMovement Move(Guid shim, ShimThickness thickness, StockCondition condition, int change) => new()
        {
            Id = NewId.At(now), PartId = part, PlaceId = place, ShimId = shim, Thickness = thickness, Condition = condition,
            Kind = MovementKind.Counted, OnHandChange = change, ReservedChange = 0, ReasonRemarkId = remark!.Id,
            MovedBy = actor.PersonId, MovedAt = now,
        };
        await ShimLedger.Write(db, differences.SelectMany(d =>
        {
            var known = there[(d.ThicknessMm, d.Condition)].Select(s => s.Id).ToList();
            return d.Counted < d.Expected
                ? known.Skip(d.Counted).Select(id => Move(id, d.ThicknessMm, d.Condition, -1))
                : Enumerable.Range(0, d.Counted - d.Expected).Select(_ => Move(NewId.At(now), d.ThicknessMm, d.Condition, 1));
        }), ct);
        return new Answer(box.Part.Code, counted.Count, differences);
    }
}
