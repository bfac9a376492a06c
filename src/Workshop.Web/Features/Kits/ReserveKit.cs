using System.Text.Json.Serialization;
using NodaTime;
using Workshop.Domain.JobCards;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;

namespace Workshop.Web.Features.Kits;

/// <summary>Reserves anew for a card that was short: goods came in, or another card let go.</summary>
public static class ReserveKit
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }
    }

    public static async Task<Outcome<GetKit.Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await OpenCard.Lock(db, request.Number, ct)).TryGet(out var open, out var problem))
        {
            return problem;
        }

        if (open.Card.State is JobCardState.SignedOff or JobCardState.Cancelled)
        {
            return Problem.Conflict("closed", $"Job card {request.Number} is {open.Card.State.Spoken()}; nothing is reserved for it any more.");
        }

        await KitReservations.Reserve(db, request.Number, actor, clock, ct);
        return await GetKit.Handle(new GetKit.Request(request.Number), db, actor, clock, ct);
    }
}
