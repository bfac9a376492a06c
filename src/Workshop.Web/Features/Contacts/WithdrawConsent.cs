using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Contacts;

/// <summary>A consent is taken back: from now on the channel is not used, and what waits to go out by it is discarded.</summary>
public static class WithdrawConsent
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }
    }

    /// <param name="Discarded">Messages that had not gone out.</param>
    public sealed record Answer(Guid Id, ContactChannel Channel, int Discarded, uint RowVersion) : IHasVersion;

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var consent = await db.Consents.SingleOrDefaultAsync(c => c.Id == request.Id, ct);
        if (consent is null)
        {
            return Problem.NotFound($"Consent {request.Id}");
        }

        if (consent.WithdrawnAt is not null)
        {
            return Problem.Conflict("consent-withdrawn", "The consent is withdrawn already.");
        }

        if ((await CustomerRows.Lock(db, consent.PersonId, "personId", ct)).Problem is { } gone)
        {
            return gone;
        }

        (consent.WithdrawnAt, consent.WithdrawnBy) = (clock.GetCurrentInstant(), actor.PersonId);
        var version = db.Entry(consent).Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);

        // Rows that are in hand are over in a moment; those that wait for a retry must not go.
        var discarded = await db.OutboxMessages
            .Where(m => m.PersonId == consent.PersonId && m.Channel == consent.Channel && m.State == OutboxState.Waiting)
            .ExecuteUpdateAsync(set => set.SetProperty(m => m.State, OutboxState.Discarded).SetProperty(m => m.NextTryAt, (Instant?)null), ct);
        return new Answer(consent.Id, consent.Channel, discarded, version.CurrentValue);
    }
}
