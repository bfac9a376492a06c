using System.Text.Json.Serialization;
using FluentValidation;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>The motorcycle did not come, and nobody called it off: what it took is free again, its kit is let go, the card says so.</summary>
public static class MarkNoShow
{
    private const string UsualReason = "The motorcycle did not come.";

    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        /// <summary>What is known of it; may be empty.</summary>
        public string? Remark { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Remark).IsAtMost(Limits.Remark);
    }

    public static async Task<Outcome<CancelBooking.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Lock(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        var now = clock.GetCurrentInstant();
        if (CardRules.RefuseNoShow(open.Card, now, await WorkshopTimes.Read(db, ct)) is { } refused)
        {
            return refused;
        }

        open.Card.State = JobCardState.NoShow;
        var reason = string.IsNullOrWhiteSpace(request.Remark) ? UsualReason : request.Remark.Trim();
        await CancelBooking.End(db, open.Card, reason, actor, clock, ct);
        return new CancelBooking.Answer(request.Number, open.Card.State);
    }
}
