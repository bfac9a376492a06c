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

/// <summary>Somebody goes to a place to count; one count of a place is open at a time. Shims are counted in their box.</summary>
public static class StartCount
{
    public sealed record Request
    {
        public string? PlaceCode { get; init; }
    }

    public sealed record Answer(Guid Id, string Place);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.PlaceCode).IsGiven("the code of the place that is counted");
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await PlacesByCode.Find(db, request.PlaceCode!, "placeCode", ct)).TryGet(out var place, out var problem))
        {
            return problem;
        }

        if (PlacesByCode.RefusePutting(place, "placeCode") is { } retired)
        {
            return retired;
        }

        if (await db.StockCounts.AnyAsync(c => c.PlaceId == place.Id && c.ClosedAt == null, ct))
        {
            return Problem.Conflict("count-open", $"A count of {place.Name} is open already; go on with it, or give it up.");
        }

        var count = new StockCount { Id = NewId.At(clock), PlaceId = place.Id, StartedBy = actor.PersonId, StartedAt = clock.GetCurrentInstant() };
        db.StockCounts.Add(count);
        await db.SaveChangesAsync(ct);
        return new Answer(count.Id, place.Name);
    }
}
