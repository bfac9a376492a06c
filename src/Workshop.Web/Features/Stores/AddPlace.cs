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

/// <summary>One more place in the stores; last on the walk unless it is said where.</summary>
public static class AddPlace
{
    private const int Step = 10;

    public sealed record Request : IPlaceFields
    {
        public string? Name { get; init; }

        /// <summary>The next free one where none is given.</summary>
        public string? Code { get; init; }

        public int? WalkOrder { get; init; }
    }

    public sealed record Answer(Guid Id, string Name, string Code);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => Include(new PlaceFieldsValidator());
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (await PlaceFields.Taken(db, request, null, ct) is { } taken)
        {
            return taken;
        }

        var last = await db.StoragePlaces.MaxAsync(p => (int?)p.WalkOrder, ct) ?? 0;
        var place = new StoragePlace { Id = NewId.At(clock), Name = request.Name!, WalkOrder = request.WalkOrder ?? Math.Min(last + Step, PlaceFieldsValidator.LastOnAWalk) };
        if (!string.IsNullOrEmpty(request.Code))
        {
            place.Code = request.Code;
        }

        db.StoragePlaces.Add(place);
        await db.SaveChangesAsync(ct);
        return new Answer(place.Id, place.Name, place.Code);
    }
}
