using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Photos;

/// <summary>Takes a picture out for good: a face, the wrong motorcycle. That there was one, who took it out and why, stays.</summary>
public static class RemovePhoto
{
    public sealed record Request : IExpectsVersion
    {
        [JsonIgnore]
        public Guid Id { get; init; }

        [JsonIgnore]
        public uint? RowVersion { get; init; }

        public string? Reason { get; init; }
    }

    public sealed record Answer(Guid Id, int JobCardNumber, Guid? FindingId, uint RowVersion) : IHasVersion;

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Reason).IsGiven("why the picture is taken out").IsAtMost(Limits.Remark);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var photo = await db.Photos.SingleOrDefaultAsync(p => p.Id == request.Id, ct);
        if (photo is null)
        {
            return Problem.NotFound($"Photo {request.Id}");
        }

        if (photo.RemovedAt is not null)
        {
            return Problem.Conflict("photo-removed", "The picture was taken out already.");
        }

        (photo.Content, photo.Thumbnail) = ([], []);
        (photo.RemovedAt, photo.RemovedBy, photo.RemovedRemarkId) =
            (clock.GetCurrentInstant(), actor.PersonId, Remarks.Add(db, request.Reason, actor, clock));
        var version = db.Entry(photo).Property<uint>(MappingExtensions.RowVersion);
        version.OriginalValue = request.RowVersion!.Value;
        await db.SaveChangesAsync(ct);
        return new Answer(photo.Id, photo.JobCardNumber, photo.FindingId, version.CurrentValue);
    }
}
