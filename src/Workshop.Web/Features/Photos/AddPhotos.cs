using System.Security.Cryptography;
using System.Text.Json.Serialization;
using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Photos;

/// <summary>
/// Keeps photos of a visit, of one of its findings where one is named: all of them or none. Each is made anew from its pixels, see
/// <see cref="PictureCleaner"/>.
/// </summary>
public static class AddPhotos
{
    public sealed record Request
    {
        [JsonIgnore]
        public int Number { get; init; }

        public Guid? FindingId { get; init; }

        public string? Caption { get; init; }

        public IReadOnlyList<File> Files { get; init; } = [];
    }

    /// <summary>A file as it was sent. Its hash stands for it, so that the same send is known again.</summary>
    public sealed record File(string Name, [property: JsonIgnore] byte[] Content)
    {
        public string Sha256 { get; } = Convert.ToHexStringLower(SHA256.HashData(Content));
    }

    public sealed record Answer(int JobCardNumber, IReadOnlyList<Added> Photos);

    public sealed record Added(Guid Id, string MediaType, int WidthPx, int HeightPx, int Bytes);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Caption).IsAtMost(Limits.Remark);
            RuleFor(r => r.Files).Must(f => f.Count is > 0 and <= PictureRules.MostAtOnce)
                .WithMessage((_, f) => $"{{PropertyName}} holds {f.Count}: 1 to {PictureRules.MostAtOnce} pictures are allowed at once.");
            RuleForEach(r => r.Files).Must(f => f.Content.Length is > 0 and <= PictureRules.LargestBytes)
                .WithMessage((_, f) => $"{{PropertyName}} ({f.Name}) has {f.Content.Length} bytes: 1 to {PictureRules.LargestBytes} are allowed.");
        }
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        // The pictures first, as that takes longest: the card is locked for a moment only.
        var pictures = new List<CleanPicture>();
        for (var i = 0; i < request.Files.Count; i++)
        {
            if (!(await PictureCleaner.Clean($"files[{i}]", request.Files[i].Content, ct)).TryGet(out var picture, out var wrong))
            {
                return wrong;
            }

            pictures.Add(picture);
        }

        if ((await OpenCard.ForWork(db, request.Number, ct)).Problem is { } problem)
        {
            return problem;
        }

        if (request.FindingId is { } finding && !await db.Findings.AnyAsync(f => f.Id == finding && f.JobCardNumber == request.Number, ct))
        {
            return Problem.Impossible("finding-unknown", "findingId", $"findingId is {finding}: job card {request.Number} has no such finding.");
        }

        var caption = Remarks.Add(db, request.Caption, actor, clock);
        var photos = pictures.ConvertAll(picture => new Photo
        {
            Id = NewId.At(clock), JobCardNumber = request.Number, FindingId = request.FindingId, MediaType = picture.Kind.MediaType(), Content = picture.Content,
            Thumbnail = picture.Small, WidthPx = picture.Width, HeightPx = picture.Height, CaptionRemarkId = caption, AddedBy = actor.PersonId,
            AddedAt = clock.GetCurrentInstant(),
        });
        db.Photos.AddRange(photos);
        await db.SaveChangesAsync(ct);
        return new Answer(request.Number, [.. photos.Select(p => new Added(p.Id, p.MediaType, p.WidthPx, p.HeightPx, p.Content.Length))]);
    }
}
