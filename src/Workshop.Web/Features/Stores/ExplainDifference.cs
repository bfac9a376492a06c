using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>Why a count differs from the books. The line is written once more, with its reason; it keeps its figures and its moment.</summary>
public static class ExplainDifference
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid CountId { get; init; }

        /// <summary>The line that is explained; the last one of its part and lot.</summary>
        public Guid? LineId { get; init; }

        public CountDifferenceReason? Reason { get; init; }

        public string? Remark { get; init; }
    }

    public sealed record Answer(Guid LineId, string Sentence, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.LineId).IsGiven("the line that is explained");
            RuleFor(r => r.Reason).IsGiven("why the count differs").IsInEnum();
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCount.Locked(db, request.CountId, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var lines = await db.StockCountLines.AsNoTracking().Where(l => l.CountId == open.Count.Id).ToListAsync(ct);
        if (lines.SingleOrDefault(l => l.Id == request.LineId) is not { } line)
        {
            return Problem.NotFound($"Line {request.LineId} of that count");
        }

        if (CountSheet.Standing(lines).All(l => l.Id != line.Id))
        {
            return Problem.Conflict("counted-again", "That part was counted again, or explained, since; read the count again.");
        }

        if (line.Counted == line.Expected)
        {
            return Problem.Conflict("no-difference", "That line does not differ from the books; there is nothing to explain.");
        }

        var now = clock.GetCurrentInstant();
        var remark = await StockRemarks.Add(db, request.Remark, actor, now, ct);
        var explained = new StockCountLine
        {
            Id = NewId.At(now), CountId = line.CountId, Number = await open.NextNumber(db, ct), PartId = line.PartId, LotId = line.LotId,
            Counted = line.Counted, Expected = line.Expected,
            Reason = request.Reason, RemarkId = remark, CountedBy = line.CountedBy, CountedAt = line.CountedAt, ExplainedBy = actor.PersonId,
        };
        db.StockCountLines.Add(explained);
        var version = open.Changed(db);
        await db.SaveChangesAsync(ct);
        return new Answer(explained.Id, $"Explained: {request.Reason!.Value.Spoken()}.", version.CurrentValue);
    }
}
