using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Shims;

/// <summary>A shim of the box or of a bench is not used again.</summary>
public static class ScrapShim
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        public ScrapReason? Reason { get; init; }

        /// <summary>What was seen, where more is to be said.</summary>
        public string? Remark { get; init; }
    }

    public sealed record Answer(Guid Id, string Sentence);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Reason).IsGiven("pitted, dished, chipped, blued or worn");
            RuleFor(r => r.Reason).Must(r => r is null || ScrapReasons.OfShims.Contains(r.Value))
                .WithMessage((_, r) => $"{{PropertyName}} is {r}, which is said of other parts: pitted, dished, chipped, blued or worn is allowed.");
            RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await ShimBoxes.ToMove(db, request.Id, ct)).TryGet(out var found, out var problem))
        {
            return problem;
        }

        var (shim, home) = found;
        if (shim.Where is not (ShimWhere.Box or ShimWhere.Bench))
        {
            return ShimBoxes.NotAtHand(shim);
        }

        var now = clock.GetCurrentInstant();
        var remark = string.IsNullOrWhiteSpace(request.Remark) ? null : new Remark
        {
            Id = NewId.At(now), Text = request.Remark.Trim(), WrittenBy = actor.PersonId, WrittenAt = now,
        };
        if (remark is not null)
        {
            db.Remarks.Add(remark);
            await db.SaveChangesAsync(ct);
        }

        await ShimLedger.Write(db,
        [
            new StockMovement
            {
                Id = NewId.At(now), PartId = shim.PartId, PlaceId = shim.PlaceId ?? home, ShimId = shim.Id, Thickness = shim.Thickness,
                Condition = shim.Condition, Kind = MovementKind.Scrapped, OnHandChange = shim.PlaceId is null ? 0 : -1,
                ReservedChange = 0, ScrapReason = request.Reason, ReasonRemarkId = remark?.Id, JobCardNumber = shim.BenchCardNumber,
                MovedBy = actor.PersonId, MovedAt = now,
            },
        ], ct);
        return new Answer(shim.Id, $"The shim of {shim.Thickness} is scrapped: {request.Reason!.Value.Spoken()}.");
    }
}
