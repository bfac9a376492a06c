using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain.Clearances;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Web.Data;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>
/// Writes which shims were fitted, takes them from the box, and puts in what came out. All or nothing; the booked adjustment
/// begins with the first.
/// </summary>
public static class RecordShims
{
    public sealed record Request : IMeasuredEntry
    {
        [JsonIgnore]
        public int Number { get; init; }

        public Guid? MicrometerId { get; init; }

        public Instant? MeasuredAt { get; init; }

        public Guid? MeasuredBy { get; init; }

        public string? Reason { get; init; }

        public IReadOnlyList<Row?>? Shims { get; init; }
    }

    public sealed record Row
    {
        public string? Valve { get; init; }

        /// <summary>Of the shim fitted; empty where nobody measured it.</summary>
        public decimal? ThicknessMm { get; init; }

        /// <summary>Taken from the shim box.</summary>
        public bool FromBox { get; init; }

        /// <summary>The very shim that was taken from the box; any of its thickness where it is empty.</summary>
        public Guid? ShimId { get; init; }

        /// <summary>The valve that it came out of at this visit, where it is moved across.</summary>
        public string? FromValve { get; init; }

        /// <summary>The shim that it replaces is cleaned, dried, measured with a zeroed micrometer, and went into the box.</summary>
        public bool OldIntoBox { get; init; }

        /// <summary>The shim that it replaces is scrapped, for this reason.</summary>
        public ScrapReason? OldScrapped { get; init; }
    }

    public sealed record Answer(int Number, int Shims, IReadOnlyList<string> Warnings);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Shims).Must(s => s?.Any(row => row is not null) == true)
                .WithMessage("{PropertyName} is empty: give at least one shim that was fitted.");
            RuleFor(r => r.Reason).IsAtMost(Limits.Remark);
            RuleForEach(r => r.Shims).SetValidator(new RowValidator()!);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await VisitEntry.Begin(db, request.Number, request, actor, clock, ct)).TryGet(out var entry, out var refused))
        {
            return refused;
        }

        var seen = request.Shims!
            .Select((row, index) => row is null ? null : new SeenShim(
                $"shims[{index}]", ValveKey.Parse(row.Valve!), Stage.AsLeft, row.ThicknessMm, request.MicrometerId, row.FromBox, row.OldIntoBox)
                {
                    ShimId = row.ShimId,
                    FromValve = row.FromValve is { Length: > 0 } from ? ValveKey.Parse(from) : null,
                    OldScrapped = row.OldScrapped,
                })
            .OfType<SeenShim>().ToList();
        await ShimEntry.Add(entry, seen, ct);
        return await entry.Finish(clock, ct) is { } problem
            ? problem
            : new Answer(request.Number, seen.Count, entry.Warnings);
    }

    private sealed class RowValidator : AbstractValidator<Row>
    {
        public RowValidator()
        {
            RuleFor(r => r.Valve).IsValve();
            RuleFor(r => r.FromValve).IsValve().When(r => r.FromValve is { Length: > 0 });
            RuleFor(r => r.ShimId).Must((r, id) => id is null || r.FromBox)
                .WithMessage((r, id) => $"shimId is {id}, but fromBox is not set: only a shim of the box has one.");
            RuleFor(r => r.ThicknessMm).IsShimThickness().WithName(r => $"thicknessMm of the shim of {r.Valve}");
        }
    }
}
