using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;

namespace Workshop.Web.Features.Stores;

/// <summary>A delivery is not expected any more: it arrived, or was given up. What arrived is taken in by itself.</summary>
public static class CloseDelivery
{
    public sealed record Request
    {
        [JsonIgnore]
        public Guid Id { get; init; }
    }

    public sealed record Answer(Guid Id, Instant ClosedAt);

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await db.ExpectedDeliveries.SingleOrDefaultAsync(d => d.Id == request.Id, ct) is not { } delivery)
        {
            return Problem.NotFound($"Expected delivery {request.Id}");
        }

        if (delivery.ClosedAt is not null)
        {
            return Problem.Conflict("closed", "That delivery is closed already.");
        }

        var now = clock.GetCurrentInstant();
        delivery.ClosedAt = now;
        await db.SaveChangesAsync(ct);
        return new Answer(delivery.Id, now);
    }
}
