using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Calendars;

/// <summary>
/// Makes a link under which the visits of one bay or technician can be read as a calendar. The link is said once: what is kept of
/// its secret is a digest, also in the answer under the idempotency key.
/// </summary>
public static class CreateCalendarFeed
{
    public sealed record Request(Guid? ResourceId);

    public sealed record Answer(Guid Id, string Resource)
    {
        /// <summary>Never stored: a key that comes back makes nothing new, and shows no secret.</summary>
        [JsonIgnore]
        public string? Path { get; init; }
    }

    /// <summary>What the caller sees.</summary>
    /// <param name="Path">The address below the service's own, secret; absent when the same key was sent before.</param>
    public sealed record Shown(Guid Id, string Resource, string? Path);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.ResourceId).IsGiven("the bay or technician whose calendar it is");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var resource = await db.Resources.AsNoTracking().SingleOrDefaultAsync(r => r.Id == request.ResourceId, ct);
        if (resource is null || resource.Kind is not (ResourceKind.Bay or ResourceKind.Technician))
        {
            return Problem.Impossible("resource-unfit", "resourceId",
                $"resourceId is {request.ResourceId}: no bay and no technician has it; choose one of GET /api/v1/bookings/availability.");
        }

        if (!FeedRules.MayHandle(actor, resource))
        {
            return FeedRules.Refuse(resource);
        }

        var secret = LinkSecret.New();
        var feed = new CalendarFeed
        {
            Id = NewId.At(clock),
            ResourceId = resource.Id,
            SecretDigest = LinkSecret.DigestOf(secret),
            CreatedBy = actor.PersonId,
            CreatedAt = clock.GetCurrentInstant(),
        };
        db.CalendarFeeds.Add(feed);
        await db.SaveChangesAsync(ct);
        return new Answer(feed.Id, resource.Name) { Path = FeedRules.PathOf(secret) };
    }

    public static Shown Show(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return new Shown(answer.Id, answer.Resource, answer.Path);
    }
}
