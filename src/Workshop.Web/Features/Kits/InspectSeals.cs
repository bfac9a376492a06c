using System.Globalization;
using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Kits;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Kits;

/// <summary>
/// Somebody looked at old seals and says which go back in and for which new ones were taken. What was said of a seal before is
/// superseded, never changed: a correction says why. What was taken goes out of the stores at sign-off by itself.
/// </summary>
public static class InspectSeals
{
    private const int MostRows = 100;
    private const decimal LargestQuantity = 100_000;

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>Rows without a verdict say nothing.</summary>
        public IReadOnlyList<Row>? Seals { get; init; }
    }

    public sealed record Row
    {
        /// <summary>Of the joint or fastener, as the list of seals names it.</summary>
        public string? PlaceCode { get; init; }

        public string? PartCode { get; init; }

        public SealVerdict? Verdict { get; init; }

        /// <summary>How many new ones were taken; absent: all that sit there where they were replaced, none where they are fit.</summary>
        public decimal? Taken { get; init; }

        /// <summary>What was seen; of a correction, why.</summary>
        public string? Remark { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Seals).Must(rows => rows is { Count: > 0 and <= MostRows } && rows.Any(r => r.Verdict is not null))
                .WithMessage($"{{PropertyName}} says of no seal whether it goes back in: give 1 to {MostRows} rows with a verdict.");
            RuleForEach(r => r.Seals).ChildRules(row =>
            {
                row.RuleFor(r => r.Verdict).IsInEnum();
                row.When(r => r.Verdict is not null, () =>
                {
                    row.RuleFor(r => r.PlaceCode).IsGiven("the code of the joint or fastener").IsAtMost(Limits.Code);
                    row.RuleFor(r => r.PartCode).IsGiven("the code of the seal").IsAtMost(Limits.Code);
                    row.RuleFor(r => r.Taken).IsWithin(0, LargestQuantity, 4, "pieces or ml");
                    row.RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
                });
            });
        }
    }

    public static async Task<Outcome<GetSeals.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.ForWork(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var parts = await NamedParts.Read(db, open.Specification, ct);
        var opened = OpenedSeals.Of(open.Specification, open.ItemsUnderWay, parts).ToDictionary(s => (s.PlaceCode, s.PartCode));
        var standing = OpenedSeals.Standing(await db.SealInspections.AsNoTracking().Where(i => i.JobCardNumber == request.Number).ToListAsync(ct))
            .ToDictionary(i => (i.PlaceCode, i.PartCode));
        var faults = new List<FieldFault>();
        var seen = new HashSet<(string, string)>();
        foreach (var (row, index) in request.Seals!.Select((row, index) => (row, index)).Where(r => r.row.Verdict is not null))
        {
            var key = (row.PlaceCode!, row.PartCode!);
            if (!opened.TryGetValue(key, out var seal) || !seen.Add(key))
            {
                faults.Add(new FieldFault($"seals[{index}].partCode", opened.ContainsKey(key)
                    ? $"seals[{index}] names {row.PartCode} at {row.PlaceCode} for the second time: each seal once."
                    : $"seals[{index}] is {row.PartCode} at {row.PlaceCode}: no seal that may go back in is opened there on job card {request.Number}; "
                        + (opened.Count == 0 ? "there is none." : $"there are {string.Join(", ", opened.Keys.Select(k => $"{k.PartCode} at {k.PlaceCode}"))}.")));
                continue;
            }

            var taken = row.Taken ?? (row.Verdict == SealVerdict.Fit ? 0 : seal.Quantity);
            var before = standing.GetValueOrDefault(key);
            if (before is not null && before.Verdict == row.Verdict && before.Taken == taken && string.IsNullOrWhiteSpace(row.Remark))
            {
                continue; // Said already: a page sends its rows as they stand.
            }

            if (Refuse(row, taken, seal, before, $"seals[{index}]", parts.GetValueOrDefault(seal.PartCode)) is { } fault)
            {
                faults.Add(fault);
                continue;
            }

            db.SealInspections.Add(new SealInspection
            {
                Id = NewId.At(clock),
                JobCardNumber = request.Number,
                PlaceCode = seal.PlaceCode,
                PartCode = seal.PartCode,
                Verdict = row.Verdict!.Value,
                Taken = taken,
                RemarkId = Remarks.Add(db, row.Remark, actor, clock),
                SupersedesId = before?.Id,
                InspectedBy = actor.PersonId,
                InspectedAt = clock.GetCurrentInstant(),
            });
        }

        if (faults.Count > 0)
        {
            return Problem.Impossible("inspection-impossible", faults);
        }

        await db.SaveChangesAsync(ct);
        return await GetSeals.Read(db, open, ct);
    }

    private static FieldFault? Refuse(Row row, decimal taken, SealToInspect seal, SealInspection? before, string field, Part? part)
    {
        var unit = part?.Unit ?? PartUnit.Piece;
        return (row.Verdict, taken) switch
        {
            (SealVerdict.Fit, > 0) => Fault("taken", $"is {taken}: of a seal that goes back in none is taken; say replaced, or 0."),
            (SealVerdict.Replaced, 0) => Fault("taken", $"is 0, but the seal was replaced: say how many new ones were taken, above 0 and at most {seal.Quantity}."),
            _ when taken > seal.Quantity => Fault("taken", $"is {taken}: {seal.Quantity} sit at the {seal.Place}, so 0 to {seal.Quantity} is allowed; more goes beside the kit at sign-off."),
            _ when unit == PartUnit.Piece && taken != decimal.Truncate(taken) => Fault("taken", $"is {taken}: it comes in whole pieces."),
            _ when before is not null && string.IsNullOrWhiteSpace(row.Remark) =>
                Fault("remark", $"is empty: this corrects what was said of the seal before ({before.Verdict.Spoken(before.Taken, unit)}), so say why."),
            _ => null,
        };

        FieldFault Fault(string name, FormattableString rest) =>
            new($"{field}.{name}", $"{field}.{name} {rest.ToString(CultureInfo.InvariantCulture)}");
    }
}
