using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>
/// One part of a place was counted: typed, or scanned. What the books say at that moment stands beside it; a part that is counted once
/// more has its last count. Nothing moves before the count is closed.
/// </summary>
public static class CountParts
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid CountId { get; init; }

        /// <summary>The part's code, or the code on a package of it.</summary>
        public string? Code { get; init; }

        public string? LotCode { get; init; }

        /// <summary>In the part's unit; 0 where none is there.</summary>
        public decimal? Counted { get; init; }
    }

    public sealed record Answer(string PartCode, string Name, PartUnit Unit, string? Lot, decimal Counted, decimal Expected, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Code).IsGiven("the code of the part that was counted");
            RuleFor(r => r.LotCode).IsAtMost(QuantityRules.LongestLot);
            RuleFor(r => r.Counted).IsGiven("how much lies there; 0 where none does")
                .IsWithin(0, QuantityRules.Largest, QuantityRules.Decimals, "pieces or ml");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCount.Locked(db, request.CountId, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (await ReadCode.Of(db, request.Code!, ct) is not ScannedThing.OfPart scanned)
        {
            return Problem.Impossible("part-unknown", "code", $"code is \"{request.Code}\": no part or package has it.");
        }

        if (scanned.Part.Kind == PartKind.Shim)
        {
            return Problem.Impossible("part-is-shim", "code", $"code is \"{request.Code}\", shims: count them by thickness in the shim box.");
        }

        var lot = string.IsNullOrWhiteSpace(request.LotCode) ? null : request.LotCode.Trim();
        if (!(await StockAt.Locked(db, scanned.Part.Code, open.Place.Code, lot, true, ct)).TryGet(out var at, out problem))
        {
            return problem;
        }

        var counted = request.Counted!.Value;
        if (at.RefuseBroken(counted, "counted") is { } broken)
        {
            return broken;
        }

        var now = clock.GetCurrentInstant();
        db.StockCountLines.Add(new StockCountLine
        {
            Id = NewId.At(now), CountId = open.Count.Id, Number = await open.NextNumber(db, ct), PartId = at.Part.Id, LotId = at.Lot?.Id,
            Counted = counted, Expected = at.OnHand, CountedBy = actor.PersonId, CountedAt = now,
        });
        var version = open.Changed(db);
        await db.SaveChangesAsync(ct);
        return new Answer(at.Part.Code, at.Part.Name, at.Part.Unit, at.Lot?.Code, counted, at.OnHand, version.CurrentValue);
    }
}
